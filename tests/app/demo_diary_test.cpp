// SPDX-License-Identifier: GPL-3.0-or-later
// The diaries of the demo practice show every way in which a day can stand.
#include "app/demo/demo_practice.h"
#include "tests/support/temp_store.h"
#include "tests/support/whole_caseload.h"

#include "db/caseload_query.h"
#include "db/course_records.h"

#include "core/adherence.h"

#include <gtest/gtest.h>
#include <set>

namespace quadrille::app
{
namespace
{

using tests::day;
using tests::must;

const Date thursday = day(2026, 3, 12);

std::vector<CourseRecords> recordsOf(db::Store& store)
{
    return must(store.read([](db::Reading& reading) {
        std::vector<CourseRecords> all;
        for (const db::CaseloadRow& row : tests::wholeCaseload(reading)) {
            if (row.course) {
                all.push_back(db::courseRecords(reading, *row.course));
            }
        }
        return all;
    }));
}

TEST(DemoDiaries, ShowKeenPatientsAndOthersAndSomeOfWhomNothingIsKnown)
{
    const tests::TempStore temp;
    must(writeDemoPractice(temp.file(), thursday));
    const auto store = temp.open(db::Opening::existing);
    std::set<DayStanding> standings;
    int keen = 0;
    int strained = 0;
    int unknown = 0;
    int skinMarks = 0;
    for (const CourseRecords& records : recordsOf(*store)) {
        const CourseAsLived lived = courseAsLived(records, {}, thursday);
        for (const LivedDay& one : lived.days) {
            standings.insert(one.standing);
            skinMarks += one.skin >= Skin::thereNextDay ? 1 : 0;
        }
        const AdherenceFigures figures = figuresBetween(lived, records.course.startDate, thursday);
        keen += figures.session && figures.session->reaches(80) ? 1 : 0;
        strained += figures.session && !figures.session->reaches(50) ? 1 : 0;
        unknown += !figures.session && figures.sessions.notKnownYet > 0 ? 1 : 0;
    }
    EXPECT_GE(keen, 5);
    EXPECT_GE(strained, 1);
    EXPECT_GE(unknown, 1);
    EXPECT_GE(skinMarks, 1);
    for (const DayStanding standing :
         {DayStanding::notPrescribed, DayStanding::toCome, DayStanding::notKnownYet,
          DayStanding::done, DayStanding::partly, DayStanding::missed, DayStanding::extra}) {
        EXPECT_TRUE(standings.contains(standing)) << static_cast<int>(standing);
    }
}

TEST(DemoDiaries, NeverRunAheadOfTheirReturn)
{
    const tests::TempStore temp;
    must(writeDemoPractice(temp.file(), thursday));
    const auto store = temp.open(db::Opening::existing);
    for (const CourseRecords& records : recordsOf(*store)) {
        for (const DiaryEntry& entry : records.entries) {
            EXPECT_LT(entry.day, std::chrono::floor<std::chrono::days>(entry.enteredAt));
        }
        for (const DiaryReceived& receipt : records.receipts) {
            EXPECT_LT(receipt.receivedOn, thursday);
        }
    }
}

} // namespace
} // namespace quadrille::app
