// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measurement_change.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <tuple>

namespace quadrille
{

namespace
{

constexpr auto detectable = ThresholdMeaning::detectable;
constexpr auto important = ThresholdMeaning::important;
constexpr auto muchBetter = ThresholdMeaning::muchBetter;
using Group = ThresholdGroup;

constexpr Source salaffi{"Salaffi 2004, n = 825", false};
constexpr Source alghadir{"BMC Musculoskelet Disord 2015;16:174", false};
constexpr Source kennedy{"Kennedy 2005, BMC Musculoskelet Disord 6:3", true};
constexpr Source gill{"Gill 2022, test-retest, n = 93", false};
constexpr Source replacement{"a study around knee replacement, n = 33", false};
constexpr Source martin{"Martín-San Agustín 2021, Int J Environ Res Public Health 18:2314", false};
constexpr Source jones{"Jones 2013, Thorax 68:1015", true};
constexpr Source arthritisGait{"a study of osteoarthritis, 20 m walk, 4.1 to 6.9 m/min", false};
constexpr Source perera{"Perera 2006, J Am Geriatr Soc 54:743", true};
constexpr Source tilson{"Tilson 2010, Phys Ther 90:196", true};
constexpr Source goniometer{"usual error of a goniometer", true};

/// The smallest of a kind first.
constexpr std::array thresholds = std::to_array<ChangeThreshold>({
    {"extensor_lag", detectable, 5'000, Group::anybody, goniometer},
    {"range_of_motion", detectable, 5'000, Group::anybody, goniometer},
    {"pain_at_rest", important, 1'000, Group::musculoskeletalPain, salaffi, true},
    {"pain_at_rest", muchBetter, 2'000, Group::musculoskeletalPain, salaffi, true},
    {"pain_under_load", important, 1'000, Group::musculoskeletalPain, salaffi, true},
    {"pain_under_load", muchBetter, 2'000, Group::musculoskeletalPain, salaffi, true},
    {"timed_up_and_go", detectable, 1'100, Group::kneeArthritisSameRater, alghadir},
    {"timed_up_and_go", detectable, 1'140, Group::kneeArthritisTwoRaters, alghadir},
    {"timed_up_and_go", detectable, 2'490, Group::hipOrKneeReplacement, kennedy},
    {"chair_stands_30_s", detectable, 960, Group::kneeReplacement, replacement},
    {"chair_stands_30_s", detectable, 2'500, Group::earlyKneeArthritis, gill},
    {"five_times_sit_to_stand", important, 720, Group::strokeHouseholdEightWeeks, martin, true},
    {"five_times_sit_to_stand", important, 1'700, Group::lungDisease, jones, true},
    {"five_times_sit_to_stand", important, 1'900, Group::strokeHouseholdFourWeeks, martin, true},
    {"five_times_sit_to_stand", important, 3'000, Group::strokeLimitedCommunity, martin, true},
    {walkTenMetres, important, 50, Group::olderSmall, perera},
    {walkTenMetres, important, 68, Group::kneeOrHipArthritisLeast, arthritisGait},
    {walkTenMetres, important, 100, Group::olderSubstantial, perera},
    {walkTenMetres, important, 115, Group::kneeOrHipArthritisMost, arthritisGait},
    {walkTenMetres, important, 160, Group::stroke, tilson},
});

std::optional<double> percentOf(std::int64_t part, std::int64_t whole)
{
    if (whole <= 0) {
        return std::nullopt;
    }
    return 100.0 * static_cast<double>(part) / static_cast<double>(whole);
}

std::size_t placeInCatalogue(const std::string& kind)
{
    const auto kinds = measurementKinds();
    return static_cast<std::size_t>(std::ranges::find(kinds, kind, &MeasurementKind::key) -
                                    kinds.begin());
}

/// Of a measurement, or of a series.
template <class One>
auto whatCompares(const One& one)
{
    return std::tie(one.kind, one.subject, one.method, one.unit);
}

bool isEarlier(const Measurement& a, const Measurement& b)
{
    const auto key = [](const Measurement& m) {
        return std::pair(m.measuredOn, m.id ? m.id->key() : 0);
    };
    return key(a) < key(b);
}

} // namespace

std::optional<double> symmetryIndex(std::int64_t treated, std::int64_t other)
{
    return percentOf(treated, other);
}

bool symmetryApplies(const MeasurementKind& kind, std::optional<TreatedSide> treated)
{
    const bool oneSided = treated == TreatedSide::left || treated == TreatedSide::right;
    return kind.symmetryApplies && oneSided;
}

std::optional<double> percentOfMaximum(std::int64_t stimulated, std::int64_t maximum)
{
    return percentOf(stimulated, maximum);
}

std::vector<ChangeThreshold> thresholdsOf(std::string_view kind)
{
    std::vector<ChangeThreshold> found;
    std::ranges::copy_if(thresholds, std::back_inserter(found),
                         [&](const ChangeThreshold& one) { return one.kind == kind; });
    return found;
}

ChangeJudgement judgeChange(const MeasurementKind& kind, std::int64_t change)
{
    ChangeJudgement judgement;
    if (change != 0 && kind.better != Better::neither) {
        judgement.better = (change > 0) == (kind.better == Better::higher);
    }
    for (const ChangeThreshold& threshold : thresholdsOf(kind.key)) {
        if (threshold.improvementOnly && judgement.better == false) {
            continue;
        }
        const bool reached = std::abs(change) >= threshold.thousandths;
        (reached ? judgement.reached : judgement.notReached).push_back(threshold);
    }
    return judgement;
}

bool isOfSeries(const Measurement& one, const MeasurementSeries& series)
{
    return whatCompares(one) == whatCompares(series);
}

bool isSameSeries(const MeasurementSeries& a, const MeasurementSeries& b)
{
    return whatCompares(a) == whatCompares(b);
}

std::vector<MeasurementSeries> seriesOf(const std::vector<Measurement>& measurements)
{
    using Key = std::tuple<std::size_t, std::string, std::string, std::string, std::string>;
    std::map<Key, MeasurementSeries> byKey;
    for (const Measurement& one : measurements) {
        if (one.withdrawn) {
            continue;
        }
        const Key key{placeInCatalogue(one.kind), one.kind, one.subject, one.method, one.unit};
        const auto place =
            byKey
                .try_emplace(key,
                             MeasurementSeries{one.kind, one.subject, one.method, one.unit, {}})
                .first;
        place->second.values.push_back(one);
    }
    std::vector<MeasurementSeries> all;
    for (auto& [key, series] : byKey) {
        std::ranges::stable_sort(series.values, isEarlier);
        all.push_back(std::move(series));
    }
    return all;
}

SideSummary summaryOf(const MeasurementSeries& series, Side side)
{
    SideSummary summary;
    for (const Measurement& one : series.values) {
        if (one.side != side) {
            continue;
        }
        if (!summary.baseline || summary.baseline->measuredOn == one.measuredOn) {
            summary.baseline = one;
        }
        summary.latest = one;
    }
    if (summary.latest && summary.latest->measuredOn > summary.baseline->measuredOn) {
        summary.change = summary.latest->thousandths - summary.baseline->thousandths;
    }
    return summary;
}

std::vector<SymmetryOn> symmetryOf(const MeasurementSeries& series,
                                   std::optional<TreatedSide> treated)
{
    const MeasurementKind* kind = measurementKind(series.kind);
    if (kind == nullptr || !symmetryApplies(*kind, treated)) {
        return {};
    }
    const Side treatedSide = treated == TreatedSide::left ? Side::left : Side::right;
    std::map<Date, std::pair<std::optional<std::int64_t>, std::optional<std::int64_t>>> days;
    for (const Measurement& one : series.values) {
        if (one.side != Side::middle) {
            auto& [ofTreated, ofOther] = days[one.measuredOn];
            (one.side == treatedSide ? ofTreated : ofOther) = one.thousandths;
        }
    }
    std::vector<SymmetryOn> all;
    for (const auto& [day, sides] : days) {
        if (!sides.first || !sides.second) {
            continue;
        }
        if (const auto percent = symmetryIndex(*sides.first, *sides.second)) {
            all.push_back({day, *percent});
        }
    }
    return all;
}

std::optional<ShareOfMaximum> shareOfMaximum(const Measurement& stimulated,
                                             const std::vector<Measurement>& all)
{
    const Measurement* maximum = nullptr;
    for (const Measurement& one : all) {
        const bool same = one.kind == isometricTorque && one.side == stimulated.side &&
                          one.subject == stimulated.subject && one.method == stimulated.method &&
                          one.unit == stimulated.unit;
        const bool before = !one.withdrawn && one.measuredOn <= stimulated.measuredOn;
        if (same && before && (maximum == nullptr || isEarlier(*maximum, one))) {
            maximum = &one;
        }
    }
    if (maximum == nullptr) {
        return std::nullopt;
    }
    const auto percent = percentOfMaximum(stimulated.thousandths, maximum->thousandths);
    return percent ? std::optional(ShareOfMaximum{*percent, *maximum}) : std::nullopt;
}

} // namespace quadrille
