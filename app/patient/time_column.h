// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_reader.h"
#include "app/window/services.h"

#include "core/course.h"
#include "core/lived_days.h"
#include "core/plan.h"

#include <QFrame>

#include <optional>
#include <vector>

class QLabel;
class QVBoxLayout;

namespace quadrille::app
{

class CourseGridWidget;
class WeekCharts;
class WeekTally;

/// The grid of the course with its diary and, on the same columns, what each week asks for. A draft
/// is shown as it would be, if it were issued today.
class TimeColumn : public QFrame
{
    Q_OBJECT

public:
    TimeColumn(const Services& services, QWidget* parent);

    struct Content {
        Course course;
        std::vector<Plan> plans;  ///< issued ones
        CourseRecords diary = {}; ///< what came back; its course and plans are not looked at
        AdherenceRules rules = {};
        std::optional<Draft> draft =
            std::nullopt; ///< shown in place of the future when it differs from the last plan
        std::optional<Stimulator> stimulator = std::nullopt; ///< of the draft
        std::optional<std::size_t> chosenBlock = std::nullopt;
        Date today;
    };
    void show(const std::optional<Content>& content);
    /// Only the grid and the figures under its weeks: while a diary is copied.
    void showDiary(const CourseRecords& diary);
    /// Figures of what was done stand under the weeks.
    void showTally(bool shown);
    /// See WeekCharts.
    void showFatigue(const MuscleByWeek& fatigue);
    /// Puts sheets of a page below the grid; they are hidden until showSheets().
    void addSheets(QWidget* sheets);
    /// The sheets stand in the charts' place while `sheets` is shown; nullptr: the charts.
    void showSheets(QWidget* sheets);

signals:
    void blockChosen(std::size_t index);
    /// The edge of a block of the draft is pulled, and let go.
    void edgePulled(std::size_t index, int weeks);
    void edgeReleased();
    void lengthenRequested(int byWeeks);
    void said(const QString& sentence);

private:
    void placeCharts();
    CourseRecords recordsShown() const;
    void fillGrid();

    const QuantityText& m_text;
    QVBoxLayout* m_column;
    QWidget* m_sheets = nullptr; ///< shown in place of the charts
    CourseGridWidget* m_grid;
    WeekTally* m_tally;
    QLabel* m_empty;
    WeekCharts* m_charts;
    std::vector<Block> m_blocks;
    bool m_hasUnit = false;           ///< of what is shown
    std::optional<Content> m_content; ///< shown now
    std::vector<Plan> m_plans;        ///< of these, with the draft
};

} // namespace quadrille::app
