// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"

#include <QDialog>

namespace quadrille::app
{

/// A chart as a table, for whoever reads numbers rather than bars.
class ChartTableDialog : public QDialog
{
    Q_OBJECT

public:
    ChartTableDialog(const ChartSpec& spec, QWidget* parent);
};

} // namespace quadrille::app
