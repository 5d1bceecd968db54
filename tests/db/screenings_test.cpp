// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/history.h"
#include "db/screenings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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
    Screening answered() const
    {
        Screening screening;
        screening.course = ids.course;
        screening.answers = {
            {.question = "broken_skin", .answer = Answer::yes, .note = "left shin"},
            {.question = "pacemaker", .answer = Answer::no, .note = {}},
            {.question = "pregnancy", .answer = Answer::notKnown, .note = {}}};
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

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store, tests::Screened::no);
};

TEST_F(Screenings, AnswersAreChangedUntilTheyAreSigned)
{
    Screening screening = answered();
    screening.id = add(screening);
    EXPECT_THAT(all(), ElementsAre(screening));
    screening.answers[2].answer = Answer::no;
    must(change(screening));
    screening.version = 2;
    EXPECT_THAT(all(), ElementsAre(screening));
    must(sign(*screening.id, 2));
    screening.signedOn = day(2026, 3, 12);
    screening.signedBy = ids.practitioner;
    screening.signedByName = "Ruta Vennel";
    screening.version = 3;
    EXPECT_THAT(all(), ElementsAre(screening));
    screening.answers[0].answer = Answer::no;
    EXPECT_EQ(codeOf(change(screening)), ErrorCode::refused);
}

TEST_F(Screenings, WhatIsSignedIsWhatWasRead)
{
    Screening screening = answered();
    screening.id = add(screening);
    Screening seen = screening;
    screening.answers[1].answer = Answer::yes;
    screening.answers[1].note = "since 2019";
    must(change(screening));
    EXPECT_EQ(codeOf(sign(*seen.id, seen.version)), ErrorCode::changedElsewhere);
    EXPECT_EQ(all().at(0).signedOn, std::nullopt);
}

TEST_F(Screenings, NothingUnansweredAndNoYesWithoutANoteIsSigned)
{
    Screening empty = answered();
    empty.answers.clear();
    EXPECT_EQ(codeOf(sign(add(empty), 1)), ErrorCode::refused);
    Screening noNote = answered();
    noNote.answers[0].note = "  ";
    EXPECT_EQ(codeOf(sign(add(noNote), 1)), ErrorCode::refused);
}

TEST_F(Screenings, AChangeMakesTheNextAndTheOldOneStays)
{
    const ScreeningId first = add(answered());
    must(sign(first, 1));
    add(answered());
    EXPECT_EQ(all().at(0).signedByName, "Ruta Vennel");
    EXPECT_EQ(all().at(1).number, 2);
    EXPECT_EQ(all().at(1).signedOn, std::nullopt);
    expectRefused("UPDATE screening SET signed_by_name = 'another' WHERE number = 1");
    expectRefused("DELETE FROM screening");
    expectRefused("DELETE FROM screening_answer WHERE screening = 1");
    expectRefused("UPDATE screening_answer SET answer = 'no'");
    expectRefused("INSERT INTO screening_answer VALUES (1, 'another', 'no', '')");
    expectRefused("INSERT OR REPLACE INTO screening (id, course, number, questions_version) "
                  "VALUES (1, 1, 1, 1)");
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
