// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"

#include <QList>

namespace quadrille::app
{

/// The marks and gaps of a dashed line, in widths of the line.
QList<qreal> dashPattern(ChartLine::Dash dash);

} // namespace quadrille::app
