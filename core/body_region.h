// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of the body as a screening names them: where a local contraindication lies, and where the
// pads of a site lie. Parts reach over their lower joint, so that a knee belongs to its thigh.
#pragma once

#include "core/placement.h"

#include <optional>
#include <string_view>

namespace quadrille
{

/// In the order of a form, from head to foot. The thigh has the knee, the lower leg the ankle, the
/// upper arm the elbow, the forearm the wrist; the pelvis has hip and buttock.
enum class BodyRegion {
    head,
    neck,
    chest,
    abdomen,
    upperBack,
    lowerBack,
    pelvis,
    shoulder,
    upperArm,
    forearm,
    hand,
    thigh,
    lowerLeg,
    foot,
};

enum class Limb { arm, leg };
/// The limb that a part belongs to, shoulder and pelvis with it; nothing for head and trunk.
std::optional<Limb> limbOf(BodyRegion region);

/// Where a muscle of this name lies, in any case of letters: "Vastus medialis" in the thigh.
/// Nothing for a name that is not known; who asks must then count it everywhere.
std::optional<BodyRegion> regionOfMuscle(std::string_view muscle);

/// Whether two names, in any case of letters, are those of one muscle.
bool isSameMuscle(std::string_view one, std::string_view other);

/// One side of a part, or both. Head and trunk have no halves here: a side given for them says
/// nothing.
enum class PlaceSide { left, right, both };

/// Where something lies.
struct BodyPlace {
    BodyRegion region = BodyRegion::thigh;
    PlaceSide side = PlaceSide::both;
    friend bool operator==(const BodyPlace&, const BodyPlace&) = default;
};

/// How far a local contraindication reaches from where it lies.
enum class Reach {
    region, ///< sites in the same part
    limb,   ///< sites anywhere on the limb: what a vessel carries on
};

/// Whether a site of this part and side lies where `place` reaches. A site in the middle lies on
/// both sides; a site of unknown part lies in each of its side.
bool reaches(const BodyPlace& place, Reach reach, std::optional<BodyRegion> region, Side side);

} // namespace quadrille
