// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/placement.h"

#include <algorithm>
#include <numbers>

namespace quadrille
{

PadArea padArea(const Pad& pad)
{
    const double width = static_cast<double>(pad.width.count()) / 10.0; // mm to cm
    const double height = static_cast<double>(pad.height.count()) / 10.0;
    if (pad.shape == PadShape::round) {
        return PadArea(std::numbers::pi / 4.0 * width * width);
    }
    return PadArea(width * height);
}

bool isPossible(const Pad& pad)
{
    using namespace literals;
    const auto possible = [](Length side) { return side >= 5_mm && side <= 400_mm; };
    return possible(pad.width) && possible(pad.height) &&
           (pad.shape == PadShape::rectangle || pad.width == pad.height);
}

std::optional<PadArea> smallerPadArea(const std::vector<Pad>& pads)
{
    if (pads.empty()) {
        return std::nullopt;
    }
    return padArea(std::ranges::min(pads, {}, padArea));
}

} // namespace quadrille
