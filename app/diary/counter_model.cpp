// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/counter_model.h"

#include "app/diary/diary_words.h"
#include "app/look/look.h"
#include "app/look/row_table.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

CounterModel::CounterModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void CounterModel::setReadings(std::vector<CounterReading> readings,
                               const std::vector<CounterComparison>& comparisons)
{
    beginResetModel();
    m_readings = std::move(readings);
    m_comparisons = comparisons;
    endResetModel();
}

const CounterReading& CounterModel::readingAt(int row) const
{
    return m_readings[static_cast<std::size_t>(row)];
}

const CounterComparison* CounterModel::comparisonOf(int row) const
{
    const auto found = std::ranges::find_if(m_comparisons, [&](const CounterComparison& one) {
        return readingAt(row).id == one.reading;
    });
    return found != m_comparisons.end() ? &*found : nullptr;
}

QString CounterModel::comparedAt(int row) const
{
    const CounterComparison* comparison = comparisonOf(row);
    return comparison != nullptr ? comparisonText(*comparison, m_text) : QString();
}

int CounterModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_readings.size());
}

int CounterModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(columns);
}

QString CounterModel::cell(int row, int column) const
{
    const CounterReading& reading = readingAt(row);
    switch (column) {
    case dayColumn:
        return reading.withdrawn ? tr("%1, withdrawn").arg(m_text.date(reading.readOn))
                                 : m_text.date(reading.readOn);
    case usesColumn:
        return reading.totalUses ? m_text.count(*reading.totalUses) : QStringLiteral("—");
    case minutesColumn:
        return reading.totalTime ? minutesNumber(*reading.totalTime, m_text) : QStringLiteral("—");
    case comparedColumn:
        return reading.withdrawn ? QString() : comparedAt(row);
    case explanationColumn: {
        const CounterComparison* comparison = comparisonOf(row);
        if (reading.explanation) {
            return reading.explanationWords.empty()
                       ? explanationName(*reading.explanation)
                       : tr("%1: %2", "explanation, words")
                             .arg(explanationName(*reading.explanation),
                                  QString::fromStdString(reading.explanationWords));
        }
        return comparison != nullptr && comparison->differs()
                   ? tr("Over 10 %: choose an explanation (Correct…)")
                   : QString();
    }
    default:
        return {};
    }
}

QVariant CounterModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        return cell(index.row(), index.column());
    case Qt::AccessibleTextRole:
        return spokenCell(index, cell(index.row(), index.column()));
    case Qt::FontRole:
        // What is to be explained stands out without a colour.
        if (const CounterComparison* comparison = comparisonOf(index.row());
            comparison != nullptr && comparison->differs() && !comparison->isExplained &&
            index.column() >= comparedColumn) {
            return fontOf(TextStyle::strong, appliedFactor());
        }
        return {};
    default:
        return {};
    }
}

QVariant CounterModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case dayColumn:
        return tr("Read on");
    case usesColumn:
        return tr("Total uses");
    case minutesColumn:
        return tr("Total minutes");
    case comparedColumn:
        return tr("Since the reading before");
    case explanationColumn:
        return tr("Explanation");
    default:
        return {};
    }
}

} // namespace quadrille::app
