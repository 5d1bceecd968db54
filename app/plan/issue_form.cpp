// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/issue_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/practice/practitioner_choice.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/finding_text.h"
#include "app/words/screening_text.h"
#include "ui_issue_form.h"

#include "db/course_events.h"
#include "db/plans.h"
#include "db/screenings.h"

#include "core/course_acts.h"
#include "core/plan_figures.h"
#include "core/screening_gate.h"

#include <QCheckBox>
#include <QLabel>
#include <QScrollArea>
#include <QStringList>
#include <QVBoxLayout>

namespace quadrille::app
{

IssueForm::IssueForm(const Services& services, const Course& course, const Draft& draft,
                     const Stimulator& stimulator, std::size_t plansBefore, QWidget* parent)
    : EntryDialog(services, {}, tr("Issue plan %1").arg(plansBefore + 1), parent)
    , m_ui(std::make_unique<Ui::IssueFields>())
    , m_course(course)
    , m_draft(draft)
    , m_isFirst(plansBefore == 0)
{
    auto* fields = new QWidget(this);
    m_ui->setupUi(fields);
    auto* layout = new QVBoxLayout(body());
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(checkList(stimulator), 1);
    layout->addWidget(fields);
    if (m_goesOn != nullptr) {
        layout->addWidget(m_goesOn);
    }
    setSaveText(tr("Issue"));
    setMinimumWidth(560);
    const Date today = services.clock.today();
    m_ui->fromDate->setText(services.text.date(m_isFirst ? course.startDate : today));
    m_ui->reason->setPlaceholderText(m_isFirst ? tr("for example: first plan after assessment")
                                               : tr("for example: stepped up after four weeks"));
    QStringList adopted;
    for (const std::string& reason : draft.adoptedReasons) {
        adopted.append(QString::fromStdString(reason));
    }
    m_ui->reason->setPlainText(adopted.join(QStringLiteral("; ")));
    fillPractitioners(*m_ui->practitioner, services);
    setSaveEnabled(!m_gateShut);
    m_ui->fromDate->setFocus();
}

IssueForm::~IssueForm() = default;

QWidget* IssueForm::checkList(const Stimulator& stimulator)
{
    auto* list = new QWidget;
    auto* lines = new QVBoxLayout(list);
    lines->setContentsMargins(space::medium, space::close, space::medium, space::close);
    lines->setSpacing(space::tiny);
    const auto add = [&](const QString& text, Role role) {
        auto* label = new QLabel(text, list);
        label->setWordWrap(true);
        setRole(*label, role);
        lines->addWidget(label);
    };
    addGate(add);
    offerToGoOn(add);
    std::optional<BlockFigures> before;
    for (std::size_t i = 0; i < m_draft.blocks.size(); ++i) {
        const BlockFigures figures = blockFigures(m_draft.blocks[i], stimulator);
        m_blocked = m_blocked || figures.hasStop();
        std::vector<Finding> all = figures.findings;
        for (const SiteFigures& site : figures.sites) {
            all.insert(all.end(), site.findings.begin(), site.findings.end());
        }
        if (const auto step = before ? stepFinding(*before, figures) : std::nullopt) {
            all.push_back(*step);
        }
        before = figures;
        sortBySeverity(all);
        for (const Finding& finding : all) {
            const FindingText words = findingText(finding, services().text);
            const bool stops = finding.severity == Severity::stop;
            const QString sentence = tr("Block %1: %2").arg(i + 1).arg(words.what);
            add(stops ? tr("%1 This must be mended before issue.").arg(sentence)
                      : QStringList{sentence, words.source}.join(QLatin1Char(' ')),
                stops ? Role::warnStrongText : Role::none);
        }
    }
    if (m_draft.blocks.empty()) {
        m_blocked = true;
        add(tr("The draft has no block. Add one first."), Role::warnStrongText);
    }
    lines->addStretch();
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(list);
    scroll->setWidgetResizable(true);
    scroll->setMinimumHeight(150);
    scroll->setAccessibleName(tr("Check list"));
    scroll->setObjectName(QStringLiteral("checkList"));
    return scroll;
}

void IssueForm::addGate(const std::function<void(const QString&, Role)>& add)
{
    const auto facts = services().store.read([&](db::Reading& reading) {
        return db::gateFacts(reading, *m_course.id, m_draft.blocks, services().clock.today());
    });
    if (!facts) {
        m_gateShut = true;
        add(errorText(facts.error(), services().text), Role::warnStrongText);
        return;
    }
    const ScreeningGate gate = screeningGate(*facts);
    if (const auto passed = passGate(gate); !passed) {
        m_gateShut = true;
        add(errorText(passed.error(), services().text), Role::warnStrongText);
        return;
    }
    for (const LiftedBlock& lifted : gate.lifted) {
        add(tr("Gone ahead of the screening (%1), %2: %3")
                .arg(gateBlockText(lifted.block, facts->sites).head,
                     QString::fromStdString(lifted.practitioner),
                     QString::fromStdString(lifted.reason)),
            Role::warnText);
    }
    for (const GateAdvice& advice : gate.advice) {
        add(tr("Precaution: %1").arg(QString::fromStdString(advice.wording)), Role::none);
    }
    for (const std::size_t site : gate.untested) {
        add(tr("The skin was not tested at %1.").arg(gateSiteName(facts->sites[site])),
            Role::warnText);
    }
}

void IssueForm::offerToGoOn(const std::function<void(const QString&, Role)>& add)
{
    const auto pauses = services().store.read(
        [&](db::Reading& reading) { return db::pausesOf(reading, *m_course.id); });
    if (!pauses) {
        m_gateShut = true;
        add(errorText(pauses.error(), services().text), Role::warnStrongText);
        return;
    }
    m_pause = standingPause(*pauses, services().clock.today());
    if (!m_pause || m_pause->toDate) {
        m_pause.reset();
        return;
    }
    m_goesOn = new QCheckBox(tr("The &course goes on with this plan: the pause since %1 ends the "
                                "day before")
                                 .arg(services().text.date(m_pause->fromDate)),
                             body());
    m_goesOn->setObjectName(QStringLiteral("goesOn"));
    m_goesOn->setChecked(true);
}

std::optional<EntryDialog::Problem> IssueForm::problem() const
{
    if (m_blocked || m_gateShut) {
        return Problem{
            m_ui->fromDate,
            tr("The plan can’t be issued while the check list names something to be mended. "
               "Cancel goes back to the draft.")};
    }
    const auto from = services().text.dateFrom(m_ui->fromDate->text());
    if (!from) {
        return Problem{m_ui->fromDate,
                       tr("“%1” is no date. Enter day, month and year, for example %2.")
                           .arg(m_ui->fromDate->text(), services().text.dateExample())};
    }
    if (!m_isFirst && *from < services().clock.today()) {
        return Problem{m_ui->fromDate, tr("A later plan can’t begin before today: old days keep "
                                          "the plan they were lived under.")};
    }
    if (*from < m_course.startDate) {
        return Problem{m_ui->fromDate, tr("The course starts on %1. Enter that day or a later one.")
                                           .arg(services().text.date(m_course.startDate))};
    }
    if (m_course.endDate && *from > *m_course.endDate) {
        return Problem{m_ui->fromDate,
                       tr("The course ends on %1, before the plan comes into force. Cancel and "
                          "choose Reopen in the menu Patient first.")
                           .arg(services().text.date(*m_course.endDate))};
    }
    if (m_goesOn != nullptr && m_goesOn->isChecked() && *from < m_pause->fromDate) {
        return Problem{m_ui->fromDate,
                       tr("The pause begins on %1, after the plan. Take the tick away, or enter a "
                          "day in the pause.")
                           .arg(services().text.date(m_pause->fromDate))};
    }
    const Date lastDay =
        firstDayOf(m_course.startDate, CourseWeek{totalWeeks(m_draft.blocks) + 1}) -
        std::chrono::days(1);
    if (*from > lastDay) {
        return Problem{
            m_ui->fromDate,
            tr("The blocks end on %1, before the plan comes into force. Cancel, then lengthen "
               "the last block or add one.")
                .arg(services().text.date(lastDay))};
    }
    if (!chosenPractitioner(*m_ui->practitioner)) {
        return Problem{m_ui->practitioner,
                       tr("No practitioner is chosen. Choose who issues the plan.")};
    }
    if (m_ui->reason->toPlainText().trimmed().isEmpty()) {
        return Problem{m_ui->reason,
                       tr("The reason is empty. Say in a few words why this plan is issued.")};
    }
    return std::nullopt;
}

Result<void> IssueForm::save()
{
    const db::Issue issue{.fromDate = *services().text.dateFrom(m_ui->fromDate->text()),
                          .reason = m_ui->reason->toPlainText().trimmed().toStdString(),
                          .issuedBy = *chosenPractitioner(*m_ui->practitioner)};
    const auto issued =
        services().store.write(services().author, "issue plan", [&](db::Writing& writing) {
            if (m_goesOn != nullptr && m_goesOn->isChecked()) {
                db::changePause(writing, endedBy(*m_pause, issue.fromDate));
            }
            return db::issuePlan(writing, m_draft, issue, services().clock.today());
        });
    if (!issued) {
        return issued.error();
    }
    m_issued = *issued;
    emit services().events.planChanged(*m_draft.course);
    return {};
}

} // namespace quadrille::app
