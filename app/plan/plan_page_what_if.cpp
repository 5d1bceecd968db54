// SPDX-License-Identifier: GPL-3.0-or-later
// Variants of the block in work, and taking one of them over.
#include "app/plan/plan_page.h"
#include "app/plan/settings_form.h"
#include "app/plan/what_if_dialog.h"

namespace quadrille::app
{

void PlanPage::askWhatIf()
{
    const Block* block = m_draft.block();
    const auto unit = m_draft.stimulator();
    if (!m_course) {
        return;
    }
    if (!unit) {
        emit said(tr("Choose the patient’s stimulator first: variants keep to what it can do."));
        return;
    }
    if (block == nullptr) {
        emit said(tr("Add a block first: variants stand beside the block in work."));
        return;
    }
    if (block->sites.empty()) {
        emit said(tr("Add a site first: its settings are what variants change."));
        return;
    }
    if (const QString problem = m_form->problem(); !problem.isEmpty()) {
        emit said(problem);
        return;
    }
    WhatIfDialog dialog(m_services, *block, m_draft.currentBlock().value_or(0), *unit, this);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    m_draft.adopt(dialog.variant(), dialog.variantName(), dialog.reason());
    emit said(tr("Variant %1 is adopted; its reason is proposed when the plan is issued. Undo "
                 "takes both back.")
                  .arg(dialog.variantName()));
    m_form->focusFirst();
}

} // namespace quadrille::app
