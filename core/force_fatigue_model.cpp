// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/force_fatigue_model.h"

#include <cmath>

namespace quadrille
{

StepTable::StepTable(double span, double activationTime)
    : length(span)
{
    for (std::size_t i = 0; i < dormand_prince::stages; ++i) {
        const double u = span * dormand_prince::nodes[i] / activationTime;
        decay[i] = std::exp(-u);
        rise[i] = u * decay[i];
    }
}

} // namespace quadrille
