// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/fit_text.h"
#include "tests/support/records.h"

#include <QLocale>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace std::chrono_literals;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

Block tenSecondsOn(const Stimulator& unit)
{
    Block block;
    block.sites = {tests::aSite(unit)};
    Settings& settings = block.sites[0].settings;
    settings.onTime = 10s;
    settings.offTime = 50s;
    settings.rampUp = settings.rampDown = 1s;
    settings.sessionLength = 10min;
    return block;
}

} // namespace

// Ramps of 1 s and 1 s inside 10 s. A unit that adds them would keep the on phase with 8 s, but its
// steps of 5 s lead back to 10 s: no setting differs, and the on phase is 12 s.
TEST(FitText, TellsAnOnPhaseThatGrowsThoughNoSettingChanges)
{
    Stimulator unit = tests::aUnit();
    unit.rampHabit = RampHabit::addedToOnTime;
    unit.onTime = {5s, 20s, 5s, 10s};
    const auto sections = fitSections({tenSecondsOn(unit)}, {}, unit, english);
    ASSERT_EQ(sections.size(), 1U);
    EXPECT_TRUE(sections[0].settings.empty());
    EXPECT_FALSE(sections[0].figures.empty());
}

// 10 s on and 50 s off in 10 min: ten contractions, and nine whole ones where 50 s are waited
// first.
TEST(FitText, TellsAContractionLessOnAUnitThatWaitsFirst)
{
    Stimulator unit = tests::aUnit();
    Block block = tenSecondsOn(unit);
    block.sites[0].settings.sessionLength = 9min + 59s;
    unit.sessionLength = {1s, 60min, 1s, 20min};
    unit.cycleStart = CycleStart::withOff;
    const auto sections =
        fitSections({block}, {RampHabit::includedInOnTime, CycleStart::withOn}, unit, english);
    ASSERT_EQ(sections.size(), 1U);
    ASSERT_FALSE(sections[0].figures.empty());
    EXPECT_EQ(sections[0].figures[0].what, u"Contractions");
    EXPECT_EQ(sections[0].figures[0].before, u"10");
    EXPECT_EQ(sections[0].figures[0].after, u"9");
}

TEST(FitText, HasNothingToTellWhereAllStays)
{
    const Stimulator unit = tests::aUnit();
    EXPECT_TRUE(fitSections({tenSecondsOn(unit)}, {}, unit, english).empty());
}
