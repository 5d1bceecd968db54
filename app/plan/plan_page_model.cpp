// SPDX-License-Identifier: GPL-3.0-or-later
// What the force–fatigue model is asked about the draft, and where its answer is shown.
#include "app/plan/fatigue_figures.h"
#include "app/plan/figures_panel.h"
#include "app/plan/force_sheet.h"
#include "app/plan/model_reader.h"
#include "app/plan/plan_page.h"
#include "app/words/trade_words.h"

#include "core/draft_preview.h"

namespace quadrille::app
{

void PlanPage::askModel()
{
    const Block* block = m_draft.block();
    const auto unit = m_draft.stimulator();
    if (!m_course || block == nullptr || block->sites.empty() || !unit) {
        m_model->drop();
        m_figures->fatigue().clearFigures();
        m_forceSheet->showNothing();
        emit fatigueByWeek({});
        return;
    }
    ModelQuestion question{.block = *block, .unit = *unit, .course = *m_course, .plans = {}};
    if (const Block* before = m_draft.blockBefore()) {
        question.before = *before;
    }
    question.plans =
        plansWithDraft(m_plans, *m_course, m_draft.draft(), unit, m_services.clock.today());
    m_model->ask(std::move(question));
}

void PlanPage::showModel(const ModelAnswer& answer)
{
    m_figures->fatigue().show(answer);
    const Block* block = m_draft.block();
    m_forceSheet->show(answer, block, m_draft.currentBlock().value_or(0));
    QString muscle;
    if (block != nullptr && answer.site && *answer.site < block->sites.size()) {
        muscle = siteName(block->sites[*answer.site]);
    }
    emit fatigueByWeek({muscle, answer.weeks});
}

void PlanPage::showModelPending()
{
    m_figures->fatigue().showPending();
    m_forceSheet->showPending();
    emit fatigueByWeek({.isPending = true});
}

} // namespace quadrille::app
