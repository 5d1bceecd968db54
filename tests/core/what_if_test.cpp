// SPDX-License-Identifier: GPL-3.0-or-later
// Variants beside a block: figures against compareSettings(), searches against counting by hand,
// and what may be compared against the three points on which experiments contradict the model
// (Bickel et al., J Rehabil Res Dev 2012;49(2)).
#include "tests/core/examples.h"

#include "core/what_if.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

/// 10 s on, 30 s off, 20 min: a contraction each 40 s, so 30. Off time 1 … 120 s and timer
/// 1 … 60 min in whole steps.
WhatIf tenOnThirtyOff()
{
    WhatIf whatIf;
    whatIf.unit = someStimulator();
    whatIf.unit.offTime = {1s, 120s, 1s, 30s};
    whatIf.unit.sessionLength = {1min, 60min, 1min, 20min};
    whatIf.plan = someBlock();
    Settings& settings = whatIf.plan.sites.front().settings;
    settings.onTime = 10s;
    settings.offTime = 30s;
    settings.sessionLength = 20min;
    settings.amplitude.ceiling = 40_mA;
    whatIf.variants.assign(mostVariants, whatIf.plan);
    return whatIf;
}

void vary(WhatIf& whatIf, std::size_t variant, Field field, std::int64_t count)
{
    whatIf.variants[variant] = withSetting(whatIf.variants[variant], whatIf.site, field, count);
}

NotCompared whyNot(const WhatIf& whatIf, std::size_t variant)
{
    FatigueMemory memory;
    const WhatIfFigures figures = whatIfFigures(whatIf, &memory);
    EXPECT_FALSE(figures.variants[variant].isShownByModel());
    return figures.variants[variant].judgement.missing.value_or(NotCompared::planCannotRun);
}

} // namespace

TEST(WhatIf, GivesTheFiguresOfTheComparison)
{
    WhatIf whatIf = tenOnThirtyOff();
    vary(whatIf, 1, Field::offTime, 20'000);
    FatigueMemory memory;
    const WhatIfFigures figures = whatIfFigures(whatIf, &memory);
    SettingsCase plan{.name = {}, .settings = whatIf.planned(), .habit = whatIf.unit.rampHabit};
    plan.smallerPad = smallerPadArea(whatIf.plan.sites.front().pads);
    plan.sessionsPerWeek = 5; // Monday to Friday, once a day
    SettingsCase other = plan;
    other.settings.offTime = 20s;
    const auto both = compareSettings({plan, other}, memory);
    ASSERT_TRUE(both);
    for (const ComparedFigure figure : comparedFigures()) {
        EXPECT_EQ(figures.plan.figures->value(figure).value, both->at(0).value(figure).value);
        EXPECT_EQ(figures.variants[1].figures->value(figure).value,
                  both->at(1).value(figure).value);
        EXPECT_EQ(figures.variants[1].figures->value(figure).difference,
                  both->at(1).value(figure).difference);
    }
    // By hand: 1200 s / 40 s = 30 contractions, 1200 s / 30 s = 40, five times a week.
    EXPECT_EQ(both->at(0).value(ComparedFigure::weekContractions).value->value, 150);
    EXPECT_EQ(both->at(1).value(ComparedFigure::weekContractions).value->value, 200);
}

TEST(WhatIf, ShowsNoRatioWhileNothingCanBeComparedWithTheBlock)
{
    WhatIf whatIf = tenOnThirtyOff();
    FatigueMemory memory;
    const WhatIfFigures alike = whatIfFigures(whatIf, &memory);
    EXPECT_FALSE(alike.plan.isShownByModel());
    EXPECT_FALSE(alike.variants[0].isShownByModel());
    EXPECT_FALSE(alike.noneCompared);
    EXPECT_EQ(memory.computed(), 0U) << "nobody asks, so the model is not asked";
    vary(whatIf, 0, Field::offTime, 60'000);
    const WhatIfFigures differing = whatIfFigures(whatIf, &memory);
    EXPECT_TRUE(differing.plan.isShownByModel());
    EXPECT_TRUE(differing.variants[0].isShownByModel());
    EXPECT_FALSE(differing.variants[1].isShownByModel());
}

TEST(WhatIf, NeverComparesFatigueWhereAnythingElseDiffers)
{
    struct Change {
        Field field;
        std::int64_t count;
        NotCompared why;
    };
    for (const Change& change :
         {Change{Field::pulseFrequency, 30'000, NotCompared::modelMisleads},
          {Field::onTime, 20'000, NotCompared::modelMisleads},
          {Field::rampUp, 1'000, NotCompared::modelMisleads},
          {Field::phaseDuration, 200, NotCompared::phaseDurationDiffers},
          {Field::interphaseGap, 50, NotCompared::modelMisleads},
          {Field::amplitudeCeiling, 50'000, NotCompared::amplitudeDiffers},
          {Field::lastToleratedAmplitude, 30'000, NotCompared::amplitudeDiffers}}) {
        WhatIf whatIf = tenOnThirtyOff();
        vary(whatIf, 0, Field::offTime, 60'000);
        vary(whatIf, 0, change.field, change.count);
        EXPECT_EQ(whyNot(whatIf, 0), change.why) << static_cast<int>(change.field);
        FatigueMemory memory;
        const WishAnswer answer = grant(whatIf, 0, KeepRatio{0.7, KeptLength::session}, memory);
        ASSERT_TRUE(std::holds_alternative<Judgement>(answer));
        EXPECT_EQ(std::get<Judgement>(answer).missing, change.why);
    }
}

TEST(WhatIf, RefusesAnotherFormOfThePulseAsThePlanDoes)
{
    WhatIf whatIf = tenOnThirtyOff();
    vary(whatIf, 0, Field::interphaseGap, 50);
    const Judgement judgement =
        judgementOf(whatIf.planned(), whatIf.varied(0), whatIf.unit.rampHabit);
    EXPECT_EQ(judgement.refusals, std::vector{ModelRefusal::pulseFormDiffers});
}

TEST(WhatIf, SaysWhatCannotRun)
{
    WhatIf whatIf = tenOnThirtyOff();
    vary(whatIf, 0, Field::offTime, 0); // continuous: contractions can't be told apart
    EXPECT_EQ(whyNot(whatIf, 0), NotCompared::cannotRun);
    FatigueMemory memory;
    const WhatIfFigures figures = whatIfFigures(whatIf, &memory);
    EXPECT_FALSE(figures.variants[0].figures);
    EXPECT_TRUE(hasStop(figures.variants[0].findings));
    EXPECT_EQ(std::get<Judgement>(grant(whatIf, 0, GiveContractions{10}, memory)).missing,
              NotCompared::cannotRun);
    whatIf.plan = whatIf.variants[0];
    const WhatIfFigures stopped = whatIfFigures(whatIf, &memory);
    EXPECT_EQ(stopped.noneCompared, NotCompared::planCannotRun);
    EXPECT_TRUE(stopped.variants[1].figures) << "a variant has figures where the block has none";
    EXPECT_EQ(stopped.variants[1].judgement.missing, NotCompared::planCannotRun);
}

TEST(WhatIf, SaysThatBurstsAreOutsideTheModel)
{
    WhatIf whatIf = tenOnThirtyOff();
    Settings& settings = whatIf.plan.sites.front().settings;
    settings.waveform = Waveform::kilohertzBursts;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 20_percent_burst;
    whatIf.variants.assign(mostVariants, whatIf.plan);
    FatigueMemory memory;
    EXPECT_FALSE(whatIfFigures(whatIf, &memory).noneCompared) << "no variant asks for a ratio";
    vary(whatIf, 0, Field::offTime, 60'000);
    const WhatIfFigures figures = whatIfFigures(whatIf, &memory);
    EXPECT_EQ(figures.noneCompared, NotCompared::outsideModel);
    EXPECT_EQ(figures.variants[0].judgement.missing, NotCompared::outsideModel);
    EXPECT_TRUE(figures.variants[0].figures);
    const WishAnswer answer = grant(whatIf, 0, KeepRatio{0.7, KeptLength::session}, memory);
    EXPECT_EQ(std::get<Judgement>(answer).missing, NotCompared::outsideModel);
}

TEST(WhatIf, HasNoDoseWithoutPads)
{
    WhatIf whatIf = tenOnThirtyOff();
    whatIf.plan.sites.front().pads.clear();
    whatIf.variants.assign(1, whatIf.plan);
    const WhatIfFigures figures = whatIfFigures(whatIf, nullptr);
    EXPECT_FALSE(figures.plan.figures->value(ComparedFigure::phaseCharge).value);
    EXPECT_TRUE(figures.plan.figures->value(ComparedFigure::totalOnTime).value);
}

TEST(Wish, FitsFifteenMinutesWithTheSameContractions)
{
    // 30 contractions of 10 s leave 900 − 300 = 600 s for 29 rests: 20 s (580 s; 21 s would be
    // 609 s). 880 s are needed; 15 min is the timer's next minute and the 31st would begin at 900
    // s.
    const WhatIf whatIf = tenOnThirtyOff();
    FatigueMemory memory;
    const WishAnswer answer = grant(whatIf, 2, FitLength{15min, KeptDose::contractions}, memory);
    const auto* found = std::get_if<SearchFound>(&answer);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->settings.offTime, 20s);
    EXPECT_EQ(found->settings.sessionLength, 15min);
    EXPECT_EQ(found->timing.contractionsCompleted, 30);
}

TEST(Wish, GivesTheSessionForContractions)
{
    // 20 contractions: 19 × 40 + 10 = 770 s; the timer's next minute is 13 min (780 s).
    const WhatIf whatIf = tenOnThirtyOff();
    FatigueMemory memory;
    const WishAnswer answer = grant(whatIf, 0, GiveContractions{20}, memory);
    ASSERT_TRUE(std::holds_alternative<SearchFound>(answer));
    EXPECT_EQ(std::get<SearchFound>(answer).settings.sessionLength, 13min);
    EXPECT_EQ(std::get<SearchFound>(answer).settings.offTime, 30s);
}

TEST(Wish, KeepsTheRatioByOffTime)
{
    // Against trying each off time of the unit in turn, in a session that stays as long.
    const WhatIf whatIf = tenOnThirtyOff();
    FatigueMemory memory;
    const double wanted = 0.7;
    const WishAnswer answer = grant(whatIf, 0, KeepRatio{wanted, KeptLength::session}, memory);
    ASSERT_TRUE(std::holds_alternative<SearchFound>(answer));
    const Milliseconds found = std::get<SearchFound>(answer).settings.offTime;
    const auto ratioAt = [&](Milliseconds offTime) {
        Settings settings = whatIf.planned();
        settings.offTime = offTime;
        return memory.predict(settings, whatIf.unit.rampHabit)->lastToFirst->forceTimeIntegral;
    };
    EXPECT_GE(ratioAt(found), wanted);
    EXPECT_LT(ratioAt(found - 1s), wanted);
}

TEST(Wish, StopsWhenNobodyWaits)
{
    const WhatIf whatIf = tenOnThirtyOff();
    FatigueMemory memory;
    std::stop_source stop;
    stop.request_stop();
    const WishAnswer answer =
        grant(whatIf, 0, KeepRatio{0.7, KeptLength::session}, memory, stop.get_token());
    ASSERT_TRUE(std::holds_alternative<SearchRefusal>(answer));
    EXPECT_EQ(std::get<SearchRefusal>(answer).reason, NoSetting::stopped);
}

TEST(Variant, TakesASettingInAllSitesAndAnAmplitudeInOne)
{
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    const Block longer = withSetting(block, 1, Field::offTime, 20'000);
    EXPECT_EQ(longer.sites[0].settings.offTime, 20s);
    EXPECT_EQ(longer.sites[1].settings.offTime, 20s);
    const Block stronger = withSetting(block, 1, Field::amplitudeCeiling, 50'000);
    EXPECT_FALSE(stronger.sites[0].settings.amplitude.ceiling);
    EXPECT_EQ(stronger.sites[1].settings.amplitude.ceiling, 50_mA);
}
