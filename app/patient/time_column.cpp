// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/time_column.h"

#include "app/grid/course_grid_widget.h"
#include "app/grid/day_marks.h"
#include "app/grid/week_tally.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/patient/week_charts.h"

#include "core/adherence.h"
#include "core/draft_preview.h"
#include "core/week_doses.h"

#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 400;
constexpr int growsFirst = 1000; ///< beside what is left free below

/// The edges of the draft's blocks that stand where the grid shows them. What was lived under an
/// issued plan is not shortened any more.
std::vector<BlockEdge> edgesOf(const TimeColumn::Content& content, const CourseGrid& grid)
{
    std::vector<BlockEdge> edges;
    const std::vector<Block> blocks = content.draft ? content.draft->blocks : std::vector<Block>{};
    const auto current = courseWeekOf(content.course.startDate, content.today);
    const int lived = content.plans.empty() || !current ? 0 : current->number - 1;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const int first = firstWeekOf(blocks, i).number;
        const int last = first + blocks[i].weeks - 1;
        const bool shown = std::ranges::any_of(grid.blocks, [&](const BlockSpan& span) {
            return span.index == i && span.first.number + span.weeks - 1 == last;
        });
        if (shown && last >= lived) {
            edges.push_back({i, {last}, blocks[i].weeks, std::max(1, lived - first + 1)});
        }
    }
    return edges;
}

} // namespace

TimeColumn::TimeColumn(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_text(services.text)
    , m_column(nullptr)
    , m_grid(new CourseGridWidget(services.text, this))
    , m_tally(new WeekTally(services.text, this))
    , m_empty(new QLabel(this))
    , m_charts(new WeekCharts(services, this))
{
    setRole(*this, Role::sideColumn);
    m_grid->setObjectName(QStringLiteral("courseGrid"));
    m_empty->setWordWrap(true);
    setRole(*m_empty, Role::secondLineText);
    auto* column = new QWidget(this);
    auto* layout = new QVBoxLayout(column);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet,
                               space::insideSheet);
    layout->setSpacing(space::hair);
    layout->addWidget(m_grid, 0, Qt::AlignLeft);
    layout->addWidget(m_tally);
    layout->addWidget(m_empty);
    layout->addSpacing(space::medium);
    layout->addWidget(m_charts, growsFirst);
    layout->addStretch(1);
    m_tally->hide();
    m_column = layout;
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(column);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(1, 0, 0, 0);
    outer->addWidget(scroll);
    connect(m_grid, &CourseGridWidget::windowMoved, this, &TimeColumn::placeCharts);
    connect(m_charts, &WeekCharts::said, this, &TimeColumn::said);
    connect(m_grid, &CourseGridWidget::blockChosen, this, &TimeColumn::blockChosen);
    connect(m_grid, &CourseGridWidget::edgePulled, this, &TimeColumn::edgePulled);
    connect(m_grid, &CourseGridWidget::edgeReleased, this, &TimeColumn::edgeReleased);
    connect(m_grid, &CourseGridWidget::lengthenRequested, this, &TimeColumn::lengthenRequested);
    setFixedWidth(leastWidth);
}

void TimeColumn::show(const std::optional<Content>& content)
{
    m_content = content;
    m_blocks.clear();
    m_plans.clear();
    if (content) {
        m_plans = plansWithDraft(content->plans, content->course, content->draft.value_or(Draft()),
                                 content->stimulator, content->today);
        if (!m_plans.empty()) {
            m_blocks = m_plans.back().blocks;
        }
        // A draft without a unit has no figures: whether its ramps lie in the on time is not known.
        m_hasUnit = content->stimulator || m_plans.size() == content->plans.size();
        WeekCharts::Content weeks;
        weeks.weeks = weekDoses(recordsShown(), content->rules, content->today);
        for (std::size_t i = 0; i < m_blocks.size(); ++i) {
            weeks.firstWeeks.push_back(firstWeekOf(m_blocks, i).number);
        }
        if (const auto week = courseWeekOf(content->course.startDate, content->today)) {
            weeks.now = week->number;
        }
        m_charts->setContent(weeks);
        fillGrid();
        setFixedWidth(
            std::max(leastWidth, m_grid->sizeHint().width() + 2 * space::insideSheet + 2));
    }
    m_grid->setVisible(content.has_value());
    m_empty->setText(content ? tr("Nothing planned yet. The first block fills these weeks.")
                             : tr("No course yet. Begin one with the button Course."));
    m_empty->setVisible(m_blocks.empty());
    placeCharts();
}

CourseRecords TimeColumn::recordsShown() const
{
    CourseRecords records = m_content ? m_content->diary : CourseRecords();
    if (m_content) {
        records.course = m_content->course;
    }
    records.plans = m_plans;
    return records;
}

void TimeColumn::fillGrid()
{
    if (!m_content) {
        return;
    }
    const GridSource source{recordsShown(), m_content->rules, m_content->today};
    const CourseGrid grid = courseGridOf(source, m_text);
    m_grid->setGrid(grid);
    m_grid->setEdges(edgesOf(*m_content, grid));
    m_grid->chooseBlock(m_content->chosenBlock);
    const CourseAsLived lived = courseAsLived(source.records, source.rules, source.today);
    const auto days = std::chrono::days(static_cast<int>(grid.weeks.size()) * daysInWeek - 1);
    m_tally->setWeeks(
        weeksBetween(lived, source.rules, {lived.startDate, lived.startDate + std::max(days, {})}));
}

void TimeColumn::showDiary(const CourseRecords& diary)
{
    if (m_content) {
        m_content->diary = diary;
        fillGrid();
        placeCharts();
    }
}

void TimeColumn::showTally(bool shown)
{
    m_tally->setVisible(shown);
    placeCharts();
}

void TimeColumn::showFatigue(const MuscleByWeek& fatigue)
{
    m_charts->setFatigue(fatigue);
}

void TimeColumn::addSheets(QWidget* sheets)
{
    sheets->hide();
    m_column->insertWidget(m_column->indexOf(m_charts), sheets);
}

void TimeColumn::showSheets(QWidget* sheets)
{
    if (m_sheets != nullptr && m_sheets != sheets) {
        m_sheets->hide();
    }
    m_sheets = sheets;
    if (m_sheets != nullptr) {
        m_sheets->show();
    }
    placeCharts();
}

void TimeColumn::placeCharts()
{
    m_tally->setColumns({m_grid->latticeLeft(), m_grid->pitch(), m_grid->firstShownWeek().number,
                         m_grid->weeksShown()});
    const bool drawn = !m_blocks.empty() && m_hasUnit && m_sheets == nullptr;
    m_charts->setVisible(drawn);
    if (!drawn) {
        return;
    }
    const int first = m_grid->firstShownWeek().number;
    const int left = m_grid->latticeLeft();
    const int right =
        width() - 2 - 2 * space::insideSheet - left - m_grid->pitch() * m_grid->weeksShown();
    m_charts->setColumns(
        {first, std::max(first, first + m_grid->weeksShown() - 1), left, std::max(0, right)});
}

} // namespace quadrille::app
