// SPDX-License-Identifier: GPL-3.0-or-later
// What a screening blocks. Sources of the examples: "FDA" the labelling section of the guidance for
// powered muscle stimulators, 9 June 1999; "IEC" the instructions for use in IEC 60601-2-10. That
// the stricter reading wins at home is ours, *to be confirmed by a physiotherapist*.
#include "tests/support/screened.h"

#include "core/screening_gate.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string_view>

namespace quadrille
{
namespace
{

using namespace std::chrono_literals;
using std::chrono::months;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

Date on(int year, unsigned month, unsigned day)
{
    return Date(std::chrono::year(year) / static_cast<int>(month) / static_cast<int>(day));
}

const Date signedDay = on(2026, 3, 12);

std::vector<GateSite> rightThighLeftCalf()
{
    return {{"quadriceps", Side::right, BodyRegion::thigh},
            {"soleus", Side::left, BodyRegion::lowerLeg}};
}

/// Signed with one question of a class, answered so.
GateFacts answered(QuestionClass weight, Answer answer, std::vector<BodyPlace> places = {},
                   Reach reach = Reach::region)
{
    Screening screening;
    screening.id = ScreeningId(7);
    screening.signedOn = signedDay;
    screening.questions = {{.name = "asked",
                            .wording = "Asked?",
                            .questionClass = weight,
                            .reach = reach,
                            .advice = "Take care.",
                            .adviceAt = AdvicePlace::during}};
    screening.answers = {
        {.question = "asked", .answer = answer, .note = "noted", .places = std::move(places)}};
    return {
        .latest = screening, .overrides = {}, .sites = rightThighLeftCalf(), .today = signedDay};
}

ScreeningOverride goneAhead(const GateFacts& facts, const std::string& question = "asked")
{
    return {.screening = facts.latest->id,
            .question = question,
            .practitionerName = "Ruta Vennel",
            .reason = "agreed with the heart clinic",
            .madeAt = Moment(signedDay)};
}

struct Ruling {
    std::string_view sentence;
    QuestionClass weight;
    Answer answer;
    std::vector<BodyPlace> places;
    Reach reach;
    std::vector<std::size_t> blockedSites; ///< 0 right quadriceps, 1 left soleus
    bool open;
    bool advised;
};

TEST(ScreeningGate, EachClassOfAnswerBlocksOrAllowsAsTheTradeSays)
{
    const std::vector<BodyPlace> none;
    const std::vector<BodyPlace> leftCalf{{BodyRegion::lowerLeg, PlaceSide::left}};
    const std::vector<BodyPlace> leftThigh{{BodyRegion::thigh, PlaceSide::left}};
    const std::vector<BodyPlace> chest{{BodyRegion::chest, PlaceSide::both}};
    const auto whole = QuestionClass::contraindication;
    const auto local = QuestionClass::localContraindication;
    const auto caution = QuestionClass::precaution;
    const Ruling rulings[] = {
        {"a pacemaker (FDA, IEC) blocks everywhere",
         whole,
         Answer::yes,
         none,
         Reach::region,
         {0, 1},
         false,
         true},
        {"whether there is a pacemaker is not known: as yes",
         whole,
         Answer::notKnown,
         none,
         Reach::region,
         {0, 1},
         false,
         false},
        {"no pacemaker", whole, Answer::no, none, Reach::region, {}, true, false},
        {"infected skin on the left calf (FDA) blocks that site alone",
         local,
         Answer::yes,
         leftCalf,
         Reach::region,
         {1},
         false,
         true},
        {"infected skin on the left thigh lies under no site",
         local,
         Answer::yes,
         leftThigh,
         Reach::region,
         {},
         true,
         true},
        {"not known whether the left calf is infected: as yes",
         local,
         Answer::notKnown,
         leftCalf,
         Reach::region,
         {1},
         false,
         false},
        {"not known where: every site",
         local,
         Answer::notKnown,
         none,
         Reach::region,
         {0, 1},
         false,
         false},
        {"no infected skin", local, Answer::no, none, Reach::region, {}, true, false},
        {"an inflamed vein of the left thigh (FDA) reaches the calf of that leg",
         local,
         Answer::yes,
         leftThigh,
         Reach::limb,
         {1},
         false,
         true},
        {"current across the chest (FDA, IEC) is no matter of a calf or a thigh",
         local,
         Answer::yes,
         chest,
         Reach::region,
         {},
         true,
         true},
        {"epilepsy elsewhere than at head and neck (FDA: precaution) allows, with advice",
         caution,
         Answer::yes,
         none,
         Reach::region,
         {},
         true,
         true},
        {"a precaution that is not known allows",
         caution,
         Answer::notKnown,
         none,
         Reach::region,
         {},
         true,
         false},
        {"no precaution", caution, Answer::no, none, Reach::region, {}, true, false},
    };
    for (const Ruling& ruling : rulings) {
        SCOPED_TRACE(ruling.sentence);
        const ScreeningGate gate =
            screeningGate(answered(ruling.weight, ruling.answer, ruling.places, ruling.reach));
        EXPECT_EQ(gate.isOpen(), ruling.open);
        EXPECT_EQ(passGate(gate).has_value(), ruling.open);
        for (const std::size_t site : {0U, 1U}) {
            const bool blocked =
                std::ranges::find(ruling.blockedSites, site) != ruling.blockedSites.end();
            EXPECT_EQ(gate.isOpenFor(site), !blocked) << site;
            EXPECT_EQ(passGate(gate, site).has_value(), !blocked) << site;
        }
        EXPECT_THAT(gate.advice, SizeIs(ruling.advised ? 1 : 0));
        if (!ruling.open) {
            EXPECT_EQ(passGate(gate).error().code, ErrorCode::screeningBlocks);
            EXPECT_EQ(passGate(gate).error().subject, "Asked?");
        }
    }
}

TEST(ScreeningGate, AVerdictThatNobodyGaveIsShut)
{
    EXPECT_FALSE(ScreeningGate{}.isOpen());
    EXPECT_EQ(passGate(ScreeningGate{}).error().code, ErrorCode::notScreened);
}

TEST(ScreeningGate, WithoutASignedScreeningItIsShutForEverySite)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    facts.latest->signedOn.reset();
    EXPECT_EQ(passGate(screeningGate(facts)).error().code, ErrorCode::screeningNotSigned);
    EXPECT_FALSE(screeningGate(facts).isOpenFor(1));
    facts.latest.reset();
    EXPECT_EQ(passGate(screeningGate(facts), 0).error().code, ErrorCode::notScreened);
    facts.sites.clear(); // also for a course without sites
    EXPECT_FALSE(screeningGate(facts).isOpen());
}

TEST(ScreeningGate, ASignatureCountsFromItsDayOn)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    EXPECT_TRUE(screeningGate(facts).isOpen());
    facts.today = signedDay - std::chrono::days(1);
    const ScreeningGate before = screeningGate(facts);
    EXPECT_EQ(passGate(before).error().code, ErrorCode::screeningNotSigned);
    EXPECT_FALSE(before.validThrough);
}

TEST(ScreeningGate, ASignatureHoldsHalfAYearUnlessThePracticeSaysOtherwise)
{
    struct Row {
        Date signedOn;
        months validity;
        Date lastDay;
    };
    // By the calendar; a day that the month has not is the month's last.
    for (const Row& row : {Row{on(2026, 3, 12), usualValidity, on(2026, 9, 12)},
                           Row{on(2026, 8, 31), usualValidity, on(2027, 2, 28)},
                           Row{on(2027, 8, 31), usualValidity, on(2028, 2, 29)},
                           Row{on(2026, 8, 30), months(3), on(2026, 11, 30)},
                           Row{on(2026, 3, 12), months(12), on(2027, 3, 12)}}) {
        EXPECT_EQ(monthsLater(row.signedOn, row.validity), row.lastDay);
        GateFacts facts = answered(QuestionClass::precaution, Answer::no);
        facts.latest->signedOn = row.signedOn;
        facts.validity = row.validity;
        facts.today = row.lastDay;
        EXPECT_TRUE(screeningGate(facts).isOpen());
        facts.today = row.lastDay + std::chrono::days(1);
        const auto passed = passGate(screeningGate(facts));
        ASSERT_FALSE(passed);
        EXPECT_EQ(passed.error().code, ErrorCode::screeningTooOld);
        EXPECT_EQ(passed.error().detail, isoDate(row.lastDay));
    }
}

TEST(ScreeningGate, WhoGoesAheadWithAReasonLiftsThatOneBlock)
{
    GateFacts facts = answered(QuestionClass::contraindication, Answer::yes);
    facts.overrides = {goneAhead(facts)};
    ScreeningGate gate = screeningGate(facts);
    EXPECT_TRUE(gate.isOpen());
    ASSERT_THAT(gate.lifted, SizeIs(1));
    EXPECT_EQ(gate.lifted[0].practitioner, "Ruta Vennel");
    EXPECT_EQ(gate.lifted[0].reason, "agreed with the heart clinic");
    EXPECT_EQ(gate.lifted[0].block.question, "asked");

    facts.latest->questions.push_back({.name = "other", .wording = "Other?"});
    facts.latest->answers.push_back({.question = "other", .answer = Answer::yes, .note = "so"});
    gate = screeningGate(facts);
    EXPECT_EQ(passGate(gate).error().subject, "Other?");
    EXPECT_THAT(gate.lifted, SizeIs(1));
}

TEST(ScreeningGate, NoReasonOpensAnUnsignedOrAnOldScreening)
{
    GateFacts facts = answered(QuestionClass::contraindication, Answer::yes);
    facts.overrides = {goneAhead(facts), goneAhead(facts, "")};
    facts.today = on(2027, 3, 12);
    EXPECT_EQ(passGate(screeningGate(facts)).error().code, ErrorCode::screeningTooOld);
    facts.latest->signedOn.reset();
    EXPECT_EQ(passGate(screeningGate(facts)).error().code, ErrorCode::screeningNotSigned);
}

TEST(ScreeningGate, AReasonGivenForAnEarlierScreeningDoesNotHoldForTheNext)
{
    GateFacts facts = answered(QuestionClass::contraindication, Answer::yes);
    facts.overrides = {goneAhead(facts)};
    facts.latest->id = ScreeningId(8);
    EXPECT_FALSE(screeningGate(facts).isOpen());
}

TEST(ScreeningGate, WhereTheSkinFeelsNothingThatSiteIsBlocked)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    facts.latest->questions[0].name = std::string(skinSensation);
    facts.latest->answers[0].question = std::string(skinSensation);
    facts.latest->skin = {{.muscle = "quadriceps",
                           .side = Side::right,
                           .sharpBlunt = Sensation::intact,
                           .warmCold = Sensation::intact},
                          {.muscle = "soleus",
                           .side = Side::left,
                           .sharpBlunt = Sensation::intact,
                           .warmCold = Sensation::absent}};
    ScreeningGate gate = screeningGate(facts);
    EXPECT_TRUE(gate.isOpenFor(0));
    EXPECT_FALSE(gate.isOpenFor(1));
    EXPECT_EQ(passGate(gate).error().detail, "absent");
    EXPECT_THAT(gate.advice, SizeIs(1)); // of the question about feeling less

    facts.latest->skin[1].warmCold = Sensation::reduced; // FDA: precaution
    gate = screeningGate(facts);
    EXPECT_TRUE(gate.isOpen());
    EXPECT_THAT(gate.advice, SizeIs(1));

    facts.latest->skin[1].warmCold = Sensation::absent;
    facts.overrides = {goneAhead(facts, std::string(skinSensation))};
    EXPECT_TRUE(screeningGate(facts).isOpen());
}

TEST(ScreeningGate, ASiteWhoseSkinWasNotTestedIsNamedAndNotBlocked)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    facts.latest->skin = {{.muscle = "quadriceps",
                           .side = Side::right,
                           .sharpBlunt = Sensation::notTested,
                           .warmCold = Sensation::notTested}};
    const ScreeningGate gate = screeningGate(facts);
    EXPECT_TRUE(gate.isOpen());
    EXPECT_THAT(gate.untested, ElementsAre(0, 1));
}

// Found in "quadriceps"; the draft was typed again as "Quadriceps".
TEST(ScreeningGate, AMuscleTypedInOtherLettersIsTheSameSkin)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    facts.latest->skin = {
        {.muscle = "quadriceps", .side = Side::right, .sharpBlunt = Sensation::absent}};
    Site retyped;
    retyped.muscle = "Quadriceps";
    Site first = retyped;
    first.muscle = "quadriceps";
    facts.sites = gateSites({{.sites = {first, retyped}}}, facts.latest);
    EXPECT_THAT(facts.sites, SizeIs(1));
    EXPECT_FALSE(passGate(screeningGate(facts), facts.sites, retyped));
}

// Sensation absent under one pad of the thigh is no better under the next, until it was tested.
TEST(ScreeningGate, ASiteBesideNumbSkinIsBlockedUntilItsOwnSkinWasTested)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::no);
    facts.sites = {{"vastus medialis", Side::right, BodyRegion::thigh},
                   {"vastus medialis", Side::left, BodyRegion::thigh}};
    facts.latest->skin = {
        {.muscle = "rectus femoris", .side = Side::right, .sharpBlunt = Sensation::absent}};
    ScreeningGate gate = screeningGate(facts);
    EXPECT_FALSE(gate.isOpenFor(0));
    EXPECT_TRUE(gate.isOpenFor(1)) << "the other leg";
    facts.latest->skin.push_back(
        {.muscle = "vastus medialis", .side = Side::right, .sharpBlunt = Sensation::intact});
    EXPECT_TRUE(screeningGate(facts).isOpen());
}

TEST(ScreeningGate, AQuestionThatNobodyAnsweredIsNotKnown)
{
    GateFacts facts = answered(QuestionClass::contraindication, Answer::no);
    EXPECT_TRUE(screeningGate(facts).isOpen());
    facts.latest->answers.clear();
    EXPECT_EQ(passGate(screeningGate(facts)).error().detail, "not_known");
    facts.latest->signedOn.reset();
    EXPECT_THAT(screeningGate(facts).blocks, SizeIs(1)) << "it is still being taken down";
    facts.latest->signedOn = signedDay;
    facts.latest->questions.clear();
    EXPECT_EQ(passGate(screeningGate(facts)).error().code, ErrorCode::notScreened);
}

// The sites a form asks about are those the gate numbers, by name; one it never heard of passes
// only where nothing is in the way at all.
TEST(ScreeningGate, ASiteThatWasNotAskedForPassesOnlyAnOpenGate)
{
    GateFacts facts = answered(QuestionClass::localContraindication, Answer::yes,
                               {{BodyRegion::lowerLeg, PlaceSide::left}});
    const ScreeningGate gate = screeningGate(facts);
    Site thigh;
    thigh.muscle = "quadriceps";
    thigh.side = Side::right;
    Site unheard;
    unheard.muscle = "deltoid";
    EXPECT_TRUE(passGate(gate, facts.sites, thigh));
    EXPECT_FALSE(passGate(gate, facts.sites, unheard));
    EXPECT_FALSE(passGate(ScreeningGate{}, {}, thigh)) << "a verdict that nobody gave";
}

TEST(ScreeningGate, AnAnswerWithoutItsQuestionWeighsAsAContraindication)
{
    GateFacts facts = answered(QuestionClass::precaution, Answer::yes);
    facts.latest->questions.clear();
    EXPECT_FALSE(screeningGate(facts).isOpen());
}

} // namespace
} // namespace quadrille
