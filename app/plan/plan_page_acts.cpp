// SPDX-License-Identifier: GPL-3.0-or-later
// Acts on whole blocks, and those that leave the draft: the session in the clinic, issue, the plans
// side by side.
#include "app/clinic/clinic_session_form.h"
#include "app/plan/block_sheet.h"
#include "app/plan/issue_form.h"
#include "app/plan/plan_page.h"
#include "app/plan/plans_issued_dialog.h"
#include "app/plan/settings_form.h"
#include "app/plan/split_form.h"
#include "app/plan/starting_points_dialog.h"
#include "app/words/starting_point_text.h"

#include "db/screenings.h"

#include "core/block_edits.h"
#include "core/screening_gate.h"

#include <QElapsedTimer>

namespace quadrille::app
{

void PlanPage::pullBlock(std::size_t index, int weeks)
{
    m_draft.setBlockWeeks(index, weeks);
}

void PlanPage::lengthenBlock(int byWeeks)
{
    if (const auto block = m_draft.currentBlock()) {
        m_draft.lengthenBlock(*block, byWeeks);
    }
}

void PlanPage::splitBlock(std::size_t index)
{
    const auto weeks = splitWeeksOf(m_draft.draft().blocks, index);
    if (!weeks) {
        return;
    }
    const auto current =
        m_course ? courseWeekOf(m_course->startDate, m_services.clock.today()) : std::nullopt;
    SplitForm form(m_services, index, *weeks, current, this);
    if (form.exec() == QDialog::Accepted) {
        m_draft.splitBlock(index, form.week());
        m_blocks->focusBlocks();
    }
}

void PlanPage::showStartingPoints()
{
    const Block* block = m_draft.block();
    const QString condition = m_course ? QString::fromStdString(m_course->problem) : QString();
    StartingPointsDialog dialog(m_services,
                                {block != nullptr ? std::optional(*block) : std::nullopt,
                                 m_draft.stimulator(), m_draft.currentBlock(), condition},
                                this);
    if (dialog.exec() != QDialog::Accepted || !dialog.applied()) {
        return;
    }
    m_draft.endStep();
    m_draft.applyStartingPoint(dialog.applied()->block);
    emit said(dialog.saidAfterwards());
    m_form->focusFirst();
}

void PlanPage::showPlansIssued()
{
    if (m_plans.empty()) {
        emit said(tr("No plan was issued yet. The draft is in force on no day."));
        return;
    }
    PlansIssuedDialog dialog(m_plans, m_draft.draft(), m_draft.stimulator(), m_services.text, this);
    dialog.exec();
}

void PlanPage::holdClinicSession()
{
    const Block* block = m_draft.block();
    const auto unit = m_draft.stimulator();
    if (!m_course || block == nullptr || block->sites.empty() || !unit) {
        emit said(tr("Choose the stimulator and add a block with a site first: the session in the "
                     "clinic tries what is planned."));
        return;
    }
    const auto facts = m_services.store.read([&](db::Reading& reading) {
        return db::gateFacts(reading, *m_course->id, {*block}, m_services.clock.today());
    });
    if (!facts) {
        return reportFailure(facts.error());
    }
    QElapsedTimer steady;
    steady.start();
    ClinicSessionForm form(
        m_services,
        {*m_course, *block, unit->rampHabit, unit->cycleStart, screeningGate(*facts), facts->sites},
        m_cueSound, [&steady] { return Milliseconds(steady.elapsed()); }, this);
    if (form.exec() != QDialog::Accepted) {
        return;
    }
    const auto guidance = form.guidance();
    m_draft.setLastTolerated(guidance);
    emit said(guidance.empty() ? tr("The session in the clinic is saved.")
                               : tr("The session in the clinic is saved, its amplitudes stand in "
                                    "the draft. Issue the plan to print them."));
}

void PlanPage::issue()
{
    const auto unit = m_draft.stimulator();
    if (!m_course || !unit) {
        emit said(tr("Choose the patient’s stimulator first: a plan is issued for one unit."));
        return;
    }
    if (const QString problem = m_form->problem(); !problem.isEmpty()) {
        emit said(problem);
        return;
    }
    Draft draft = m_draft.draftToSave();
    draft.course = m_course->id;
    IssueForm form(m_services, *m_course, draft, *unit, m_plans.size(), this);
    if (form.exec() == QDialog::Accepted) {
        setCourseAfterIssue();
    }
}

void PlanPage::setCourseAfterIssue()
{
    // The draft became the plan: what is on the screen is no longer unsaved work.
    m_draft.markSaved();
    m_keepSoon.stop();
    const Course course = *m_course;
    m_course.reset();
    setCourse(course);
    emit said(tr("Plan %1 issued. The handout can be printed.")
                  .arg(m_plans.empty() ? 0 : m_plans.back().number));
    emit planIssued();
}

} // namespace quadrille::app
