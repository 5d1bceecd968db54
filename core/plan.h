// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/course.h"
#include "core/ids.h"
#include "core/placement.h"
#include "core/stimulator.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace quadrille
{

/// So many days of each week, whichever the patient chooses.
struct DaysPerWeek {
    int days = 5; ///< 1 … 7
    friend bool operator==(const DaysPerWeek&, const DaysPerWeek&) = default;
};
using Schedule = std::variant<WeekdaySet, DaysPerWeek>;

/// Whether the sites of a block run at once or one after another; it decides how long a sitting
/// takes.
enum class SiteOrder { together, oneAfterAnother };

/// What the settings of a block were taken from, for whoever asks years later.
struct BlockOrigin {
    std::string name;          ///< of a study or of the practice's own settings; not empty
    bool changedSince = false; ///< a setting, days or sessions a day were changed afterwards
    friend bool operator==(const BlockOrigin&, const BlockOrigin&) = default;
};

/// A run of whole weeks with the same prescription.
struct Block {
    int weeks = 4; ///< 1 … 52
    Schedule schedule = WeekdaySet::mondayToFriday();
    int sessionsPerDay = 1; ///< 1 … 6
    SiteOrder siteOrder = SiteOrder::together;
    std::vector<Site> sites;
    std::optional<BlockOrigin> origin = std::nullopt; ///< nothing where settings were set by hand
    friend bool operator==(const Block&, const Block&) = default;
};

/// Days of a week on which the block is done.
int daysPerWeek(const Block& block);
/// Days × sessions a day.
int sessionsPerWeek(const Block& block);

/// The next plan while it is worked on: saved freely, in force on no day, never printed.
struct Draft {
    std::optional<DraftId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    std::optional<StimulatorId> stimulator = std::nullopt;
    std::vector<Block> blocks;
    /// Why variants were adopted into it, the earliest first; each a single line, for the reason of
    /// the plan that it becomes.
    std::vector<std::string> adoptedReasons = {};
    Version version = 0; ///< 0: not saved yet
    friend bool operator==(const Draft&, const Draft&) = default;
};

/// All blocks of a course as issued on one date. Never changed after issue; a change makes the next
/// plan. It copies what its figures rest on.
struct Plan {
    std::optional<PlanId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    int number = 1; ///< 1, 2, 3 … within the course
    Date issuedOn;
    std::optional<PractitionerId> issuedBy = std::nullopt;
    std::string issuedByName; ///< as it was on the day
    Date fromDate; ///< never before issuedOn, except for the first plan of a course already under
                   ///< way
    std::string reason;
    Stimulator stimulator; ///< as it was on the day
    int limitsVersion = 0; ///< see core/limits.h
    std::vector<Block> blocks;
    int atlasVersion = 0;                           ///< 0: no atlas was consulted
    std::vector<SegmentLength> segmentLengths = {}; ///< as they were on the day
    friend bool operator==(const Plan&, const Plan&) = default;
};

/// A copy of an issued plan's blocks to work on.
Draft draftFrom(const Plan& plan);

/// Weeks of all blocks together.
int totalWeeks(const std::vector<Block>& blocks);
/// The course week in which a block starts; `index` < blocks.size().
CourseWeek firstWeekOf(const std::vector<Block>& blocks, std::size_t index);
/// Which block a course week belongs to; nothing after the last.
std::optional<std::size_t> blockOf(const std::vector<Block>& blocks, CourseWeek week);

/// The plan in force on a day: issued last (by number) among those whose from-date is on or before
/// it. Nothing before the first. `plans` belong to one course, in any order.
std::optional<std::size_t> planInForce(const std::vector<Plan>& plans, Date day);

/// The side that a course treats: what was said of it, else the one side of all sites of the newest
/// plan, both where they lie on both. Nothing while neither is known.
std::optional<TreatedSide> treatedSideOf(const Course& course, const std::vector<Plan>& plans);

/// What a day asks for.
struct DayPrescription {
    int sessions = 0;    ///< 0: nothing prescribed
    bool anyDay = false; ///< one of several days of the week, the patient's choice
    friend bool operator==(const DayPrescription&, const DayPrescription&) = default;
};

/// What the plan in force on `day` asks for. Nothing before the course starts, after its end, or
/// after the last week.
DayPrescription prescriptionOn(const Course& course, const std::vector<Plan>& plans, Date day);

} // namespace quadrille
