// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/measurements_model.h"

#include "app/look/row_table.h"
#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

bool hasSide(const MeasurementSeries& series, Side side)
{
    return std::ranges::any_of(series.values,
                               [side](const Measurement& one) { return one.side == side; });
}

} // namespace

MeasurementsModel::MeasurementsModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void MeasurementsModel::setMeasurements(const std::vector<Measurement>& all,
                                        std::optional<TreatedSide> treated)
{
    beginResetModel();
    m_all = all;
    m_treated = treated;
    m_series = seriesOf(all);
    // What is withdrawn altogether still has to be found, to be restored.
    for (const Measurement& one : all) {
        const bool known = std::ranges::any_of(
            m_series, [&](const MeasurementSeries& series) { return isOfSeries(one, series); });
        if (!known) {
            m_series.push_back({one.kind, one.subject, one.method, one.unit, {}});
        }
    }
    m_rows.clear();
    const bool leftFirst = treated == TreatedSide::left;
    const std::vector<Side> order = leftFirst ? std::vector{Side::left, Side::right, Side::middle}
                                              : std::vector{Side::right, Side::left, Side::middle};
    for (std::size_t i = 0; i < m_series.size(); ++i) {
        bool first = true;
        for (const Side side : order) {
            if (hasSide(m_series[i], side)) {
                m_rows.push_back({i, side, first});
                first = false;
            }
        }
        if (first) {
            m_rows.push_back({i, Side::middle, true});
        }
    }
    endResetModel();
}

const MeasurementSeries& MeasurementsModel::seriesAt(int row) const
{
    return m_series[m_rows[static_cast<std::size_t>(row)].series];
}

Side MeasurementsModel::sideAt(int row) const
{
    return m_rows[static_cast<std::size_t>(row)].side;
}

int MeasurementsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int MeasurementsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

/// The method stands in the sheet below; here only where it tells two series apart.
QString MeasurementsModel::nameOf(const MeasurementSeries& series) const
{
    const auto alike = std::ranges::count_if(m_series, [&](const MeasurementSeries& one) {
        return one.kind == series.kind && one.subject == series.subject;
    });
    return alike > 1 ? seriesName(series) : measurementName(series.kind, series.subject);
}

QString MeasurementsModel::valueText(const std::optional<Measurement>& value) const
{
    if (!value) {
        return QStringLiteral("—");
    }
    return measuredText(value->kind, value->thousandths, value->unit, m_text);
}

QString MeasurementsModel::indexText(const Row& row) const
{
    const MeasurementSeries& series = m_series[row.series];
    if (series.kind == stimulatedTorque) {
        const SideSummary summary = summaryOf(series, row.side);
        const auto share = summary.latest ? shareOfMaximum(*summary.latest, m_all) : std::nullopt;
        return share ? tr("%1 MVIC", "60 % MVIC").arg(m_text.percent(share->percent / 100.0, 0))
                     : tr("no MVIC");
    }
    const bool treated = (m_treated == TreatedSide::left && row.side == Side::left) ||
                         (m_treated == TreatedSide::right && row.side == Side::right);
    const auto all = treated ? symmetryOf(series, m_treated) : std::vector<SymmetryOn>();
    if (all.empty()) {
        return {};
    }
    const QString latest = m_text.percent(all.back().percent / 100.0, 0);
    return all.size() == 1 ? latest
                           : tr("%1, was %2", "72 %, was 45 %")
                                 .arg(latest, m_text.percent(all.front().percent / 100.0, 0));
}

QString MeasurementsModel::textOf(const Row& row, int column) const
{
    const MeasurementSeries& series = m_series[row.series];
    const SideSummary summary = summaryOf(series, row.side);
    switch (column) {
    case whatColumn:
        return nameOf(series);
    case sideColumn:
        return sideName(row.side);
    case baselineColumn:
        return series.values.empty() ? tr("withdrawn") : valueText(summary.baseline);
    case latestColumn:
        return summary.change ? valueText(summary.latest) : QString();
    case changeColumn:
        return summary.change ? changeOfValueText(series.kind, *summary.change, series.unit, m_text)
                              : QString();
    case judgedColumn: {
        const MeasurementKind* kind = measurementKind(series.kind);
        return summary.change && kind != nullptr ? judgementText(*kind, *summary.change, m_text)
                                                 : QString();
    }
    default:
        return indexText(row);
    }
}

/// What the column leaves out: the method, the day.
QString MeasurementsModel::tipOf(const Row& row, int column) const
{
    const MeasurementSeries& series = m_series[row.series];
    const SideSummary summary = summaryOf(series, row.side);
    const auto& value = column == baselineColumn ? summary.baseline : summary.latest;
    const bool hasDay = column == baselineColumn || (column == latestColumn && summary.change);
    if (hasDay && value) {
        return tr("%1 on %2", "value, day").arg(valueText(value), m_text.date(value->measuredOn));
    }
    return column == whatColumn ? seriesName(series) : textOf(row, column);
}

QVariant MeasurementsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    const QString text = textOf(row, index.column());
    switch (role) {
    case Qt::DisplayRole:
        return index.column() == whatColumn && !row.first ? QString() : text;
    case Qt::ToolTipRole:
        return tipOf(row, index.column());
    case Qt::AccessibleTextRole:
        return spokenCell(index, text);
    default:
        return {};
    }
}

QVariant MeasurementsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case whatColumn:
        return tr("Measurement");
    case sideColumn:
        return tr("Side");
    case baselineColumn:
        return tr("Baseline");
    case latestColumn:
        return tr("Last");
    case changeColumn:
        return tr("Change");
    case judgedColumn:
        return tr("Against known change");
    default:
        return tr("Symmetry or % MVIC");
    }
}

} // namespace quadrille::app
