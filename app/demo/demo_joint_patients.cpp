// SPDX-License-Identifier: GPL-3.0-or-later
// Ankles, hips and shoulders. Settings within the ranges for strengthening of common practice; who
// has them is invented.
#include "app/demo/demo_records.h"

namespace quadrille::app
{

namespace
{

using namespace literals;
using namespace std::chrono_literals;

const std::string armOnTable = "Sit, forearm supported on a table";

std::vector<Place> calf(Side side, Amplitude amplitude)
{
    return {{.muscle = "gastrocnemius",
             .side = side,
             .padWidth = 50_mm,
             .padHeight = 90_mm,
             .lastTolerated = amplitude,
             .ceiling = amplitude + 8_mA,
             .position = "Lie face down, foot over the edge of the bed"}};
}

std::vector<Place> cuff(Side side, Amplitude amplitude)
{
    Place infraspinatus{.muscle = "infraspinatus",
                        .side = side,
                        .channel = 1,
                        .padWidth = 50_mm,
                        .padHeight = 50_mm,
                        .lastTolerated = amplitude,
                        .ceiling = amplitude + 6_mA,
                        .position = armOnTable};
    Place deltoid = infraspinatus;
    deltoid.muscle = "posterior deltoid";
    deltoid.channel = 2;
    return {infraspinatus, deltoid};
}

DemoPatient imran()
{
    const Dosage start{35_Hz, 250_us, 5s, 15s, 2s, 1s, 15min, 2};
    const Dosage later{50_Hz, 250_us, 5s, 15s, 2s, 1s, 20min, 2};
    return {.name = "Imran Castell",
            .age = 35,
            .birthMonth = 5,
            .birthDay = 25,
            .note = "Works shifts; no time before work.",
            .courses = {{.problem = "Ankle fracture, out of plaster",
                         .unit = DemoUnit::twoChannelB,
                         .week = 4,
                         .plans = {{.reason = "First plan out of plaster",
                                    .blocks = {demoBlock(2, start, calf(Side::right, 24_mA)),
                                               demoBlock(4, later, calf(Side::right, 30_mA))}}}}}};
}

DemoPatient bronagh()
{
    const Dosage start{35_Hz, 250_us, 6s, 24s, 2s, 1s, 15min};
    const Dosage later{35_Hz, 250_us, 8s, 24s, 2s, 1s, 20min};
    return {.name = "Bronagh Teasdale",
            .age = 57,
            .birthMonth = 7,
            .birthDay = 8,
            .practitioner = DemoPractitioner::anselm,
            .courses = {{.problem = "Rotator cuff repair",
                         .week = 3,
                         .startsOn = 4,
                         .plans = {{.reason = "First plan, within the surgeon's limits",
                                    .blocks = {demoBlock(4, start, cuff(Side::right, 20_mA)),
                                               demoBlock(4, later, cuff(Side::right, 24_mA))}}}}}};
}

DemoPatient stella()
{
    const Dosage dosage{50_Hz, 300_us, 8s, 24s, 2s, 1s, 15min, 1, WeekdaySet::everyDay()};
    Place maximus{.muscle = "gluteus maximus",
                  .side = Side::left,
                  .channel = 1,
                  .padWidth = 80_mm,
                  .padHeight = 130_mm,
                  .lastTolerated = 34_mA,
                  .ceiling = 45_mA,
                  .position = "Lie on your good side, a cushion between the knees"};
    Place medius = maximus;
    medius.muscle = "gluteus medius";
    medius.channel = 2;
    medius.padWidth = 50_mm;
    medius.padHeight = 90_mm;
    return {.name = "Stella Brockhurst",
            .age = 74,
            .birthMonth = 1,
            .birthDay = 6,
            .courses = {{.problem = "Hip fracture, nailed",
                         .week = 1,
                         .plans = {{.reason = "First plan at home",
                                    .blocks = {demoBlock(6, dosage, {maximus, medius})}}}}}};
}

DemoPatient salma()
{
    const Dosage start{35_Hz, 200_us, 5s, 20s, 2s, 1s, 15min};
    const Dosage later{50_Hz, 250_us, 6s, 18s, 2s, 1s, 15min, 2};
    const Place peroneus{.muscle = "peroneus longus",
                         .side = Side::left,
                         .padWidth = 40_mm,
                         .padHeight = 40_mm,
                         .lastTolerated = 16_mA,
                         .ceiling = 22_mA,
                         .position = "Sit, foot flat on the floor"};
    return {.name = "Salma Whitcomb",
            .age = 22,
            .birthMonth = 6,
            .birthDay = 28,
            .courses = {
                {.problem = "Ankle sprain, gives way",
                 .unit = DemoUnit::twoChannelA,
                 .week = 5,
                 .startsOn = 1,
                 .plans = {{.reason = "First plan", .blocks = {demoBlock(6, start, {peroneus})}}},
                 .draft = {demoBlock(4, start, {peroneus}),
                           demoBlock(4, later, stronger({peroneus}, 4_mA))}}}};
}

DemoPatient kwame()
{
    const Dosage knee{50_Hz, 300_us, 10s, 30s, 2s, 1s, 20min, 2};
    const Dosage shoulder{30_Hz, 250_us, 6s, 24s, 2s, 1s, 15min};
    const Place thigh{.muscle = "quadriceps",
                      .side = Side::left,
                      .padWidth = 80_mm,
                      .padHeight = 130_mm,
                      .lastTolerated = 46_mA,
                      .ceiling = 60_mA,
                      .position = "Sit, knee bent to about 60°, lower leg strapped to the chair"};
    return {
        .name = "Kwame Ashdowne",
        .age = 63,
        .birthMonth = 8,
        .birthDay = 13,
        .practitioner = DemoPractitioner::anselm,
        .note = "Two courses: the knee in the morning, the shoulder in the evening.",
        .courses = {{.problem = "Knee replacement",
                     .unit = DemoUnit::twoChannelA,
                     .week = 10,
                     .plans = {{.reason = "First plan after the operation",
                                .blocks = {demoBlock(6, knee, {thigh})}},
                               {.fromWeek = 6,
                                .reason = "Six more weeks, stronger",
                                .blocks = {demoBlock(5, knee, {thigh}),
                                           demoBlock(7, knee, stronger({thigh}, 8_mA))}}}},
                    {.problem = "Rotator cuff tear, not operated",
                     .unit = DemoUnit::twoChannelB,
                     .week = 2,
                     .startsOn = 2,
                     .plans = {{.reason = "First plan",
                                .blocks = {demoBlock(8, shoulder, cuff(Side::right, 18_mA))}}}}}};
}

DemoPatient zofia()
{
    const Dosage dosage{40_Hz, 250_us, 6s, 24s, 2s, 1s, 20min};
    return {.name = "Zofia Lanternby",
            .age = 36,
            .birthMonth = 2,
            .birthDay = 27,
            .note = "Moved away from Marrowick.",
            .courses = {{.problem = "Achilles tendon repair",
                         .week = 25,
                         .endedAfter = 12,
                         .plans = {{.reason = "First plan out of the boot",
                                    .blocks = {demoBlock(12, dosage, calf(Side::left, 28_mA))}}}}},
            .archived = true};
}

DemoPatient teodor()
{
    const Dosage start{50_Hz, 250_us, 6s, 24s, 2s, 1s, 16min, 2};
    const Dosage later{50_Hz, 300_us, 10s, 30s, 2s, 1s, 20min, 2};
    const Place thigh{.muscle = "quadriceps",
                      .side = Side::right,
                      .padWidth = 80_mm,
                      .padHeight = 130_mm,
                      .lastTolerated = 40_mA,
                      .ceiling = 55_mA,
                      .position = "Lie on your back, leg straight in the brace"};
    return {.name = "Teodor Blythewood",
            .age = 28,
            .birthMonth = 9,
            .birthDay = 3,
            .practitioner = DemoPractitioner::anselm,
            .courses = {{.problem = "Kneecap fracture",
                         .week = 22,
                         .startsOn = 3,
                         .endedAfter = 14,
                         .plans = {{.reason = "First plan in the brace",
                                    .blocks = {demoBlock(6, start, {thigh})}},
                                   {.fromWeek = 7,
                                    .reason = "Brace off: longer contractions, stronger",
                                    .blocks = {demoBlock(6, start, {thigh}),
                                               demoBlock(8, later, stronger({thigh}, 10_mA))}}}}}};
}

} // namespace

std::vector<DemoPatient> demoJointPatients()
{
    return {imran(), bronagh(), stella(), salma(), kwame(), zofia(), teodor()};
}

} // namespace quadrille::app
