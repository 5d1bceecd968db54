// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/course_grid_widget.h"
#include "app/grid/edge_pull.h"
#include "app/grid/grid_geometry.h"
#include "app/look/tokens.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

/// A course from Monday 9 February 2026, all days to come, two blocks, today in week `current`.
CourseGrid gridOf(int weeks, int current)
{
    CourseGrid grid;
    grid.startDate = *dateFromIso("2026-02-09");
    DayMark toCome;
    toCome.state = DayState::toCome;
    toCome.sessionsPrescribed = 1;
    WeekMarks week;
    week.fill(toCome);
    grid.weeks.assign(static_cast<std::size_t>(weeks), week);
    grid.weekdayNames.fill(QStringLiteral("Mon"));
    grid.blocks = {{{1}, 2, 0, QStringLiteral("Block 1"), QStringLiteral("1")},
                   {{3}, weeks - 2, 1, QStringLiteral("Block 2"), QStringLiteral("2")}};
    grid.currentWeek = CourseWeek{current};
    grid.todayRow = 1;
    return grid;
}

} // namespace

TEST(OverviewGeometry, CellsAndMarksFallOnWholePixels)
{
    const OverviewGeometry geometry(overviewSize(24, 1.0), 12, 30, 1.0);
    EXPECT_EQ(geometry.gridSize(), (GridSize{24, 18}));
    EXPECT_EQ(geometry.mark({0, 0}).topLeft() - geometry.lattice().topLeft(), QPoint(3, 3));
    EXPECT_EQ(geometry.mark({0, 0}).size(), QSize(18, 18));
    EXPECT_EQ(geometry.cell({3, 2}).topLeft() - geometry.lattice().topLeft(), QPoint(72, 48));
    EXPECT_EQ(geometry.lattice().size(), QSize(12 * 24 + 1, 7 * 24 + 1));
}

TEST(OverviewGeometry, TheMarginLineStandsThreePixelsBeforeTheFirstColumn)
{
    const OverviewGeometry geometry(overviewSize(24, 1.0), 4, 30, 1.0);
    EXPECT_EQ(geometry.lattice().left() - geometry.marginLine().x1(), 3);
    EXPECT_GT(geometry.marginLine().x1(), geometry.weekdayName(0).right());
}

TEST(OverviewGeometry, BlockLimitsRiseTwentyPixelsIntoTheHead)
{
    const OverviewGeometry geometry(overviewSize(24, 1.0), 4, 30, 1.0);
    EXPECT_EQ(geometry.lattice().top() - geometry.blockLimit(2).y1(), 20);
    EXPECT_EQ(geometry.blockLimit(2).x1(), geometry.cell({2, 0}).left());
    EXPECT_EQ(geometry.blockHead(0, 2).height(), 17);
}

TEST(OverviewGeometry, APointFindsItsSquareAndNoneOutside)
{
    const OverviewGeometry geometry(overviewSize(30, 1.0), 4, 30, 1.0);
    EXPECT_EQ(geometry.placeAt(geometry.mark({2, 5}).center()), (GridPlace{2, 5}));
    EXPECT_FALSE(geometry.placeAt({0, 0}));
    EXPECT_FALSE(geometry.placeAt(geometry.lattice().bottomRight() + QPoint(1, 1)));
    EXPECT_FALSE(geometry.placeAt(geometry.lattice().topLeft() - QPoint(1, 0)));
}

TEST(OverviewGeometry, LargerTextMakesLargerSquares)
{
    EXPECT_EQ(overviewSize(24, 2.0), (GridSize{48, 36}));
    EXPECT_EQ(miniatureSize(1.0), (GridSize{8, 7}));
    EXPECT_EQ(miniatureSize(2.0).pitch, 16);
    EXPECT_EQ(miniatureExtent(miniatureSize(1.0)), QSize(31, 55));
}

// The edge after week 6 of a block of four weeks, caught at 500 px, 24 px a week.
TEST(EdgePull, SnapsToTheNearestWeek)
{
    const EdgePull pull({1, {6}, 4, 1}, 500, 24);
    EXPECT_EQ(pull.weeksAt(500), 4);
    EXPECT_EQ(pull.weeksAt(511), 4);
    EXPECT_EQ(pull.weeksAt(513), 5);
    EXPECT_EQ(pull.weeksAt(487), 3);
    EXPECT_EQ(pull.weeksAt(500 + 24 * 10), 14);
}

TEST(EdgePull, LeavesWhatWasLivedAndAYearAtMost)
{
    const EdgePull pull({1, {6}, 4, 3}, 500, 24);
    EXPECT_EQ(pull.weeksAt(0), 3);
    EXPECT_EQ(pull.weeksAt(5000), 52);
}

TEST(EdgePull, CatchesAnEdgeInTheHeadsOnly)
{
    const OverviewGeometry geometry(overviewSize(24, 1.0), 8, 30, 1.0);
    const std::vector<BlockEdge> edges{{0, {2}, 2, 1}, {1, {6}, 4, 1}};
    const int x = geometry.blockLimit(6).x1();
    EXPECT_EQ(edgeAt(edges, geometry, {1}, {x, 8}), edges[1]);
    EXPECT_EQ(edgeAt(edges, geometry, {1}, {x + 5, 30}), edges[1]);
    EXPECT_EQ(edgeAt(edges, geometry, {1}, {x + 12, 8}), std::nullopt);
    EXPECT_EQ(edgeAt(edges, geometry, {1}, {x, geometry.lattice().top() + 3}), std::nullopt)
        << "squares stay squares";
    EXPECT_EQ(edgeAt(edges, geometry, {5}, {geometry.blockLimit(2).x1(), 8}), edges[1])
        << "in a window that begins with week 5";
    EXPECT_EQ(edgeAt(edges, geometry, {7}, {geometry.lattice().left(), 8}), std::nullopt);
}

TEST(CourseGridWidget, ArrowsMoveByDayAndWeekAndStopAtTheEdges)
{
    CourseGridWidget widget(english);
    widget.setGrid(gridOf(4, 2));
    EXPECT_EQ(isoDate(widget.focusedDay()), "2026-02-17") << "today has the focus first";
    QTest::keyClick(&widget, Qt::Key_Down);
    EXPECT_EQ(isoDate(widget.focusedDay()), "2026-02-18");
    QTest::keyClick(&widget, Qt::Key_Right);
    EXPECT_EQ(isoDate(widget.focusedDay()), "2026-02-25");
    QTest::keyClick(&widget, Qt::Key_End);
    QTest::keyClick(&widget, Qt::Key_Right);
    EXPECT_EQ(isoDate(widget.focusedDay()), "2026-03-04");
    QTest::keyClick(&widget, Qt::Key_Home);
    EXPECT_EQ(isoDate(widget.focusedDay()), "2026-02-11");
}

TEST(CourseGridWidget, AVoiceHearsTheSquareThatHasTheFocus)
{
    CourseGridWidget widget(english);
    widget.setGrid(gridOf(4, 2));
    QTest::keyClick(&widget, Qt::Key_Left);
    EXPECT_EQ(widget.accessibleName(),
              QStringLiteral("Course grid. Tuesday 10 February 2026, week 1: one session to come"));
}

TEST(CourseGridWidget, SixteenWeeksStandSideBySideAndMoreBecomeAWindow)
{
    CourseGridWidget widget(english);
    widget.setGrid(gridOf(16, 1));
    const int widthOfSixteen = widget.weeksShown();
    EXPECT_EQ(widthOfSixteen, 16);
    CourseGridWidget longer(english);
    longer.setGrid(gridOf(40, 20));
    EXPECT_EQ(longer.weeksShown(), 16);
    EXPECT_EQ(longer.firstShownWeek(), CourseWeek{5}) << "the current week is in view";
    QTest::keyClick(&longer, Qt::Key_End);
    EXPECT_EQ(longer.firstShownWeek(), CourseWeek{25});
}

TEST(CourseGridWidget, TheWindowFollowsTheChosenBlock)
{
    CourseGridWidget widget(english);
    widget.setGrid(gridOf(40, 30));
    QSignalSpy moved(&widget, &CourseGridWidget::windowMoved);
    widget.chooseBlock(0);
    EXPECT_EQ(widget.firstShownWeek(), CourseWeek{1});
    EXPECT_EQ(moved.size(), 1);
}

TEST(CourseGridWidget, AClickOnTheHeadOfABlockChoosesIt)
{
    CourseGridWidget widget(english);
    widget.setGrid(gridOf(6, 1));
    widget.resize(widget.sizeHint());
    QSignalSpy chosen(&widget, &CourseGridWidget::blockChosen);
    const int thirdWeek = widget.latticeLeft() + 3 * widget.pitch() + 5;
    QTest::mouseClick(&widget, Qt::LeftButton, {}, {thirdWeek, 8});
    ASSERT_EQ(chosen.size(), 1);
    EXPECT_EQ(chosen.at(0).at(0).value<std::size_t>(), 1U);
}

TEST(CourseGridWidget, TheCurrentBlockIsFilledAndTodayFramed)
{
    CourseGridWidget widget(english);
    CourseGrid grid = gridOf(6, 4);
    grid.chosenBlock = 1;
    widget.setGrid(grid);
    widget.resize(widget.sizeHint());
    const QImage image = widget.grab().toImage();
    const Tokens tokens = lightTokens();
    const int left = widget.latticeLeft();
    const int pitch = widget.pitch();
    EXPECT_EQ(image.pixelColor(left + 2 * pitch + 3, 2), tokens.mark);
    EXPECT_NE(image.pixelColor(left + 4, 2), tokens.mark);
    // Today's frame, 2 px before the mark, which stands 3 px inside its cell; below the head of 36.
    EXPECT_EQ(image.pixelColor(left + 3 * pitch + 1, 36 + pitch + pitch / 2), tokens.ink);
    EXPECT_EQ(image.pixelColor(left - 3, 36 + 10), tokens.margin);
}
