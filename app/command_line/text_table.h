// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include <vector>

namespace quadrille::app
{

/// Rows of cells of equal count, at least one row, as columns of equal width, a line each; the last
/// column is not filled up.
QString alignedRows(const std::vector<QStringList>& rows);

} // namespace quadrille::app
