// SPDX-License-Identifier: GPL-3.0-or-later
// Reads EXPLAIN QUERY PLAN of the statements that the daily work runs: what belongs to one patient,
// course or record is found by an index, never by reading a whole table.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/caseload_query.h"
#include "db/course_events.h"
#include "db/diary.h"
#include "db/electrode_sets.h"
#include "db/history.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/screenings.h"

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QVariant>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>
#include <sqlite3.h>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::day;
using tests::must;

/// Every statement that a connection runs while it lives.
class Listener
{
public:
    explicit Listener(const Connection& connection)
        : m_database(*static_cast<sqlite3* const*>(
              QSqlDatabase::database(connection.name(), false).driver()->handle().constData()))
    {
        sqlite3_trace_v2(m_database, SQLITE_TRACE_STMT, hear, &m_heard);
    }
    ~Listener() { sqlite3_trace_v2(m_database, 0, nullptr, nullptr); }
    Listener(const Listener&) = delete;
    Listener& operator=(const Listener&) = delete;

    const std::set<std::string>& heard() const { return m_heard; }

private:
    static int hear(unsigned, void* heard, void* statement, void*)
    {
        const char* sql = sqlite3_sql(static_cast<sqlite3_stmt*>(statement));
        if (sql != nullptr) {
            static_cast<std::set<std::string>*>(heard)->insert(sql);
        }
        return 0;
    }
    sqlite3* m_database;
    std::set<std::string> m_heard;
};

/// The steps of a statement that read a table from end to end.
std::vector<std::string> scansOf(const Connection& connection, const std::string& sql)
{
    std::vector<std::string> scans;
    Statement rows(connection, "EXPLAIN QUERY PLAN " + sql);
    while (rows.next()) {
        rows.takeInteger();
        rows.takeInteger();
        rows.takeInteger();
        const std::string step = rows.takeText();
        const bool wholeTable =
            step.starts_with("SCAN ") && step.find("CONSTANT ROW") == std::string::npos;
        if (wholeTable) {
            scans.push_back(step);
        }
    }
    return scans;
}

/// Tables of one row, or so few that nobody minds; a search for a part of a word reads an index
/// that holds all it needs; what a page has found is in memory.
bool isSmall(const std::string& scan)
{
    for (const char* table : {"SCAN change_end", "SCAN practice", "SCAN erasure",
                              "SCAN caseload_key USING COVERING INDEX", "SCAN (subquery"}) {
        if (scan.starts_with(table)) {
            return true;
        }
    }
    return false;
}

class QueryPlans : public testing::Test
{
protected:
    QueryPlans() { plan = tests::anIssuedPlan(*store, ids); }
    void expectIndexes(const std::set<std::string>& statements)
    {
        const auto raw = temp.rawConnection();
        int looked = 0;
        for (const std::string& sql : statements) {
            const bool hasPlan = sql.starts_with("SELECT") || sql.starts_with("UPDATE") ||
                                 sql.starts_with("DELETE") || sql.starts_with("INSERT");
            if (!hasPlan) {
                continue;
            }
            ++looked;
            for (const std::string& scan : scansOf(*raw, sql)) {
                EXPECT_TRUE(isSmall(scan)) << scan << "\n  in " << sql;
            }
        }
        EXPECT_GT(looked, 5) << "the listener hears nothing";
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    PlanId plan{1};
};

TEST_F(QueryPlans, TheCaseloadAndItsSearchReadNoWholeTable)
{
    must(store->read([&](Reading& reading) {
        const Listener listener(reading.connection());
        const auto facts = currentCaseload(reading, day(2026, 3, 12));
        const EndedSearch search{.today = day(2027, 3, 12), .words = {"tho", "quad"}};
        countEnded(reading, {.today = search.today, .words = {}});
        countEnded(reading, search);
        endedCaseload(reading, search, std::nullopt, 100);
        endedCaseload(reading, search, facts.at(0), 100);
        caseloadRows(reading, {ids.patient});
        expectIndexes(listener.heard());
    }));
}

TEST_F(QueryPlans, OpeningARecordReadsNoWholeTable)
{
    must(store->read([&](Reading& reading) {
        const Listener listener(reading.connection());
        patient(reading, ids.patient);
        patientByReference(reading, "1001");
        coursesOf(reading, ids.patient);
        course(reading, ids.course);
        plansOf(reading, ids.course);
        draftOf(reading, ids.course);
        unsavedDraftOf(reading, ids.course);
        diaryEntriesOf(reading, ids.course, day(2026, 1, 1), day(2026, 12, 31));
        diaryDaysOf(reading, ids.course, day(2026, 1, 1), day(2026, 12, 31));
        diaryReceivedThrough(reading, ids.course);
        unitsLentTo(reading, ids.course);
        loansOf(reading, LoanUnitId(1));
        pausesOf(reading, ids.course);
        followUpsOf(reading, ids.course);
        measurementsOf(reading, ids.course);
        counterReadingsOf(reading, ids.course);
        electrodeSetsOf(reading, ids.course);
        printedDocumentsOf(reading, ids.course);
        screeningsOf(reading, ids.course);
        historyOf(reading, ids.patient, 100);
        historyOf(reading, ids.patient, 100, 7);
        historyOfRecord(reading, "patient", ids.patient.key());
        expectIndexes(listener.heard());
    }));
}

TEST_F(QueryPlans, SavingReadsNoWholeTable)
{
    must(store->write(author(), "work", [&](Writing& writing) {
        const Listener listener(writing.connection());
        Patient agnes = patient(writing, ids.patient).value();
        agnes.note = "changed";
        changePatient(writing, agnes);
        addPatient(writing, tests::aPatient("1002"));
        Course knee = course(writing, ids.course).value();
        knee.problem = "changed";
        changeCourse(writing, knee);
        Draft draft = tests::aDraft(ids);
        saveDraft(writing, draft);
        draft.version = 1;
        issuePlan(writing, draft,
                  {.fromDate = day(2026, 3, 12), .reason = "next", .issuedBy = ids.practitioner},
                  day(2026, 3, 12));
        DiaryEntry entry;
        entry.course = ids.course;
        entry.day = day(2026, 2, 9);
        entry.id = addDiaryEntry(writing, entry);
        entry.comfort = 5;
        correctDiaryEntry(writing, entry);
        Measurement torque;
        torque.course = ids.course;
        torque.measuredOn = day(2026, 3, 12);
        torque.kind = isometricTorque;
        torque.unit = "N.m";
        torque.counted = Counted::best;
        torque.trials = {61'000, 66'500};
        torque.thousandths = 66'500;
        torque.id = addMeasurement(writing, torque);
        torque.method = "knee at 60°";
        changeMeasurement(writing, torque);
        expectIndexes(listener.heard());
    }));
}

} // namespace
} // namespace quadrille::db
