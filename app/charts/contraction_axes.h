// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include <cstddef>

namespace quadrille::app
{

/// The axes of predicted force over a session: contractions from 1, shares of the first in percent.
/// `highest`: the greatest share that is drawn, 1 for the first contraction.
void setContractionAxes(ChartSpec& spec, std::size_t contractions, double highest,
                        const QuantityText& text);

} // namespace quadrille::app
