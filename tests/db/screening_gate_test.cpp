// SPDX-License-Identifier: GPL-3.0-or-later
// No plan is issued past the screening, by whatever way.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"
#include "tests/support/whole_caseload.h"

#include "db/caseload_query.h"
#include "db/practice_preferences.h"
#include "db/practice_questions.h"
#include "db/screenings.h"
#include "db/sql.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

const Date today = day(2026, 3, 12);

class IssueBehindTheGate : public testing::Test
{
protected:
    Result<PlanId> issue(Date on = today)
    {
        return store->write(author(), "issue plan", [&](Writing& writing) {
            return issuePlan(writing, tests::aDraft(ids),
                             {.fromDate = on, .reason = "first plan", .issuedBy = ids.practitioner},
                             on);
        });
    }
    ScreeningId add(const Screening& screening, bool isSigned = true)
    {
        return must(store->write(author(), "screen", [&](Writing& writing) {
            const ScreeningId id = addScreening(writing, screening);
            if (isSigned) {
                signScreening(writing, id, 1, ids.practitioner, today);
            }
            return id;
        }));
    }
    Screening withAnswer(const char* question, Answer given, std::vector<BodyPlace> places = {})
    {
        Screening screening = tests::allClear(ids.course);
        giveAnswer(screening, question, given);
        for (ScreeningAnswer& answer : screening.answers) {
            if (answer.question == question) {
                answer.note = "noted";
                answer.places = places;
            }
        }
        return screening;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store, tests::Screened::no);
};

TEST_F(IssueBehindTheGate, NothingIsIssuedWithoutASignedScreening)
{
    EXPECT_EQ(codeOf(issue()), ErrorCode::notScreened);
    const ScreeningId id = add(tests::allClear(ids.course), false);
    EXPECT_EQ(codeOf(issue()), ErrorCode::screeningNotSigned);
    must(store->write(author(), "sign", [&](Writing& writing) {
        signScreening(writing, id, 1, ids.practitioner, today);
    }));
    must(issue());
}

TEST_F(IssueBehindTheGate, AContraindicationBlocksUntilSomebodyGoesAhead)
{
    const ScreeningId id = add(withAnswer("active_implant", Answer::notKnown));
    EXPECT_EQ(codeOf(issue()), ErrorCode::screeningBlocks);
    must(store->write(author(), "go ahead", [&](Writing& writing) {
        ScreeningOverride reason;
        reason.screening = id;
        reason.question = "active_implant";
        reason.practitioner = ids.practitioner;
        reason.reason = "cardiologist agreed";
        addOverride(writing, reason);
    }));
    must(issue());
}

TEST_F(IssueBehindTheGate, ALocalOneBlocksWhereThePadsLieAndNowhereElse)
{
    add(withAnswer("broken_skin", Answer::yes, {{BodyRegion::thigh, PlaceSide::right}}));
    EXPECT_EQ(codeOf(issue()), ErrorCode::screeningBlocks); // the site is the right thigh's
    add(withAnswer("broken_skin", Answer::yes, {{BodyRegion::thigh, PlaceSide::left}}));
    must(issue());
}

TEST_F(IssueBehindTheGate, APrecautionAllows)
{
    add(withAnswer("heart_disease", Answer::yes));
    must(issue());
}

TEST_F(IssueBehindTheGate, ANewUnsignedScreeningBlocksAlthoughTheLastOneWasSigned)
{
    add(tests::allClear(ids.course));
    add(tests::allClear(ids.course), false);
    EXPECT_EQ(codeOf(issue()), ErrorCode::screeningNotSigned);
}

TEST_F(IssueBehindTheGate, AfterItsTermItBlocksAndThePracticeSaysHowLongThatIs)
{
    add(tests::allClear(ids.course));
    EXPECT_EQ(codeOf(issue(day(2026, 9, 13))), ErrorCode::screeningTooOld);
    must(store->write(author(), "set the term", [](Writing& writing) {
        setPracticePreference(writing, screeningValidityName, "7", 0);
    }));
    EXPECT_EQ(codeOf(issue(day(2026, 10, 13))), ErrorCode::screeningTooOld);
    must(issue(day(2026, 10, 12)));
}

TEST_F(IssueBehindTheGate, ATermThatIsNoNumberOfMonthsInBoundsIsAnErrorAndIssuesNothing)
{
    const auto validity = [&] { return store->read(screeningValidity); };
    EXPECT_EQ(must(validity()), usualValidity);
    add(tests::allClear(ids.course));
    Version version = 0;
    const auto set = [&](const std::string& text) {
        must(store->write(author(), "set the term", [&](Writing& writing) {
            setPracticePreference(writing, screeningValidityName, text, version);
        }));
        ++version;
    };
    for (const char* text : {"25", "240", "0", "-1", "soon", "", "6 months"}) {
        set(text);
        EXPECT_EQ(codeOf(validity()), ErrorCode::badFormat) << text;
        EXPECT_EQ(codeOf(issue()), ErrorCode::badFormat) << text;
    }
    set("24");
    EXPECT_EQ(must(validity()), mostValidity);
    set("1");
    EXPECT_EQ(must(validity()), leastValidity);
}

TEST_F(IssueBehindTheGate, PlainSqlFindsNoWayAroundTheSignature)
{
    add(tests::allClear(ids.course));
    must(issue());
    add(tests::allClear(ids.course), false);
    const auto cheat = [&](const std::vector<std::string>& statements) {
        const auto done = store->write(author(), "cheat", [&](Writing& writing) {
            for (const std::string& statement : statements) {
                run(writing.connection(), statement);
            }
        });
        EXPECT_EQ(codeOf(done), ErrorCode::refused);
        return done ? std::string() : done.error().detail;
    };
    const auto insertion = [](const std::string& issued) {
        return "INSERT INTO plan (course, number, issued_on, issued_by, issued_by_name, "
               "from_date, reason, stimulator, limits_version, issued) SELECT course, 2, "
               "issued_on, issued_by, issued_by_name, from_date, reason, stimulator, "
               "limits_version, " +
               issued + " FROM plan WHERE number = 1";
    };
    EXPECT_EQ(cheat({insertion("0"), "UPDATE plan SET issued = 1 WHERE number = 2"}),
              "a plan is issued when the latest screening of its course is signed");
    EXPECT_EQ(cheat({insertion("1")}), "a plan is written first, then issued");
}

TEST_F(IssueBehindTheGate, TheCaseloadKnowsTheLatestScreening)
{
    // The line that orders and the row that is shown say the same.
    const auto row = [&] {
        const CaseloadRow whole = must(store->read(tests::wholeCaseload)).at(0);
        const CaseloadFacts facts = must(store->read([](Reading& reading) {
                                        return currentCaseload(reading, day(2026, 3, 12));
                                    })).at(0);
        EXPECT_EQ(facts.course->screeningSigned, whole.screeningSigned);
        EXPECT_EQ(facts.course->screeningValidThrough, whole.screeningValidThrough);
        return whole;
    };
    EXPECT_FALSE(row().screeningSigned);
    add(tests::allClear(ids.course));
    EXPECT_TRUE(row().screeningSigned);
    EXPECT_EQ(row().screeningValidThrough, day(2026, 9, 12));
    add(tests::allClear(ids.course), false);
    EXPECT_FALSE(row().screeningSigned);
    EXPECT_EQ(row().screeningValidThrough, std::nullopt);
}

TEST_F(IssueBehindTheGate, AQuestionOfThePracticeIsArchivedNeverDeleted)
{
    PracticeQuestion own{.wording = "Afraid of current?",
                         .questionClass = QuestionClass::localContraindication,
                         .reach = Reach::limb,
                         .reason = "They stop early.",
                         .advice = "Begin low.",
                         .adviceAt = AdvicePlace::after};
    own.id = must(store->write(
        author(), "add", [&](Writing& writing) { return addPracticeQuestion(writing, own); }));
    EXPECT_THAT(must(store->read(practiceQuestions)), testing::ElementsAre(own));
    own.archived = true;
    own.wording = "Afraid of electricity?";
    must(store->write(author(), "change",
                      [&](Writing& writing) { changePracticeQuestion(writing, own); }));
    const auto again = store->write(
        author(), "change", [&](Writing& writing) { changePracticeQuestion(writing, own); });
    EXPECT_TRUE(again); // nothing differs
    own.version = 2;
    EXPECT_THAT(must(store->read(practiceQuestions)), testing::ElementsAre(own));
    own.version = 1;
    own.reason = "another";
    EXPECT_EQ(codeOf(store->write(author(), "change",
                                  [&](Writing& writing) { changePracticeQuestion(writing, own); })),
              ErrorCode::changedElsewhere);
    EXPECT_EQ(codeOf(store->write(author(), "delete",
                                  [](Writing& writing) {
                                      run(writing.connection(), "DELETE FROM practice_question");
                                  })),
              ErrorCode::refused);
    EXPECT_EQ(codeOf(store->write(
                  author(), "add",
                  [](Writing& writing) { addPracticeQuestion(writing, {.wording = " "}); })),
              ErrorCode::notFilled);
}

} // namespace
} // namespace quadrille::db
