// SPDX-License-Identifier: GPL-3.0-or-later
// Two plans value by value, to be read side by side.
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// One value of both plans.
struct PlanRow {
    QString section; ///< "Block 2" or "Block 2, vastus lateralis, right"
    QString label;   ///< "On time"
    QString left;    ///< "—" where the plan has no such value
    QString right;
    bool differs() const { return left != right; }
    friend bool operator==(const PlanRow&, const PlanRow&) = default;
};

/// Every value that the patient follows: unit, then block by block, in each site by site. A site is
/// the same in both where muscle and side are.
std::vector<PlanRow> planRows(const Plan& left, const Plan& right, const QuantityText& text);

} // namespace quadrille::app
