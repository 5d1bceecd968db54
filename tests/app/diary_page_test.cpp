// SPDX-License-Identifier: GPL-3.0-or-later
// What the Diary page saves, keeps, refuses and shows.
#include "app/grid/week_tally.h"
#include "app/window/store_events.h"
#include "tests/app/diary_job.h"
#include "tests/support/diary_records.h"

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;
using testing::HasSubstr;

TEST_F(DiaryJob, WithoutAPlanThereIsNothingToCopyAndThePageSaysSo)
{
    open();
    EXPECT_TRUE(practice.find<QLabel>("noDiary")->isVisible());
    EXPECT_FALSE(grid()->isVisible());
}

TEST_F(DiaryJob, BeforeTheFirstEntryThePageSaysWhereToBegin)
{
    issue();
    open();
    EXPECT_EQ(practice.find<QLabel>("diaryHint")->text(),
              QStringLiteral("No diary copied yet. The printed page 1 is entered here."));
    EXPECT_FALSE(practice.find<QPushButton>("saveDiary")->isEnabled());
}

TEST_F(DiaryJob, CtrlSSavesEverythingInOneChange)
{
    issue();
    open();
    press(Qt::Key_D, Qt::ControlModifier);
    press(Qt::Key_L);
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored(), written());
    EXPECT_EQ(stored().days.size(), 5U);
    EXPECT_EQ(stored().receivedThrough, day(2026, 2, 13));
    EXPECT_FALSE(page().draft().isChanged());
    EXPECT_THAT(said(), HasSubstr("received through"));
    // Corrected, withdrawn, and received through an earlier day.
    page().focusFirst();
    type("9");
    press(Qt::Key_Up);
    press(Qt::Key_Delete);
    press(Qt::Key_L);
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored(), written());
    EXPECT_EQ(stored().days.size(), 4U);
    EXPECT_EQ(stored().receivedThrough, day(2026, 2, 12));
    const auto entries = must(practice.store().read([&](db::Reading& reading) {
        return db::diaryEntriesOf(reading, practice.ids().course, day(2026, 2, 9),
                                  day(2026, 2, 15));
    }));
    EXPECT_EQ(entries.size(), 5U) << "nothing is deleted";
    EXPECT_EQ(entries.front().enteredByName, "Ruta Vennel");
}

TEST_F(DiaryJob, UndoAfterASaveIsAnotherChange)
{
    issue();
    open();
    press(Qt::Key_Space);
    press(Qt::Key_S, Qt::ControlModifier);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(page().draft().isChanged());
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(stored().days.empty());
}

TEST_F(DiaryJob, WhatIsWrongIsSaidAtTheFieldAndNothingIsLost)
{
    issue();
    open();
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    type("90");
    EXPECT_THAT(strip(), HasSubstr("90\u00A0min? The stimulator stops at 59\u00A0min"));
    press(Qt::Key_Return);
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(stored().days.empty());
    EXPECT_THAT(said(), HasSubstr("Not saved."));
    EXPECT_EQ(page().draft().sheet().place().day, day(2026, 2, 10)) << "back at the field";
    EXPECT_EQ(written().on(day(2026, 2, 10)).sessions.at(1).time, Milliseconds(90min));
    type("30");
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored(), written());
}

TEST_F(DiaryJob, AnAmplitudeOverTheCeilingIsShownAndSaved)
{
    issue();
    open();
    press(Qt::Key_Space);
    press(Qt::Key_Tab);
    type("61");
    EXPECT_THAT(strip(), HasSubstr("61\u00A0mA is over the ceiling of 60\u00A0mA"));
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored(), written());
}

TEST_F(DiaryJob, TheTimeColumnFillsInBeforeAnythingIsSaved)
{
    issue();
    open();
    press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(practice.find<WeekTally>("weekTally")->spoken(),
              QStringLiteral("week 1: 5 of 5, minutes 100"));
    EXPECT_THAT(practice.find<QLabel>("diaryTotals")->text().toStdString(),
                HasSubstr("Sessions done: 5 of 5."));
}

TEST_F(DiaryJob, UnsavedEntriesSurviveTheTabThePatientAndACrash)
{
    issue();
    open();
    press(Qt::Key_Space);
    practice.window().recordPage().showPage(RecordPage::planIndex);
    practice.window().showCaseload();
    open();
    EXPECT_EQ(written().days.size(), 1U);
    practice.crashAndStartAgain();
    open();
    EXPECT_EQ(written().on(day(2026, 2, 9)).sessions.at(1).time, Milliseconds(20min));
    EXPECT_TRUE(stored().days.empty());
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored().days.size(), 1U);
    practice.crashAndStartAgain();
    open();
    EXPECT_FALSE(page().draft().isChanged()) << "what was saved is not offered again";
}

TEST_F(DiaryJob, AnotherWindowsEntriesGoTogetherWithMine)
{
    issue();
    open();
    press(Qt::Key_Space); // Monday
    aDiaryOfFourWeeks(practice.store(), practice.ids());
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(practice.prompts().shown.empty()) << "both say 20 min on Monday";
    EXPECT_EQ(stored().days.size(), 14U);
    EXPECT_EQ(written(), stored());
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(written(), stored()) << "a step back would take their entries out";
}

TEST_F(DiaryJob, WhatIsSavedBesideThePageIsShownAndWhatWasTypedStays)
{
    issue();
    open();
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    press(Qt::Key_Down); // Saturday
    type("5");
    must(practice.store().write(author(), "enter diary", [&](db::Writing& writing) {
        DiaryEntry entry;
        entry.course = practice.ids().course;
        entry.day = day(2026, 2, 9);
        entry.duration = 20min;
        entry.source = DiarySource::file;
        db::addDiaryEntry(writing, entry);
    }));
    emit practice.services().events.diaryChanged(practice.ids().course);
    EXPECT_EQ(written().days.size(), 2U);
    EXPECT_TRUE(stored().on(day(2026, 2, 14)).isEmpty()) << "not saved by itself";
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored(), written());
    EXPECT_EQ(stored().days.size(), 2U);
}

// One session clashes; the other that came in is shown as done all the same.
TEST_F(DiaryJob, WhatIsSavedBesideAClashIsShownAndTheClashIsAskedAboutWhenSaving)
{
    issue();
    open();
    type("11");
    press(Qt::Key_Return);
    must(practice.store().write(author(), "enter diary", [&](db::Writing& writing) {
        for (const int day : {9, 10}) {
            DiaryEntry entry;
            entry.course = practice.ids().course;
            entry.day = tests::day(2026, 2, static_cast<unsigned>(day));
            entry.duration = 20min;
            entry.source = DiarySource::file;
            db::addDiaryEntry(writing, entry);
        }
    }));
    emit practice.services().events.diaryChanged(practice.ids().course);
    EXPECT_EQ(written().on(day(2026, 2, 9)).sessions.at(1).time, Milliseconds(11min));
    EXPECT_EQ(written().on(day(2026, 2, 10)).sessions.at(1).time, Milliseconds(20min))
        << "else it would look as if it had not been taken over";
    practice.prompts().choose = nullptr;
    press(Qt::Key_S, Qt::ControlModifier);
    ASSERT_EQ(practice.prompts().shown.size(), 1U);
    EXPECT_EQ(practice.prompts().shown[0].field, QStringLiteral("Mon 9 Feb, session 1"));
}

TEST_F(DiaryJob, AWordAddedToALongRemarkKeepsAllOfIt)
{
    issue();
    const std::string remark = std::string(300, 'r') + " end";
    must(practice.store().write(author(), "enter diary", [&](db::Writing& writing) {
        DiaryDay noted;
        noted.course = practice.ids().course;
        noted.day = day(2026, 2, 9);
        noted.remark = remark;
        db::saveDiaryDay(writing, noted);
    }));
    open();
    press(Qt::Key_N);
    press(Qt::Key_End);
    type("!");
    press(Qt::Key_Return);
    EXPECT_EQ(written().on(day(2026, 2, 9)).remark, remark + "!");
}

TEST_F(DiaryJob, NothingBesideTheGridMakesALowWindowScrollSideways)
{
    issue();
    practice.window().resize(1280, 720);
    open();
    auto* scroll = page().findChild<QScrollArea*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return scroll->verticalScrollBar()->maximum() > 0; }));
    press(Qt::Key_Space);
    press(Qt::Key_L);
    ASSERT_TRUE(
        practice.find<QLabel>("receivedThrough")->text().contains(QStringLiteral("9 Feb 2026")))
        << "the longest sentence stands below the grid";
    QCoreApplication::processEvents(); // the page is laid out anew
    EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), 0);
}

TEST_F(DiaryJob, ARefusalGoesWithThePlaceThatItWasAbout)
{
    issue();
    open();
    practice.find<QPushButton>("pageAfter")->click();
    press(Qt::Key_Space);
    ASSERT_FALSE(strip().empty()) << "nothing is entered ahead";
    practice.find<QPushButton>("pageBefore")->click();
    EXPECT_EQ(strip(), std::string());
}

TEST_F(DiaryJob, TheSameSessionChangedElsewhereIsShownAndOneIsChosen)
{
    issue();
    open();
    type("11");
    press(Qt::Key_Return);
    type("12");
    aDiaryOfFourWeeks(practice.store(), practice.ids());
    practice.prompts().choose = nullptr;
    press(Qt::Key_S, Qt::ControlModifier);
    ASSERT_EQ(practice.prompts().shown.size(), 2U);
    EXPECT_EQ(practice.prompts().shown[0].field, QStringLiteral("Mon 9 Feb, session 1"));
    EXPECT_EQ(practice.prompts().shown[0].theirs, QStringLiteral("20\u00A0min"));
    EXPECT_EQ(practice.prompts().shown[0].mine, QStringLiteral("11\u00A0min"));
    EXPECT_EQ(stored().on(day(2026, 2, 9)).sessions.at(1).time, Milliseconds(20min));
    EXPECT_EQ(written().on(day(2026, 2, 9)).sessions.at(1).time, Milliseconds(11min));
    practice.prompts().choose = [](const std::vector<Difference>&) {
        return std::vector<bool>{true, false};
    };
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored().on(day(2026, 2, 9)).sessions.at(1).time, Milliseconds(11min));
    EXPECT_EQ(stored().on(day(2026, 2, 10)).sessions.at(1).time, Milliseconds(20min));
    EXPECT_EQ(stored().on(day(2026, 2, 10)).remark, "Red until Wednesday");
    EXPECT_FALSE(page().draft().isChanged());
}

TEST_F(DiaryJob, ReceivedThroughIsShownAndWithdrawn)
{
    issue();
    aDiaryOfFourWeeks(practice.store(), practice.ids());
    open();
    EXPECT_THAT(practice.find<QLabel>("receivedThrough")->text().toStdString(),
                HasSubstr("Sun 8 Mar 2026"));
    QTest::mouseClick(practice.find<QPushButton>("withdrawReceived"), Qt::LeftButton);
    page().focusFirst();
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(stored().receivedThrough, std::nullopt);
    const auto receipts = must(practice.store().read(
        [&](db::Reading& reading) { return db::receiptsOf(reading, practice.ids().course); }));
    ASSERT_EQ(receipts.size(), 1U);
    EXPECT_TRUE(receipts.front().withdrawn);
}

TEST_F(DiaryJob, InANarrowPlaceFewerWeeksStandSideBySideAndTheRestFollowsThePlace)
{
    issue();
    open();
    EXPECT_EQ(grid()->weeksShown(), 4);
    grid()->setRoom(500);
    EXPECT_EQ(grid()->weeksShown(), 2);
    for (int week = 0; week < 3; ++week) {
        press(Qt::Key_Right);
    }
    EXPECT_EQ(grid()->geometryOfPage().firstWeek().number, 3);
    EXPECT_TRUE(grid()->rect().contains(grid()->placeRect()));
}
