// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/ids.h"
#include "core/measurement_kinds.h"
#include "core/placement.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// A dated value of one side, with how it was come by.
struct Measurement {
    std::optional<MeasurementId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    std::optional<FollowUpId> followUp = std::nullopt;
    Date measuredOn;
    std::string kind;             ///< a key of the catalogue: "isometric_torque"
    std::string subject = {};     ///< which muscle, movement or place; see SubjectOf
    Side side = Side::right;      ///< middle where a kind has no side
    std::int64_t thousandths = 0; ///< of the unit; of trials, the value that counts
    std::string unit;             ///< UCUM: "N.m"
    std::string method;           ///< joint angle, position, pace
    std::string device = {};
    Counted counted = Counted::one;
    std::vector<std::int64_t> trials = {}; ///< 2 … 5 where they were kept, in their order
    std::string recordedByName = {};       ///< filled in by the store
    bool withdrawn = false;                ///< entered by mistake
    Version version = 1;
    friend bool operator==(const Measurement&, const Measurement&) = default;
};

} // namespace quadrille
