// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include <vector>

namespace quadrille::app
{

/// Peak force of each contraction of a session as the model has it, in percent of the first: a
/// block and its variants as lines over one another. Never newtons.
struct VariantForces {
    struct Curve {
        QString name;               ///< "A"
        std::vector<double> shares; ///< of the first, 1.0 is the first; not empty
        std::size_t stroke = 0;     ///< 0: the block; 1 … 3: variants, each broken otherwise
    };
    QString name = {};              ///< "Predicted peak force of vastus lateralis, right"
    QString note = {};              ///< the mark of the model
    std::vector<Curve> curves = {}; ///< the block first
};
ChartSpec variantChart(const VariantForces& forces, const QuantityText& text);

} // namespace quadrille::app
