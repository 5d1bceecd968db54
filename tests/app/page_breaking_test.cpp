// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/page_breaking.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>

using namespace quadrille::app;
using testing::ElementsAre;
using testing::IsEmpty;

namespace
{

StripHeight strip(double height, BreakBelow below = BreakBelow::free)
{
    return {height, 0, below, false, 0};
}

double heightOn(const std::vector<StripHeight>& strips, const PageRange& page)
{
    double height = goesOn(strips, page.first) ? strips[page.first].continued : 0;
    for (std::size_t i = page.first; i < page.last; ++i) {
        height += strips[i].height + (i > page.first ? strips[i].spaceBefore : 0);
    }
    return height;
}

} // namespace

TEST(PageBreaking, NothingTakesNoPage)
{
    EXPECT_THAT(breakPages({}, 100), IsEmpty());
}

TEST(PageBreaking, WhatFitsExactlyStandsOnOnePage)
{
    EXPECT_THAT(breakPages({strip(40), strip(60)}, 100), ElementsAre(PageRange{0, 2}));
}

TEST(PageBreaking, WhatDoesNotFitGoesOnTheNextPage)
{
    EXPECT_THAT(breakPages({strip(40), strip(60), strip(1)}, 100),
                ElementsAre(PageRange{0, 2}, PageRange{2, 3}));
}

TEST(PageBreaking, WhiteSpaceIsLeftAwayAtTheTopOfAPage)
{
    std::vector<StripHeight> strips{strip(60), strip(100)};
    strips[0].spaceBefore = 50;
    strips[1].spaceBefore = 30;
    EXPECT_THAT(breakPages(strips, 100), ElementsAre(PageRange{0, 1}, PageRange{1, 2}));
}

TEST(PageBreaking, WhiteSpaceCountsInsideAPage)
{
    std::vector<StripHeight> strips{strip(50), strip(50)};
    strips[1].spaceBefore = 1;
    EXPECT_THAT(breakPages(strips, 100), ElementsAre(PageRange{0, 1}, PageRange{1, 2}));
}

TEST(PageBreaking, AHeadingGoesWithWhatFollows)
{
    EXPECT_THAT(breakPages({strip(80), strip(15, BreakBelow::never), strip(15)}, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 3}));
}

TEST(PageBreaking, AGroupMovesToTheNextPageWhereItFitsThere)
{
    EXPECT_THAT(breakPages({strip(50), strip(30, BreakBelow::avoid), strip(30, BreakBelow::avoid),
                            strip(30)},
                           100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 4}));
}

TEST(PageBreaking, AGroupLongerThanAPageIsBrokenWhereItDoesLeastHarm)
{
    EXPECT_THAT(breakPages({strip(30, BreakBelow::never), strip(30, BreakBelow::avoid),
                            strip(30, BreakBelow::never), strip(30)},
                           100),
                ElementsAre(PageRange{0, 2}, PageRange{2, 4}));
}

TEST(PageBreaking, WhatMustNotBeBrokenIsBrokenBeforeItIsCut)
{
    EXPECT_THAT(
        breakPages({strip(60, BreakBelow::never), strip(60, BreakBelow::never), strip(60)}, 100),
        ElementsAre(PageRange{0, 1}, PageRange{1, 2}, PageRange{2, 3}));
}

TEST(PageBreaking, AStripHigherThanAPageHasAPageOfItsOwn)
{
    EXPECT_THAT(breakPages({strip(10), strip(150), strip(10)}, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 2}, PageRange{2, 3}));
}

TEST(PageBreaking, ANewPageBeginsWhereItIsAskedFor)
{
    std::vector<StripHeight> strips{strip(10, BreakBelow::never), strip(10), strip(10)};
    strips[1].startsPage = true;
    EXPECT_THAT(breakPages(strips, 100), ElementsAre(PageRange{0, 1}, PageRange{1, 3}));
}

TEST(PageBreaking, ALineAboveIsCountedWhereAPageBeginsInTheMiddle)
{
    std::vector<StripHeight> strips{strip(100), strip(50), strip(40), strip(10)};
    for (StripHeight& one : strips) {
        one.continued = 11;
    }
    EXPECT_THAT(breakPages(strips, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 2}, PageRange{2, 4}));
    strips[1].continued = 0; // the others' does not count: they begin no page
    EXPECT_THAT(breakPages(strips, 100), ElementsAre(PageRange{0, 1}, PageRange{1, 4}));
}

TEST(PageBreaking, APageThatIsMeantToBeginHasNoLineAbove)
{
    std::vector<StripHeight> strips{strip(100), strip(60), strip(40), strip(50)};
    for (StripHeight& one : strips) {
        one.continued = 11;
    }
    strips[1].startsPage = true;
    EXPECT_THAT(breakPages(strips, 100),
                ElementsAre(PageRange{0, 1}, PageRange{1, 3}, PageRange{3, 4}));
    const std::vector<StripHeight>& heights = strips;
    EXPECT_FALSE(goesOn(heights, 0));
    EXPECT_FALSE(goesOn(heights, 1));
    EXPECT_TRUE(goesOn(heights, 3));
}

TEST(PageBreaking, EveryStripStandsOnOnePageInOrderAndNoPageOverflows)
{
    std::mt19937 random(20260302);
    std::uniform_real_distribution<double> height(1, 60);
    std::uniform_int_distribution<int> below(0, 2);
    std::uniform_int_distribution<int> oneInTwenty(0, 19);
    for (int round = 0; round < 500; ++round) {
        std::vector<StripHeight> strips(40);
        for (StripHeight& one : strips) {
            one = {height(random), height(random) / 4, static_cast<BreakBelow>(below(random)),
                   oneInTwenty(random) == 0, height(random) / 4};
        }
        std::size_t next = 0;
        for (const PageRange page : breakPages(strips, 100)) {
            ASSERT_EQ(page.first, next);
            ASSERT_GT(page.last, page.first);
            ASSERT_LE(heightOn(strips, page), 100.001);
            for (std::size_t i = page.first + 1; i < page.last; ++i) {
                ASSERT_FALSE(strips[i].startsPage);
            }
            next = page.last;
        }
        ASSERT_EQ(next, strips.size());
    }
}
