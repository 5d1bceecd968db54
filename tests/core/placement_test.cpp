// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/placement.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;

namespace
{

Pad rectangle(Length width, Length height)
{
    return {.width = width, .height = height};
}

Pad round(Length diameter)
{
    return {.shape = PadShape::round, .width = diameter, .height = diameter};
}

} // namespace

// Plane geometry: 7.6 × 12.7 cm; a circle of 3.2 cm has π × 1.6² cm².
TEST(PadArea, IsComputedFromTheSides)
{
    EXPECT_DOUBLE_EQ(padArea(rectangle(76_mm, 127_mm)).shown(), 96.52);
    EXPECT_NEAR(padArea(round(32_mm)).shown(), 8.0424772, 1e-7);
}

TEST(PadArea, TheSmallerPadIsTheOneThatCounts)
{
    EXPECT_EQ(smallerPadArea({}), std::nullopt);
    const std::vector<Pad> pads{rectangle(50_mm, 90_mm), round(70_mm), rectangle(50_mm, 50_mm)};
    EXPECT_EQ(smallerPadArea(pads), PadArea(25.0));
    // A round pad of 7 cm has less area than a square one of 7 cm.
    EXPECT_EQ(smallerPadArea({rectangle(70_mm, 70_mm), round(70_mm)}), padArea(round(70_mm)));
}

TEST(Pad, MeasuresFromHalfACentimetreToFortyCentimetres)
{
    EXPECT_TRUE(isPossible(rectangle(5_mm, 400_mm)));
    EXPECT_FALSE(isPossible(rectangle(4_mm, 400_mm)));
    EXPECT_FALSE(isPossible(rectangle(5_mm, 401_mm)));
    EXPECT_FALSE(isPossible(Pad{}));
    EXPECT_FALSE(isPossible(rectangle(Length::fromCount(-50), 50_mm)));
}

TEST(Pad, ARoundPadHasOneMeasure)
{
    EXPECT_TRUE(isPossible(round(32_mm)));
    Pad oval = round(32_mm);
    oval.height = 33_mm;
    EXPECT_FALSE(isPossible(oval));
}
