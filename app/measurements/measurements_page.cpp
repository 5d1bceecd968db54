// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/measurements_page.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/chosen_sheet.h"
#include "app/measurements/measurements_model.h"
#include "app/measurements/table_setup.h"
#include "app/measurements/visit_form.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/trade_words.h"

#include "db/measurements.h"

#include <QLabel>
#include <QPushButton>
#include <QStackedLayout>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

constexpr std::array kindShares{20, 7, 10, 10, 11, 20, 22};

} // namespace

MeasurementsPage::MeasurementsPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_stack(new QStackedLayout)
    , m_model(new MeasurementsModel(services.text, this))
    , m_table(new QTableView(this))
    , m_treated(new QLabel(this))
    , m_chosen(new ChosenSheet(services, this))
    , m_enter(new QPushButton(tr("Enter a visit…"), this))
{
    m_enter->setObjectName(QStringLiteral("enterMeasurements"));
    m_enter->setToolTip(tr("Ctrl M"));
    setRole(*m_enter, Role::primaryButton);
    layOut();
    connect(m_enter, &QPushButton::clicked, this, &MeasurementsPage::enter);
    connect(m_chosen, &ChosenSheet::said, this, &MeasurementsPage::said);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &MeasurementsPage::showChosen);
    connect(&m_services.events, &StoreEvents::measurementsChanged, this, [this](CourseId course) {
        if (m_course && m_course->id == course) {
            readAll();
        }
    });
}

void MeasurementsPage::layOut()
{
    setUpTable(*m_table, *m_model, kindShares);
    m_table->setObjectName(QStringLiteral("measurements"));
    m_table->setAccessibleName(tr("Measurements of this course, a row a side"));
    auto* filled = new QWidget(this);
    auto* sheets = new QVBoxLayout(filled);
    sheets->setContentsMargins(0, 0, 0, 0);
    sheets->setSpacing(space::betweenSheets);
    sheets->addWidget(kindsSheet(), 6);
    sheets->addWidget(m_chosen, 6);
    m_stack->addWidget(emptySheet());
    m_stack->addWidget(filled);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::betweenSheets, space::medium,
                               space::betweenSheets);
    layout->addLayout(m_stack);
}

QWidget* MeasurementsPage::emptySheet()
{
    auto* empty = new QWidget(this);
    auto* sentence = new QLabel(tr("No measurement yet. The first visit’s values become the "
                                   "baseline of this course: enter them with Ctrl M."),
                                empty);
    sentence->setObjectName(QStringLiteral("noMeasurement"));
    auto* layout = new QVBoxLayout(empty);
    layout->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    layout->addWidget(sentence);
    layout->addStretch();
    return empty;
}

QWidget* MeasurementsPage::kindsSheet()
{
    auto* sheet = new QFrame(this);
    setRole(*sheet, Role::sheet);
    setRole(*m_treated, Role::captionText);
    m_treated->setObjectName(QStringLiteral("treatedSide"));
    m_treated->setContentsMargins(space::medium, space::tiny, space::medium, space::tiny);
    auto* layout = new QVBoxLayout(sheet);
    layout->setContentsMargins(1, 1, 1, 1);
    layout->setSpacing(0);
    layout->addWidget(m_treated);
    layout->addWidget(m_table, 1);
    return sheet;
}

void MeasurementsPage::open(const Course& course, const std::vector<Plan>& plans)
{
    if (!m_course || m_course->id != course.id) {
        m_table->setCurrentIndex({});
    }
    m_course = course;
    m_plans = plans;
    readAll();
}

QList<QWidget*> MeasurementsPage::acts() const
{
    return {m_enter};
}

void MeasurementsPage::focusFirst()
{
    if (m_model->rowCount() > 0) {
        m_table->setFocus(Qt::OtherFocusReason);
    } else {
        m_enter->setFocus(Qt::OtherFocusReason);
    }
}

void MeasurementsPage::readAll()
{
    const auto all = m_services.store.read(
        [&](db::Reading& reading) { return db::measurementsOf(reading, *m_course->id); });
    m_all = all ? *all : std::vector<Measurement>{}; // never those of somebody else
    if (!all) {
        emit said(errorText(all.error(), m_services.text));
    }
    m_treatedSide = treatedSideOf(*m_course, m_plans);
    const int row = std::max(0, m_table->currentIndex().row());
    m_model->setMeasurements(m_all, m_treatedSide);
    m_stack->setCurrentIndex(m_model->rowCount() > 0 ? 1 : 0);
    showTreated();
    if (m_model->rowCount() > 0) {
        m_table->setCurrentIndex(m_model->index(std::min(row, m_model->rowCount() - 1), 0));
    }
    showChosen();
    m_enter->setEnabled(m_services.store.isWritable());
}

void MeasurementsPage::showTreated()
{
    QString side;
    if (m_treatedSide == TreatedSide::both) {
        side = tr("Treated on both sides, so there is no symmetry index.");
    } else if (m_treatedSide) {
        const QString name =
            sideName(*m_treatedSide == TreatedSide::left ? Side::left : Side::right);
        side = m_course->treatedSide
                   ? tr("Treated side: %1.").arg(name)
                   : tr("Treated side: %1, after the sites of the plan.").arg(name);
    } else {
        side = tr("Which side is treated is not said yet, and the symmetry index needs it: button "
                  "Course, Change.");
    }
    m_treated->setText(tr("%1 The baseline is the first value of the course.").arg(side));
}

void MeasurementsPage::showChosen()
{
    const QModelIndex row = m_table->currentIndex();
    if (!row.isValid() || !m_course) {
        m_chosen->show(std::nullopt);
        return;
    }
    m_chosen->show(ChosenSheet::Content{
        .series = m_model->seriesAt(row.row()),
        .side = m_model->sideAt(row.row()),
        .all = m_all,
        .treated = m_treatedSide,
        .courseStart = m_course->startDate,
        .weeks = m_plans.empty() ? 1 : totalWeeks(m_plans.back().blocks),
    });
}

void MeasurementsPage::enter()
{
    if (!m_course || !m_services.store.isWritable()) {
        return;
    }
    VisitForm form(m_services, *m_course, m_all, this);
    if (form.exec() == QDialog::Accepted) {
        emit said(tr("Values saved: %1.")
                      .arg(m_services.text.count(static_cast<std::int64_t>(form.savedValues()))));
        focusFirst();
    }
}

} // namespace quadrille::app
