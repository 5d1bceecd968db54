// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/values_model.h"

#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include <QFont>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

ValuesModel::ValuesModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void ValuesModel::setValues(std::vector<Measurement> values)
{
    beginResetModel();
    m_values = std::move(values);
    std::ranges::stable_sort(m_values, [](const Measurement& a, const Measurement& b) {
        return a.measuredOn > b.measuredOn;
    });
    endResetModel();
}

const Measurement& ValuesModel::valueAt(int row) const
{
    return m_values[static_cast<std::size_t>(row)];
}

int ValuesModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_values.size());
}

int ValuesModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString ValuesModel::textOf(const Measurement& measurement, int column) const
{
    switch (column) {
    case dayColumn:
        return m_text.date(measurement.measuredOn);
    case sideColumn:
        return sideName(measurement.side);
    case valueColumn: {
        const QString shown =
            measuredText(measurement.kind, measurement.thousandths, measurement.unit, m_text);
        return measurement.withdrawn ? tr("%1, withdrawn").arg(shown) : shown;
    }
    default:
        return trialsText(measurement, m_text);
    }
}

QVariant ValuesModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const Measurement& measurement = m_values[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return textOf(measurement, index.column());
    case Qt::FontRole: {
        QFont font;
        font.setStrikeOut(measurement.withdrawn);
        return measurement.withdrawn ? QVariant(font) : QVariant();
    }
    default:
        return {};
    }
}

QVariant ValuesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case dayColumn:
        return tr("Day");
    case sideColumn:
        return tr("Side");
    case valueColumn:
        return tr("Value");
    default:
        return tr("Trials");
    }
}

} // namespace quadrille::app
