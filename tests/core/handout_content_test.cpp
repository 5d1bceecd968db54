// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/screened.h"

#include "core/handout_content.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace std::chrono_literals;
using std::chrono::day;
using std::chrono::March;
using std::chrono::year;
using testing::Contains;
using testing::ElementsAre;
using testing::Not;

namespace
{

// 2 March 2026 is a Monday (any calendar).
constexpr Date firstMonday{2026y / March / 2};

Pad rectangle(Lead lead)
{
    return {PadMaterial::selfAdhesive, PadShape::rectangle, 50_mm, 90_mm, lead};
}

Settings tenOnTwentyFiveOff()
{
    Settings settings;
    settings.pulseFrequency = 50_Hz;
    settings.phaseDuration = 400_us;
    settings.onTime = 10s;
    settings.offTime = 25s;
    settings.rampUp = 2s;
    settings.rampDown = 1s;
    settings.sessionLength = 20min;
    return settings;
}

Site siteOn(int channel, const std::string& muscle)
{
    Site site;
    site.muscle = muscle;
    site.channel = channel;
    site.pads = {rectangle(Lead::a), rectangle(Lead::b)};
    site.settings = tenOnTwentyFiveOff();
    return site;
}

Block blockOf(int weeks, std::vector<Site> sites)
{
    Block block;
    block.weeks = weeks;
    block.sites = std::move(sites);
    return block;
}

Course course()
{
    Course course;
    course.number = 1;
    course.problem = "Weak after a fracture";
    course.startDate = firstMonday;
    return course;
}

Plan planOf(std::vector<Block> blocks)
{
    Plan plan;
    plan.issuedOn = firstMonday;
    plan.fromDate = firstMonday;
    plan.issuedByName = "Ines Aldous";
    plan.stimulator = commonStimulator();
    plan.stimulator.name = "Clinic unit 3";
    plan.blocks = std::move(blocks);
    return plan;
}

Patient patient()
{
    Patient patient;
    patient.reference = "1042";
    patient.name = "Tobin Arkwell";
    return patient;
}

HandoutContent contentOf(const Plan& plan, Date printedOn = firstMonday)
{
    return *handoutContent({}, patient(), course(), plan, tests::openGate(printedOn), "Ines Aldous",
                           printedOn);
}

std::vector<Field> fieldsOf(const HandoutSettings& settings)
{
    std::vector<Field> fields;
    for (const HandoutSetting& setting : settings.inAskingOrder) {
        fields.push_back(setting.field);
    }
    return fields;
}

} // namespace

TEST(HandoutContent, HasOneCardForEachBlockWithItsWeeksAndDays)
{
    const auto content = contentOf(planOf({blockOf(4, {siteOn(1, "Vastus lateralis")}),
                                           blockOf(2, {siteOn(1, "Vastus lateralis")})}));
    ASSERT_EQ(content.cards.size(), 2U);
    EXPECT_EQ(content.cards[0].firstWeek, CourseWeek{1});
    EXPECT_EQ(content.cards[0].lastWeek, CourseWeek{4});
    EXPECT_EQ(content.cards[0].firstDay, firstMonday);
    EXPECT_EQ(content.cards[0].lastDay, Date(2026y / March / 29));
    EXPECT_EQ(content.cards[1].firstWeek, CourseWeek{5});
    EXPECT_EQ(content.cards[1].lastWeek, CourseWeek{6});
    EXPECT_EQ(content.cards[1].firstDay, Date(2026y / March / 30));
    EXPECT_EQ(content.lastDay, Date(2026y / std::chrono::April / 12));
}

TEST(HandoutContent, LeavesOutBlocksThatAreOverOnTheDayOfPrinting)
{
    const Plan plan =
        planOf({blockOf(1, {siteOn(1, "Soleus")}), blockOf(1, {siteOn(1, "Soleus")})});
    EXPECT_EQ(contentOf(plan, firstMonday + std::chrono::days(6)).cards.size(), 2U);
    const auto secondWeek = contentOf(plan, firstMonday + std::chrono::days(7));
    ASSERT_EQ(secondWeek.cards.size(), 1U);
    EXPECT_EQ(secondWeek.cards[0].firstWeek, CourseWeek{2});
    EXPECT_TRUE(contentOf(plan, firstMonday + std::chrono::days(14)).cards.empty());
}

TEST(HandoutContent, ShowsEveryBlockBeforeThePlanHasBegun)
{
    const Plan plan =
        planOf({blockOf(1, {siteOn(1, "Soleus")}), blockOf(1, {siteOn(1, "Soleus")})});
    EXPECT_EQ(contentOf(plan, firstMonday - std::chrono::days(30)).cards.size(), 2U);
}

TEST(HandoutContent, BeginsNoCardBeforeTheDayFromWhichThePlanIsInForce)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")}), blockOf(2, {siteOn(1, "Soleus")})});
    plan.number = 2;
    plan.fromDate = firstMonday + std::chrono::days(16); // Wednesday of week 3
    const auto content = contentOf(plan, firstMonday);
    ASSERT_EQ(content.cards.size(), 1U);
    EXPECT_EQ(content.cards[0].firstDay, plan.fromDate);
    EXPECT_EQ(content.cards[0].firstWeek, CourseWeek{3});
    EXPECT_EQ(content.cards[0].lastWeek, CourseWeek{3});
}

TEST(HandoutContent, EndsWithTheCourse)
{
    Course ended = course();
    ended.endDate = firstMonday + std::chrono::days(9);
    const Plan plan =
        planOf({blockOf(1, {siteOn(1, "Soleus")}), blockOf(3, {siteOn(1, "Soleus")})});
    const auto content = *handoutContent({}, patient(), ended, plan, tests::openGate(firstMonday),
                                         std::nullopt, firstMonday);
    ASSERT_EQ(content.cards.size(), 2U);
    EXPECT_EQ(content.cards[1].lastDay, *ended.endDate);
    EXPECT_EQ(content.cards[1].lastWeek, CourseWeek{2});
    EXPECT_EQ(content.lastDay, *ended.endDate);
}

TEST(HandoutContent, WeeksBeginWithTheWeekdayOfTheCoursesStart)
{
    Course fromThursday = course();
    fromThursday.startDate = firstMonday + std::chrono::days(3);
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.fromDate = fromThursday.startDate;
    const auto content = *handoutContent({}, patient(), fromThursday, plan,
                                         tests::openGate(firstMonday), std::nullopt, firstMonday);
    EXPECT_EQ(content.cards.at(0).weekBegins, std::chrono::Thursday);
}

TEST(HandoutContent, FollowsTheOrderInWhichTheStimulatorAsks)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.stimulator.askingOrder = {Field::sessionLength, Field::rampUp, Field::pulseFrequency,
                                   Field::lastToleratedAmplitude};
    plan.stimulator.interphaseGap.reset();
    const auto content = contentOf(plan);
    EXPECT_THAT(fieldsOf(content.cards.at(0).common),
                ElementsAre(Field::sessionLength, Field::rampUp, Field::pulseFrequency,
                            Field::phaseDuration, Field::onTime, Field::offTime, Field::rampDown));
}

TEST(HandoutContent, NamesAFixedSettingAsFixed)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.stimulator.rampDown = {1s, 1s, 500ms, 1s};
    const auto content = contentOf(plan);
    const auto& settings = content.cards.at(0).common.inAskingOrder;
    const auto fixed = std::ranges::find(settings, Field::rampDown, &HandoutSetting::field);
    const auto free = std::ranges::find(settings, Field::rampUp, &HandoutSetting::field);
    ASSERT_NE(fixed, settings.end());
    ASSERT_NE(free, settings.end());
    EXPECT_TRUE(fixed->fixed);
    EXPECT_FALSE(free->fixed);
}

TEST(HandoutContent, NamesTheWaveformOnlyWhereTheUnitOffersAChoice)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.stimulator.waveforms = {Waveform::symmetricBiphasic};
    EXPECT_FALSE(contentOf(plan).cards.at(0).common.waveform);
    plan.stimulator.waveforms.push_back(Waveform::asymmetricBalancedBiphasic);
    EXPECT_EQ(contentOf(plan).cards.at(0).common.waveform, Waveform::symmetricBiphasic);
}

TEST(HandoutContent, SaysOnceWhatAllSitesShareAndPerSiteWhatDiffers)
{
    Site first = siteOn(1, "Vastus lateralis");
    Site second = siteOn(2, "Vastus medialis");
    second.settings.phaseDuration = 300_us;
    first.settings.amplitude = {60_mA, 70_mA};
    const auto content = contentOf(planOf({blockOf(1, {first, second})}));
    const HandoutCard& card = content.cards.at(0);
    EXPECT_THAT(fieldsOf(card.common), Not(Contains(Field::phaseDuration)));
    EXPECT_THAT(fieldsOf(card.common), Contains(Field::pulseFrequency));
    EXPECT_TRUE(card.common.rhythm);
    ASSERT_EQ(card.sites.size(), 2U);
    EXPECT_THAT(card.sites[0].own.inAskingOrder,
                ElementsAre(HandoutSetting{Field::phaseDuration, 400, false}));
    EXPECT_THAT(card.sites[1].own.inAskingOrder,
                ElementsAre(HandoutSetting{Field::phaseDuration, 300, false}));
    EXPECT_FALSE(card.sites[0].own.rhythm);
    EXPECT_EQ(card.sites[0].amplitude.lastTolerated, 60_mA);
    EXPECT_EQ(card.sites[0].amplitude.ceiling, 70_mA);
    EXPECT_FALSE(card.sites[1].amplitude.lastTolerated);
    EXPECT_FALSE(card.sites[1].amplitude.ceiling);
}

TEST(HandoutContent, KnowsWhatWasToleratedLastOnTheFirstCardOnly)
{
    Site site = siteOn(1, "Soleus");
    site.settings.amplitude = {60_mA, 70_mA};
    const Plan plan = planOf({blockOf(1, {site}), blockOf(1, {site}), blockOf(1, {site})});
    const auto amplitudeOn = [](const HandoutContent& content, std::size_t card) {
        return content.cards.at(card).sites.at(0).amplitude;
    };
    const auto atTheStart = contentOf(plan);
    EXPECT_EQ(amplitudeOn(atTheStart, 0), (AmplitudeGuidance{60_mA, 70_mA}));
    EXPECT_EQ(amplitudeOn(atTheStart, 1), (AmplitudeGuidance{std::nullopt, 70_mA}));
    EXPECT_EQ(amplitudeOn(atTheStart, 2), (AmplitudeGuidance{std::nullopt, 70_mA}));
    const auto inTheSecondWeek = contentOf(plan, firstMonday + std::chrono::days(7));
    EXPECT_EQ(amplitudeOn(inTheSecondWeek, 0), (AmplitudeGuidance{60_mA, 70_mA}));
    EXPECT_EQ(amplitudeOn(inTheSecondWeek, 1), (AmplitudeGuidance{std::nullopt, 70_mA}));
}

TEST(HandoutContent, ListsSitesByChannelAtOnceAndInTheBlocksOrderInTurn)
{
    Site third = siteOn(3, "Hamstrings");
    third.settings.phaseDuration = 300_us;
    Block block = blockOf(1, {third, siteOn(1, "Vastus lateralis"), siteOn(2, "Vastus medialis")});
    const auto channels = [&] {
        std::vector<int> all;
        const HandoutContent content = contentOf(planOf({block}));
        for (const HandoutSite& site : content.cards.at(0).sites) {
            all.push_back(site.channel);
        }
        return all;
    };
    EXPECT_THAT(channels(), ElementsAre(1, 2, 3));
    const auto card = contentOf(planOf({block})).cards.at(0);
    EXPECT_EQ(card.sites[2].muscle, "Hamstrings");
    EXPECT_THAT(card.sites[2].own.inAskingOrder,
                ElementsAre(HandoutSetting{Field::phaseDuration, 300, false}));
    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_THAT(channels(), ElementsAre(3, 1, 2));
}

// Common practice, no source: 10 s on, 25 s off, 20 min; 34 cycles are 1190 s, and the 10 s that
// remain are one whole on phase.
TEST(HandoutContent, CountsTheContractionsOfASitting)
{
    const auto content = contentOf(planOf({blockOf(1, {siteOn(1, "Soleus")})}));
    const auto& rhythm = content.cards.at(0).common.rhythm;
    ASSERT_TRUE(rhythm);
    EXPECT_EQ(rhythm->contractions, (HandoutContractions{35, 35}));
    EXPECT_EQ(rhythm->onPhase, 10s);
    EXPECT_EQ(rhythm->offTime, 25s);
}

// Common practice, no source: 4 s on, 12 s off, 15 min; 56 cycles are 896 s, and the 4 s that
// remain complete one more. In 14 min 58 s that one is cut.
TEST(HandoutContent, KeepsBothCountsWhereTheSessionCutsAContraction)
{
    Site site = siteOn(1, "Soleus");
    site.settings.onTime = 4s;
    site.settings.offTime = 12s;
    site.settings.sessionLength = 14min + 58s;
    const auto content = contentOf(planOf({blockOf(1, {site})}));
    ASSERT_TRUE(content.cards.at(0).common.rhythm);
    EXPECT_EQ(content.cards[0].common.rhythm->contractions, (HandoutContractions{57, 56}));
}

TEST(HandoutContent, RampsAddedToTheOnTimeLengthenWhatIsFelt)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.stimulator.rampHabit = RampHabit::addedToOnTime;
    const auto content = contentOf(plan);
    EXPECT_EQ(content.rampHabit, RampHabit::addedToOnTime);
    ASSERT_TRUE(content.cards.at(0).common.rhythm);
    EXPECT_EQ(content.cards[0].common.rhythm->onPhase, 13s);
}

TEST(HandoutContent, ASittingIsTheLongestSiteOrAllOfThemInTurn)
{
    Block block = blockOf(1, {siteOn(1, "Soleus"), siteOn(2, "Peroneals")});
    block.sites[1].settings.sessionLength = 15min;
    EXPECT_EQ(contentOf(planOf({block})).cards.at(0).sitting, Milliseconds(20min));
    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_EQ(contentOf(planOf({block})).cards.at(0).sitting, Milliseconds(35min));
}

TEST(HandoutContent, HasNoSittingWhereTheSettingsCannotBeRun)
{
    Site site = siteOn(1, "Soleus");
    site.settings.offTime = 0s;
    const auto content = contentOf(planOf({blockOf(1, {site})}));
    EXPECT_FALSE(content.cards.at(0).sitting);
    EXPECT_FALSE(content.cards[0].common.rhythm);
}

TEST(HandoutContent, WarnsOfThePadsThatAreUsed)
{
    Site rubber = siteOn(1, "Soleus");
    rubber.pads[0].material = PadMaterial::carbonRubber;
    rubber.pads[1].material = PadMaterial::carbonRubber;
    const auto gel = contentOf(planOf({blockOf(1, {siteOn(1, "Soleus")})}));
    const auto wet = contentOf(planOf({blockOf(1, {rubber})}));
    EXPECT_THAT(gel.cautions.before, Contains(Caution::padsStillSticky));
    EXPECT_THAT(gel.cautions.before, Not(Contains(Caution::padsMoistAndFirm)));
    EXPECT_THAT(wet.cautions.before, Contains(Caution::padsMoistAndFirm));
    EXPECT_THAT(wet.cautions.before, Not(Contains(Caution::padsStillSticky)));
}

// What every handout must say about its use; common practice, no source.
TEST(HandoutContent, CarriesTheCautionsThatNeverMayBeMissing)
{
    const HandoutCautions cautions = contentOf(planOf({})).cautions;
    for (const Caution caution :
         {Caution::onlyAsShownOnThisPerson, Caution::neverHeadFaceOrNeck, Caution::neverAcrossChest,
          Caution::neverOverBrokenSkin, Caution::stimulatorsOwnInstructionsFirst,
          Caution::noSubstituteForAdvice, Caution::keepFromChildren}) {
        EXPECT_THAT(cautions.always, Contains(caution));
    }
    EXPECT_THAT(cautions.stopAndRing, Contains(Caution::skinStillRedOrBlistered));
    EXPECT_THAT(cautions.stopAndRing, Contains(Caution::inDoubt));
}

TEST(HandoutContent, NothingIsPrintedWhileTheGateIsShut)
{
    const Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    const auto content =
        handoutContent({}, patient(), course(), plan, ScreeningGate{}, std::nullopt, firstMonday);
    ASSERT_FALSE(content);
    EXPECT_EQ(content.error().code, ErrorCode::notScreened);
}

TEST(HandoutContent, CarriesTheAdviceOfAPrecautionAndNoneThatSaysNothing)
{
    ScreeningGate gate = tests::openGate(firstMonday);
    gate.advice = {{"heart_disease", "Heart disease?", "Breathe on quietly.", AdvicePlace::during},
                   {"regenerating_nerve", "A nerve growing back?", "", AdvicePlace::before}};
    const auto content =
        *handoutContent({}, patient(), course(), planOf({}), gate, std::nullopt, firstMonday);
    EXPECT_THAT(content.advice, ElementsAre(gate.advice[0]));
}

TEST(HandoutContent, NamesWhoIssuedAndWhoPrints)
{
    Plan plan = planOf({blockOf(1, {siteOn(1, "Soleus")})});
    plan.number = 3;
    const auto content = *handoutContent({}, patient(), course(), plan,
                                         tests::openGate(firstMonday), std::nullopt, firstMonday);
    EXPECT_EQ(content.planNumber, 3);
    EXPECT_EQ(content.planIssuedBy, "Ines Aldous");
    EXPECT_FALSE(content.printedBy);
    EXPECT_EQ(content.patientReference, "1042");
}
