// SPDX-License-Identifier: GPL-3.0-or-later
// A comparison of settings as a table to read and as JSON.
#pragma once

#include "app/words/quantity_text.h"

#include "core/settings_comparison.h"

#include <QByteArray>
#include <QString>

#include <vector>

namespace quadrille::app
{

/// The column of `quadrille figures` that has the same figure: "on_time_s".
QString columnOf(ComparedFigure figure);
/// A table with a row a figure and a column a case, differences in brackets; below it findings,
/// what the model may judge, and its limits.
QString comparisonTable(const std::vector<ComparedCase>& cases, const QuantityText& text);
/// The same as one JSON object: {"cases": [{"name", "figures", "differences", "findings",
/// "fatigue_comparison"}], "model_limits"}.
QByteArray comparisonJson(const std::vector<ComparedCase>& cases, const QuantityText& text);

} // namespace quadrille::app
