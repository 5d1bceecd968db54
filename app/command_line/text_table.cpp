// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/text_table.h"

#include <algorithm>
#include <cstddef>

namespace quadrille::app
{

QString alignedRows(const std::vector<QStringList>& rows)
{
    std::vector<qsizetype> widths(static_cast<std::size_t>(rows.front().size()), 0);
    for (const QStringList& row : rows) {
        for (qsizetype i = 0; i < row.size(); ++i) {
            qsizetype& width = widths[static_cast<std::size_t>(i)];
            width = std::max(width, row[i].size());
        }
    }
    QString text;
    for (const QStringList& row : rows) {
        QString line;
        for (qsizetype i = 0; i < row.size(); ++i) {
            line += row[i].leftJustified(widths[static_cast<std::size_t>(i)] + 2);
        }
        text += line.trimmed() + QLatin1Char('\n');
    }
    return text;
}

} // namespace quadrille::app
