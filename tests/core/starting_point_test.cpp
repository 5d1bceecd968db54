// SPDX-License-Identifier: GPL-3.0-or-later
// A starting point on a unit: what is taken, what the unit makes of it, what stays as it stands.
// The figures of protocols are those of the studies that are named; the rules are our own.
#include "tests/core/examples.h"

#include "core/plan_figures.h"
#include "core/starting_point.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using namespace quadrille::literals;
using namespace std::chrono_literals;

namespace
{

CitedCount one(std::int64_t count, Standing standing = Standing::read)
{
    return {count, count, standing, {}};
}
CitedCount seconds(double time)
{
    return one(static_cast<std::int64_t>(time * 1e3));
}
CitedCount minutes(std::int64_t time)
{
    return one(time * 60'000);
}

/// Feil 2011, Am J Sports Med 39:1238, the group with single pads: 10 s on, 20 s off, ramps 1.5 s
/// and 1 s, 300 to 400 µs, 20 min (from memory).
StartingPoint feil()
{
    StartingPoint point;
    point.name = "Feil 2011";
    point.waveform = {
        {Waveform::symmetricBiphasic, Waveform::asymmetricBalancedBiphasic}, Standing::read, {}};
    point.figures = {
        {Field::pulseFrequency, one(50'000)},
        {Field::phaseDuration, {300, 400, Standing::read, {}}},
        {Field::onTime, seconds(10)},
        {Field::offTime, seconds(20)},
        {Field::rampUp, seconds(1.5)},
        {Field::rampDown, seconds(1)},
        {Field::sessionLength, minutes(20)},
        {Field::sessionsPerDay, one(3, Standing::fromMemory)},
        {Field::weekdays, one(5, Standing::fromMemory)},
        {Field::weeks, one(12, Standing::fromMemory)},
    };
    return point;
}

/// Stevens-Lapsley 2012, Phys Ther 92:210: 15 contractions of 15 s on and 45 s off, 3 s ramp up
/// inside the on time (from memory), twice a day.
StartingPoint stevensLapsley()
{
    StartingPoint point;
    point.name = "Stevens-Lapsley 2012";
    point.waveform = {{Waveform::symmetricBiphasic}, Standing::read, {}};
    point.figures = {
        {Field::pulseFrequency, one(50'000)},
        {Field::phaseDuration, one(250)},
        {Field::onTime, seconds(15)},
        {Field::offTime, seconds(45)},
        {Field::rampUp, seconds(3)},
        {Field::sessionsPerDay, one(2)},
        {Field::weekdays, one(7)},
        {Field::weeks, one(6)},
    };
    point.contractions = one(15);
    point.rampRule = {RampHabit::includedInOnTime, Standing::fromMemory};
    return point;
}

AppliedFigure figureOf(const AppliedPoint& applied, Field field)
{
    const auto found = std::ranges::find(applied.figures, field, &AppliedFigure::field);
    EXPECT_NE(found, applied.figures.end());
    return found == applied.figures.end() ? AppliedFigure{} : *found;
}

Settings firstOf(const AppliedPoint& applied)
{
    return applied.block.sites.front().settings;
}

} // namespace

// Computed by hand with ramps inside the on time (80 and 40 contractions) and added to it (67 and
// 37) for 20 min; on time of a week at 15 sessions.
TEST(PointDoses, CountContractionsByEitherRuleOfTheRamps)
{
    StartingPoint garment = feil();
    garment.figures[Field::onTime] = seconds(5);
    garment.figures[Field::offTime] = seconds(10);
    garment.figures[Field::rampUp] = seconds(2);
    struct Expected {
        StartingPoint point;
        RampHabit habit;
        std::int64_t contractions;
        Milliseconds plateaus; ///< of a session, as papers count added ramps
        std::int64_t weekContractions;
    };
    for (const Expected& expected : {Expected{garment, RampHabit::includedInOnTime, 80, 160s, 1200},
                                     Expected{garment, RampHabit::addedToOnTime, 67, 335s, 1005},
                                     Expected{feil(), RampHabit::includedInOnTime, 40, 300s, 600},
                                     Expected{feil(), RampHabit::addedToOnTime, 37, 370s, 555}}) {
        const auto dose = doseOf(expected.point, expected.habit);
        ASSERT_TRUE(dose);
        EXPECT_EQ(dose->contractions, expected.contractions);
        EXPECT_EQ(dose->contractions * dose->plateau, expected.plateaus);
        ASSERT_TRUE(dose->least);
        EXPECT_EQ(dose->least->contractions, expected.weekContractions);
    }
    EXPECT_EQ(doseOf(garment, RampHabit::includedInOnTime)->least->onTime, 100min);
}

TEST(PointDoses, AreNotKnownWhileAFigureIsMissing)
{
    StartingPoint point = feil();
    point.figures[Field::offTime] = {0, 0, Standing::doubtful, {}};
    EXPECT_FALSE(doseOf(point, RampHabit::includedInOnTime));
    point = feil();
    point.figures[Field::onTime] = {5000, 10000, Standing::read, {}};
    EXPECT_FALSE(doseOf(point, RampHabit::includedInOnTime));
    point = feil();
    point.figures.erase(Field::weekdays);
    ASSERT_TRUE(doseOf(point, RampHabit::includedInOnTime));
    EXPECT_FALSE(doseOf(point, RampHabit::includedInOnTime)->least);
    point = feil();
    point.use = PointUse::subTetanic;
    EXPECT_FALSE(doseOf(point, RampHabit::includedInOnTime));
}

TEST(StartingPoints, AreAppliedToAllSitesWithDaysAndWeeks)
{
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    const AppliedPoint applied = quadrille::applied(feil(), block, someStimulator());
    for (const Site& site : applied.block.sites) {
        EXPECT_EQ(site.settings.onTime, 10s);
        EXPECT_EQ(site.settings.offTime, 20s);
        EXPECT_EQ(site.settings.rampUp, 1500ms);
        EXPECT_EQ(site.settings.sessionLength, 20min);
    }
    EXPECT_EQ(applied.block.sessionsPerDay, 3);
    EXPECT_EQ(applied.block.schedule, Schedule(WeekdaySet::mondayToFriday())); // five days already
    EXPECT_EQ(applied.block.weeks, 12);
    EXPECT_EQ(applied.block.origin, (BlockOrigin{"Feil 2011", false}));
    EXPECT_EQ(figureOf(applied, Field::onTime).outcome, Outcome::taken);
}

TEST(StartingPoints, LeaveARangeToThePractitioner)
{
    Block block = someBlock();
    block.sites.front().settings.phaseDuration = 320_us;
    EXPECT_EQ(firstOf(applied(feil(), block, someStimulator())).phaseDuration, 320_us);
    block.sites.front().settings.phaseDuration = 200_us;
    const AppliedPoint outside = applied(feil(), block, someStimulator());
    EXPECT_EQ(firstOf(outside).phaseDuration, 200_us);
    EXPECT_EQ(figureOf(outside, Field::phaseDuration).outcome, Outcome::choose);
}

TEST(StartingPoints, LeaveWhatIsDoubtfulOrNotSaidAsItStands)
{
    StartingPoint point = feil();
    point.figures[Field::offTime] = {0, 0, Standing::doubtful, {}};
    point.figures.erase(Field::weeks);
    const Block block = someBlock();
    const AppliedPoint applied = quadrille::applied(point, block, someStimulator());
    EXPECT_EQ(firstOf(applied).offTime, 12s);
    EXPECT_EQ(applied.block.weeks, block.weeks);
    EXPECT_EQ(figureOf(applied, Field::offTime).outcome, Outcome::leftEmpty);
    EXPECT_EQ(figureOf(applied, Field::weeks).outcome, Outcome::leftEmpty);
}

// 15 contractions of a 60 s cycle: 14 × 60 + 15 = 855 s are the least, 15 min the next step of the
// timer, and the next contraction begins with the end of it.
TEST(StartingPoints, FindTheSessionForADoseInContractions)
{
    const AppliedPoint applied =
        quadrille::applied(stevensLapsley(), someBlock(), someStimulator());
    EXPECT_EQ(firstOf(applied).sessionLength, 15min);
    EXPECT_EQ(applied.contractions, 15);
    EXPECT_EQ(figureOf(applied, Field::sessionLength).outcome, Outcome::taken);
    EXPECT_EQ(applied.block.schedule, Schedule(WeekdaySet::everyDay()));
    const auto week = blockFigures(applied.block, someStimulator());
    EXPECT_EQ(week.weekContractions, 210); // 15 × 2 × 7
    EXPECT_EQ(week.weekOnTime, 52min + 30s);
}

TEST(StartingPoints, SayWhereTheTimerEndsBeforeTheDose)
{
    Stimulator unit = someStimulator();
    unit.sessionLength = {1min, 10min, 1min, 10min};
    const AppliedPoint applied = quadrille::applied(stevensLapsley(), someBlock(), unit);
    EXPECT_FALSE(applied.contractions);
    EXPECT_EQ(figureOf(applied, Field::sessionLength).outcome, Outcome::unitGivesOther);
}

// 15 s with a ramp of 3 s inside have a plateau of 12 s less the ramp down that stands (1 s).
TEST(StartingPoints, KeepThePlateauOnAUnitThatAddsItsRamps)
{
    Stimulator unit = someStimulator();
    unit.rampHabit = RampHabit::addedToOnTime;
    Block block = someBlock();
    block.sites.front().settings.rampDown = 1s;
    const AppliedPoint applied = quadrille::applied(stevensLapsley(), block, unit);
    EXPECT_EQ(applied.plateauMeant, 11s);
    EXPECT_EQ(applied.plateauGiven, 11s);
    EXPECT_EQ(firstOf(applied).onTime, 11s);
    const AppliedFigure onTime = figureOf(applied, Field::onTime);
    EXPECT_EQ(onTime.outcome, Outcome::unitGivesOther);
    EXPECT_EQ(onTime.why, FitReason::rampHabit);
}

// 15 s less 3 s of ramp up and the 1 s of ramp down that stands on the first site; on the second
// it is 2 s.
TEST(StartingPoints, SayThePlateauOfTheFirstSite)
{
    Stimulator unit = someStimulator();
    unit.rampHabit = RampHabit::addedToOnTime;
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    block.sites[0].settings.rampDown = 1s;
    block.sites[1].settings.rampDown = 2s;
    const AppliedPoint applied = quadrille::applied(stevensLapsley(), block, unit);
    EXPECT_EQ(applied.plateauMeant, 11s);
    EXPECT_EQ(applied.plateauGiven, 11s);
}

// A ramp that the unit has in whole seconds only: 1.5 s becomes 1 s, the plateau stays 10 s.
TEST(StartingPoints, KeepThePlateauWithTheRampsThatTheUnitCanDo)
{
    StartingPoint point = feil();
    point.rampRule = {RampHabit::addedToOnTime, Standing::read};
    Stimulator unit = someStimulator();
    unit.rampUp = {0s, 5s, 1s, 1s};
    unit.rampDown = {0s, 5s, 1s, 1s};
    const AppliedPoint applied = quadrille::applied(point, someBlock(), unit);
    EXPECT_EQ(firstOf(applied).rampUp, 1s);
    EXPECT_EQ(firstOf(applied).onTime, 12s); // 1 + 10 + 1
    EXPECT_EQ(applied.plateauGiven, 10s);
    EXPECT_EQ(figureOf(applied, Field::rampUp).why, FitReason::betweenSteps);
}

TEST(StartingPoints, TakeTheUnitsWayWhereTheRuleOfTheRampsIsNotSaid)
{
    Stimulator unit = someStimulator();
    unit.rampHabit = RampHabit::addedToOnTime;
    const AppliedPoint applied = quadrille::applied(feil(), someBlock(), unit);
    EXPECT_EQ(firstOf(applied).onTime, 10s);
    EXPECT_FALSE(applied.plateauMeant);
}

TEST(StartingPoints, MarkWhatTheUnitForces)
{
    Stimulator unit = someStimulator();
    unit.phaseDuration = {50_us, 200_us, 10_us, 100_us};
    unit.offTime = {30s, 30s, 1s, 30s};
    const AppliedPoint applied = quadrille::applied(stevensLapsley(), someBlock(), unit);
    EXPECT_EQ(figureOf(applied, Field::phaseDuration).becomes, FitValue(std::int64_t{200}));
    EXPECT_EQ(figureOf(applied, Field::phaseDuration).why, FitReason::outsideRange);
    EXPECT_EQ(figureOf(applied, Field::offTime).why, FitReason::fixedOnUnit);
}

TEST(StartingPoints, OfBurstsLendTheirTimingToAUnitWithoutBursts)
{
    StartingPoint bursts = stevensLapsley();
    bursts.waveform = {{Waveform::kilohertzBursts}, Standing::read, {}};
    bursts.figures[Field::carrierFrequency] = one(2'500'000);
    const Block block = someBlock();
    const AppliedPoint applied = quadrille::applied(bursts, block, someStimulator());
    EXPECT_EQ(firstOf(applied).waveform, Waveform::symmetricBiphasic);
    EXPECT_EQ(firstOf(applied).onTime, 15s);
    // Half a cycle of the carrier is no phase duration.
    EXPECT_EQ(firstOf(applied).phaseDuration, block.sites.front().settings.phaseDuration);
    EXPECT_EQ(figureOf(applied, Field::waveform).why, FitReason::waveformNotOffered);
    EXPECT_EQ(figureOf(applied, Field::carrierFrequency).outcome, Outcome::unitGivesOther);
}

TEST(StartingPoints, NeverSetAnAmplitude)
{
    Block block = someBlock();
    block.sites.front().settings.phaseDuration = 250_us;
    block.sites.front().settings.amplitude = {.lastTolerated = 45_mA, .ceiling = 60_mA};
    const AppliedPoint same = applied(stevensLapsley(), block, someStimulator());
    EXPECT_EQ(firstOf(same).amplitude, block.sites.front().settings.amplitude);
    EXPECT_FALSE(same.forgotTolerated);
    // With a longer phase the same amplitude carries more charge than anybody tolerated.
    block.sites.front().settings.phaseDuration = 200_us;
    const AppliedPoint longer = applied(stevensLapsley(), block, someStimulator());
    EXPECT_EQ(firstOf(longer).amplitude.lastTolerated, std::nullopt);
    EXPECT_EQ(firstOf(longer).amplitude.ceiling, 60_mA);
    EXPECT_TRUE(longer.forgotTolerated);
}

TEST(StartingPoints, SayWhyTheyCannotBeApplied)
{
    const Block block = someBlock();
    const Block bare;
    StartingPoint twitches = feil();
    twitches.use = PointUse::subTetanic;
    StartingPoint bareCitation = feil();
    bareCitation.use = PointUse::citationOnly;
    Stimulator painRelief = someStimulator();
    painRelief.hasWorkRestCycles = false;
    EXPECT_EQ(cannotApply(feil(), &block, std::nullopt), CannotApply::noUnit);
    EXPECT_EQ(cannotApply(feil(), &block, painRelief), CannotApply::unitWillNotDo);
    EXPECT_EQ(cannotApply(feil(), &bare, someStimulator()), CannotApply::noSite);
    EXPECT_EQ(cannotApply(feil(), nullptr, someStimulator()), CannotApply::noSite);
    EXPECT_EQ(cannotApply(twitches, &block, someStimulator()), CannotApply::subTetanic);
    EXPECT_EQ(cannotApply(bareCitation, &block, someStimulator()), CannotApply::citationOnly);
    EXPECT_EQ(cannotApply(feil(), &block, someStimulator()), std::nullopt);
}

TEST(HouseSettings, GiveBackTheBlockThatTheyWereKeptFrom)
{
    Block block = someBlock();
    block.schedule = DaysPerWeek{3};
    block.sessionsPerDay = 2;
    block.sites.front().settings.amplitude.ceiling = 60_mA;
    HouseSettings kept = houseSettingsFrom(block, someStimulator());
    kept.name = "Our knees";
    EXPECT_EQ(kept.settings.amplitude, AmplitudeGuidance{});
    Block other = someBlock();
    other.sites.front().settings.onTime = 9s;
    other.sites.front().settings.pulseFrequency = 30_Hz;
    const AppliedPoint applied =
        quadrille::applied(startingPointFrom(kept), other, someStimulator());
    Block expected = block;
    expected.sites.front().settings.amplitude = {};
    expected.origin = BlockOrigin{"Our knees", false};
    EXPECT_EQ(applied.block, expected);
}

TEST(ChangedSince, IsMarkedWhenTheBlockAsksForSomethingElse)
{
    Block started = someBlock();
    started.origin = BlockOrigin{"Feil 2011", false};
    const std::vector<Block> before{started};
    const auto marked = [&](const auto& change) {
        std::vector<Block> after = before;
        change(after.front());
        markChangedSince(before, after);
        return after.front().origin->changedSince;
    };
    EXPECT_TRUE(marked([](Block& b) { b.sites.front().settings.onTime = 9s; }));
    EXPECT_TRUE(marked([](Block& b) { b.sessionsPerDay = 4; }));
    EXPECT_TRUE(marked([](Block& b) { b.schedule = DaysPerWeek{2}; }));
    EXPECT_FALSE(marked([](Block& b) { b.weeks = 9; }));
    EXPECT_FALSE(marked([](Block& b) { b.sites.front().position = "Sit"; }));
    EXPECT_FALSE(marked([](Block& b) { b.sites.front().settings.amplitude.ceiling = 50_mA; }));
    EXPECT_FALSE(marked([](Block& b) { b.sites.push_back(b.sites.front()); }));
}

TEST(ChangedSince, FollowsABlockThatIsCopiedOrMoved)
{
    Block started = someBlock();
    started.origin = BlockOrigin{"Feil 2011", false};
    const std::vector<Block> before{someBlock(), started};
    std::vector<Block> after{started, started, someBlock()};
    markChangedSince(before, after);
    EXPECT_FALSE(after[0].origin->changedSince);
    EXPECT_FALSE(after[1].origin->changedSince);
    EXPECT_FALSE(after[2].origin);
}
