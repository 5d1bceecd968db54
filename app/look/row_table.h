// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of records look and behave alike.
#pragma once

#include <QString>

class QModelIndex;
class QTableView;

namespace quadrille::app
{

/// Whole rows, one at a time, nothing edited in place; Tab leaves the table, column heads stand at
/// the left and are not dragged.
void dressAsRows(QTableView& table);

/// A cell for a voice: the head of its column, then `text`; empty where the cell is.
QString spokenCell(const QModelIndex& cell, const QString& text);

} // namespace quadrille::app
