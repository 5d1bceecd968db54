// SPDX-License-Identifier: GPL-3.0-or-later
// A session in the clinic with the patient's own unit: what was felt, seen and tolerated at each
// site. Its highest tolerated amplitude is the guidance that the handout gives.
#pragma once

#include "core/finding.h"
#include "core/people.h"
#include "core/placement.h"
#include "core/strength_duration.h"
#include "core/units.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// How the skin under the pads looked.
enum class SkinLook {
    clear,  ///< nothing to see
    pink,   ///< pink or marked, unbroken
    broken, ///< broken, blister or burn
};

/// Thresholds at one phase duration. What was not sought is not known.
struct ClinicThreshold {
    PhaseDuration phaseDuration;
    std::optional<Amplitude> sensory = std::nullopt;   ///< first felt
    std::optional<Amplitude> motor = std::nullopt;     ///< first visible twitch
    std::optional<Amplitude> tolerated = std::nullopt; ///< the most that was tolerated
    friend bool operator==(const ClinicThreshold&, const ClinicThreshold&) = default;
};

/// One site as it was tried.
struct ClinicSite {
    std::string muscle;
    Side side = Side::right;
    int channel = 1;
    bool placementConfirmed = false; ///< the pads lay as planned when the values were taken
    std::optional<bool> contractionSeen = std::nullopt;
    std::optional<std::int64_t> torque = std::nullopt; ///< reached, in thousandths of N·m
    std::optional<SkinLook> skinBefore = std::nullopt;
    std::optional<SkinLook> skinAfter = std::nullopt;
    std::vector<ClinicThreshold> thresholds; ///< by phase duration, each once
    std::string note;
    friend bool operator==(const ClinicSite&, const ClinicSite&) = default;
};

/// Written once; an entry made by mistake is withdrawn.
struct ClinicSession {
    std::optional<ClinicSessionId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date heldOn;
    std::optional<PractitionerId> practitioner = std::nullopt;
    std::string practitionerName; ///< as it was on the day; filled in by the store
    std::vector<ClinicSite> sites;
    std::string note;
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const ClinicSession&, const ClinicSession&) = default;
};

enum class ThresholdKind { sensory, motor };

/// The thresholds of one kind that are known, for a strength-duration fit.
std::vector<ThresholdPoint> thresholdPoints(const ClinicSite& site, ThresholdKind kind);

/// The most that was tolerated at this phase duration; nothing where it was not tried.
std::optional<Amplitude> toleratedAt(const ClinicSite& site, PhaseDuration phaseDuration);

/// Remarks on one site, all of them common practice without a source: skin broken before pads go
/// on it; a motor threshold below the sensory one, or a tolerated amplitude below the motor one;
/// no contraction seen; skin broken afterwards.
std::vector<Finding> clinicSiteFindings(const ClinicSite& site);

} // namespace quadrille
