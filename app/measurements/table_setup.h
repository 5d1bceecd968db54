// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of these pages look and behave alike: whole rows, one at a time, Tab leaves, and each
// column keeps its share of the width.
#pragma once

#include <span>

class QAbstractItemModel;
class QTableView;

namespace quadrille::app
{

/// `hundredths`: the share of each column; outlives the table.
void setUpTable(QTableView& table, QAbstractItemModel& model, std::span<const int> hundredths);

} // namespace quadrille::app
