// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/field.h"
#include "core/finding.h"
#include "core/ids.h"
#include "core/units.h"
#include "core/waveform.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// Whether the on time that is set on a unit already contains the ramps. It changes every count, so
/// it is shown wherever on time is shown.
///
///   included:  on phase = on time               plateau = on time − ramp up − ramp down
///   added:     on phase = up + on time + down   plateau = on time
enum class RampHabit { includedInOnTime, addedToOnTime };

/// What a session begins with. On a unit that begins with an off time the first contraction comes
/// one off time later, and a session may hold one contraction less.
enum class CycleStart { withOn, withOff };

/// What a unit counts by itself, for comparison with the diary.
enum class UsageCounter { none, uses, time, usesAndTime };

/// Base units of a setting: ms for times, the tag's base unit for quantities.
template <class Tag>
constexpr std::int64_t baseCount(Quantity<Tag> quantity)
{
    return quantity.count();
}
constexpr std::int64_t baseCount(Milliseconds time)
{
    return time.count();
}

/// What a unit offers for one setting. A fixed setting has least = most.
/// Invariant: least ≤ preset ≤ most, step > 0 (checked by checkStimulator()).
template <class Q>
struct Range {
    Q least{};
    Q most{};
    Q step{};
    Q preset{}; ///< what the unit shows when it is new; a new block starts with it

    constexpr bool isFixed() const { return least == most; }
    constexpr bool contains(Q value) const { return least <= value && value <= most; }
    friend bool operator==(const Range&, const Range&) = default;
};

/// A range in base units, for forms and for the store, which handle all settings alike.
struct CountRange {
    std::int64_t least = 0;
    std::int64_t most = 0;
    std::int64_t step = 1;
    std::int64_t preset = 0;

    constexpr bool isFixed() const { return least == most; }
    constexpr bool contains(std::int64_t count) const { return least <= count && count <= most; }
    /// On one of the unit's steps, counted from `least`; `most` is always reachable.
    constexpr bool isOnStep(std::int64_t count) const
    {
        return count == most || step <= 0 ||
               distance(least, count) % static_cast<std::uint64_t>(step) == 0;
    }
    /// The nearest value that the unit can be set to; halves go down. Needs least ≤ most.
    std::int64_t nearestStep(std::int64_t count) const;
    friend bool operator==(const CountRange&, const CountRange&) = default;

private:
    /// Between any two counts, even where a signed difference would not fit.
    static constexpr std::uint64_t distance(std::int64_t from, std::int64_t to)
    {
        return from <= to ? static_cast<std::uint64_t>(to) - static_cast<std::uint64_t>(from)
                          : static_cast<std::uint64_t>(from) - static_cast<std::uint64_t>(to);
    }
};

/// What a unit can do. A plan keeps a copy, so that old figures stay as they were.
struct Stimulator {
    std::optional<StimulatorId> id = std::nullopt;
    std::string name;                ///< the practice's own name for the unit
    std::vector<Waveform> waveforms; ///< what the unit gives; the first is the preset
    int channels = 1;                ///< 1 … 8
    bool channelsShareTiming = true;
    bool hasWorkRestCycles =
        true; ///< real on and off times, not a continuous output for pain relief
    RampHabit rampHabit = RampHabit::includedInOnTime;
    CycleStart cycleStart = CycleStart::withOn;
    UsageCounter usageCounter = UsageCounter::none;
    int memories = 0; ///< programmes that can be set and kept, 0 … 99
    /// Peak current into 500 ohm, as its papers state it.
    std::optional<Amplitude> mostOutput = std::nullopt;

    Range<PulseFrequency> pulseFrequency;
    Range<PhaseDuration> phaseDuration;
    std::optional<Range<PhaseDuration>> interphaseGap = std::nullopt;
    std::optional<Range<PhaseDuration>> secondPhaseDuration = std::nullopt;
    std::optional<Range<CarrierFrequency>> carrierFrequency = std::nullopt;
    std::optional<Range<BurstDuty>> burstDuty = std::nullopt;
    Range<Amplitude> amplitude;
    Range<Milliseconds> onTime;
    Range<Milliseconds> offTime;
    Range<Milliseconds> rampUp;
    Range<Milliseconds> rampDown;
    Range<Milliseconds> sessionLength; ///< `most` is the session timer's maximum

    /// The order in which the unit asks for its settings; the handout follows it. Settings not
    /// named here follow in standardAskingOrder().
    std::vector<Field> askingOrder;
    /// What the unit itself calls its settings, as the practice read it there; at most
    /// longestOwnWord bytes. Amplitude stands under amplitudeCeiling. None are built in.
    std::map<Field, std::string> ownWords = {};
    bool archived = false;
    Version version = 1;
    friend bool operator==(const Stimulator&, const Stimulator&) = default;
};

inline constexpr std::size_t longestOwnWord = 60;
inline constexpr int mostMemories = 99;

/// The settings that can have a range, in the order used where a unit names none.
const std::vector<Field>& standardAskingOrder();
/// All settings with a range that `stimulator` has, in the order in which it asks for them.
std::vector<Field> askingOrderOf(const Stimulator& stimulator);
/// The range of one setting; nothing when the unit does not have it. Both amplitude fields share a
/// range.
std::optional<CountRange> rangeOf(const Stimulator& stimulator, Field field);
/// Sets the range of one setting (nothing removes an optional one). Fields without range are
/// ignored.
void setRange(Stimulator& stimulator, Field field, const std::optional<CountRange>& range);

/// The settings that all channels have in common on a unit whose channels share their timing.
const std::vector<Field>& sharedTimingFields();

/// A unit as common practice has it (no source): symmetric biphasic, two channels with shared
/// timing, ramps inside the on time; a start for describing one's own, with an empty name.
Stimulator commonStimulator();

/// Whether the description of the unit makes sense in itself: a name, channels 1 to 8, a range for
/// each setting that its waveforms need, each range in order and within what the arithmetic allows;
/// memories, output and own words within their bounds.
std::vector<Finding> checkStimulator(const Stimulator& stimulator);

} // namespace quadrille
