// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of these pages look and behave alike: whole rows, one at a time, Tab leaves.
#pragma once

#include <span>

class QAbstractItemModel;
class QTableView;

namespace quadrille::app
{

void setUpTable(QTableView& table, QAbstractItemModel& model);
/// Gives each column its share of the width, in hundredths.
void shareWidth(QTableView& table, std::span<const int> hundredths);

} // namespace quadrille::app
