// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/screening_questions.h"
#include "app/words/screening_text.h"

#include "core/screening_gate.h"

#include <QLocale>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <string>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

using Class = QuestionClass;

std::string problemOf(const char* json)
{
    const auto set = questionSetFrom(json);
    EXPECT_FALSE(set);
    return set ? std::string() : set.error().detail;
}

} // namespace

// What each source says, and which reading wins for unsupervised use at home. "FDA": labelling
// section of the guidance of 9 June 1999, seen. "IEC": instructions for use in 60601-2-10, seen.
// "H": Houghton, Nussbaum and Hoens 2010, from memory. The stricter wins; that is ours, *to be
// confirmed by a physiotherapist*.
TEST(BuiltInQuestions, HaveTheClassOfTheStricterSource)
{
    const std::map<std::string, Class> expected{
        {"active_implant", Class::contraindication},       // FDA contraindication; IEC
        {"cannot_stop", Class::contraindication},          // H
        {"unstable_heart", Class::contraindication},       // FDA precaution; unstable: ours
        {"blood_clot", Class::localContraindication},      // FDA warning, phlebitis
        {"cancer", Class::localContraindication},          // FDA warning
        {"infected_skin", Class::localContraindication},   // FDA warning
        {"broken_skin", Class::localContraindication},     // all
        {"irradiated", Class::localContraindication},      // H
        {"bone_infection", Class::localContraindication},  // H
        {"bleeding", Class::localContraindication},        // FDA precaution; H stricter
        {"varicose_veins", Class::localContraindication},  // FDA
        {"poor_blood_flow", Class::localContraindication}, // H
        {"pregnancy", Class::localContraindication},       // FDA precaution; H on the trunk
        {"pelvic_pads", Class::localContraindication},     // FDA, H
        {"chest_path", Class::localContraindication},      // FDA, IEC
        {"neck_head_path", Class::localContraindication},  // FDA, IEC
        {"epilepsy", Class::localContraindication},        // FDA precaution; head and neck local
        {"skin_sensation", Class::precaution},             // FDA precaution; absent: the skin test
        {"heart_disease", Class::precaution},              // FDA precaution
        {"recent_repair", Class::precaution},              // FDA precaution
        {"metal", Class::precaution},                      // no contraindication: trials over it
        {"skin_disease", Class::precaution},               // common practice, no source
        {"growing", Class::precaution},                    // H
        {"regenerating_nerve", Class::precaution},         // H
        {"denervated", Class::precaution},                 // strength-duration curves
        {"high_cord_injury", Class::precaution},           // from memory
        {"brittle_bones", Class::precaution},              // from memory
        {"botulinum_toxin", Class::precaution},            // exclusion in stroke trials
        {"thick_fat", Class::precaution},                  // from memory
        {"muscle_breakdown", Class::precaution},           // from memory
    };
    std::map<std::string, Class> found;
    for (const ScreeningQuestion& question : builtInQuestions().questions) {
        found[question.name] = question.questionClass;
    }
    EXPECT_EQ(found, expected);
}

TEST(BuiltInQuestions, SayWhyTheyAreAskedAndFromWhere)
{
    for (const ScreeningQuestion& question : builtInQuestions().questions) {
        EXPECT_TRUE(question.wording.ends_with("?")) << question.name;
        EXPECT_FALSE(question.reason.empty()) << question.name;
        EXPECT_FALSE(question.source.empty()) << question.name;
        EXPECT_THAT(whyText(question).toStdString(),
                    testing::HasSubstr("to be confirmed by a physiotherapist"));
    }
    const QuestionSet set = builtInQuestions();
    EXPECT_THAT(set.questions[1].source, testing::HasSubstr("from memory"));
    EXPECT_THAT(set.questions[0].source, testing::Not(testing::HasSubstr("from memory")));
}

// FDA and IEC: never across the chest, never on head and front of the neck, on nobody.
TEST(BuiltInQuestions, OfFixedPlacesBlockSitesThereAndNowhereElse)
{
    const QuestionSet set = builtInQuestions();
    for (const auto& [name, region] :
         {std::pair("chest_path", BodyRegion::chest), std::pair("neck_head_path", BodyRegion::neck),
          std::pair("epilepsy", BodyRegion::head), std::pair("pregnancy", BodyRegion::abdomen),
          std::pair("pelvic_pads", BodyRegion::pelvis)}) {
        Screening screening = newScreening(CourseId(1), set.questions, set.version);
        screening.signedOn = Date{};
        for (const ScreeningQuestion& question : set.questions) {
            giveAnswer(screening, question.name, Answer::no);
        }
        giveAnswer(screening, name, Answer::yes);
        const ScreeningGate gate =
            screeningGate({.latest = screening,
                           .overrides = {},
                           .sites = {{"there", Side::right, region},
                                     {"quadriceps", Side::right, BodyRegion::thigh}},
                           .today = Date{}});
        EXPECT_FALSE(gate.isOpenFor(0)) << name;
        EXPECT_TRUE(gate.isOpenFor(1)) << name;
    }
}

TEST(BuiltInQuestions, ThePracticesOwnFollowAndNoneIsTakenAway)
{
    const QuestionSet builtIn = builtInQuestions();
    const QuestionSet all =
        questionsToAsk({{.id = PracticeQuestionId(3), .wording = "Afraid of current?"},
                        {.id = PracticeQuestionId(4), .wording = "Old?", .archived = true}});
    ASSERT_EQ(all.questions.size(), builtIn.questions.size() + 1);
    EXPECT_EQ(all.questions.back().name, "own_3");
}

TEST(QuestionSets, ThatAreNotUnderstoodSayWhere)
{
    EXPECT_FALSE(problemOf("{").empty());
    EXPECT_THAT(problemOf("{}"), testing::HasSubstr("version"));
    EXPECT_THAT(problemOf(R"({"version":1,"questions":[]})"), testing::HasSubstr("no question"));
    EXPECT_THAT(problemOf(R"({"version":1,"questions":[{"name":"a"}]})"),
                testing::HasSubstr("of “a” is missing"));
    const std::string whole = R"({"name":"a","wording":"A?","reason":"r","source":"s","class":)";
    EXPECT_THAT(problemOf((R"({"version":1,"questions":[)" + whole + R"("never"}]})").c_str()),
                testing::HasSubstr("not understood"));
    const std::string good = whole + R"("precaution"})";
    EXPECT_THAT(problemOf((R"({"version":1,"questions":[)" + good + "," + good + "]}").c_str()),
                testing::HasSubstr("stands twice"));
}

TEST(ScreeningWording, SaysWhatIsMissingBeforeSigning)
{
    EXPECT_EQ(missingText({{GapKind::notAnswered, 1},
                           {GapKind::notAnswered, 12},
                           {GapKind::noNote, 4},
                           {GapKind::skinNotSeen, 0}})
                  .toStdString(),
              "Before signing: answer 2 and 13; add a note to 5; look at the skin.");
    EXPECT_TRUE(missingText({}).isEmpty());
    EXPECT_EQ(numbersText({0, 1, 2, 3, 4, 5, 6}).toStdString(), "1, 2, 3, 4, 5 and 2 more");
}

TEST(ScreeningInTheHead, NamesEverythingThatSomebodyWentAheadOf)
{
    const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    ScreeningGate gate;
    gate.blocks.clear();
    gate.validThrough = Date(std::chrono::days(20'000));
    gate.lifted = {
        {.block = {.reason = GateReason::contraindication,
                   .question = "active_implant",
                   .wording = "An implant with a battery?"},
         .practitioner = "Ruta Vennel",
         .reason = "asked the heart clinic",
         .madeAt = {}},
        {.block = {.reason = GateReason::sensationAbsent, .question = std::string(skinSensation)},
         .practitioner = "Odo Marsh",
         .reason = "watched\nthroughout",
         .madeAt = {}}};
    const ScreeningHeadline head = screeningHeadline(gate, std::nullopt, text);
    EXPECT_EQ(head.text.toStdString(), "Gone ahead: An implant with a battery · no sensation");
    EXPECT_EQ(head.second.toStdString(),
              "Ruta Vennel: asked the heart clinic · Odo Marsh: watched throughout");
    EXPECT_TRUE(head.warns);
}
