// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/body_region.h"

#include <gtest/gtest.h>
#include <string_view>

namespace quadrille
{
namespace
{

// Anatomy as any textbook has it.
TEST(BodyRegions, AMusclesNameTellsWhereItLies)
{
    struct Row {
        std::string_view muscle;
        std::optional<BodyRegion> region;
    };
    for (const Row& row : {
             Row{"Vastus medialis", BodyRegion::thigh},
             Row{"quadriceps", BodyRegion::thigh},
             Row{"biceps femoris", BodyRegion::thigh},
             Row{"biceps brachii", BodyRegion::upperArm},
             Row{"triceps surae", BodyRegion::lowerLeg},
             Row{"triceps, long head", BodyRegion::upperArm},
             Row{"TIBIALIS ANTERIOR", BodyRegion::lowerLeg},
             Row{"gluteus medius", BodyRegion::pelvis},
             Row{"posterior deltoid", BodyRegion::shoulder},
             Row{"wrist extensors", BodyRegion::forearm},
             Row{"extensor digitorum", BodyRegion::forearm},
             Row{"pectoralis major", BodyRegion::chest},
             Row{"rectus abdominis", BodyRegion::abdomen},
             Row{"extensor digitorum longus", std::nullopt}, // in the leg, the other in the arm
             Row{"upper trapezius", std::nullopt},           // back and neck
             Row{"Trapezius, upper part", std::nullopt},
             Row{"flexor digitorum brevis", std::nullopt}, // in the foot
             Row{"adductor pollicis", std::nullopt},       // in the hand, others in the thigh
             Row{"adductor hallucis", std::nullopt},       // in the foot
             Row{"adductor magnus", BodyRegion::thigh},
             Row{"quadratus femoris", std::nullopt}, // in the buttock, others in the thigh
             Row{"thumb", std::nullopt},
             Row{"", std::nullopt},
         }) {
        EXPECT_EQ(regionOfMuscle(row.muscle), row.region) << row.muscle;
    }
}

TEST(BodyRegions, ALocalContraindicationReachesItsPartOnItsSide)
{
    const BodyPlace leftThigh{BodyRegion::thigh, PlaceSide::left};
    EXPECT_TRUE(reaches(leftThigh, Reach::region, BodyRegion::thigh, Side::left));
    EXPECT_FALSE(reaches(leftThigh, Reach::region, BodyRegion::thigh, Side::right));
    EXPECT_FALSE(reaches(leftThigh, Reach::region, BodyRegion::lowerLeg, Side::left));
    EXPECT_TRUE(reaches(leftThigh, Reach::region, BodyRegion::thigh, Side::middle));
    const BodyPlace both{BodyRegion::thigh, PlaceSide::both};
    EXPECT_TRUE(reaches(both, Reach::region, BodyRegion::thigh, Side::right));
}

// A tumour right of the middle line lies in the abdomen all the same.
TEST(BodyRegions, HeadAndTrunkHaveNoHalves)
{
    for (const BodyRegion region :
         {BodyRegion::head, BodyRegion::neck, BodyRegion::chest, BodyRegion::abdomen,
          BodyRegion::upperBack, BodyRegion::lowerBack}) {
        EXPECT_TRUE(reaches({region, PlaceSide::right}, Reach::region, region, Side::left));
    }
    EXPECT_TRUE(
        reaches({BodyRegion::neck, PlaceSide::right}, Reach::region, std::nullopt, Side::left));
    EXPECT_FALSE(reaches({BodyRegion::chest, PlaceSide::right}, Reach::region, BodyRegion::abdomen,
                         Side::left));
}

TEST(BodyRegions, AMuscleIsTheSameInAnyCaseOfLetters)
{
    EXPECT_TRUE(isSameMuscle("Quadriceps", "quadriceps"));
    EXPECT_FALSE(isSameMuscle("Quadriceps", "Hamstrings"));
}

TEST(BodyRegions, AClotReachesTheWholeLimbAndNoOther)
{
    const BodyPlace leftCalf{BodyRegion::lowerLeg, PlaceSide::left};
    EXPECT_TRUE(reaches(leftCalf, Reach::limb, BodyRegion::thigh, Side::left));
    EXPECT_TRUE(reaches(leftCalf, Reach::limb, BodyRegion::pelvis, Side::left));
    EXPECT_FALSE(reaches(leftCalf, Reach::limb, BodyRegion::thigh, Side::right));
    EXPECT_FALSE(reaches(leftCalf, Reach::limb, BodyRegion::forearm, Side::left));
    // Head and trunk are no limb; reach ends at the part.
    const BodyPlace abdomen{BodyRegion::abdomen, PlaceSide::both};
    EXPECT_FALSE(reaches(abdomen, Reach::limb, BodyRegion::chest, Side::middle));
}

TEST(BodyRegions, ASiteOfUnknownPartCountsInEachOfItsSide)
{
    const BodyPlace leftCalf{BodyRegion::lowerLeg, PlaceSide::left};
    EXPECT_TRUE(reaches(leftCalf, Reach::region, std::nullopt, Side::left));
    EXPECT_FALSE(reaches(leftCalf, Reach::region, std::nullopt, Side::right));
}

} // namespace
} // namespace quadrille
