// SPDX-License-Identifier: GPL-3.0-or-later
// The units of the trade. Base units are chosen so that each setting of a stimulator and each
// product of two settings is a whole number: µA × µs = pC needs no rounding.
#pragma once

#include "core/quantity.h"

#include <chrono>

namespace quadrille
{

/// The units in which people read values; app/quantity_text words them.
enum class Unit {
    none,
    count,
    percent,
    hertz,
    kilohertz,
    microsecond,
    second,
    minute,
    week,
    milliampere,
    microcoulomb,
    millicoulomb,
    microcoulombPerSquareCentimetre,
    milliamperePerSquareCentimetre,
    milliwatt,
    milliwattPerSquareCentimetre,
    millijoule,
    millimetre,
    squareCentimetre,
};

/// A value for a sentence or a screen: what a finding or an error quotes.
struct Amount {
    double value = 0.0;
    Unit unit = Unit::none;
    friend bool operator==(const Amount&, const Amount&) = default;
};

struct PulseFrequencyTag {
    static constexpr Unit shownUnit = Unit::hertz;
    static constexpr double countsPerShown = 1e3;
};
struct CarrierFrequencyTag {
    static constexpr Unit shownUnit = Unit::hertz;
    static constexpr double countsPerShown = 1e3;
};
struct BurstDutyTag {
    static constexpr Unit shownUnit = Unit::percent;
    static constexpr double countsPerShown = 10;
};
struct PhaseDurationTag {
    static constexpr Unit shownUnit = Unit::microsecond;
    static constexpr double countsPerShown = 1;
};
struct AmplitudeTag {
    static constexpr Unit shownUnit = Unit::milliampere;
    static constexpr double countsPerShown = 1e3;
};
struct PhaseChargeTag {
    static constexpr Unit shownUnit = Unit::microcoulomb;
    static constexpr double countsPerShown = 1e6;
};
struct LengthTag {
    static constexpr Unit shownUnit = Unit::millimetre;
    static constexpr double countsPerShown = 1;
};

/// Pulses (or bursts) per second, in mHz.
using PulseFrequency = Quantity<PulseFrequencyTag>;
/// Frequency of the alternating current inside a burst, in mHz. A role of its own, so that it is
/// never taken for the burst rate.
using CarrierFrequency = Quantity<CarrierFrequencyTag>;
/// Share of a burst period that carries current, in tenths of a percent.
using BurstDuty = Quantity<BurstDutyTag>;
/// Length of one phase of a pulse, in µs.
using PhaseDuration = Quantity<PhaseDurationTag>;
/// Peak current, in µA.
using Amplitude = Quantity<AmplitudeTag>;
/// Charge of one phase, in pC.
using PhaseCharge = Quantity<PhaseChargeTag>;
/// A side of a pad or a distance on the body, in mm.
using Length = Quantity<LengthTag>;
/// Times inside a session.
using Milliseconds = std::chrono::duration<std::int64_t, std::milli>;

template <Unit U>
struct FigureTag {
    static constexpr Unit shownUnit = U;
};

/// Area of one pad, cm² (a round pad's area is no whole number, so this is a figure).
using PadArea = Figure<FigureTag<Unit::squareCentimetre>>;
/// Root-mean-square current, mA.
struct RmsCurrentTag : FigureTag<Unit::milliampere> {
};
using RmsCurrent = Figure<RmsCurrentTag>;
/// r.m.s. current per area of the smaller pad, mA/cm².
using CurrentDensity = Figure<FigureTag<Unit::milliamperePerSquareCentimetre>>;
/// Charge of one phase where the waveform is not rectangular, µC.
struct ChargePerPhaseTag : FigureTag<Unit::microcoulomb> {
};
using ChargePerPhase = Figure<ChargePerPhaseTag>;
/// Charge of one phase per area of the smaller pad, µC/cm².
using ChargeDensity = Figure<FigureTag<Unit::microcoulombPerSquareCentimetre>>;
/// Charge of one polarity summed over a session or a week, mC.
using TotalCharge = Figure<FigureTag<Unit::millicoulomb>>;
/// Average power into 500 ohm, mW.
using Power = Figure<FigureTag<Unit::milliwatt>>;
/// Average power into 500 ohm per area of the smaller pad, mW/cm².
using PowerDensity = Figure<FigureTag<Unit::milliwattPerSquareCentimetre>>;
/// Energy of one pulse into 500 ohm, mJ.
using PulseEnergy = Figure<FigureTag<Unit::millijoule>>;

template <class Tag>
constexpr Amount amountOf(Quantity<Tag> quantity)
{
    return {quantity.shown(), Tag::shownUnit};
}

template <class Tag>
constexpr Amount amountOf(Figure<Tag> figure)
{
    return {figure.shown(), Tag::shownUnit};
}

constexpr Amount amountOf(Milliseconds time)
{
    return {static_cast<double>(time.count()) / 1e3, Unit::second};
}

constexpr Amount countOf(std::int64_t count)
{
    return {static_cast<double>(count), Unit::count};
}

/// Charge of one rectangular phase: amplitude × phase duration, exact (µA × µs = pC); nothing when
/// the product leaves 64 bits.
constexpr std::optional<PhaseCharge> phaseCharge(Amplitude amplitude, PhaseDuration phaseDuration)
{
    const auto product = checkedProduct(amplitude.count(), phaseDuration.count());
    return product ? std::optional(PhaseCharge::fromCount(*product)) : std::nullopt;
}

namespace literals
{

constexpr PulseFrequency operator""_Hz(unsigned long long hertz)
{
    return PulseFrequency::fromCount(static_cast<std::int64_t>(hertz) * 1000);
}
constexpr PulseFrequency operator""_mHz(unsigned long long millihertz)
{
    return PulseFrequency::fromCount(static_cast<std::int64_t>(millihertz));
}
constexpr CarrierFrequency operator""_Hz_carrier(unsigned long long hertz)
{
    return CarrierFrequency::fromCount(static_cast<std::int64_t>(hertz) * 1000);
}
constexpr BurstDuty operator""_percent_burst(unsigned long long percent)
{
    return BurstDuty::fromCount(static_cast<std::int64_t>(percent) * 10);
}
constexpr PhaseDuration operator""_us(unsigned long long microseconds)
{
    return PhaseDuration::fromCount(static_cast<std::int64_t>(microseconds));
}
constexpr Amplitude operator""_mA(unsigned long long milliamperes)
{
    return Amplitude::fromCount(static_cast<std::int64_t>(milliamperes) * 1000);
}
constexpr Amplitude operator""_uA(unsigned long long microamperes)
{
    return Amplitude::fromCount(static_cast<std::int64_t>(microamperes));
}
constexpr Length operator""_mm(unsigned long long millimetres)
{
    return Length::fromCount(static_cast<std::int64_t>(millimetres));
}

} // namespace literals

} // namespace quadrille
