// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/diary_records.h"

#include "db/course_records.h"
#include "db/practice_preferences.h"

#include "core/adherence.h"

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

class CourseRecordsOf : public testing::Test
{
protected:
    CourseRecordsOf()
        : store(temp.open())
        , ids(tests::aPracticeWithCourse(*store))
    {
        tests::anIssuedPlan(*store, ids);
    }
    CourseRecords records()
    {
        return must(store->read([&](Reading& reading) {
            return courseRecords(reading, course(reading, ids.course).value());
        }));
    }
    auto rules()
    {
        return store->read([](Reading& reading) { return adherenceRules(reading); });
    }
    void prefer(const std::string& name, const std::string& value)
    {
        must(store->write(author(), "set preference", [&](Writing& writing) {
            const auto before = practicePreference(writing, name);
            setPracticePreference(writing, name, value, before ? before->version : 0);
        }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store;
    tests::Practiced ids;
};

TEST_F(CourseRecordsOf, AStoredCourseAreGatheredWhole)
{
    tests::aDiaryOfFourWeeks(*store, ids);
    must(store->write(author(), "pause and visit", [&](Writing& writing) {
        Pause pause;
        pause.course = ids.course;
        pause.fromDate = day(2026, 3, 4);
        pause.reason = "a cold";
        addPause(writing, pause);
        FollowUp visit;
        visit.course = ids.course;
        visit.heldOn = day(2026, 3, 9);
        visit.practitioner = ids.practitioner;
        addFollowUp(writing, visit);
    }));
    const CourseRecords all = records();
    EXPECT_EQ(all.course.startDate, day(2026, 2, 9));
    EXPECT_EQ(all.plans.size(), 1U);
    EXPECT_EQ(all.pauses.size(), 1U);
    EXPECT_EQ(all.entries.size(), 14U);
    EXPECT_EQ(all.days.size(), 1U);
    EXPECT_EQ(all.receipts.size(), 1U);
    EXPECT_EQ(all.followUps.size(), 1U);
    // 12 of 20 less Wednesday to Friday of week 4, which are paused.
    const Adherence adherence =
        adherenceOf(all, {}, wholeCourse(all.course, day(2026, 3, 12)), day(2026, 3, 12));
    EXPECT_EQ(adherence.interval.session, (Share{12, 17}));
    EXPECT_EQ(adherence.lastFollowUp, day(2026, 3, 9));
}

// 14 entries from Monday 9 to Thursday 26 February, 10 of them before the 21st.
TEST_F(CourseRecordsOf, TheCaseloadHaveTheLastFiveWeeksAndNothingAfterTheirEnd)
{
    tests::aDiaryOfFourWeeks(*store, ids);
    const auto row = [&](Date today) {
        return must(store->read([&](Reading& reading) {
                   auto rows = caseloadRows(reading, {ids.patient});
                   addRecentDiary(reading, rows, today);
                   return rows;
               }))
            .at(0);
    };
    EXPECT_EQ(row(day(2026, 3, 12)).entries.size(), 14U);
    EXPECT_EQ(row(day(2026, 3, 16)).entries.size(), 14U) << "Monday 9 February is 35 days back";
    EXPECT_EQ(row(day(2026, 3, 17)).entries.size(), 13U) << "36 days back";
    EXPECT_EQ(row(day(2026, 3, 17)).days.size(), 1U);
    EXPECT_EQ(row(day(2026, 3, 18)).days.size(), 0U);
    EXPECT_EQ(row(day(2026, 3, 12)).receipts.size(), 1U);
    must(store->write(author(), "end course", [&](Writing& writing) {
        Course ended = course(writing, ids.course).value();
        ended.endDate = day(2026, 2, 20);
        changeCourse(writing, ended);
    }));
    const CaseloadRow ended = row(day(2026, 8, 3));
    EXPECT_EQ(ended.entries.size(), 10U);
    EXPECT_EQ(ended.days.size(), 1U);
    EXPECT_EQ(row(day(2026, 2, 12)).entries.size(), 4U) << "on a day before the end";
}

TEST_F(CourseRecordsOf, ACourseWithoutADiaryAreItsPlans)
{
    const CourseRecords all = records();
    EXPECT_EQ(all.plans.size(), 1U);
    EXPECT_TRUE(all.entries.empty());
    EXPECT_TRUE(all.receipts.empty());
}

TEST_F(CourseRecordsOf, APracticeHaveItsThresholds)
{
    EXPECT_EQ(must(rules()), (AdherenceRules{90, 80}));
    prefer("session_done_percent", "75");
    prefer("week_adherence_percent", "100");
    EXPECT_EQ(must(rules()), (AdherenceRules{75, 100}));
}

TEST_F(CourseRecordsOf, AThresholdThatIsNoPercentageIsAnError)
{
    for (const char* value : {"", "0", "101", "ninety", "90 %", "9.5"}) {
        prefer("session_done_percent", value);
        EXPECT_EQ(codeOf(rules()), ErrorCode::badFormat) << value;
    }
}

} // namespace
} // namespace quadrille::db
