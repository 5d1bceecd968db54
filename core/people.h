// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/ids.h"

#include <optional>
#include <string>

namespace quadrille
{

/// The clinic that owns the store.
struct Practice {
    std::string name;
    std::string address;   ///< free text, several lines; its last line names the town
    std::string telephone; ///< what patients ring; printed on each handout
    std::string
        emergencyNumber; ///< printed on each handout; empty until the practice has said which
    friend bool operator==(const Practice&, const Practice&) = default;
};

/// Who signs.
struct Practitioner {
    std::optional<PractitionerId> id = std::nullopt;
    std::string name;
    std::string registrationNumber;
    std::string initials;
    bool archived = false;
    friend bool operator==(const Practitioner&, const Practitioner&) = default;
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
    friend bool operator==(const Patient&, const Patient&) = default;
};

} // namespace quadrille
