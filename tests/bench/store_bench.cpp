// SPDX-License-Identifier: GPL-3.0-or-later
// The store at work on a large made-up practice, each measurement beside the bare database doing
// the same. QUADRILLE_BENCH_PATIENTS says how many patients (2000 unless given);
// QUADRILLE_BENCH_STORE names a file written by "quadrille demo FILE --patients N" instead of
// making one.
#include "app/demo/large_practice.h"
#include "tests/support/fixed_clock.h"

#include "db/caseload_query.h"
#include "db/courses.h"
#include "db/diary.h"
#include "db/history.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/sql.h"

#include <QCoreApplication>
#include <QTemporaryDir>

#include <algorithm>
#include <benchmark/benchmark.h>
#include <memory>
#include <random>
#include <sqlite3.h>
#include <stdexcept>
#include <string>
#include <vector>

namespace
{

using namespace quadrille;

const Date measuredDay = Date(std::chrono::year(2026) / 3 / 12);

/// After every entry, whichever day a given file was written on.
const Date lastDay = Date(std::chrono::year(2100) / 1 / 1);

/// The practice and both ways into it.
class Practice
{
public:
    Practice()
    {
        const int wanted = qEnvironmentVariableIntValue("QUADRILLE_BENCH_PATIENTS");
        file = qEnvironmentVariable("QUADRILLE_BENCH_STORE");
        if (file.isEmpty()) {
            file = m_folder.filePath(QStringLiteral("large.quadrille"));
            const auto written =
                app::writeLargePractice(file, measuredDay, wanted > 0 ? wanted : 2000, [](int) {});
            if (!written) {
                throw std::runtime_error("no practice to measure");
            }
        }
        store = db::Store::open(file, db::Opening::existing, m_clock).value();
        sqlite3_open(file.toUtf8().constData(), &bare);
        sqlite3_exec(bare, "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON", nullptr, nullptr,
                     nullptr);
        patients = number("SELECT count(*) FROM patient");
    }
    ~Practice() { sqlite3_close(bare); }
    Practice(const Practice&) = delete;
    Practice& operator=(const Practice&) = delete;

    /// Runs a statement to its end and counts its rows.
    int rowsOf(const char* sql, std::int64_t value = 0) const
    {
        sqlite3_stmt* statement = nullptr;
        sqlite3_prepare_v2(bare, sql, -1, &statement, nullptr);
        sqlite3_bind_int64(statement, 1, value);
        int rows = 0;
        while (sqlite3_step(statement) == SQLITE_ROW) {
            for (int i = 0; i < sqlite3_column_count(statement); ++i) {
                benchmark::DoNotOptimize(sqlite3_column_text(statement, i));
            }
            ++rows;
        }
        sqlite3_finalize(statement);
        return rows;
    }
    std::int64_t number(const char* sql) const
    {
        sqlite3_stmt* statement = nullptr;
        sqlite3_prepare_v2(bare, sql, -1, &statement, nullptr);
        sqlite3_step(statement);
        const std::int64_t value = sqlite3_column_int64(statement, 0);
        sqlite3_finalize(statement);
        return value;
    }
    std::int64_t anyPatient() { return 1 + static_cast<std::int64_t>(m_random()) % patients; }

    QString file;
    std::unique_ptr<db::Store> store;
    sqlite3* bare = nullptr;
    std::int64_t patients = 0;

private:
    QTemporaryDir m_folder;
    tests::FixedClock m_clock{Moment(measuredDay)};
    std::mt19937 m_random{20417};
};

Practice& practice()
{
    static Practice only;
    return only;
}

void openRecord(benchmark::State& state)
{
    Practice& measured = practice();
    for (auto _ : state) {
        const PatientId id(measured.anyPatient());
        const auto read = measured.store->read([&](db::Reading& reading) {
            benchmark::DoNotOptimize(db::patient(reading, id));
            for (const Course& course : db::coursesOf(reading, id)) {
                benchmark::DoNotOptimize(db::plansOf(reading, *course.id));
                benchmark::DoNotOptimize(db::draftOf(reading, *course.id));
                benchmark::DoNotOptimize(db::diaryEntriesOf(reading, *course.id, Date(), lastDay));
            }
            benchmark::DoNotOptimize(db::historyOf(reading, id, 50));
        });
        if (!read) {
            state.SkipWithError("not read");
        }
    }
}
BENCHMARK(openRecord)->Unit(benchmark::kMillisecond);

void openRecordBare(benchmark::State& state)
{
    Practice& measured = practice();
    for (auto _ : state) {
        const std::int64_t id = measured.anyPatient();
        for (const char* sql :
             {"SELECT * FROM patient WHERE id = ?", "SELECT * FROM course WHERE patient = ?",
              "SELECT * FROM plan WHERE course IN (SELECT id FROM course WHERE patient = ?)",
              "SELECT * FROM block WHERE plan IN (SELECT plan.id FROM plan JOIN course ON "
              "course.id = plan.course WHERE course.patient = ?)",
              "SELECT site.* FROM site JOIN block ON block.id = site.block WHERE block.plan IN "
              "(SELECT plan.id FROM plan JOIN course ON course.id = plan.course WHERE "
              "course.patient = ?)",
              "SELECT * FROM diary_entry WHERE course IN (SELECT id FROM course WHERE patient = ?)",
              "SELECT * FROM change_record LEFT JOIN change_value ON change = change_record.id "
              "WHERE patient = ? ORDER BY change_record.id DESC LIMIT 50"}) {
            benchmark::DoNotOptimize(measured.rowsOf(sql, id));
        }
    }
}
BENCHMARK(openRecordBare)->Unit(benchmark::kMillisecond);

void saveOneChange(benchmark::State& state)
{
    Practice& measured = practice();
    int turn = 0;
    for (auto _ : state) {
        const auto saved =
            measured.store->write({.practitioner = std::nullopt, .name = "Measured"},
                                  "change patient", [&](db::Writing& writing) {
                                      Patient patient = db::patient(writing, PatientId(1)).value();
                                      patient.telephone =
                                          "01632 960" + std::to_string(100 + ++turn % 900);
                                      db::changePatient(writing, patient);
                                  });
        if (!saved) {
            state.SkipWithError("not saved");
        }
    }
}
BENCHMARK(saveOneChange)->Unit(benchmark::kMicrosecond)->UseRealTime();

/// One row changed and one added to a log, with the same safety.
void saveOneChangeBare(benchmark::State& state)
{
    Practice& measured = practice();
    sqlite3_exec(measured.bare,
                 "CREATE TABLE IF NOT EXISTS bare_log (id INTEGER PRIMARY KEY, what TEXT)", nullptr,
                 nullptr, nullptr);
    int turn = 0;
    for (auto _ : state) {
        const std::string number = "01632 960" + std::to_string(100 + ++turn % 900);
        const std::string sql = "BEGIN IMMEDIATE; UPDATE patient SET telephone = '" + number +
                                "' WHERE id = 2; INSERT INTO bare_log (what) VALUES ('telephone " +
                                number + "'); COMMIT";
        if (sqlite3_exec(measured.bare, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) {
            state.SkipWithError("not saved");
        }
    }
    sqlite3_exec(measured.bare, "DROP TABLE bare_log", nullptr, nullptr, nullptr);
}
BENCHMARK(saveOneChangeBare)->Unit(benchmark::kMicrosecond)->UseRealTime();

/// What adherence is counted from: every entry of every running course.
void readRunningDiaries(benchmark::State& state)
{
    Practice& measured = practice();
    std::size_t entries = 0;
    for (auto _ : state) {
        const auto read = measured.store->read([&](db::Reading& reading) {
            std::size_t found = 0;
            std::vector<CourseId> running;
            db::Statement rows(reading.connection(),
                               "SELECT id FROM course WHERE end_date IS NULL");
            while (rows.next()) {
                running.emplace_back(rows.takeInteger());
            }
            for (const CourseId course : running) {
                found += db::diaryEntriesOf(reading, course, Date(), lastDay).size();
            }
            return found;
        });
        entries = read ? *read : 0;
    }
    state.counters["entries"] = static_cast<double>(entries);
}
BENCHMARK(readRunningDiaries)->Unit(benchmark::kMillisecond);

void readRunningDiariesBare(benchmark::State& state)
{
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            practice().rowsOf("SELECT diary_entry.* FROM course JOIN diary_entry ON "
                              "diary_entry.course = course.id WHERE end_date IS NULL"));
    }
}
BENCHMARK(readRunningDiariesBare)->Unit(benchmark::kMillisecond);

void firstPageOfTheCaseload(benchmark::State& state)
{
    for (auto _ : state) {
        const auto read = practice().store->read([](db::Reading& reading) {
            const auto current = db::currentCaseload(reading, measuredDay);
            std::vector<PatientId> inView;
            for (std::size_t i = 0; i < std::min<std::size_t>(current.size(), 40); ++i) {
                inView.push_back(current[i].patient);
            }
            benchmark::DoNotOptimize(db::caseloadRows(reading, inView));
            return current.size();
        });
        state.counters["current"] = static_cast<double>(read.value());
    }
}
BENCHMARK(firstPageOfTheCaseload)->Unit(benchmark::kMillisecond);

void firstPageOfTheCaseloadBare(benchmark::State& state)
{
    for (auto _ : state) {
        benchmark::DoNotOptimize(practice().rowsOf(
            "SELECT key.*, patient.name, course.start_date, course.end_date, (SELECT "
            "sum(block.weeks) FROM block WHERE block.plan = (SELECT plan.id FROM plan WHERE "
            "plan.course = key.course ORDER BY plan.number DESC LIMIT 1)), EXISTS (SELECT 1 FROM "
            "draft WHERE draft.course = key.course AND draft.state = 'saved') FROM caseload_key AS "
            "key JOIN patient ON patient.id = key.patient LEFT JOIN course ON course.id = "
            "key.course WHERE key.ends_on >= '2026-03-12' ORDER BY key.name, key.patient"));
    }
}
BENCHMARK(firstPageOfTheCaseloadBare)->Unit(benchmark::kMillisecond);

constexpr int pageOfEnded = 100;

/// One keystroke of a search: seldom found words read the whole index, common ones stop early and
/// are counted up to mostCounted.
void searchEnded(benchmark::State& state, const char* word)
{
    const db::EndedSearch search{.today = measuredDay, .words = {word}};
    for (auto _ : state) {
        benchmark::DoNotOptimize(practice().store->read([&](db::Reading& reading) {
            const auto page = db::endedCaseload(reading, search, std::nullopt, pageOfEnded);
            return page.size() < pageOfEnded ? static_cast<int>(page.size())
                                             : db::countEnded(reading, search);
        }));
    }
}
BENCHMARK_CAPTURE(searchEnded, common, "a")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(searchEnded, seldom, "corandal")->Unit(benchmark::kMillisecond);

/// The same page out of the same index, and the same count where it is full.
void searchEndedBare(benchmark::State& state, const char* word)
{
    const std::string found = std::string("FROM caseload_key INDEXED BY caseload_key_by_name "
                                          "WHERE words GLOB '*") +
                              word + "*' AND +ends_on < '2026-03-12' ";
    const std::string page =
        "SELECT key.patient, patient.name, key.words, key.name, key.course, course.start_date, "
        "course.end_date, (SELECT sum(block.weeks) FROM block WHERE block.plan = (SELECT plan.id "
        "FROM plan WHERE plan.course = key.course ORDER BY plan.number DESC LIMIT 1)), EXISTS "
        "(SELECT 1 FROM draft WHERE draft.course = key.course AND draft.state = 'saved'), (SELECT "
        "screening.signed_on FROM screening WHERE screening.course = key.course ORDER BY "
        "screening.number DESC LIMIT 1) FROM (SELECT patient AS paged " +
        found + "ORDER BY name, patient LIMIT " + std::to_string(pageOfEnded) +
        ") JOIN caseload_key AS key ON key.patient = paged JOIN patient ON patient.id = "
        "key.patient LEFT JOIN course ON course.id = key.course ORDER BY key.name, key.patient";
    const std::string count = "SELECT count(*) FROM (SELECT 1 " + found + "LIMIT " +
                              std::to_string(db::mostCounted) + ")";
    for (auto _ : state) {
        if (practice().rowsOf(page.c_str()) == pageOfEnded) {
            benchmark::DoNotOptimize(practice().number(count.c_str()));
        }
    }
}
BENCHMARK_CAPTURE(searchEndedBare, common, "a")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(searchEndedBare, seldom, "corandal")->Unit(benchmark::kMillisecond);

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv); // finds the driver of the database
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
