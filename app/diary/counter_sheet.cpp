// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/counter_sheet.h"

#include "app/diary/counter_form.h"
#include "app/diary/counter_model.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/course_events.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int leastTableHeight = 150;

} // namespace

CounterSheet::CounterSheet(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_services(services)
    , m_model(new CounterModel(services.text, this))
    , m_table(new QTableView(this))
    , m_sentence(new QLabel(this))
    , m_add(new QPushButton(tr("Enter a &reading…"), this))
    , m_correct(new QPushButton(tr("&Correct…"), this))
    , m_withdraw(new QPushButton(tr("&Withdraw the reading…"), this))
{
    layOut();
    connect(m_add, &QPushButton::clicked, this, &CounterSheet::add);
    connect(m_correct, &QPushButton::clicked, this, &CounterSheet::correct);
    connect(m_table, &QTableView::activated, this, &CounterSheet::correct);
    connect(m_withdraw, &QPushButton::clicked, this, &CounterSheet::withdraw);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &CounterSheet::refreshActs);
    m_table->installEventFilter(this);
    refreshActs();
}

void CounterSheet::layOut()
{
    setRole(*this, Role::sheet);
    auto* head = new QLabel(tr("Counter of the unit"), this);
    setRole(*head, Role::strongText);
    m_add->setObjectName(QStringLiteral("enterCounter"));
    m_correct->setObjectName(QStringLiteral("correctCounter"));
    m_withdraw->setObjectName(QStringLiteral("withdrawCounter"));
    m_sentence->setObjectName(QStringLiteral("counterSentence"));
    m_sentence->setWordWrap(true);
    setRole(*m_sentence, Role::secondLineText);
    m_table->setModel(m_model);
    m_table->setObjectName(QStringLiteral("counters"));
    m_table->setAccessibleName(tr("Readings of the unit’s counter"));
    dressAsRows(*m_table);
    m_table->setWordWrap(true);
    m_table->setTextElideMode(Qt::ElideNone);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->setMinimumHeight(scaled(leastTableHeight, appliedFactor()));
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(space::close);
    buttons->addWidget(head, 1);
    buttons->addWidget(m_add);
    buttons->addWidget(m_correct);
    buttons->addWidget(m_withdraw);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet,
                               space::insideSheet);
    layout->setSpacing(space::close);
    layout->addLayout(buttons);
    layout->addWidget(m_sentence);
    layout->addWidget(m_table);
}

void CounterSheet::open(const Course& course, const CourseRecords& diary)
{
    const int rowBefore =
        m_course && m_course->id == course.id ? m_table->currentIndex().row() : -1;
    const int readingsBefore = m_model->rowCount();
    m_course = course;
    const auto readings = m_services.store.read(
        [&](db::Reading& reading) { return db::counterReadingsOf(reading, *course.id); });
    if (!readings) {
        m_model->setReadings({}, {}); // never those of somebody else
        emit said(errorText(readings.error(), m_services.text));
    } else {
        m_model->setReadings(*readings, compareCounter(diary, *readings));
    }
    const bool any = m_model->rowCount() > 0;
    m_table->setVisible(any);
    m_sentence->setText(
        any ? tr("A diary is what the patient reports. In groups diaries overstate (with knee "
                 "pain, 25 % more exercises than a hidden sensor counted: Nicolson 2018, J Orthop "
                 "Sports Phys Ther 48:943, 54 people); that says nothing of one person, so no "
                 "figure here is ever corrected by it. A difference over 10 % is shown.")
            : tr("No reading yet. Enter what the unit shows at each visit: total uses, total "
                 "minutes, or both. From the second reading on they are held against the diary."));
    if (any) {
        const int last = m_model->rowCount() - 1;
        const bool sameReadings = rowBefore >= 0 && readingsBefore == last + 1;
        m_table->setCurrentIndex(m_model->index(sameReadings ? rowBefore : last, 0));
        m_table->resizeColumnsToContents();
        m_table->resizeRowsToContents();
    }
    refreshActs();
}

void CounterSheet::close()
{
    m_course.reset();
    m_model->setReadings({}, {});
    refreshActs();
}

void CounterSheet::refreshActs()
{
    const QModelIndex row = m_table->currentIndex();
    const bool can = m_course && m_services.store.isWritable();
    const bool withdrawn = row.isValid() && m_model->readingAt(row.row()).withdrawn;
    m_add->setEnabled(can);
    m_correct->setEnabled(can && row.isValid() && !withdrawn);
    m_withdraw->setEnabled(can && row.isValid());
    m_withdraw->setText(withdrawn ? tr("R&estore the reading") : tr("&Withdraw the reading…"));
}

void CounterSheet::add()
{
    if (!m_course) {
        return;
    }
    CounterReading reading;
    reading.course = m_course->id;
    reading.readOn = m_services.clock.today();
    CounterForm form(m_services, *m_course, reading, {}, this);
    form.exec();
}

void CounterSheet::correct()
{
    const QModelIndex row = m_table->currentIndex();
    if (!m_correct->isEnabled() || !m_course) {
        return;
    }
    CounterForm form(m_services, *m_course, m_model->readingAt(row.row()),
                     m_model->comparedAt(row.row()), this);
    form.exec();
}

void CounterSheet::withdraw()
{
    const QModelIndex row = m_table->currentIndex();
    if (!m_withdraw->isEnabled() || !m_course) {
        return;
    }
    CounterReading reading = m_model->readingAt(row.row());
    reading.withdrawn = !reading.withdrawn;
    const QString question = tr("Withdraw the reading of %1? It stays in the record and counts no "
                                "more.")
                                 .arg(m_services.text.date(reading.readOn));
    if (reading.withdrawn && !m_services.prompts.confirm(this, question, tr("Withdraw"))) {
        return;
    }
    const auto saved = m_services.store.write(
        m_services.author, reading.withdrawn ? "withdraw reading" : "restore reading",
        [&](db::Writing& writing) { db::changeCounterReading(writing, reading); });
    if (!saved) {
        emit said(errorText(saved.error(), m_services.text));
        return;
    }
    emit m_services.events.diaryChanged(*m_course->id);
}

bool CounterSheet::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
        withdraw();
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

} // namespace quadrille::app
