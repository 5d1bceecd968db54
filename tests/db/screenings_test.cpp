// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/history.h"
#include "db/screenings.h"
#include "db/sql.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <utility>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class Screenings : public testing::Test
{
protected:
    /// A local contraindication of the left shin, one question not known, one site tested.
    Screening answered() const
    {
        Screening screening = tests::allClear(ids.course);
        giveAnswer(screening, "active_implant", Answer::notKnown);
        giveAnswer(screening, "broken_skin", Answer::yes);
        screening.answers[1].note = "left shin";
        screening.answers[1].places = {{BodyRegion::lowerLeg, PlaceSide::left}};
        screening.questions[1].regions = {BodyRegion::lowerLeg, BodyRegion::foot};
        screening.questions[1].reach = Reach::limb;
        screening.skin = {{.muscle = "thumb",
                           .region = BodyRegion::hand,
                           .side = Side::left,
                           .sharpBlunt = Sensation::reduced,
                           .warmCold = Sensation::notTested}};
        return screening;
    }
    ScreeningId add(const Screening& screening)
    {
        return must(store->write(author(), "screen", [&](Writing& writing) {
            return addScreening(writing, screening);
        }));
    }
    auto change(const Screening& screening)
    {
        return store->write(author(), "screen",
                            [&](Writing& writing) { changeScreening(writing, screening); });
    }
    auto sign(ScreeningId id, Version version)
    {
        return store->write(author(), "sign", [&](Writing& writing) {
            signScreening(writing, id, version, ids.practitioner, day(2026, 3, 12));
        });
    }
    std::vector<Screening> all()
    {
        return must(
            store->read([&](Reading& reading) { return screeningsOf(reading, ids.course); }));
    }
    void expectRefused(const std::string& sql)
    {
        const auto done = store->write(author(), "cheat",
                                       [&](Writing& writing) { run(writing.connection(), sql); });
        EXPECT_EQ(codeOf(done), ErrorCode::refused) << sql;
    }
    void expectNotSigned(const Screening& screening)
    {
        // In a transaction that is undone, so that the next finds the course as it was.
        const auto done = store->write(author(), "sign", [&](Writing& writing) {
            signScreening(writing, addScreening(writing, screening), 1, ids.practitioner,
                          day(2026, 3, 12));
        });
        EXPECT_EQ(codeOf(done), ErrorCode::refused);
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store, tests::Screened::no);
};

TEST_F(Screenings, EverythingIsChangedUntilItIsSigned)
{
    Screening screening = answered();
    screening.id = add(screening);
    EXPECT_THAT(all(), ElementsAre(screening));
    giveAnswer(screening, "active_implant", Answer::no);
    screening.skin[0].warmCold = Sensation::absent;
    screening.questions[2].advice = "Rest between contractions.";
    must(change(screening));
    screening.version = 2;
    EXPECT_THAT(all(), ElementsAre(screening));
    must(sign(*screening.id, 2));
    screening.signedOn = day(2026, 3, 12);
    screening.signedBy = ids.practitioner;
    screening.signedByName = "Ruta Vennel";
    screening.version = 3;
    EXPECT_THAT(all(), ElementsAre(screening));
    EXPECT_EQ(
        must(store->read([&](Reading& reading) { return latestScreeningOf(reading, ids.course); })),
        screening);
    giveAnswer(screening, "broken_skin", Answer::no);
    EXPECT_EQ(codeOf(change(screening)), ErrorCode::refused);
}

TEST_F(Screenings, WhatIsSignedIsWhatWasRead)
{
    Screening screening = answered();
    screening.id = add(screening);
    const Screening seen = screening;
    giveAnswer(screening, "active_implant", Answer::no);
    must(change(screening));
    EXPECT_EQ(codeOf(sign(*seen.id, seen.version)), ErrorCode::changedElsewhere);
    EXPECT_EQ(all().at(0).signedOn, std::nullopt);
}

TEST_F(Screenings, NothingWithAGapIsSignedWhoeverWrites)
{
    Screening screening = answered();
    screening.answers.pop_back(); // a question left open
    expectNotSigned(screening);
    screening = answered();
    screening.answers.clear();
    screening.questions.clear(); // nothing asked
    expectNotSigned(screening);
    screening = answered();
    for (const char* blank : {"", "  ", "\n", "\t\r\n"}) {
        screening.answers[1].note = blank; // a yes without a note
        expectNotSigned(screening);
    }
    screening = answered();
    screening.answers[1].places.clear(); // nobody knows where
    expectNotSigned(screening);
    screening = answered();
    screening.skin[0].warmCold.reset(); // half a test
    expectNotSigned(screening);
    screening = answered();
    screening.skinSeen = false;
    expectNotSigned(screening);
    screening = answered();
    screening.questions.pop_back(); // an answer to nothing
    expectNotSigned(screening);
    must(sign(add(answered()), 1));
}

TEST_F(Screenings, AChangeMakesTheNextAndTheOldOneStays)
{
    must(sign(add(answered()), 1));
    add(answered());
    EXPECT_EQ(all().at(0).signedByName, "Ruta Vennel");
    EXPECT_EQ(all().at(1).number, 2);
    EXPECT_EQ(all().at(1).signedOn, std::nullopt);
    const auto third = store->write(
        author(), "screen", [&](Writing& writing) { return addScreening(writing, answered()); });
    EXPECT_EQ(codeOf(third), ErrorCode::refused); // one unsigned at a time
}

TEST_F(Screenings, NoRowOfASignedOneIsChangedAddedOrTakenAway)
{
    must(sign(add(answered()), 1));
    expectRefused("UPDATE screening SET signed_by_name = 'another' WHERE number = 1");
    expectRefused("UPDATE screening SET skin_seen = 0");
    expectRefused("DELETE FROM screening");
    expectRefused("INSERT OR REPLACE INTO screening (id, course, number, questions_version) "
                  "VALUES (1, 1, 1, 1)");
    for (const char* table :
         {"screening_answer", "screening_question", "screening_place", "skin_test"}) {
        const std::string name(table);
        expectRefused("DELETE FROM " + name);
        expectRefused("UPDATE " + name + " SET screening = screening");
        expectRefused("INSERT OR REPLACE INTO " + name + " SELECT * FROM " + name + " LIMIT 1");
    }
    expectRefused("UPDATE screening_answer SET answer = 'no'");
    expectRefused("INSERT INTO screening_answer VALUES (1, 'another', 'no', '')");
}

TEST_F(Screenings, TheSchemaKnowsNoOtherWords)
{
    add(answered());
    for (const char* sql :
         {"INSERT INTO screening_place VALUES (1, 'broken_skin', 9, 'ear', 'left')",
          "INSERT INTO screening_place VALUES (1, 'broken_skin', 9, 'foot', 'middle')",
          "INSERT INTO skin_test VALUES (1, 9, 'soleus', 'left', NULL, 'dull', NULL)",
          "INSERT INTO skin_test VALUES (1, 9, 'soleus', 'both', NULL, NULL, NULL)",
          "INSERT INTO screening_question VALUES (1, 'more', 9, 'warning', 'region', '', 'More?', "
          "'', 'before')",
          "INSERT INTO screening_question VALUES (1, 'more', 9, 'precaution', 'body', '', 'More?', "
          "'', 'before')",
          "INSERT INTO screening_question VALUES (1, 'more', 9, 'precaution', 'region', '', ' ', "
          "'', 'before')",
          "INSERT INTO screening_question VALUES (1, 'more', 9, 'precaution', 'region', '', "
          "'More?', '', 'never')",
          "INSERT INTO screening_question VALUES (1, 'more', 1, 'precaution', 'region', '', "
          "'More?', '', 'before')"}) {
        const auto done = store->write(author(), "enter",
                                       [&](Writing& writing) { run(writing.connection(), sql); });
        EXPECT_FALSE(done) << sql;
    }
}

TEST_F(Screenings, EachAnswerIsInTheHistory)
{
    Screening screening = answered();
    screening.id = add(screening);
    giveAnswer(screening, "active_implant", Answer::yes);
    screening.answers[0].note = "since 2019";
    screening.answers[1].places[0].side = PlaceSide::both;
    screening.skinSeen = false;
    must(change(screening));
    const auto changes =
        must(store->read([&](Reading& reading) { return historyOf(reading, ids.patient, 100); }));
    for (const char* field : {"answers.active_implant.answer", "answers.active_implant.note",
                              "answers.broken_skin.places.1.side", "skin_seen"}) {
        EXPECT_TRUE(std::ranges::any_of(changes, [&](const Change& change) {
            return change.recordKind == "screening" && change.field == field;
        })) << field;
    }
}

TEST_F(Screenings, SavedAgainAsItIsKeepsItsVersion)
{
    Screening screening = answered();
    // Why a question is asked, and from where that is known, is not kept with a screening.
    screening.questions[0].reason = "current may stop it";
    screening.questions[0].source = "a handbook";
    screening.id = add(screening);
    must(change(screening));
    EXPECT_EQ(all().at(0).version, 1);
}

TEST_F(Screenings, WhatIsAskedAndAdvisedIsInTheHistory)
{
    Screening screening = answered();
    screening.id = add(screening);
    screening.questions[2].advice = "Rest between contractions.";
    std::swap(screening.questions[0], screening.questions[1]);
    must(change(screening));
    const auto changes =
        must(store->read([&](Reading& reading) { return historyOf(reading, ids.patient, 100); }));
    const auto advice =
        std::ranges::find(changes, "questions.heart_disease.advice", &Change::field);
    ASSERT_NE(advice, changes.end());
    EXPECT_EQ(advice->from, "Breathe on quietly.");
    EXPECT_EQ(advice->to, "Rest between contractions.");
    const auto order =
        std::ranges::find(changes, "questions.active_implant.ordinal", &Change::field);
    ASSERT_NE(order, changes.end());
    EXPECT_EQ(order->to, "2");
}

TEST_F(Screenings, AReasonForGoingAheadIsPermanent)
{
    const ScreeningId first = add(answered());
    ScreeningOverride reason;
    reason.screening = first;
    reason.question = "broken_skin";
    reason.practitioner = ids.practitioner;
    reason.reason = "no pad goes near it";
    const auto record = [&] {
        return store->write(author(), "go ahead",
                            [&](Writing& writing) { return addOverride(writing, reason); });
    };
    EXPECT_EQ(codeOf(record()), ErrorCode::refused); // not signed yet
    must(sign(first, 1));
    reason.id = must(record());
    reason.practitionerName = "Ruta Vennel";
    reason.madeAt = temp.clock.now();
    EXPECT_THAT(must(store->read([&](Reading& reading) { return overridesOf(reading, first); })),
                ElementsAre(reason));
    expectRefused("UPDATE screening_override SET reason = 'another'");
    expectRefused("DELETE FROM screening_override");
    reason.reason = " ";
    EXPECT_EQ(codeOf(record()), ErrorCode::notFilled);
}

} // namespace
} // namespace quadrille::db
