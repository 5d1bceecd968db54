// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measurement_kinds.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <numeric>
#include <utility>

namespace quadrille
{

namespace
{

constexpr std::string_view score = "{score}";

constexpr Source commonPractice{"common practice, no source", false};
constexpr Source handTherapists{"American Society of Hand Therapists, mean of three", true};

constexpr std::array kinds = std::to_array<MeasurementKind>({
    {.key = isometricTorque,
     .unit = "N.m",
     .sides = Sidedness::each,
     .subject = SubjectOf::muscle,
     .methodNeeded = true,
     .trials = Counted::best,
     .trialSource = commonPractice,
     .least = 2'000,
     .most = 400'000,
     .decimals = 1,
     .symmetryApplies = true},
    {.key = "isometric_force",
     .unit = "N",
     .sides = Sidedness::each,
     .subject = SubjectOf::muscle,
     .methodNeeded = true,
     .trials = Counted::best,
     .trialSource = commonPractice,
     .least = 5'000,
     .most = 1'500'000,
     .decimals = 0,
     .symmetryApplies = true},
    {.key = stimulatedTorque,
     .unit = "N.m",
     .sides = Sidedness::one,
     .subject = SubjectOf::muscle,
     .methodNeeded = true,
     .trials = Counted::best,
     .trialSource = commonPractice,
     .least = 500,
     .most = 250'000,
     .decimals = 1},
    {.key = "extensor_lag",
     .unit = "deg",
     .sides = Sidedness::one,
     .better = Better::lower,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = 0,
     .most = 60'000},
    {.key = "range_of_motion",
     .unit = "deg",
     .sides = Sidedness::each,
     .subject = SubjectOf::movement,
     .methodNeeded = true,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = -30'000,
     .most = 185'000},
    {.key = "girth",
     .unit = "cm",
     .sides = Sidedness::each,
     .better = Better::neither,
     .subject = SubjectOf::place,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = 10'000,
     .most = 100'000,
     .decimals = 1},
    {.key = "grip_force",
     .unit = "kgf",
     .sides = Sidedness::each,
     .trials = Counted::mean,
     .trialSource = handTherapists,
     .least = 1'000,
     .most = 90'000,
     .decimals = 1,
     .symmetryApplies = true},
    {.key = "pain_at_rest", .unit = score, .better = Better::lower, .least = 0, .most = 10'000},
    {.key = "pain_under_load", .unit = score, .better = Better::lower, .least = 0, .most = 10'000},
    {.key = "timed_up_and_go",
     .unit = "s",
     .better = Better::lower,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = 3'000,
     .most = 180'000,
     .decimals = 1},
    {.key = "chair_stands_30_s", .unit = "{stands}", .least = 0, .most = 40'000},
    {.key = "five_times_sit_to_stand",
     .unit = "s",
     .better = Better::lower,
     .least = 3'000,
     .most = 120'000,
     .decimals = 1},
    {.key = walkTenMetres,
     .unit = "m/s",
     .methodNeeded = true,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = 100,
     .most = 3'000,
     .decimals = 2},
    {.key = ownKind,
     .unit = "",
     .better = Better::neither,
     .subject = SubjectOf::name,
     .trials = Counted::mean,
     .trialSource = commonPractice,
     .least = -1'000'000'000,
     .most = 1'000'000'000,
     .decimals = 3},
});

/// As the trade writes a unit, and its code. The first of a code is the one that is shown.
struct UnitName {
    std::string_view trade;
    std::string_view ucum;
};
constexpr std::array unitNames{
    UnitName{"N·m", "N.m"}, UnitName{"Nm", "N.m"},  UnitName{"N m", "N.m"}, UnitName{"N.m", "N.m"},
    UnitName{"N", "N"},     UnitName{"kg", "kg"},   UnitName{"kg", "kgf"},  UnitName{"kgf", "kgf"},
    UnitName{"°", "deg"},   UnitName{"deg", "deg"}, UnitName{"mm", "mm"},   UnitName{"cm", "cm"},
    UnitName{"m", "m"},     UnitName{"s", "s"},     UnitName{"min", "min"}, UnitName{"m/s", "m/s"},
    UnitName{"%", "%"},     UnitName{"W", "W"},
};

} // namespace

std::span<const MeasurementKind> measurementKinds()
{
    return kinds;
}

const MeasurementKind* measurementKind(std::string_view key)
{
    const auto found = std::ranges::find(kinds, key, &MeasurementKind::key);
    return found == kinds.end() ? nullptr : &*found;
}

bool isScoreOfTen(std::string_view kind, std::string_view ucum)
{
    const MeasurementKind* known = measurementKind(kind);
    return known != nullptr && known->unit == score && ucum == score;
}

bool isPlausible(const MeasurementKind& kind, std::int64_t thousandths)
{
    return thousandths >= kind.least && thousandths <= kind.most;
}

std::optional<std::int64_t> valueOfTrials(Counted counted, Better better,
                                          const std::vector<std::int64_t>& trials)
{
    if (counted == Counted::one || trials.size() < fewestTrials || trials.size() > mostTrials) {
        return std::nullopt;
    }
    const auto [lowest, highest] = std::ranges::minmax(trials);
    if (counted == Counted::best) {
        return better == Better::lower ? lowest : highest;
    }
    const auto sum = std::accumulate(trials.begin(), trials.end(), std::int64_t{0});
    const auto size = static_cast<std::int64_t>(trials.size());
    const std::int64_t half = sum < 0 ? -(size / 2) : size / 2;
    return (sum + half) / size;
}

std::optional<std::string> ucumOf(std::string_view tradeUnit)
{
    const auto known = std::ranges::find(unitNames, tradeUnit, &UnitName::trade);
    if (known != unitNames.end() && !tradeUnit.empty()) {
        return std::string(known->ucum);
    }
    std::string word;
    for (const char letter : tradeUnit) {
        if (letter == '{' || letter == '}') {
            continue;
        }
        if (letter != ' ' && (letter < '!' || letter > '~')) {
            return std::nullopt;
        }
        word += letter == ' ' ? '_' : letter;
    }
    return word.empty() ? std::nullopt : std::optional("{" + word + "}");
}

std::string tradeUnitOf(std::string_view ucum)
{
    const auto known = std::ranges::find(unitNames, ucum, &UnitName::ucum);
    if (known != unitNames.end()) {
        return std::string(known->trade);
    }
    if (!ucum.starts_with('{') || !ucum.ends_with('}')) {
        return std::string(ucum);
    }
    std::string word(ucum.substr(1, ucum.size() - 2));
    std::ranges::replace(word, '_', ' ');
    return word;
}

std::optional<std::int64_t> speedOverTenMetres(std::int64_t milliseconds)
{
    if (milliseconds <= 0) {
        return std::nullopt;
    }
    constexpr std::int64_t tenMetresScaled = 10'000'000; // 10 m × 1000 thousandths × 1000 ms
    return (tenMetresScaled + milliseconds / 2) / milliseconds;
}

} // namespace quadrille
