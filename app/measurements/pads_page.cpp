// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/pads_page.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/electrode_set_form.h"
#include "app/measurements/pads_model.h"
#include "app/measurements/table_setup.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/electrode_text.h"
#include "app/words/error_text.h"

#include "db/diary.h"
#include "db/electrode_sets.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

constexpr std::array shares{16, 27, 12, 8, 15, 22};

QPushButton* act(const QString& text, const char* name, QWidget* parent)
{
    auto* button = new QPushButton(text, parent);
    button->setObjectName(QLatin1String(name));
    return button;
}

} // namespace

PadsPage::PadsPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_model(new PadsModel(services.text, this))
    , m_table(new QTableView(this))
    , m_sentence(new QLabel(this))
    , m_issue(act(tr("Hand out a set…"), "issuePads", this))
    , m_change(act(tr("C&hange…"), "changePads", this))
    , m_outOfUse(act(tr("Take &out of use…"), "padsOutOfUse", this))
    , m_withdraw(act(tr("&Withdraw…"), "withdrawPads", this))
{
    setRole(*m_issue, Role::primaryButton);
    m_withdraw->setToolTip(tr("For a set that was entered by mistake"));
    layOut();
    connect(m_issue, &QPushButton::clicked, this, &PadsPage::issue);
    connect(m_change, &QPushButton::clicked, this, &PadsPage::change);
    connect(m_table, &QTableView::activated, this, &PadsPage::change);
    connect(m_outOfUse, &QPushButton::clicked, this, &PadsPage::takeOutOfUse);
    connect(m_withdraw, &QPushButton::clicked, this, &PadsPage::withdraw);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &PadsPage::refreshActs);
    m_table->installEventFilter(this);
    connect(&m_services.events, &StoreEvents::electrodeSetsChanged, this, [this](CourseId course) {
        if (m_course && m_course->id == course) {
            readAll();
        }
    });
}

void PadsPage::layOut()
{
    setUpTable(*m_table, *m_model, shares);
    m_table->setObjectName(QStringLiteral("pads"));
    m_table->setAccessibleName(tr("Sets of pads of this course"));
    m_sentence->setObjectName(QStringLiteral("padsSentence"));
    m_sentence->setWordWrap(true);
    auto* sheet = new QFrame(this);
    setRole(*sheet, Role::sheet);
    auto* inside = new QVBoxLayout(sheet);
    inside->setContentsMargins(1, 1, 1, 1);
    inside->addWidget(m_table);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(space::close);
    buttons->addWidget(m_change);
    buttons->addWidget(m_outOfUse);
    buttons->addWidget(m_withdraw);
    buttons->addStretch();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::betweenSheets, space::medium,
                               space::betweenSheets);
    layout->setSpacing(space::close);
    layout->addWidget(m_sentence);
    layout->addWidget(sheet, 1);
    layout->addLayout(buttons);
}

void PadsPage::open(const Course& course, const std::vector<Plan>& plans)
{
    m_course = course;
    m_plans = plans;
    readAll();
}

QList<QWidget*> PadsPage::acts() const
{
    return {m_issue};
}

void PadsPage::focusFirst()
{
    if (m_model->rowCount() > 0) {
        m_table->setFocus(Qt::OtherFocusReason);
    } else {
        m_issue->setFocus(Qt::OtherFocusReason);
    }
}

bool PadsPage::replacementDue() const
{
    return m_model->replacementDue();
}

void PadsPage::readAll()
{
    const Date today = m_services.clock.today();
    const QModelIndex current = m_table->currentIndex();
    const auto chosen = current.isValid() ? m_model->setAt(current.row()).id : std::nullopt;
    struct Content {
        std::vector<ElectrodeSet> sets;
        std::vector<DiaryEntry> diary;
    };
    const auto content = m_services.store.read([&](db::Reading& reading) {
        Content read{db::electrodeSetsOf(reading, *m_course->id), {}};
        if (!read.sets.empty()) { // the earliest first
            read.diary =
                db::diaryEntriesOf(reading, *m_course->id, read.sets.front().issuedOn, today);
        }
        return read;
    });
    if (!content) {
        m_model->setSets({}, {}, today); // never those of somebody else
        emit said(errorText(content.error(), m_services.text));
    } else {
        m_model->setSets(content->sets, content->diary, today);
    }
    choose(chosen);
    const bool due = m_model->replacementDue();
    m_sentence->setText(
        m_model->rowCount() == 0
            ? tr("No set handed out yet. Enter the pads that the patient takes "
                 "home, then their uses are counted from the diary.")
        : due ? tr("A set has reached its life: hand out a new one. Uses are sessions done or "
                   "partly done in the diary while the set was in use.")
              : tr("Uses are sessions done or partly done in the diary while the set was in use. "
                   "Replace earlier when edges lift, the gel dries or the current stings."));
    setRole(*m_sentence, due ? Role::strongText : Role::secondLineText);
    refreshActs();
    emit wearChanged();
}

/// The next act must be about the set that the last one was about, wherever it stands now.
void PadsPage::choose(std::optional<ElectrodeSetId> chosen)
{
    int place = 0;
    for (int row = 0; row < m_model->rowCount(); ++row) {
        place = m_model->setAt(row).id == chosen ? row : place;
    }
    if (m_model->rowCount() > 0) {
        m_table->setCurrentIndex(m_model->index(place, 0));
    }
}

void PadsPage::refreshActs()
{
    const QModelIndex row = m_table->currentIndex();
    const bool can = row.isValid() && m_services.store.isWritable();
    const bool withdrawn = row.isValid() && m_model->setAt(row.row()).withdrawn;
    m_issue->setEnabled(m_services.store.isWritable());
    m_change->setEnabled(can && !withdrawn);
    m_outOfUse->setEnabled(can && m_model->wearAt(row.row()).inUse);
    m_withdraw->setEnabled(can);
    m_withdraw->setText(withdrawn ? tr("&Restore") : tr("&Withdraw…"));
}

/// As the last set, else as the pads of the newest plan.
ElectrodeSet PadsPage::likelySet() const
{
    ElectrodeSet likely;
    if (m_model->rowCount() > 0 && !m_model->setAt(0).withdrawn) {
        likely = m_model->setAt(0);
    } else if (!m_plans.empty() && !m_plans.back().blocks.empty()) {
        int pads = 0;
        for (const Site& site : m_plans.back().blocks.front().sites) {
            pads += static_cast<int>(site.pads.size());
            if (!site.pads.empty() && !likely.shape) {
                likely.description = site.muscle;
                likely.shape = site.pads.front().shape;
                likely.width = site.pads.front().width;
                likely.height = site.pads.front().height;
                likely.type = site.pads.front().material == PadMaterial::selfAdhesive
                                  ? ElectrodeType::selfAdhesive
                                  : ElectrodeType::carbonRubberSponge;
            }
        }
        likely.pads = std::max(pads, 1);
    }
    likely.id.reset();
    likely.version = 1;
    likely.outOfUseOn.reset();
    likely.course = m_course->id;
    likely.issuedOn = m_services.clock.today();
    return likely;
}

void PadsPage::issue()
{
    if (m_course && m_services.store.isWritable()) {
        ElectrodeSetForm(m_services, likelySet(), m_model->setsInUse(), this).exec();
        focusFirst();
    }
}

void PadsPage::change()
{
    const QModelIndex row = m_table->currentIndex();
    if (row.isValid() && m_change->isEnabled()) {
        ElectrodeSetForm(m_services, m_model->setAt(row.row()), {}, this).exec();
        focusFirst();
    }
}

void PadsPage::takeOutOfUse()
{
    const QModelIndex row = m_table->currentIndex();
    if (!row.isValid() || !m_outOfUse->isEnabled()) {
        return;
    }
    ElectrodeSet set = m_model->setAt(row.row());
    const Date today = m_services.clock.today();
    if (m_services.prompts.confirm(
            this,
            tr("Take the pads for %1 out of use from today? Today’s sessions no longer count as "
               "theirs.")
                .arg(QString::fromStdString(set.description)),
            tr("Take out of use"))) {
        set.outOfUseOn = std::max(today, set.issuedOn);
        save(set, "take pads out of use");
    }
}

void PadsPage::withdraw()
{
    const QModelIndex row = m_table->currentIndex();
    if (!row.isValid() || !m_withdraw->isEnabled()) {
        return;
    }
    ElectrodeSet set = m_model->setAt(row.row());
    const bool sure =
        set.withdrawn ||
        m_services.prompts.confirm(
            this,
            tr("Withdraw the pads for %1 as entered by mistake? They stay readable, marked as "
               "withdrawn.")
                .arg(QString::fromStdString(set.description)),
            tr("Withdraw"));
    if (sure) {
        set.withdrawn = !set.withdrawn;
        save(set, set.withdrawn ? "withdraw pads" : "restore pads");
    }
}

void PadsPage::save(const ElectrodeSet& set, const char* what)
{
    const auto saved = m_services.store.write(m_services.author, what, [&](db::Writing& writing) {
        db::changeElectrodeSet(writing, set);
    });
    if (!saved) {
        emit said(errorText(saved.error(), m_services.text));
    }
    emit m_services.events.electrodeSetsChanged(*set.course);
    focusFirst();
}

/// Delete in the table: what is withdrawn is the line that is chosen.
bool PadsPage::eventFilter(QObject* watched, QEvent* event)
{
    const bool isKey = watched == m_table && event->type() == QEvent::KeyPress;
    if (isKey && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
        withdraw();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace quadrille::app
