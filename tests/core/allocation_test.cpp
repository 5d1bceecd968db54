// SPDX-License-Identifier: GPL-3.0-or-later
// Counts what the model takes from the heap. An executable of its own, because it replaces the
// global operator new.
#include "tests/core/examples.h"

#include "core/fatigue_prediction.h"

#include <atomic>
#include <cstdlib>
#include <gtest/gtest.h>
#include <new>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{
std::atomic<std::size_t> allocations{0};
} // namespace

// Not inlined: GCC would take malloc and delete, side by side, for a mismatch.
[[gnu::noinline]] void* operator new(std::size_t size)
{
    ++allocations;
    if (void* memory = std::malloc(size == 0 ? 1 : size)) {
        return memory;
    }
    throw std::bad_alloc();
}

[[gnu::noinline]] void operator delete(void* memory) noexcept
{
    std::free(memory);
}

[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept
{
    std::free(memory);
}

namespace
{

std::size_t allocationsOf(const Settings& settings)
{
    const std::size_t before = allocations;
    EXPECT_TRUE(predictFatigue(settings, RampHabit::includedInOnTime));
    return allocations - before;
}

} // namespace

TEST(FatiguePrediction, TakesNoMoreMemoryForFourHoursThanForTwentyMinutes)
{
    Settings shorter = someSettings();
    Settings longer = someSettings();
    longer.sessionLength = 4h;
    (void)allocationsOf(shorter); // what is made once
    EXPECT_GT(allocationsOf(shorter), 0U);
    EXPECT_EQ(allocationsOf(shorter), allocationsOf(longer));
}

TEST(FatiguePrediction, TakesNoMemoryWhileItIntegratesCycleAfterCycle)
{
    Settings shorter = someSettings();
    shorter.onTime = 1s;
    shorter.offTime = 500ms; // force is left, so each cycle is integrated
    shorter.sessionLength = 30s;
    Settings longer = shorter;
    longer.sessionLength = 10min;
    (void)allocationsOf(shorter);
    EXPECT_EQ(allocationsOf(shorter), allocationsOf(longer));
}
