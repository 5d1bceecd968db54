// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/time_column.h"

#include "app/charts/chart_view.h"
#include "app/charts/week_chart.h"
#include "app/grid/course_grid_widget.h"
#include "app/grid/day_marks.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include "core/plan_figures.h"

#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int chartHeight = 150;
constexpr int leastWidth = 400;

/// The draft as the plan that it would become, so that the grid shows its weeks.
Plan planOf(const Draft& draft, const std::vector<Plan>& plans, const Course& course, Date today)
{
    Plan plan;
    plan.course = course.id;
    plan.number = plans.empty() ? 1 : plans.back().number + 1;
    plan.fromDate = plans.empty() ? course.startDate : std::max(today, course.startDate);
    plan.blocks = draft.blocks;
    return plan;
}

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

TimeColumn::TimeColumn(const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_column(nullptr)
    , m_grid(new CourseGridWidget(text, this))
    , m_empty(new QLabel(this))
    , m_contractionsTitle(new QLabel(tr("<b>Contractions per week</b>, planned"), this))
    , m_contractions(new ChartView(this))
    , m_onTimeTitle(new QLabel(tr("<b>On time per week</b>, min, planned"), this))
    , m_onTime(new ChartView(this))
    , m_total(new QLabel(this))
{
    setRole(*this, Role::sideColumn);
    m_grid->setObjectName(QStringLiteral("courseGrid"));
    m_contractions->setAccessibleName(tr("Contractions per week"));
    m_onTime->setAccessibleName(tr("On time per week"));
    m_contractions->setFixedHeight(chartHeight);
    m_onTime->setFixedHeight(chartHeight);
    m_empty->setWordWrap(true);
    setRole(*m_empty, Role::secondLineText);
    m_total->setAlignment(Qt::AlignRight);
    auto* column = new QWidget(this);
    auto* layout = new QVBoxLayout(column);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet,
                               space::insideSheet);
    layout->setSpacing(space::hair);
    layout->addWidget(m_grid, 0, Qt::AlignLeft);
    layout->addWidget(m_empty);
    layout->addSpacing(space::medium);
    layout->addWidget(m_contractionsTitle);
    layout->addWidget(m_contractions);
    layout->addSpacing(space::medium);
    layout->addWidget(m_onTimeTitle);
    layout->addWidget(m_onTime);
    layout->addSpacing(space::medium);
    layout->addWidget(m_total);
    layout->addStretch();
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
    connect(m_grid, &CourseGridWidget::windowMoved, this, &TimeColumn::drawCharts);
    connect(m_grid, &CourseGridWidget::blockChosen, this, &TimeColumn::blockChosen);
    connect(m_grid, &CourseGridWidget::edgePulled, this, &TimeColumn::edgePulled);
    connect(m_grid, &CourseGridWidget::edgeReleased, this, &TimeColumn::edgeReleased);
    connect(m_grid, &CourseGridWidget::lengthenRequested, this, &TimeColumn::lengthenRequested);
    setFixedWidth(leastWidth);
}

void TimeColumn::show(const std::optional<Content>& content)
{
    m_blocks.clear();
    if (content) {
        std::vector<Plan> plans = content->plans;
        m_stimulator = content->stimulator;
        const bool draftDiffers = content->draft && !content->draft->blocks.empty() &&
                                  (plans.empty() || plans.back().blocks != content->draft->blocks ||
                                   plans.back().stimulator.id != content->draft->stimulator);
        if (draftDiffers) {
            plans.push_back(planOf(*content->draft, plans, content->course, content->today));
            plans.back().stimulator = m_stimulator.value_or(Stimulator{});
        } else if (!plans.empty()) {
            m_stimulator = plans.back().stimulator;
        }
        if (!plans.empty()) {
            m_blocks = plans.back().blocks;
        }
        GridSource source{content->diary, content->rules, content->today};
        source.records.course = content->course;
        source.records.plans = plans;
        const CourseGrid grid = courseGridOf(source, m_text);
        m_grid->setGrid(grid);
        m_grid->setEdges(edgesOf(*content, grid));
        m_grid->chooseBlock(content->chosenBlock);
        setFixedWidth(
            std::max(leastWidth, m_grid->sizeHint().width() + 2 * space::insideSheet + 2));
    }
    m_grid->setVisible(content.has_value());
    m_empty->setText(content ? tr("Nothing planned yet. The first block fills these weeks.")
                             : tr("No course yet. Begin one with the button Course."));
    m_empty->setVisible(m_blocks.empty());
    drawCharts();
}

void TimeColumn::addSheets(QWidget* sheets)
{
    sheets->hide();
    m_column->insertWidget(m_column->indexOf(m_contractionsTitle), sheets);
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
    drawCharts();
}

void TimeColumn::drawCharts()
{
    const bool drawn = !m_blocks.empty() && m_stimulator && m_sheets == nullptr;
    for (QWidget* widget : std::initializer_list<QWidget*>{m_contractionsTitle, m_contractions,
                                                           m_onTimeTitle, m_onTime, m_total}) {
        widget->setVisible(drawn);
    }
    if (!drawn) {
        return;
    }
    WeeksToShow contractions{.name = tr("Contractions per week")};
    WeeksToShow onTime{.name = tr("On time per week in minutes")};
    std::int64_t allContractions = 0;
    Milliseconds allOnTime{};
    bool complete = true;
    for (std::size_t i = 0; i < m_blocks.size(); ++i) {
        const BlockFigures figures = blockFigures(m_blocks[i], *m_stimulator);
        const bool known = figures.weekContractions.has_value() && figures.weekOnTime.has_value();
        complete = complete && known;
        contractions.firstWeeks.push_back(firstWeekOf(m_blocks, i).number);
        for (int week = 0; week < m_blocks[i].weeks; ++week) {
            contractions.planned.push_back(
                known ? std::optional(static_cast<double>(*figures.weekContractions))
                      : std::nullopt);
            onTime.planned.push_back(
                known ? std::optional(static_cast<double>(figures.weekOnTime->count()) / 6e4)
                      : std::nullopt);
            if (known) {
                allContractions += *figures.weekContractions;
                allOnTime += *figures.weekOnTime;
            }
        }
    }
    onTime.firstWeeks = contractions.firstWeeks;
    const int first = m_grid->firstShownWeek().number;
    const int last = first + m_grid->weeksShown() - 1;
    for (WeeksToShow* weeks : {&contractions, &onTime}) {
        weeks->firstShown = first;
        weeks->lastShown = std::max(first, last);
    }
    const int left = m_grid->latticeLeft();
    const int right =
        width() - 2 - 2 * space::insideSheet - left - m_grid->pitch() * m_grid->weeksShown();
    for (ChartView* chart : {m_contractions, m_onTime}) {
        chart->setPlotMargins({left, space::close, std::max(0, right), space::small});
    }
    m_contractions->setSpec(weekChart(contractions, m_text));
    m_onTime->setSpec(weekChart(onTime, m_text));
    m_total->setText(complete ? tr("In all weeks <b>%1 contractions</b>, <b>%2</b> on time")
                                    .arg(m_text.count(allContractions), m_text.time(allOnTime))
                              : tr("No sum while a block has no figures."));
}

} // namespace quadrille::app
