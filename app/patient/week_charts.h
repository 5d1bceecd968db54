// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_reader.h"
#include "app/window/services.h"

#include "core/week_doses.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;

namespace quadrille::app
{

class ChartLink;
class ChartView;

/// What the weeks of a course ask for and what was done, under the grid and on its columns:
/// contractions, on time, fatigue ratio, amplitude. One crosshair for all; the week it stands on is
/// read out below.
class WeekCharts : public QWidget
{
    Q_OBJECT

public:
    WeekCharts(const Services& services, QWidget* parent);

    struct Content {
        std::vector<WeekDose> weeks = {};
        std::vector<int> firstWeeks = {}; ///< of the blocks, from 1
        std::optional<int> now = std::nullopt;
    };
    void setContent(const Content& content);
    /// The ratios of one muscle.
    void setFatigue(const MuscleByWeek& fatigue);
    /// The weeks that the grid shows and the room beside its lattice, px.
    struct Columns {
        int firstShown = 1;
        int lastShown = 1;
        int left = 0;
        int right = 0;
        friend bool operator==(const Columns&, const Columns&) = default;
    };
    void setColumns(const Columns& columns);

signals:
    void said(const QString& sentence);

protected:
    void changeEvent(QEvent* event) override;

private:
    struct Chart {
        QLabel* title = nullptr;
        ChartView* view = nullptr;
        int height = 0; ///< px at 100 % text
    };
    Chart addChart(const Services& services, const QString& name, const char* objectName,
                   int height);
    void setHeights();
    void draw();
    void drawFatigue();
    void drawTotal();
    void readOut();

    const QuantityText& m_text;
    Chart m_contractions;
    Chart m_onTime;
    Chart m_fatigue;
    Chart m_amplitude;
    QLabel* m_noFatigue;
    QLabel* m_readout;
    QLabel* m_total;
    ChartLink* m_link;
    Content m_content;
    Columns m_columns;
    MuscleByWeek m_ratios;
};

} // namespace quadrille::app
