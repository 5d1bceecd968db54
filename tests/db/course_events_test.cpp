// SPDX-License-Identifier: GPL-3.0-or-later
// What happens in a course: kept as entered, changed over the version that was read, never deleted.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/course_events.h"
#include "db/history.h"
#include "db/practice_preferences.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class CourseEvents : public testing::Test
{
protected:
    template <class Act>
    auto write(Act&& act)
    {
        return store->write(author(), "test", std::forward<Act>(act));
    }
    template <class Act>
    auto read(Act&& act)
    {
        return must(store->read(std::forward<Act>(act)));
    }
    /// Adds a record, reads it back, changes it twice from the same version: the second is refused.
    template <class Part, class Add, class Change, class All>
    void expectKept(Part part, Add add, Change change, All all, void (*alter)(Part&),
                    const char* table)
    {
        part.id = must(write([&](Writing& writing) { return add(writing, part); }));
        const auto stored = [&] {
            return read([&](Reading& reading) { return all(reading, ids.course); });
        };
        ASSERT_THAT(stored(), ElementsAre(part)) << table;
        Part stale = part;
        alter(part);
        must(write([&](Writing& writing) { change(writing, part); }));
        part.version = 2;
        EXPECT_THAT(stored(), ElementsAre(part)) << table;
        stale.withdrawn = true;
        const auto late = write([&](Writing& writing) { change(writing, stale); });
        EXPECT_EQ(codeOf(late), ErrorCode::changedElsewhere) << table;
        EXPECT_EQ(late.error().detail, "Set-up") << table;
        EXPECT_THAT(stored(), ElementsAre(part)) << table;
        part.withdrawn = true;
        must(write([&](Writing& writing) { change(writing, part); }));
        EXPECT_TRUE(stored().at(0).withdrawn) << table;
        EXPECT_EQ(codeOf(write([&](Writing& writing) {
                      run(writing.connection(), std::string("DELETE FROM ") + table);
                  })),
                  ErrorCode::refused)
            << table;
        const auto changes =
            read([&](Reading& reading) { return historyOfRecord(reading, table, part.id->key()); });
        ASSERT_GE(changes.size(), 3U) << table;
        EXPECT_EQ(changes.front().act, ChangeAct::created) << table;
        EXPECT_EQ(changes.back().field, "withdrawn") << table;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(CourseEvents, APauseIsKept)
{
    Pause pause;
    pause.course = ids.course;
    pause.fromDate = day(2026, 2, 23);
    pause.reason = "a cold";
    expectKept<Pause>(
        pause, addPause, changePause, pausesOf,
        [](Pause& changed) { changed.toDate = day(2026, 2, 27); }, "pause");
}

TEST_F(CourseEvents, TwoPausesNeverOverlap)
{
    Pause first;
    first.course = ids.course;
    first.fromDate = day(2026, 2, 23);
    first.toDate = day(2026, 2, 27);
    first.reason = "a cold";
    first.id = must(write([&](Writing& writing) { return addPause(writing, first); }));
    Pause second = first;
    second.fromDate = day(2026, 2, 27);
    second.toDate.reset();
    EXPECT_EQ(codeOf(write([&](Writing& writing) { return addPause(writing, second); })),
              ErrorCode::refused);
    second.fromDate = day(2026, 2, 28);
    must(write([&](Writing& writing) { return addPause(writing, second); }));
    first.toDate = day(2026, 2, 28);
    EXPECT_EQ(codeOf(write([&](Writing& writing) { changePause(writing, first); })),
              ErrorCode::refused);
    Pause backwards = second;
    backwards.fromDate = day(2026, 1, 10);
    backwards.toDate = day(2026, 1, 9);
    const auto refused = write([&](Writing& writing) { return addPause(writing, backwards); });
    EXPECT_EQ(codeOf(refused), ErrorCode::outOfRange);
}

TEST_F(CourseEvents, AFollowUpIsKeptWithTheNameOfWhoHeldIt)
{
    FollowUp visit;
    visit.course = ids.course;
    visit.heldOn = day(2026, 3, 2);
    visit.practitioner = ids.practitioner;
    visit.practitionerName = "Ruta Vennel";
    visit.review = "Steadier on stairs.";
    visit.nextVisitOn = day(2026, 3, 16);
    expectKept<FollowUp>(
        visit, addFollowUp, changeFollowUp, followUpsOf,
        [](FollowUp& changed) {
            changed.decision = Decision::stepUp;
            changed.reason = "four weeks at ease";
        },
        "follow_up");
}

TEST_F(CourseEvents, AFollowUpBearsTheNameInTheStoreWhateverTheCallerSays)
{
    const auto anselm = must(write([](Writing& writing) {
        Practitioner another = tests::aPractitioner();
        another.name = "Anselm Orrick";
        return addPractitioner(writing, another);
    }));
    FollowUp visit;
    visit.course = ids.course;
    visit.heldOn = day(2026, 3, 2);
    visit.practitioner = ids.practitioner;
    visit.practitionerName = "Somebody Else";
    must(write([&](Writing& writing) { return addFollowUp(writing, visit); }));
    const auto stored = [&] {
        return must(store->read([&](Reading& reading) { return followUpsOf(reading, ids.course); }))
            .at(0);
    };
    EXPECT_EQ(stored().practitionerName, "Ruta Vennel");
    FollowUp other = stored();
    other.practitioner = anselm;
    must(write([&](Writing& writing) { changeFollowUp(writing, other); }));
    EXPECT_EQ(stored().practitionerName, "Anselm Orrick");
}

TEST_F(CourseEvents, ACounterReadingIsKept)
{
    CounterReading counter;
    counter.course = ids.course;
    counter.readOn = day(2026, 3, 2);
    counter.totalUses = 15;
    expectKept<CounterReading>(
        counter, addCounterReading, changeCounterReading, counterReadingsOf,
        [](CounterReading& changed) { changed.totalTime = std::chrono::hours(5); },
        "counter_reading");
    counter.totalUses.reset();
    EXPECT_EQ(codeOf(write([&](Writing& writing) { return addCounterReading(writing, counter); })),
              ErrorCode::outOfRange);
}

TEST_F(CourseEvents, ADifferenceThatIsExplainedOtherwiseNeedsWords)
{
    CounterReading counter;
    counter.course = ids.course;
    counter.readOn = day(2026, 3, 9);
    counter.totalUses = 12;
    counter.explanation = CounterExplanation::other;
    counter.explanationWords = "a cousin tried it";
    counter.id = must(write([&](Writing& writing) { return addCounterReading(writing, counter); }));
    const auto stored = [&] {
        return read([&](Reading& reading) { return counterReadingsOf(reading, ids.course); });
    };
    EXPECT_THAT(stored(), ElementsAre(counter));
    CounterReading wordless = counter;
    for (const char* nothing : {"", " \n"}) {
        wordless.explanationWords = nothing;
        const auto added =
            write([&](Writing& writing) { return addCounterReading(writing, wordless); });
        EXPECT_EQ(codeOf(added), ErrorCode::notFilled);
        EXPECT_EQ(added.error().field, Field::reason);
        EXPECT_EQ(codeOf(write([&](Writing& writing) { changeCounterReading(writing, wordless); })),
                  ErrorCode::notFilled);
    }
    EXPECT_THAT(stored(), ElementsAre(counter));
    const auto raw = temp.rawConnection();
    EXPECT_THROW(run(*raw, "UPDATE counter_reading SET explanation = 'weather'"), SqlError);
    EXPECT_THROW(run(*raw, "UPDATE counter_reading SET explanation_words = ''"), SqlError);
}

TEST_F(CourseEvents, TheDiaryIsKnownUpToTheLatestReceipt)
{
    DiaryReceived receipt;
    receipt.course = ids.course;
    receipt.throughDate = day(2026, 3, 1);
    receipt.receivedOn = day(2026, 3, 2);
    const auto through = [&] {
        return read([&](Reading& reading) { return diaryReceivedThrough(reading, ids.course); });
    };
    EXPECT_EQ(through(), std::nullopt);
    expectKept<DiaryReceived>(
        receipt, addReceipt, changeReceipt, receiptsOf,
        [](DiaryReceived& changed) { changed.throughDate = day(2026, 2, 28); }, "diary_received");
    EXPECT_EQ(through(), std::nullopt); // that one is withdrawn
    must(write([&](Writing& writing) { return addReceipt(writing, receipt); }));
    receipt.throughDate = day(2026, 2, 15);
    must(write([&](Writing& writing) { return addReceipt(writing, receipt); }));
    EXPECT_EQ(through(), day(2026, 3, 1));
}

TEST_F(CourseEvents, APrintedHandoutIsRememberedWithItsPlan)
{
    const PlanId plan = tests::anIssuedPlan(*store, ids);
    PrintedDocument handout;
    handout.course = ids.course;
    handout.plan = plan;
    handout.id =
        must(write([&](Writing& writing) { return addPrintedDocument(writing, handout); }));
    handout.printedAt = temp.clock.now();
    handout.printedByName = "Set-up";
    EXPECT_THAT(read([&](Reading& reading) { return printedDocumentsOf(reading, ids.course); }),
                ElementsAre(handout));
    for (const char* sql : {"DELETE FROM printed_document", "UPDATE printed_document SET kind = "
                                                            "'letter'"}) {
        EXPECT_EQ(codeOf(write([&](Writing& writing) { run(writing.connection(), sql); })),
                  ErrorCode::refused);
    }
}

TEST_F(CourseEvents, ARecordKeepsItsCourse)
{
    const CourseId other = must(
        write([&](Writing& writing) { return addCourse(writing, tests::aCourse(ids.patient)); }));
    Pause pause;
    pause.course = ids.course;
    pause.fromDate = day(2026, 2, 23);
    pause.reason = "a cold";
    pause.id = must(write([&](Writing& writing) { return addPause(writing, pause); }));
    pause.course = other;
    EXPECT_EQ(codeOf(write([&](Writing& writing) { changePause(writing, pause); })),
              ErrorCode::refused);
}

TEST_F(CourseEvents, APreferenceOfThePracticeIsSetAndChanged)
{
    const auto set = [&](const std::string& value, Version read) {
        return write([&](Writing& writing) {
            setPracticePreference(writing, "session_done_percent", value, read);
        });
    };
    const auto stored = [&] {
        return read(
            [](Reading& reading) { return practicePreference(reading, "session_done_percent"); });
    };
    EXPECT_FALSE(stored());
    must(set("90", 0));
    EXPECT_EQ(stored()->value, "90");
    must(set("80", 1));
    EXPECT_EQ(stored()->value, "80");
    EXPECT_EQ(stored()->version, 2);
    EXPECT_EQ(codeOf(set("70", 1)), ErrorCode::changedElsewhere);
    EXPECT_EQ(stored()->value, "80");
}

} // namespace
} // namespace quadrille::db
