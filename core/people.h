// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/ids.h"
#include "core/units.h"

#include <compare>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// The clinic that owns the store.
struct Practice {
    std::string name;
    std::string address;   ///< free text, several lines; its last line names the town
    std::string telephone; ///< what patients ring; printed on each handout
    std::string
        emergencyNumber; ///< printed on each handout; empty until the practice has said which
    Version version = 1;
    friend bool operator==(const Practice&, const Practice&) = default;
};

/// Who signs.
struct Practitioner {
    std::optional<PractitionerId> id = std::nullopt;
    std::string name;
    std::string registrationNumber;
    std::string initials;
    bool archived = false;
    Version version = 1;
    friend bool operator==(const Practitioner&, const Practitioner&) = default;
};

enum class Segment { upperArm, forearm, hand, thigh, shank, foot };
enum class BodySide { left, right };

/// The length of a part of the body, from joint to joint: the lever on which a force was measured.
struct SegmentLength {
    Segment segment = Segment::shank;
    BodySide side = BodySide::right;
    Length length; ///< 20 mm to 1000 mm
    friend auto operator<=>(const SegmentLength&, const SegmentLength&) = default;
};

/// A person treated.
struct Patient {
    std::optional<PatientId> id = std::nullopt;
    std::string reference; ///< the practice's own number; unique
    std::string name;
    Date birthDate;
    std::string telephone;
    std::string note;
    bool archived = false;
    std::string email = {};
    std::string address = {};                    ///< several lines
    std::string contactPerson = {};              ///< whom else to ring, and the number
    std::optional<Length> height = std::nullopt; ///< 300 mm to 2600 mm
    std::string language = {}; ///< of the handout, a BCP 47 tag; empty: the practice's own
    std::vector<SegmentLength> segmentLengths = {}; ///< in order, each segment and side once
    Version version = 1;
    friend bool operator==(const Patient&, const Patient&) = default;
};

} // namespace quadrille
