// SPDX-License-Identifier: GPL-3.0-or-later
// What a value that is dragged costs the engine: everything the Plan page shows is computed again
// for each of 30 values, on a draft of 12 weeks in 4 blocks on 3 sites with a diary of 60 entries.
// `worst` is the dearest of them, against a frame of 16 ms. The reference asks for the same and
// keeps nothing: every week and site of every value is asked of the model anew, as a page without a
// memory would; sessionWithOdeint of the same run tells what one session costs elsewhere.
#include "tests/core/examples.h"

#include "core/block_fatigue.h"
#include "core/course_projection.h"
#include "core/plan_figures.h"
#include "core/week_doses.h"

#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

constexpr int draggedValues = 30;
constexpr std::size_t draggedBlock = 2;
constexpr Date start = Date(std::chrono::year(2026) / 1 / 5); // a Monday
constexpr Date today = start + std::chrono::days(5 * 7);

CourseRecords courseWithDraft()
{
    CourseRecords records;
    records.course.startDate = start;
    Plan& plan = records.plans.emplace_back();
    plan.fromDate = start;
    plan.stimulator = someStimulator();
    for (int i = 0; i < 4; ++i) {
        Block block = someBlock();
        block.weeks = 3;
        block.sites = {someSite(1), someSite(2), someSite(3)};
        for (std::size_t site = 0; site < block.sites.size(); ++site) {
            block.sites[site].muscle += std::to_string(site);
            Settings& settings = block.sites[site].settings;
            settings.amplitude.lastTolerated = Amplitude::fromCount(40'000);
            settings.offTime += 2s * i + 100ms * static_cast<int>(site);
        }
        plan.blocks.push_back(block);
    }
    for (int i = 0; i < 60; ++i) {
        DiaryEntry& entry = records.entries.emplace_back();
        entry.day = start + std::chrono::days(i / 2);
        entry.sessionNumber = i % 2 + 1;
        entry.duration = 20min;
    }
    records.receipts.emplace_back().throughDate = today;
    return records;
}

/// All that changes on the page with one value.
void computePage(const CourseRecords& records, FatigueMemory& memory)
{
    const Plan& plan = records.plans.front();
    const Block& block = plan.blocks[draggedBlock];
    const Block& before = plan.blocks[draggedBlock - 1];
    benchmark::DoNotOptimize(blockFigures(block, plan.stimulator));
    benchmark::DoNotOptimize(blockFigures(before, plan.stimulator));
    benchmark::DoNotOptimize(totalsOf(projectWithoutModel(plan.blocks, plan.stimulator)));
    benchmark::DoNotOptimize(weekDoses(records, {}, today));
    const auto steps = fatigueSteps(block, &before, plan.stimulator, memory);
    // Forces are asked for the dragged block alone: those of the block before stay remembered.
    if (!steps.front().missing) {
        benchmark::DoNotOptimize(peakShares(block.sites.front().settings, plan.stimulator));
    }
    benchmark::DoNotOptimize(
        fatigueByWeek(records.course, records.plans, block.sites.front(), plan.stimulator, memory));
}

/// Without a memory, and without asking whether it may be compared.
void computeAllAnew(const CourseRecords& records)
{
    const Plan& plan = records.plans.front();
    benchmark::DoNotOptimize(weekDoses(records, {}, today));
    for (const Block& block : plan.blocks) {
        benchmark::DoNotOptimize(blockFigures(block, plan.stimulator));
        for (int week = 0; week < block.weeks; ++week) {
            for (const Site& site : block.sites) {
                benchmark::DoNotOptimize(predictFatigue(site.settings, plan.stimulator.rampHabit));
            }
        }
    }
}

/// Drags a value of the block's sites through `draggedValues` values and back, again and again.
template <class Compute>
void drag(benchmark::State& state, Milliseconds Settings::*value, Compute compute)
{
    CourseRecords records = courseWithDraft();
    std::vector<Site>& sites = records.plans.front().blocks[draggedBlock].sites;
    const Milliseconds first = sites.front().settings.*value;
    int step = 0;
    double worst = 0.0;
    for (auto _ : state) {
        for (Site& site : sites) {
            site.settings.*value = first + 500ms * (step % draggedValues);
        }
        ++step;
        const auto began = std::chrono::steady_clock::now();
        compute(records);
        const std::chrono::duration<double, std::milli> took =
            std::chrono::steady_clock::now() - began;
        worst = std::max(worst, took.count());
    }
    state.counters["worst_ms"] = worst;
}

void dragOfTheOnTime(benchmark::State& state)
{
    FatigueMemory memory;
    drag(state, &Settings::onTime,
         [&memory](const CourseRecords& records) { computePage(records, memory); });
}

void dragOfTheOffTime(benchmark::State& state)
{
    FatigueMemory memory;
    drag(state, &Settings::offTime,
         [&memory](const CourseRecords& records) { computePage(records, memory); });
}

void dragOfTheOnTimeWithoutAMemory(benchmark::State& state)
{
    drag(state, &Settings::onTime, computeAllAnew);
}

} // namespace

BENCHMARK(dragOfTheOnTimeWithoutAMemory)->Unit(benchmark::kMillisecond)->Iterations(draggedValues);
BENCHMARK(dragOfTheOnTime)->Unit(benchmark::kMillisecond)->Iterations(draggedValues);
BENCHMARK(dragOfTheOffTime)->Unit(benchmark::kMillisecond)->Iterations(draggedValues);
