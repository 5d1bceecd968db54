// SPDX-License-Identifier: GPL-3.0-or-later
// What measurements say together: change since the baseline against published thresholds, the
// symmetry index, the share of the voluntary maximum.
#pragma once

#include "core/course.h"
#include "core/measurement.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille
{

/// Treated side / other side × 100 %: the limb symmetry index, involved / uninvolved × 100. It
/// overestimates recovery where the other side has weakened too (Wellsandt 2017). Nothing when the
/// other side is not above zero.
std::optional<double> symmetryIndex(std::int64_t treated, std::int64_t other);
/// Only for torque and force, and only in the course of a one-sided problem.
bool symmetryApplies(const MeasurementKind& kind, std::optional<TreatedSide> treated);

/// Torque under stimulation / maximum voluntary torque × 100 %. Nothing when that is not above
/// zero.
std::optional<double> percentOfMaximum(std::int64_t stimulated, std::int64_t maximum);

/// What a published threshold means.
enum class ThresholdMeaning {
    detectable, ///< beyond the error of measurement of one person
    important,  ///< the least that people who were asked called an improvement
    muchBetter, ///< what they called much better
};

/// Whom a threshold was found in.
enum class ThresholdGroup {
    anybody,
    musculoskeletalPain,
    kneeArthritisSameRater,
    kneeArthritisTwoRaters,
    earlyKneeArthritis,
    kneeReplacement,
    hipOrKneeReplacement,
    strokeLimitedCommunity,
    strokeHouseholdFourWeeks,
    strokeHouseholdEightWeeks,
    lungDisease,
    kneeOrHipArthritisLeast,
    kneeOrHipArthritisMost,
    olderSmall,
    olderSubstantial,
    stroke,
};

struct ChangeThreshold {
    std::string_view kind;
    ThresholdMeaning meaning = ThresholdMeaning::detectable;
    std::int64_t thousandths = 0; ///< of the kind's unit, above zero
    ThresholdGroup group = ThresholdGroup::anybody;
    Source source = {};
    bool improvementOnly = false; ///< nothing was published on getting worse
};

/// What is published for a kind, the smallest first; empty where nothing is known.
std::vector<ChangeThreshold> thresholdsOf(std::string_view kind);

/// A change held against all that is published for its kind.
struct ChangeJudgement {
    std::vector<ChangeThreshold> reached;    ///< the change is at least this
    std::vector<ChangeThreshold> notReached; ///< it is smaller
    /// Better, worse; nothing where neither way is better or nothing changed.
    std::optional<bool> better = std::nullopt;
};
ChangeJudgement judgeChange(const MeasurementKind& kind, std::int64_t change);

/// Values that compare: of the same kind, subject, method and unit. Withdrawn ones are left out.
struct MeasurementSeries {
    std::string kind;
    std::string subject;
    std::string method;
    std::string unit;
    std::vector<Measurement> values; ///< the earliest first, both sides
};
/// Whether a value compares with those of a series; a withdrawn one may, and is not among them.
bool isOfSeries(const Measurement& one, const MeasurementSeries& series);
/// Whether two hold values that compare.
bool isSameSeries(const MeasurementSeries& a, const MeasurementSeries& b);
/// In the order of the catalogue, then by subject and method.
std::vector<MeasurementSeries> seriesOf(const std::vector<Measurement>& measurements);

/// What one side of a series tells. The baseline is the course's first value; of several on its
/// day the last counts, as in the symmetry index.
struct SideSummary {
    std::optional<Measurement> baseline = std::nullopt;
    std::optional<Measurement> latest = std::nullopt;
    std::optional<std::int64_t> change = std::nullopt; ///< since a baseline of an earlier day
};
SideSummary summaryOf(const MeasurementSeries& series, Side side);

/// The index on a day on which both sides were measured.
struct SymmetryOn {
    Date day;
    double percent = 0.0;
};
/// On every day that has one, the earliest first; empty where it does not apply. Of several values
/// of a side and day the last counts.
std::vector<SymmetryOn> symmetryOf(const MeasurementSeries& series,
                                   std::optional<TreatedSide> treated);

/// The voluntary maximum that a torque under stimulation is held against: same muscle, side and
/// method, the latest up to that day. It has to be named, since the share hangs on it.
struct ShareOfMaximum {
    double percent = 0.0;
    Measurement maximum;
};
std::optional<ShareOfMaximum> shareOfMaximum(const Measurement& stimulated,
                                             const std::vector<Measurement>& all);

} // namespace quadrille
