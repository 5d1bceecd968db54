// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include <vector>

namespace quadrille::app
{

/// Peak force of each contraction of a session as the model has it, in percent of the first, beside
/// that of the block before. Never newtons.
struct ForcesToShow {
    QString name = {};               ///< "Predicted force of vastus lateralis, right"
    QString note = {};               ///< the mark of the model
    std::vector<double> shares = {}; ///< of the first, 1.0 is the first
    std::vector<double> before = {}; ///< the block before; dashed
    QString nameNow = {};            ///< "Block 3"
    QString nameBefore = {};         ///< "Block 2"
};
ChartSpec forceChart(const ForcesToShow& forces, const QuantityText& text);

} // namespace quadrille::app
