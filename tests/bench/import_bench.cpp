// SPDX-License-Identifier: GPL-3.0-or-later
// A diary of a million rows read, beside the bare library that splits its cells; and 10 000 rows
// taken over, beside the bare database adding as many rows of the same tables.
#include "app/diary_import/diary_file.h"
#include "app/diary_import/diary_matching.h"
#include "tests/support/fixed_clock.h"

#include "db/courses.h"
#include "db/diary_taking.h"
#include "db/people.h"

#include "core/diary_import.h"

#include <QCoreApplication>
#include <QTemporaryDir>

#include <benchmark/benchmark.h>
#include <csv.h>
#include <memory>
#include <sqlite3.h>
#include <stdexcept>
#include <string>

namespace
{

using namespace quadrille;

constexpr int manyRows = 1'000'000;
constexpr int rowsTaken = 10'000;
const Date start = Date(std::chrono::year(1999) / 1 / 1);
const Date measuredDay = Date(std::chrono::year(2026) / 3 / 12);

/// Three sessions a day from the start on.
QByteArray diaryOf(int rows)
{
    QByteArray text = "date,session,minutes,contractions,comfort,skin,pad,remark\n";
    for (int i = 0; i < rows; ++i) {
        const std::string day = isoDate(start + std::chrono::days(i / 3 % 9000));
        text += QByteArray::fromStdString(day) + ',' + QByteArray::number(i % 3 + 1) +
                ",20.5,75,7,,,\"fine, \"\"really\"\"\"\n";
    }
    return text;
}

const QByteArray& bigDiary()
{
    static const QByteArray text = diaryOf(manyRows);
    return text;
}

void readAMillionRows(benchmark::State& state)
{
    const QByteArray& text = bigDiary();
    for (auto _ : state) {
        const auto file = app::readDiary(text, QStringLiteral("big.csv")).value();
        const auto columns = app::matchedColumns(file.table, {});
        const auto evidence = app::evidenceOf(file, columns);
        const auto rows = app::reportedRows(file, columns, app::rulesFrom(file, evidence, {}));
        if (!rows || rows->size() != manyRows || !rows->back().faults.empty()) {
            state.SkipWithError("not read");
        }
    }
}
BENCHMARK(readAMillionRows)->Unit(benchmark::kMillisecond)->Iterations(3);

void countCell(void* /*text*/, std::size_t length, void* cells)
{
    *static_cast<std::size_t*>(cells) += length;
}

void readAMillionRowsBare(benchmark::State& state)
{
    const QByteArray& text = bigDiary();
    for (auto _ : state) {
        std::size_t bytes = 0;
        csv_parser parser{};
        csv_init(&parser, CSV_STRICT);
        csv_parse(&parser, text.constData(), static_cast<std::size_t>(text.size()), countCell,
                  nullptr, &bytes);
        csv_fini(&parser, countCell, nullptr, &bytes);
        csv_free(&parser);
        benchmark::DoNotOptimize(bytes);
    }
}
BENCHMARK(readAMillionRowsBare)->Unit(benchmark::kMillisecond)->Iterations(3);

/// A practice with one course, anew each time.
struct Practice {
    Practice()
    {
        file = folder.filePath(QStringLiteral("import.quadrille"));
        store = db::Store::open(file, db::Opening::createIfMissing, clock).value();
        course = store
                     ->write({.practitioner = std::nullopt, .name = "Measured"}, "set up",
                             [](db::Writing& writing) {
                                 Patient patient;
                                 patient.reference = "1001";
                                 patient.name = "Measured";
                                 patient.birthDate = start;
                                 Course added;
                                 added.patient = db::addPatient(writing, patient);
                                 added.problem = "Knee replacement";
                                 added.startDate = start;
                                 return db::course(writing, db::addCourse(writing, added)).value();
                             })
                     .value();
    }
    QTemporaryDir folder;
    tests::FixedClock clock{Moment(measuredDay)};
    QString file;
    std::unique_ptr<db::Store> store;
    Course course;
};

void takeOverTenThousandRows(benchmark::State& state)
{
    const auto file = app::readDiary(diaryOf(rowsTaken), QStringLiteral("diary.csv")).value();
    auto columns = app::matchedColumns(file.table, {});
    columns.back().reset(); // entries alone, as the bare database adds them
    const auto rows = app::reportedRows(file, columns, {}).value();
    for (auto _ : state) {
        state.PauseTiming();
        Practice practice;
        const DiaryOnFile onFile =
            practice.store
                ->read([&](db::Reading& reading) {
                    return db::diaryOnFile(reading, *practice.course.id, measuredDay);
                })
                .value();
        state.ResumeTiming();
        const DiaryTakeOver taken =
            takeOverOf(planImport(rows, columns, onFile), onFile, std::nullopt);
        const auto saved = practice.store->write(
            {.practitioner = std::nullopt, .name = "Measured"}, "import diary",
            [&](db::Writing& writing) { db::takeOverDiary(writing, taken); });
        if (!saved || taken.newEntries.size() != rowsTaken) {
            state.SkipWithError("not saved");
        }
    }
}
BENCHMARK(takeOverTenThousandRows)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(3);

/// One row of the diary and one of a log for each session, prepared once.
void takeOverTenThousandRowsBare(benchmark::State& state)
{
    for (auto _ : state) {
        state.PauseTiming();
        const Practice practice;
        sqlite3* bare = nullptr;
        sqlite3_open(practice.file.toUtf8().constData(), &bare);
        sqlite3_exec(bare,
                     "PRAGMA synchronous = FULL; CREATE TABLE bare_log (id INTEGER PRIMARY KEY, "
                     "what TEXT, chain TEXT)",
                     nullptr, nullptr, nullptr);
        state.ResumeTiming();
        sqlite3_exec(bare, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr);
        sqlite3_stmt* entry = nullptr;
        sqlite3_stmt* log = nullptr;
        sqlite3_prepare_v2(bare,
                           "INSERT INTO diary_entry (course, day, session_number, duration_ms, "
                           "contractions, comfort, source, entered_by_name, entered_at) VALUES "
                           "(1, date('1999-01-01', ?1 || ' days'), ?2, 1230000, 75, 7, 'file', "
                           "'Measured', '2026-03-12T00:00:00Z')",
                           -1, &entry, nullptr);
        sqlite3_prepare_v2(bare, "INSERT INTO bare_log (what, chain) VALUES ('created', ?1)", -1,
                           &log, nullptr);
        for (int i = 0; i < rowsTaken; ++i) {
            sqlite3_bind_int(entry, 1, i / 3);
            sqlite3_bind_int(entry, 2, i % 3 + 1);
            if (sqlite3_step(entry) != SQLITE_DONE) {
                state.SkipWithError("not saved");
            }
            sqlite3_reset(entry);
            sqlite3_bind_int(log, 1, i);
            sqlite3_step(log);
            sqlite3_reset(log);
        }
        sqlite3_finalize(entry);
        sqlite3_finalize(log);
        sqlite3_exec(bare, "COMMIT", nullptr, nullptr, nullptr);
        state.PauseTiming();
        sqlite3_close(bare);
        state.ResumeTiming();
    }
}
BENCHMARK(takeOverTenThousandRowsBare)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(3);

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv); // finds the driver of the database
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
