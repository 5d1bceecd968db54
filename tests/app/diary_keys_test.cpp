// SPDX-License-Identifier: GPL-3.0-or-later
// The diary is copied by real keys.
#include "tests/app/diary_job.h"

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;
using testing::HasSubstr;

TEST_F(DiaryJob, APageOfTwoSessionsADayIsTickedWithTwoKeysASession)
{
    issue(2);
    open();
    int keys = 0;
    for (int session = 0; session < 40; ++session) {
        press(Qt::Key_Space);
        ++keys;
        if (session < 39) {
            press(Qt::Key_Return);
            ++keys;
        }
    }
    EXPECT_EQ(keys, 79);
    EXPECT_EQ(written().days.size(), 20U);
    for (const auto& [date, day] : written().days) {
        EXPECT_EQ(day.sessions.size(), 2U) << isoDate(date);
        EXPECT_EQ(day.sessions.at(1), (WrittenSession{.time = Milliseconds(20min)}));
    }
}

TEST_F(DiaryJob, EachKeyDoesWhatThePageSays)
{
    issue();
    open();
    type("12");
    press(Qt::Key_Tab);
    type("41");
    press(Qt::Key_Tab);
    type("7");
    press(Qt::Key_Return); // Tuesday
    press(Qt::Key_U);
    press(Qt::Key_Return); // Wednesday
    type("0");
    press(Qt::Key_Down); // Thursday
    press(Qt::Key_D, Qt::ControlModifier);
    const WrittenSession& monday = written().on(day(2026, 2, 9)).sessions.at(1);
    EXPECT_EQ(monday.time, Milliseconds(12min));
    EXPECT_EQ(monday.amplitudes.begin()->second, Amplitude::fromCount(41'000));
    EXPECT_EQ(monday.comfort, 7);
    EXPECT_EQ(written().on(day(2026, 2, 10)).sessions.at(1),
              (WrittenSession{.time = Milliseconds(12min)}));
    EXPECT_EQ(written().on(day(2026, 2, 11)).sessions.at(1).time, Milliseconds(0));
    EXPECT_EQ(written().on(day(2026, 2, 12)).sessions.at(1).time, Milliseconds(20min));
    EXPECT_EQ(written().on(day(2026, 2, 13)).sessions.at(1).time, Milliseconds(20min));
    EXPECT_TRUE(written().on(day(2026, 2, 14)).isEmpty());
}

TEST_F(DiaryJob, ShiftMarksDaysAndFFillsThem)
{
    issue();
    open();
    press(Qt::Key_Right, Qt::ShiftModifier);
    press(Qt::Key_F);
    EXPECT_EQ(written().days.size(), 6U); // Monday to Monday, without the weekend
}

TEST_F(DiaryJob, SkinPadAndNoteAreTypedInPlaceAndASkinMarkIsShownAtOnce)
{
    issue();
    open();
    press(Qt::Key_S);
    type("2");
    EXPECT_THAT(strip(), HasSubstr("See the skin before the next session"));
    EXPECT_EQ(practice.window().focusWidget(), grid()->notesField());
    type("lower pad");
    press(Qt::Key_Return);
    EXPECT_EQ(written().on(day(2026, 2, 9)).skinPad, "lower pad");
    press(Qt::Key_Up);
    press(Qt::Key_N);
    type("red until Sunday");
    press(Qt::Key_Tab);
    EXPECT_EQ(written().on(day(2026, 2, 9)).remark, "red until Sunday");
    EXPECT_EQ(practice.window().focusWidget(), grid());
    press(Qt::Key_N);
    type("x");
    press(Qt::Key_Escape);
    EXPECT_TRUE(written().on(day(2026, 2, 10)).isEmpty()) << "Escape leaves it as it was";
}

TEST_F(DiaryJob, EveryVerbIsUndoneAndRedoneFromTheWindow)
{
    issue();
    open();
    const WrittenDiary before = written();
    const auto undone = [&](const char* what) {
        const WrittenDiary after = written();
        EXPECT_NE(after, before) << what;
        press(Qt::Key_Z, Qt::ControlModifier);
        EXPECT_EQ(written(), before) << what;
        press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        EXPECT_EQ(written(), after) << what;
        press(Qt::Key_Z, Qt::ControlModifier);
    };
    press(Qt::Key_Space);
    undone("Space");
    type("16"); // one step, not two
    undone("digits");
    press(Qt::Key_F);
    undone("F");
    press(Qt::Key_D, Qt::ControlModifier);
    undone("Ctrl D");
    press(Qt::Key_L);
    undone("L");
    press(Qt::Key_S);
    type("1");
    press(Qt::Key_Escape);
    undone("skin");
}

TEST_F(DiaryJob, CtrlPageTurnsThePageOfTheDiaryAndNotOfTheRecord)
{
    issue();
    open();
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_EQ(practice.window().recordPage().currentPage(), RecordPage::diaryIndex);
    EXPECT_EQ(page().draft().sheet().page(), 1);
    EXPECT_EQ(practice.find<QLabel>("diaryHint")->text(),
              QStringLiteral("Nothing prescribed in these weeks."));
}

TEST_F(DiaryJob, ThePointerTicksASquareAndChoosesAField)
{
    issue();
    open();
    const DiaryGeometry& geometry = grid()->geometryOfPage();
    const QRect tuesday = geometry.line(0, 1, 1);
    QTest::mouseClick(grid(), Qt::LeftButton, {}, geometry.mark(tuesday).center());
    EXPECT_EQ(written().on(day(2026, 2, 10)).sessions.at(1).time, Milliseconds(20min));
    QTest::mouseClick(grid(), Qt::LeftButton, {}, geometry.mark(tuesday).center());
    EXPECT_EQ(written().days.size(), 1U) << "a second press leaves it";
    QTest::mouseClick(grid(), Qt::LeftButton, {}, geometry.field(tuesday, 2, 3).center());
    type("8");
    EXPECT_EQ(written().on(day(2026, 2, 10)).sessions.at(1).comfort, 8);
}

TEST_F(DiaryJob, AKeyThatWritesNothingSaysWhy)
{
    issue();
    open();
    press(Qt::Key_U);
    EXPECT_EQ(strip(), "The day above has no minutes to copy.");
    page().draft().move([](DiarySheet& sheet) {
        sheet.goTo({.day = day(2026, 3, 13)}); // tomorrow
        return DiaryAnswer();
    });
    press(Qt::Key_Space);
    EXPECT_THAT(strip(), HasSubstr("still to come"));
    EXPECT_TRUE(written().days.empty());
}
