// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/measurement_change.h"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace quadrille::app
{

/// The kinds of a course, a row for each side: baseline, latest, change and what it is held
/// against, symmetry index.
class MeasurementsModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    MeasurementsModel(const QuantityText& text, QObject* parent);

    enum Column {
        whatColumn,
        sideColumn,
        baselineColumn,
        latestColumn,
        changeColumn,
        judgedColumn,
        symmetryColumn,
        columnsInAll
    };

    void setMeasurements(const std::vector<Measurement>& all, std::optional<TreatedSide> treated);
    const std::vector<MeasurementSeries>& series() const { return m_series; }
    /// The series of a row.
    const MeasurementSeries& seriesAt(int row) const;
    Side sideAt(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        std::size_t series;
        Side side;
        bool first; ///< of its series: it bears the name
    };
    QString textOf(const Row& row, int column) const;
    QString nameOf(const MeasurementSeries& series) const;
    QString tipOf(const Row& row, int column) const;
    QString valueText(const std::optional<Measurement>& value) const;
    QString indexText(const Row& row) const;

    const QuantityText& m_text;
    std::vector<Measurement> m_all;
    std::vector<MeasurementSeries> m_series;
    std::optional<TreatedSide> m_treated;
    std::vector<Row> m_rows;
};

} // namespace quadrille::app
