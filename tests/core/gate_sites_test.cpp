// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/screening_gate.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using testing::ElementsAre;

TEST(ScreeningGate, SitesOfAllBlocksAreAskedForOnceEach)
{
    Site thigh;
    thigh.muscle = "quadriceps";
    Site thumb;
    thumb.muscle = "thumb";
    thumb.side = Side::left;
    const std::vector<Block> blocks{{.sites = {thigh}}, {.sites = {thigh, thumb}}};
    EXPECT_THAT(gateSites(blocks, std::nullopt),
                ElementsAre(GateSite{"quadriceps", Side::right, BodyRegion::thigh},
                            GateSite{"thumb", Side::left, std::nullopt}));
    Screening screening;
    screening.skin = {{.muscle = "thumb", .region = BodyRegion::hand, .side = Side::left}};
    EXPECT_EQ(gateSites(blocks, screening)[1].region, BodyRegion::hand);
}

} // namespace
} // namespace quadrille
