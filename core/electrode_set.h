// SPDX-License-Identifier: GPL-3.0-or-later
// Pads handed out to a patient, and how far they are worn.
#pragma once

#include "core/calendar.h"
#include "core/diary.h"
#include "core/ids.h"
#include "core/placement.h"
#include "core/units.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// What the pads are made of and how they keep contact.
enum class ElectrodeType {
    selfAdhesive,
    carbonRubberSponge, ///< carbon rubber over a wetted sponge, held by straps
    carbonRubberGel,    ///< carbon rubber under gel
};

/// How long a set lasts; whichever comes first ends it.
struct ElectrodeLife {
    std::optional<int> uses = std::nullopt;   ///< 1 … 10000 sessions
    std::optional<int> months = std::nullopt; ///< 1 … 120 since it was issued
    friend bool operator==(const ElectrodeLife&, const ElectrodeLife&) = default;
};

/// What a practice begins with, until it has said otherwise. Common practice, no source: trade
/// information gives self-adhesive pads 10 to 30 uses or some 30 days, and rubber months.
ElectrodeLife usualLife(ElectrodeType type);

/// The lives that a practice reckons with.
struct ElectrodeLives {
    ElectrodeLife selfAdhesive = usualLife(ElectrodeType::selfAdhesive);
    ElectrodeLife carbonRubberSponge = usualLife(ElectrodeType::carbonRubberSponge);
    ElectrodeLife carbonRubberGel = usualLife(ElectrodeType::carbonRubberGel);
    friend bool operator==(const ElectrodeLives&, const ElectrodeLives&) = default;
};
const ElectrodeLife& lifeOf(const ElectrodeLives& lives, ElectrodeType type);
ElectrodeLife& lifeOf(ElectrodeLives& lives, ElectrodeType type);

/// Pads given to a patient.
struct ElectrodeSet {
    std::optional<ElectrodeSetId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date issuedOn;
    std::string description;                          ///< what the set is for: "right thigh"
    int pads = 2;                                     ///< 1 … 64
    std::optional<ElectrodeType> type = std::nullopt; ///< none only in records of an older program
    std::optional<PadShape> shape = std::nullopt;     ///< likewise, and with it the sides
    Length width;                                     ///< 5 mm to 400 mm; a round pad's diameter
    Length height;                                    ///< equal to width for a round pad
    ElectrodeLife life = {};                          ///< as it was reckoned on the day of issue
    std::optional<Date> outOfUseOn = std::nullopt;    ///< sessions of that day no longer count
    bool withdrawn = false;                           ///< entered by mistake
    Version version = 1;
    friend bool operator==(const ElectrodeSet&, const ElectrodeSet&) = default;
};

/// How far a set is worn on a day.
struct ElectrodeWear {
    bool inUse = false; ///< issued, not taken out of use, not withdrawn
    int uses = 0;       ///< sessions done or partly done with it
    /// The first day on which it is too old; nothing where its life has no months.
    std::optional<Date> tooOldFrom = std::nullopt;
    bool usedUp = false; ///< as many uses as its life has
    bool tooOld = false;
    /// In use and at its end, by uses or by age.
    bool replacementDue() const { return inUse && (usedUp || tooOld); }
    friend bool operator==(const ElectrodeWear&, const ElectrodeWear&) = default;
};

/// Counts from the diary: each entry that is not withdrawn and longer than nothing is one use, from
/// the day of issue up to and with `asOf`, but before the day on which the set left use. Two sets
/// that are in use at once (thigh and calf) each count every session. `diary`: of the set's course,
/// in any order.
ElectrodeWear wearOf(const ElectrodeSet& set, const std::vector<DiaryEntry>& diary, Date asOf);

/// Which sets are to be replaced, as places in `sets`.
std::vector<std::size_t> setsToReplace(const std::vector<ElectrodeSet>& sets,
                                       const std::vector<DiaryEntry>& diary, Date asOf);

} // namespace quadrille
