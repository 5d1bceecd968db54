// SPDX-License-Identifier: GPL-3.0-or-later
// Which expressions of units are legal is decided by the compiler, so most of this file is checked
// while it is built.
#include "core/ids.h"
#include "core/result.h"
#include "core/units.h"

#include <cmath>
#include <concepts>
#include <gtest/gtest.h>
#include <limits>
#include <type_traits>

using namespace quadrille;
using namespace quadrille::literals;

namespace
{

template <class A, class B>
concept Adds = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b)
{
    a - b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b)
{
    a* b;
};
template <class A, class B>
concept Divides = requires(A a, B b)
{
    a / b;
};
template <class A, class B>
concept Compares = requires(A a, B b)
{
    a < b;
};
template <class A, class B>
concept Equates = requires(A a, B b)
{
    a == b;
};
template <class A, class B>
concept MakesCharge = requires(A a, B b)
{
    phaseCharge(a, b);
};

// Like with like.
static_assert(Adds<Amplitude, Amplitude> && Subtracts<Amplitude, Amplitude>);
static_assert(Adds<PhaseDuration, PhaseDuration> && Compares<PhaseDuration, PhaseDuration>);
static_assert(Adds<Milliseconds, Milliseconds> && Compares<PulseFrequency, PulseFrequency>);
static_assert(Multiplies<Amplitude, int>);
static_assert(MakesCharge<Amplitude, PhaseDuration>);
static_assert(std::same_as<decltype(phaseCharge(1_mA, 1_us)), std::optional<PhaseCharge>>);
static_assert(Equates<PatientId, PatientId> && Compares<PlanId, PlanId>);

// Never unlike.
static_assert(!Adds<PulseFrequency, PhaseDuration> && !Adds<PulseFrequency, Milliseconds>);
static_assert(!Adds<Amplitude, PhaseDuration> && !Subtracts<Amplitude, PhaseDuration>);
static_assert(!Adds<PhaseDuration, Milliseconds> && !Compares<PhaseDuration, Milliseconds>);
static_assert(!Adds<PulseFrequency, CarrierFrequency>);
static_assert(!Compares<PulseFrequency, CarrierFrequency>);
static_assert(!Equates<PatientId, CourseId> && !Compares<PlanId, DraftId>);
static_assert(!MakesCharge<PhaseDuration, Amplitude> && !MakesCharge<Amplitude, Milliseconds>);
static_assert(!MakesCharge<Amplitude, PulseFrequency>);

// A product or quotient exists only where units.h declares it.
static_assert(!Multiplies<Amplitude, PhaseDuration> && !Multiplies<Amplitude, Amplitude>);
static_assert(!Divides<Amplitude, Length> && !Divides<PhaseCharge, PhaseDuration>);

// No silent change of role, to or from a bare number.
static_assert(!std::convertible_to<PulseFrequency, CarrierFrequency>);
static_assert(!std::constructible_from<CarrierFrequency, PulseFrequency>);
static_assert(!std::convertible_to<std::int64_t, Amplitude>);
static_assert(!std::constructible_from<Amplitude, std::int64_t>);
static_assert(!std::convertible_to<Amplitude, std::int64_t>);
static_assert(!std::convertible_to<std::int64_t, PatientId>);
static_assert(!std::convertible_to<double, RmsCurrent>);
static_assert(!std::convertible_to<RmsCurrent, double>);
static_assert(!Adds<RmsCurrent, RmsCurrent>);
static_assert(!Adds<RmsCurrent, Amplitude> && !Compares<RmsCurrent, CurrentDensity>);
static_assert(!std::same_as<ChargePerPhase, TotalCharge>);

/// Every base unit must come back exactly from the unit that people read.
template <class Q>
void expectRoundTrip(std::int64_t step, double countsPerShown)
{
    for (std::int64_t count = 0; count <= 2000 * step; count += step) {
        const Q quantity = Q::fromCount(count);
        ASSERT_EQ(quantity.count(), count);
        ASSERT_EQ(std::llround(quantity.shown() * countsPerShown), count);
        ASSERT_EQ(amountOf(quantity).value, quantity.shown());
    }
}

} // namespace

TEST(Units, ComeBackExactlyFromTheUnitThatPeopleRead)
{
    expectRoundTrip<PulseFrequency>(7, 1e3);
    expectRoundTrip<CarrierFrequency>(4999, 1e3);
    expectRoundTrip<BurstDuty>(1, 10);
    expectRoundTrip<PhaseDuration>(5, 1);
    expectRoundTrip<Amplitude>(77, 1e3);
    expectRoundTrip<PhaseCharge>(12'345, 1e6);
    expectRoundTrip<Length>(1, 1);
}

// SI prefixes.
TEST(Units, LiteralsAreWhatTheySay)
{
    EXPECT_EQ((50_Hz).count(), 50'000);
    EXPECT_EQ((2500_mHz).shown(), 2.5);
    EXPECT_EQ((2500_Hz_carrier).count(), 2'500'000);
    EXPECT_EQ((50_percent_burst).shown(), 50.0);
    EXPECT_EQ((300_us).shown(), 300.0);
    EXPECT_EQ((60_mA).count(), 60'000);
    EXPECT_EQ((42'500_uA).shown(), 42.5);
    EXPECT_EQ((127_mm).shown(), 127.0);
}

TEST(Units, SayInWhichUnitTheyAreRead)
{
    EXPECT_EQ(amountOf(50_Hz), (Amount{50.0, Unit::hertz}));
    EXPECT_EQ(amountOf(50_percent_burst), (Amount{50.0, Unit::percent}));
    EXPECT_EQ(amountOf(300_us), (Amount{300.0, Unit::microsecond}));
    EXPECT_EQ(amountOf(42'500_uA), (Amount{42.5, Unit::milliampere}));
    EXPECT_EQ(amountOf(Milliseconds(2500)), (Amount{2.5, Unit::second}));
    EXPECT_EQ(amountOf(PadArea(25.0)), (Amount{25.0, Unit::squareCentimetre}));
    EXPECT_EQ(amountOf(RmsCurrent(10.0)), (Amount{10.0, Unit::milliampere}));
    EXPECT_EQ(countOf(222), (Amount{222.0, Unit::count}));
}

TEST(Units, AddAndSubtractLikeWithLike)
{
    EXPECT_EQ(60_mA + 500_uA, 60'500_uA);
    EXPECT_EQ(300_us - 100_us, 200_us);
    EXPECT_EQ(5_mA * 3, 15_mA);
    EXPECT_LT(59'999_uA, 60_mA);
}

// 60 mA × 300 µs = 18 µC, exactly: µA × µs = pC.
TEST(PhaseCharge, IsTheExactProductOfAmplitudeAndPhaseDuration)
{
    EXPECT_EQ(phaseCharge(60_mA, 300_us), PhaseCharge::fromCount(18'000'000));
    EXPECT_EQ(phaseCharge(42'500_uA, 250_us)->shown(), 10.625);
    EXPECT_EQ(phaseCharge(0_mA, 300_us), PhaseCharge());
}

TEST(PhaseCharge, IsNothingWhenItLeavesSixtyFourBits)
{
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    EXPECT_EQ(phaseCharge(Amplitude::fromCount(most), 2_us), std::nullopt);
    EXPECT_EQ(phaseCharge(Amplitude::fromCount(most), 1_us), PhaseCharge::fromCount(most));
    EXPECT_EQ(checkedProduct(most, -1), -most);
    EXPECT_EQ(checkedProduct(std::numeric_limits<std::int64_t>::min(), -1), std::nullopt);
}

TEST(Ids, OfOneKindOfRecordCompare)
{
    EXPECT_EQ(PatientId(7), PatientId(7));
    EXPECT_NE(PatientId(7), PatientId(8));
    EXPECT_LT(PatientId(7), PatientId(8));
    EXPECT_EQ(CourseId(7).key(), 7);
}
