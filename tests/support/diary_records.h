// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that came back, for the course of aPracticeWithCourse() under anIssuedPlan(): four weeks
// from Monday 9 February 2026, Monday to Friday, 20 min.
#pragma once

#include "tests/support/records.h"

#include "db/course_events.h"
#include "db/diary.h"

#include <string>

namespace quadrille::tests
{

/// Week 1 all done, and Saturday too; week 2 Friday missed; week 3 Thursday 10 min, Friday missed;
/// week 4 nothing. Skin 2 and a remark on Tuesday of week 1. Received through Sunday 8 March.
inline void aDiaryOfFourWeeks(db::Store& store, const Practiced& ids)
{
    must(store.write(author(), "enter diary", [&](db::Writing& writing) {
        const auto enter = [&](unsigned month, unsigned date, int minutes) {
            DiaryEntry entry;
            entry.course = ids.course;
            entry.day = day(2026, month, date);
            entry.duration = std::chrono::minutes(minutes);
            db::addDiaryEntry(writing, entry);
        };
        for (const unsigned date :
             {9U, 10U, 11U, 12U, 13U, 14U, 16U, 17U, 18U, 19U, 23U, 24U, 25U}) {
            enter(2, date, 20);
        }
        enter(2, 26, 10);
        DiaryDay tuesday;
        tuesday.course = ids.course;
        tuesday.day = day(2026, 2, 10);
        tuesday.skin = Skin::thereNextDay;
        tuesday.skinPad = "lower pad";
        tuesday.remark = "Red until Wednesday";
        db::saveDiaryDay(writing, tuesday);
        DiaryReceived receipt;
        receipt.course = ids.course;
        receipt.throughDate = day(2026, 3, 8);
        receipt.receivedOn = day(2026, 3, 9);
        db::addReceipt(writing, receipt);
    }));
}

} // namespace quadrille::tests
