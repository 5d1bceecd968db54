// SPDX-License-Identifier: GPL-3.0-or-later
// The catalogue of what is measured at a visit: unit, sides, how trials count, what is plausible.
#pragma once

#include "core/finding.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille
{

/// On which sides a kind is measured.
enum class Sidedness {
    each, ///< right and left, to be compared
    one,  ///< one side, usually the treated one
    none, ///< the whole person
};

/// Which way is better.
enum class Better {
    higher,
    lower,
    neither, ///< girth: muscle and swelling pull opposite ways
};

/// What has to be said beside the kind, so that two values are of the same thing.
enum class SubjectOf {
    nothing,
    muscle,   ///< "quadriceps"
    movement, ///< "knee flexion"
    place,    ///< "10 cm above the kneecap": a distance from a landmark
    name,     ///< a kind of the practice's own
};

/// How several trials make one value.
enum class Counted {
    one,  ///< no trials: one value
    best, ///< the highest, or the lowest where lower is better
    mean,
};

inline constexpr std::size_t fewestTrials = 2;
inline constexpr std::size_t mostTrials = 5;

/// One kind. Values are whole thousandths of the unit.
struct MeasurementKind {
    std::string_view key;  ///< as the store keeps it; a released one is never changed
    std::string_view unit; ///< UCUM, case-sensitive (ucum.org); from memory but for kg, cm, s, %
    Sidedness sides = Sidedness::none;
    Better better = Better::higher;
    SubjectOf subject = SubjectOf::nothing;
    bool methodNeeded = false; ///< joint angle, pace …: without it two values do not compare
    Counted trials = Counted::one;
    Source trialSource = {};
    std::int64_t least = 0; ///< plausible; common practice, no source, but for scales
    std::int64_t most = 0;
    int decimals = 0;             ///< shown
    bool symmetryApplies = false; ///< torque and force only
};

/// Keys that other parts of the program name.
inline constexpr std::string_view isometricTorque = "isometric_torque";
inline constexpr std::string_view stimulatedTorque = "stimulated_torque";
inline constexpr std::string_view walkTenMetres = "walk_10_m";
inline constexpr std::string_view ownKind = "own";

/// All kinds, in the order in which a visit goes through them; the practice's own stands last.
std::span<const MeasurementKind> measurementKinds();
/// Nothing for a key that is none.
const MeasurementKind* measurementKind(std::string_view key);

/// Whether values are points of a scale from 0 to 10. A "score" that a practice counts in a kind of
/// its own has no such end.
bool isScoreOfTen(std::string_view kind, std::string_view ucum);

/// Whether a value lies in the plausible range. Outside is worth a second look, and never refused.
bool isPlausible(const MeasurementKind& kind, std::int64_t thousandths);

/// The value that counts of 2 to 5 trials; nothing for another number of them, or for a kind of one
/// value. A mean is rounded to the nearest thousandth, halves away from zero.
std::optional<std::int64_t> valueOfTrials(Counted counted, Better better,
                                          const std::vector<std::int64_t>& trials);

/// The UCUM code of a unit as the trade writes it: "N·m" is N.m, "°" is deg, "m/s" is itself. A
/// word that is no unit becomes an annotation: "stairs" is {stairs}, "steps a minute"
/// {steps_a_minute}. Nothing when it is empty or has letters that UCUM does not (beyond ASCII).
std::optional<std::string> ucumOf(std::string_view tradeUnit);
/// The way back: N·m of N.m, "stairs" of {stairs}. An unknown code is itself.
std::string tradeUnitOf(std::string_view ucum);

/// The speed over ten metres, in thousandths of m/s to the nearest, from the time that they took in
/// thousandths of a second; nothing for no time.
std::optional<std::int64_t> speedOverTenMetres(std::int64_t milliseconds);

} // namespace quadrille
