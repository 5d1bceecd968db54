// SPDX-License-Identifier: GPL-3.0-or-later
// What the figures of a session cost, beside a plain walk through the same session in doubles in
// the same run. The walk shows the order of magnitude; it is not exact, which is why core counts in
// whole milliseconds.
#include "tests/core/examples.h"

#include "core/plan_figures.h"
#include "core/session_timing.h"

#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>

using namespace quadrille;
using namespace quadrille::test;

namespace
{

struct Walked {
    double contractions = 0.0;
    double onSeconds = 0.0;
    double pulses = 0.0;
};

Walked walkInDoubles(double onSeconds, double offSeconds, double sessionSeconds, double hertz)
{
    Walked walked;
    for (double begin = 0.0; begin < sessionSeconds; begin += onSeconds + offSeconds) {
        const double end = std::min(begin + onSeconds, sessionSeconds);
        walked.contractions += 1.0;
        walked.onSeconds += end - begin;
        walked.pulses += std::ceil((end - begin) * hertz);
    }
    return walked;
}

void timingInWholeMilliseconds(benchmark::State& state)
{
    const Settings settings = someSettings();
    for (auto _ : state) {
        benchmark::DoNotOptimize(sessionTiming(settings, RampHabit::includedInOnTime));
    }
}

void walkThroughTheSessionInDoubles(benchmark::State& state)
{
    double on = 4.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(on);
        benchmark::DoNotOptimize(walkInDoubles(on, 12.0, 1200.0, 50.0));
    }
}

void figuresOfABlockOfTwoSites(benchmark::State& state)
{
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    for (Site& site : block.sites) {
        site.settings.amplitude.lastTolerated = Amplitude::fromCount(60'000);
    }
    const Stimulator unit = someStimulator();
    for (auto _ : state) {
        benchmark::DoNotOptimize(blockFigures(block, unit));
    }
}

} // namespace

BENCHMARK(walkThroughTheSessionInDoubles);
BENCHMARK(timingInWholeMilliseconds);
BENCHMARK(figuresOfABlockOfTwoSites);
