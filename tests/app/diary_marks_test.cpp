// SPDX-License-Identifier: GPL-3.0-or-later
// The grid with a diary: every mark that a day can carry.
#include "app/grid/course_grid_widget.h"
#include "app/grid/day_marks.h"
#include "app/grid/spoken_day.h"
#include "app/patient/record_page.h"
#include "tests/app/practice_window.h"
#include "tests/support/diary_records.h"

#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

/// Monday 9 February 2026.
const Date start = day(2026, 2, 9);

/// Four weeks of 20 min from Monday 9 February 2026; nothing came back yet.
GridSource sourceOf(const Schedule& schedule, int sessionsPerDay = 1)
{
    GridSource source;
    source.today = day(2026, 3, 4); // Wednesday of week 4
    source.records.course.startDate = start;
    Plan plan;
    plan.fromDate = start;
    plan.stimulator = aUnit();
    plan.blocks = {aBlock(aUnit())};
    plan.blocks.front().schedule = schedule;
    plan.blocks.front().sessionsPerDay = sessionsPerDay;
    source.records.plans = {plan};
    return source;
}

void enter(GridSource& source, Date day, std::chrono::minutes time, int number = 1)
{
    DiaryEntry entry;
    entry.day = day;
    entry.sessionNumber = number;
    entry.duration = time;
    source.records.entries.push_back(entry);
}

void receive(GridSource& source, Date through)
{
    source.records.receipts.emplace_back().throughDate = through;
}

DayMark markOn(const GridSource& source, Date day)
{
    const CourseGrid grid = courseGridOf(source, english);
    const auto days = (day - start).count();
    return grid.weeks[static_cast<std::size_t>(days / 7)][static_cast<std::size_t>(days % 7)];
}

} // namespace

TEST(DiaryMarks, ShowWhatWasDoneMissedPartlyDoneAndExtra)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    enter(source, start, 20min);
    enter(source, day(2026, 2, 11), 10min);
    enter(source, day(2026, 2, 14), 20min);
    receive(source, day(2026, 2, 16));
    EXPECT_EQ(markOn(source, start).state, DayState::done);
    EXPECT_EQ(markOn(source, day(2026, 2, 10)).state, DayState::missed);
    EXPECT_EQ(markOn(source, day(2026, 2, 11)).state, DayState::partlyDone);
    EXPECT_EQ(markOn(source, day(2026, 2, 14)).state, DayState::doneNotPrescribed);
    EXPECT_EQ(markOn(source, day(2026, 2, 15)).state, DayState::notPrescribed);
    EXPECT_EQ(markOn(source, day(2026, 2, 16)).state, DayState::missed);
    EXPECT_EQ(markOn(source, day(2026, 2, 17)).state, DayState::noDiaryYet);
    EXPECT_EQ(markOn(source, day(2026, 3, 4)).state, DayState::toCome);
}

TEST(DiaryMarks, FillAPartlyDoneDayToTheNearestShare)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    enter(source, day(2026, 2, 9), 2min);
    enter(source, day(2026, 2, 10), 8min);
    enter(source, day(2026, 2, 11), 9min);
    enter(source, day(2026, 2, 12), 11min);
    enter(source, day(2026, 2, 13), 12min);
    enter(source, day(2026, 2, 16), 17min);
    // 5/12 and 7/12 of 20 min lie at 8.3 and 11.7 min.
    EXPECT_EQ(markOn(source, day(2026, 2, 9)).share, DoneShare::third);
    EXPECT_EQ(markOn(source, day(2026, 2, 10)).share, DoneShare::third);
    EXPECT_EQ(markOn(source, day(2026, 2, 11)).share, DoneShare::half);
    EXPECT_EQ(markOn(source, day(2026, 2, 12)).share, DoneShare::half);
    EXPECT_EQ(markOn(source, day(2026, 2, 13)).share, DoneShare::twoThirds);
    EXPECT_EQ(markOn(source, day(2026, 2, 16)).share, DoneShare::twoThirds);
}

TEST(DiaryMarks, CountTheSessionsOfADay)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday(), 3);
    enter(source, start, 20min, 1);
    receive(source, start);
    const DayMark monday = markOn(source, start);
    EXPECT_EQ(monday.state, DayState::partlyDone);
    EXPECT_EQ(monday.share, DoneShare::third);
    EXPECT_EQ(monday.sessionsPrescribed, 3);
    EXPECT_EQ(monday.sessionsDone, 1);
    EXPECT_EQ(spokenDay(courseGridOf(source, english), {0, 0}, english),
              QStringLiteral("Monday 9 February 2026, week 1: 1 of 3 sessions done"));
}

TEST(DiaryMarks, CarryANoteAndASkinMarkFromTheSecondDegreeOn)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    enter(source, start, 20min);
    DiaryDay& reported = source.records.days.emplace_back();
    reported.day = start;
    reported.remark = "red under lower pad";
    const std::vector<std::pair<std::optional<Skin>, bool>> marked{{std::nullopt, false},
                                                                   {Skin::nothing, false},
                                                                   {Skin::goneWithinTheHour, false},
                                                                   {Skin::thereNextDay, true},
                                                                   {Skin::blisterOrBurn, true}};
    for (const auto& [skin, isMarked] : marked) {
        source.records.days.front().skin = skin;
        EXPECT_EQ(markOn(source, start).skinMark, isMarked);
    }
    EXPECT_EQ(spokenDay(courseGridOf(source, english), {0, 0}, english),
              QStringLiteral("Monday 9 February 2026, week 1: 1 of one session done, skin mark, "
                             "note: red under lower pad"));
}

TEST(DiaryMarks, LeaveNoDayOfAFreeWeekMissed)
{
    GridSource source = sourceOf(DaysPerWeek{3});
    enter(source, start, 20min);
    receive(source, day(2026, 2, 15));
    EXPECT_EQ(markOn(source, start).state, DayState::done);
    for (const unsigned date : {10U, 11U, 12U, 13U, 14U, 15U}) {
        EXPECT_EQ(markOn(source, day(2026, 2, date)).state, DayState::notPrescribed);
    }
    EXPECT_EQ(markOn(source, day(2026, 2, 16)).state, DayState::noDiaryYet);
    EXPECT_EQ(markOn(source, day(2026, 3, 8)).state, DayState::toCome);
}

TEST(DiaryMarks, HeadAPausedWeekAsSuch)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    Pause& pause = source.records.pauses.emplace_back();
    pause.fromDate = day(2026, 2, 14); // Saturday of week 1
    pause.toDate = day(2026, 2, 22);
    enter(source, day(2026, 2, 18), 20min);
    const CourseGrid grid = courseGridOf(source, english);
    ASSERT_EQ(grid.blocks.size(), 3U);
    EXPECT_EQ(grid.blocks[0].name, QStringLiteral("Block 1"));
    EXPECT_EQ(grid.blocks[1],
              (BlockSpan{{2}, 1, 0, QStringLiteral("Pause"), QStringLiteral("–"), true}));
    EXPECT_EQ(grid.blocks[2],
              (BlockSpan{{3}, 2, 0, QStringLiteral("Block 1"), QStringLiteral("1"), false}));
    EXPECT_EQ(markOn(source, day(2026, 2, 16)).state, DayState::paused);
    EXPECT_EQ(markOn(source, day(2026, 2, 18)).state, DayState::doneNotPrescribed);
    EXPECT_EQ(spokenDay(grid, {1, 0}, english),
              QStringLiteral("Monday 16 February 2026, week 2: paused"));
}

TEST(DiaryMarks, SayWhatWasPartlyDoneAndWhatWasMore)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    enter(source, start, 10min);
    enter(source, day(2026, 2, 10), 20min, 1);
    enter(source, day(2026, 2, 10), 20min, 2);
    const CourseGrid grid = courseGridOf(source, english);
    EXPECT_EQ(spokenDay(grid, {0, 0}, english),
              QStringLiteral("Monday 9 February 2026, week 1: one session partly done"));
    EXPECT_EQ(spokenDay(grid, {0, 1}, english),
              QStringLiteral("Tuesday 10 February 2026, week 1: 1 of one session done, more than "
                             "prescribed: 1"));
}

TEST(DiaryMarks, NeedNoSettingsForAMiniature)
{
    GridSource source = sourceOf(WeekdaySet::mondayToFriday());
    source.records.plans.front().blocks.front().sites.clear();
    enter(source, day(2026, 2, 9), 5min);
    receive(source, day(2026, 2, 22));
    const CourseGrid grid = miniatureOf(source, english);
    ASSERT_EQ(grid.weeks.size(), 4U);
    EXPECT_EQ(grid.weeks[0][0].state, DayState::done) << "no length is known";
    EXPECT_EQ(grid.weeks[0][1].state, DayState::missed);
    EXPECT_EQ(grid.weeks[2][0].state, DayState::noDiaryYet);
    EXPECT_EQ(grid.weeks[3][2].state, DayState::toCome);
}

TEST(DiaryMarks, StandInTheTimeColumnOfTheRecord)
{
    PracticeWindow practice;
    anIssuedPlan(practice.store(), practice.ids());
    aDiaryOfFourWeeks(practice.store(), practice.ids());
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    auto* grid = practice.find<CourseGridWidget>("courseGrid");
    ASSERT_NE(grid, nullptr);
    for (int i = 0; i < 60; ++i) { // to the first square
        QTest::keyClick(grid, Qt::Key_Left);
        QTest::keyClick(grid, Qt::Key_Up);
    }
    ASSERT_EQ(grid->focusedDay(), day(2026, 2, 9));
    EXPECT_THAT(grid->accessibleName().toStdString(), testing::HasSubstr("1 of one session done"));
    QTest::keyClick(grid, Qt::Key_Down);
    EXPECT_THAT(grid->accessibleName().toStdString(),
                testing::HasSubstr("skin mark, note: Red until Wednesday"));
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(grid, Qt::Key_Right);
    }
    EXPECT_THAT(grid->accessibleName().toStdString(), testing::HasSubstr("one session missed"));
}
