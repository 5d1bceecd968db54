// SPDX-License-Identifier: GPL-3.0-or-later
// What the adherence of a whole practice costs on one core, beside a plain loop over the same
// entries that does nothing but sum their minutes. The loop shows what touching the diary costs; it
// knows no plan.
#include "tests/core/examples.h"

#include "core/adherence.h"

#include <benchmark/benchmark.h>

using namespace quadrille;
using namespace quadrille::test;

namespace
{

constexpr int courses = 2000;
constexpr int entriesOfEach = 60;
constexpr Date start = Date(std::chrono::year(2026) / 1 / 5); // a Monday
constexpr Date today = start + std::chrono::days(12 * 7);

/// Twelve weeks in three blocks, every other course with free days; five sessions a week, some cut
/// short, and a follow-up after six weeks.
CourseRecords courseOf(int place)
{
    CourseRecords records;
    records.course.startDate = start;
    Plan& plan = records.plans.emplace_back();
    plan.fromDate = start;
    plan.stimulator = someStimulator();
    for (int i = 0; i < 3; ++i) {
        Block& block = plan.blocks.emplace_back(someBlock());
        if (place % 2 == 1) {
            block.schedule = DaysPerWeek{5};
        }
    }
    for (int i = 0; i < entriesOfEach; ++i) {
        DiaryEntry& entry = records.entries.emplace_back();
        entry.day = start + std::chrono::days(7 * (i / 5) + i % 5);
        entry.duration = std::chrono::minutes((place + i) % 7 == 0 ? 12 : 20);
    }
    records.receipts.emplace_back().throughDate = today;
    records.followUps.emplace_back().heldOn = start + std::chrono::days(6 * 7);
    return records;
}

const std::vector<CourseRecords>& practice()
{
    static const std::vector<CourseRecords> all = [] {
        std::vector<CourseRecords> made;
        for (int place = 0; place < courses; ++place) {
            made.push_back(courseOf(place));
        }
        return made;
    }();
    return all;
}

void minutesSummedInAPlainLoop(benchmark::State& state)
{
    for (auto _ : state) {
        Milliseconds sum{};
        for (const CourseRecords& records : practice()) {
            for (const DiaryEntry& entry : records.entries) {
                sum += entry.duration;
            }
        }
        benchmark::DoNotOptimize(sum);
    }
}

void adherenceOfAPractice(benchmark::State& state)
{
    for (auto _ : state) {
        for (const CourseRecords& records : practice()) {
            benchmark::DoNotOptimize(
                adherenceOf(records, {}, wholeCourse(records.course, today), today));
        }
    }
}

} // namespace

BENCHMARK(minutesSummedInAPlainLoop)->Unit(benchmark::kMillisecond);
BENCHMARK(adherenceOfAPractice)->Unit(benchmark::kMillisecond);
