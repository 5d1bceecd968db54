// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/body_region.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace quadrille
{

namespace
{

using Located = std::pair<std::string_view, BodyRegion>;

/// A word in the name of a muscle tells where it lies; the first that fits, so that "triceps
/// surae" and "biceps femoris" stand before "triceps" and "biceps".
constexpr std::array muscleWords{
    Located{"triceps surae", BodyRegion::lowerLeg},
    Located{"femoris", BodyRegion::thigh},
    Located{"quadriceps", BodyRegion::thigh},
    Located{"vastus", BodyRegion::thigh},
    Located{"hamstring", BodyRegion::thigh},
    Located{"semitendinosus", BodyRegion::thigh},
    Located{"semimembranosus", BodyRegion::thigh},
    Located{"adductor", BodyRegion::thigh},
    Located{"gluteus", BodyRegion::pelvis},
    Located{"gluteal", BodyRegion::pelvis},
    Located{"tibialis", BodyRegion::lowerLeg},
    Located{"gastrocnemius", BodyRegion::lowerLeg},
    Located{"soleus", BodyRegion::lowerLeg},
    Located{"peroneus", BodyRegion::lowerLeg},
    Located{"fibularis", BodyRegion::lowerLeg},
    Located{"calf", BodyRegion::lowerLeg},
    Located{"deltoid", BodyRegion::shoulder},
    Located{"supraspinatus", BodyRegion::shoulder},
    Located{"infraspinatus", BodyRegion::shoulder},
    Located{"biceps", BodyRegion::upperArm},
    Located{"triceps", BodyRegion::upperArm},
    Located{"brachialis", BodyRegion::upperArm},
    Located{"wrist", BodyRegion::forearm},
    Located{"carpi", BodyRegion::forearm},
    Located{"digitorum", BodyRegion::forearm},
    Located{"finger", BodyRegion::forearm},
    Located{"abdominis", BodyRegion::abdomen},
    Located{"abdominal", BodyRegion::abdomen},
    Located{"pectoralis", BodyRegion::chest},
    Located{"erector spinae", BodyRegion::lowerBack},
    Located{"lumbar", BodyRegion::lowerBack},
    Located{"latissimus", BodyRegion::upperBack},
    Located{"rhomboid", BodyRegion::upperBack},
};

/// Words of more than one muscle, in the arm and in the leg, or of one that a word above would put
/// in the wrong part: the trapezius reaches from the neck over the back. Their place is not known
/// from the name.
constexpr std::array<std::string_view, 7> doubtfulWords{
    "digitorum longus", "digitorum brevis", "pollicis",         "hallucis",
    "digiti minimi",    "trapezius",        "quadratus femoris"};

std::string lowered(std::string_view text)
{
    std::string lower(text);
    std::ranges::transform(lower, lower.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return lower;
}

bool sidesMeet(PlaceSide place, Side site)
{
    return place == PlaceSide::both || site == Side::middle ||
           (place == PlaceSide::left) == (site == Side::left);
}

} // namespace

bool isSameMuscle(std::string_view one, std::string_view other)
{
    return lowered(one) == lowered(other);
}

std::optional<Limb> limbOf(BodyRegion region)
{
    switch (region) {
    case BodyRegion::shoulder:
    case BodyRegion::upperArm:
    case BodyRegion::forearm:
    case BodyRegion::hand:
        return Limb::arm;
    case BodyRegion::pelvis:
    case BodyRegion::thigh:
    case BodyRegion::lowerLeg:
    case BodyRegion::foot:
        return Limb::leg;
    default:
        return std::nullopt;
    }
}

std::optional<BodyRegion> regionOfMuscle(std::string_view muscle)
{
    const std::string name = lowered(muscle);
    const auto contains = [&](std::string_view word) {
        return name.find(word) != std::string::npos;
    };
    if (std::ranges::any_of(doubtfulWords, contains)) {
        return std::nullopt;
    }
    const auto found = std::ranges::find_if(muscleWords, contains, &Located::first);
    return found != muscleWords.end() ? std::optional(found->second) : std::nullopt;
}

bool reaches(const BodyPlace& place, Reach reach, std::optional<BodyRegion> region, Side side)
{
    const auto limb = limbOf(place.region);
    if (limb && !sidesMeet(place.side, side)) {
        return false;
    }
    if (!region || *region == place.region) {
        return true;
    }
    return reach == Reach::limb && limb && limb == limbOf(*region);
}

} // namespace quadrille
