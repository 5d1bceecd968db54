// SPDX-License-Identifier: GPL-3.0-or-later
// What the force–fatigue model costs, beside Boost.odeint's method of Dormand and Prince in the
// same run: 20 min at 50 Hz, 4 s on, 12 s off (15 000 pulses), true maxima. The reference is tuned
// so that both of its ratios are right to 1e-6 and not better than it must be; `error` shows what
// each reaches against the reference table.
#include "tests/core/examples.h"
#include "tests/support/odeint_session.h"

#include "core/caseload_projection.h"
#include "core/fatigue_prediction.h"

#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace
{

// Case P01 of the reference table.
constexpr double expectedPeakRatio = 0.5825564;
constexpr double expectedIntegralRatio = 0.55723094;

void reportError(benchmark::State& state, double peakRatio, double integralRatio)
{
    state.counters["error"] = std::max(std::abs(peakRatio / expectedPeakRatio - 1.0),
                                       std::abs(integralRatio / expectedIntegralRatio - 1.0));
}

void sessionWithOdeint(benchmark::State& state)
{
    OdeintResult result;
    for (auto _ : state) {
        result = OdeintMuscle(6e-6).run(OdeintSession{});
        benchmark::DoNotOptimize(result);
    }
    reportError(state, result.contractions.back().peak / result.contractions.front().peak,
                result.contractions.back().integral / result.contractions.front().integral);
}

void session(benchmark::State& state)
{
    FatigueRatio ratio;
    for (auto _ : state) {
        const auto prediction = predictFatigue(someSettings(), RampHabit::includedInOnTime);
        ratio = *prediction->lastToFirst;
        benchmark::DoNotOptimize(ratio);
    }
    reportError(state, ratio.peak, ratio.forceTimeIntegral);
}

/// The same pattern for four hours costs what its first minutes cost.
void sessionOfFourHours(benchmark::State& state)
{
    Settings settings = someSettings();
    settings.sessionLength = 4h;
    for (auto _ : state) {
        auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
        benchmark::DoNotOptimize(prediction);
    }
}

/// 1 s on, 1 s off: force is left from one contraction to the next, so each cycle is integrated.
void sessionWithoutRelaxation(benchmark::State& state)
{
    Settings settings = someSettings();
    settings.onTime = 1s;
    settings.offTime = 1s;
    for (auto _ : state) {
        auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
        benchmark::DoNotOptimize(prediction);
    }
}

void sessionWithoutRelaxationWithOdeint(benchmark::State& state)
{
    OdeintSession settings;
    settings.onPhase = 1000.0;
    settings.offTime = 1000.0;
    for (auto _ : state) {
        auto result = OdeintMuscle(6e-6).run(settings);
        benchmark::DoNotOptimize(result);
    }
}

/// 12 weeks, three sites, every week and site different: 36 sessions.
std::vector<Block> variedCourse(int seed)
{
    std::vector<Block> blocks;
    for (int week = 0; week < 12; ++week) {
        Block block = someBlock();
        block.weeks = 1;
        block.sites = {someSite(1), someSite(2), someSite(3)};
        for (int site = 0; site < 3; ++site) {
            Settings& settings = block.sites[static_cast<std::size_t>(site)].settings;
            block.sites[static_cast<std::size_t>(site)].muscle += std::to_string(site);
            settings.offTime = 12s - milliseconds(100 * week + 10 * site + seed);
            settings.sessionLength = 20min + minutes(week);
        }
        blocks.push_back(block);
    }
    return blocks;
}

void courseForTheFirstTime(benchmark::State& state)
{
    const std::vector<Block> blocks = variedCourse(0);
    const Stimulator unit = someStimulator();
    for (auto _ : state) {
        FatigueMemory memory;
        auto weeks = projectPlan(blocks, unit, memory);
        benchmark::DoNotOptimize(weeks);
    }
}

void courseAgain(benchmark::State& state)
{
    const std::vector<Block> blocks = variedCourse(0);
    const Stimulator unit = someStimulator();
    FatigueMemory memory;
    (void)projectPlan(blocks, unit, memory);
    for (auto _ : state) {
        auto weeks = projectPlan(blocks, unit, memory);
        benchmark::DoNotOptimize(weeks);
    }
}

/// A thousand such courses, no two alike, on all cores.
void caseloadOfAThousandCourses(benchmark::State& state)
{
    const Date start = sys_days(2026y / March / 2);
    std::vector<CourseToProject> courses;
    for (int i = 0; i < 1000; ++i) {
        Course course;
        course.startDate = start;
        Plan plan;
        plan.fromDate = start;
        plan.stimulator = someStimulator();
        plan.blocks = variedCourse(i);
        courses.push_back({course, {plan}});
    }
    for (auto _ : state) {
        auto projection = projectCaseload(courses, 0, {}, {});
        benchmark::DoNotOptimize(projection);
    }
}

} // namespace

BENCHMARK(sessionWithOdeint)->Unit(benchmark::kMicrosecond);
BENCHMARK(session)->Unit(benchmark::kMicrosecond);
BENCHMARK(sessionOfFourHours)->Unit(benchmark::kMicrosecond);
BENCHMARK(sessionWithoutRelaxationWithOdeint)->Unit(benchmark::kMicrosecond);
BENCHMARK(sessionWithoutRelaxation)->Unit(benchmark::kMicrosecond);
BENCHMARK(courseForTheFirstTime)->Unit(benchmark::kMillisecond);
BENCHMARK(courseAgain)->Unit(benchmark::kMillisecond);
BENCHMARK(caseloadOfAThousandCourses)->Unit(benchmark::kSecond)->Iterations(1)->UseRealTime();
