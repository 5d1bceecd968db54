// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/settings.h"
#include "core/units.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

enum class Side { left, right, middle };
enum class PadMaterial { selfAdhesive, carbonRubber };
enum class PadShape { rectangle, round };
/// The two leads of a channel.
enum class Lead { a, b };

/// One electrode. Its sides are stored, its area is computed, never typed.
struct Pad {
    PadMaterial material = PadMaterial::selfAdhesive;
    PadShape shape = PadShape::rectangle;
    Length width;  ///< the diameter of a round pad
    Length height; ///< equal to width for a round pad
    Lead lead = Lead::a;
    friend bool operator==(const Pad&, const Pad&) = default;
};

/// Width × height, or π/4 × diameter².
PadArea padArea(const Pad& pad);
/// Sides from 5 mm to 400 mm; a round pad has one measure only.
bool isPossible(const Pad& pad);

/// One muscle on one side on one channel.
struct Site {
    std::string muscle;
    Side side = Side::right;
    int channel = 1; ///< 1 … channels of the unit
    std::vector<Pad> pads;
    Settings settings;
    std::string position;    ///< how to sit or lie
    std::string instruction; ///< in the practitioner's words
    friend bool operator==(const Site&, const Site&) = default;
};

/// The area of the smaller pad, which current density is held against; nothing without pads.
std::optional<PadArea> smallerPadArea(const std::vector<Pad>& pads);

} // namespace quadrille
