// SPDX-License-Identifier: GPL-3.0-or-later
// Arms and feet after a stroke, and other nerves. Settings within those of Powell 1999 (Stroke 30)
// and Linn 1999 (Stroke 30) where those fit, else of common practice; who has them is invented.
#include "app/demo/demo_records.h"

namespace quadrille::app
{

namespace
{

using namespace literals;
using namespace std::chrono_literals;

std::vector<Place> wrist(Side side, Amplitude amplitude)
{
    return {{.muscle = "wrist extensors",
             .side = side,
             .padWidth = 40_mm,
             .padHeight = 40_mm,
             .lastTolerated = amplitude,
             .ceiling = amplitude + 4_mA,
             .position = "Forearm on a table, palm down",
             .instruction = "Try to lift the hand along with it."}};
}

std::vector<Place> shoulder(Side side, Amplitude amplitude)
{
    Place supraspinatus{.muscle = "supraspinatus",
                        .side = side,
                        .channel = 1,
                        .padWidth = 50_mm,
                        .padHeight = 50_mm,
                        .lastTolerated = amplitude,
                        .ceiling = amplitude + 5_mA,
                        .position = "Sit, arm supported on a cushion"};
    Place deltoid = supraspinatus;
    deltoid.muscle = "posterior deltoid";
    deltoid.channel = 2;
    return {deltoid, supraspinatus};
}

std::vector<Place> shin(Side side, Amplitude amplitude)
{
    return {{.muscle = "tibialis anterior",
             .side = side,
             .padWidth = 50_mm,
             .padHeight = 50_mm,
             .lastTolerated = amplitude,
             .ceiling = amplitude + 5_mA,
             .position = "Sit, knee at a right angle, foot on the floor",
             .instruction = "Pull the toes up along with it."}};
}

DemoPatient odile()
{
    const Dosage start{20_Hz, 300_us, 5s, 20s, 1s, 1500ms, 30min, 1};
    const Dosage often{20_Hz, 300_us, 5s, 20s, 1s, 1500ms, 30min, 2};
    const Dosage dense{20_Hz, 300_us, 5s, 15s, 1s, 1500ms, 30min, 2};
    return {.name = "Odile Marchbank",
            .age = 58,
            .birthMonth = 9,
            .birthDay = 26,
            .note = "Too tired in the evening.",
            .courses = {{.problem = "Stroke, weak wrist",
                         .unit = DemoUnit::rampsAdded,
                         .week = 6,
                         .plans = {{.reason = "First plan",
                                    .blocks = {demoBlock(4, start, wrist(Side::left, 14_mA)),
                                               demoBlock(8, often, wrist(Side::left, 16_mA))}},
                                   {.fromWeek = 5,
                                    .reason = "Step up: shorter rests from now on",
                                    .blocks = {demoBlock(4, start, wrist(Side::left, 14_mA)),
                                               demoBlock(4, often, wrist(Side::left, 18_mA)),
                                               demoBlock(4, dense, wrist(Side::left, 18_mA))}}}}}};
}

DemoPatient solveig()
{
    const Dosage start{35_Hz, 250_us, 5s, 15s, 1s, 1s, 15min, 1};
    const Dosage later{35_Hz, 250_us, 5s, 10s, 1s, 1s, 20min, 1};
    return {.name = "Solveig Dunmore",
            .age = 62,
            .birthMonth = 2,
            .birthDay = 20,
            .courses = {{.problem = "Foot drop after a stroke",
                         .unit = DemoUnit::rampsAdded,
                         .week = 7,
                         .plans = {{.reason = "First plan",
                                    .blocks = {demoBlock(4, start, shin(Side::right, 20_mA)),
                                               demoBlock(8, later, shin(Side::right, 24_mA))}}}}}};
}

DemoPatient yetunde()
{
    const Dosage start{30_Hz, 300_us, 15s, 15s, 3s, 1s, 30min, 2, WeekdaySet::everyDay()};
    const Dosage later{30_Hz, 300_us, 15s, 15s, 3s, 1s, 45min, 2, WeekdaySet::everyDay()};
    const Dosage last{30_Hz, 300_us, 15s, 15s, 3s, 1s, 60min, 2, WeekdaySet::everyDay()};
    const auto block = [](int weeks, const Dosage& dosage, Amplitude amplitude) {
        return asymmetric(demoBlock(weeks, dosage, shoulder(Side::right, amplitude)), 900_us);
    };
    return {.name = "Yetunde Brierley",
            .age = 54,
            .birthMonth = 6,
            .birthDay = 12,
            .practitioner = DemoPractitioner::anselm,
            .courses = {{.problem = "Stroke, shoulder slips down",
                         .unit = DemoUnit::twoChannelB,
                         .week = 9,
                         .plans = {{.reason = "First plan",
                                    .blocks = {block(4, start, 18_mA), block(6, later, 20_mA)}},
                                   {.fromWeek = 5,
                                    .reason = "Sits better with it; longer sessions from week 7",
                                    .blocks = {block(4, start, 18_mA), block(2, later, 22_mA),
                                               block(4, last, 22_mA)}}},
                         .pauses = {{4, 1, "A week with her family, without the unit"}}}}};
}

DemoPatient fenna()
{
    const Dosage first{20_Hz, 300_us, 5s, 15s, 1s, 1500ms, 30min, 1};
    const Dosage second{30_Hz, 250_us, 10s, 15s, 3s, 1s, 30min, 2};
    return {
        .name = "Fenna Quilling",
        .age = 51,
        .birthMonth = 8,
        .birthDay = 31,
        .courses = {{.problem = "Stroke, weak wrist",
                     .unit = DemoUnit::rampsAdded,
                     .week = 19,
                     .endedAfter = 10,
                     .plans = {{.reason = "First plan",
                                .blocks = {demoBlock(10, first, wrist(Side::right, 15_mA))}}}},
                    {.problem = "Stroke, shoulder slips down",
                     .unit = DemoUnit::twoChannelB,
                     .week = 3,
                     .plans = {{.reason = "First plan",
                                .blocks = {demoBlock(8, second, shoulder(Side::right, 20_mA))}}}}}};
}

DemoPatient amina()
{
    const Dosage start{35_Hz, 250_us, 4s, 12s, 1s, 1s, 15min, 1};
    const Dosage later{35_Hz, 250_us, 5s, 10s, 1s, 1s, 15min, 2};
    return {.name = "Amina Holloworth",
            .age = 40,
            .birthMonth = 3,
            .birthDay = 29,
            .note = "Warm days make her weaker.",
            .courses = {{.problem = "Foot drop, multiple sclerosis",
                         .unit = DemoUnit::rampsAdded,
                         .week = 12,
                         .plans = {{.reason = "First plan",
                                    .blocks = {demoBlock(6, start, shin(Side::left, 18_mA)),
                                               demoBlock(6, later, shin(Side::left, 22_mA))}}},
                         .pauses = {{12, std::nullopt, "A cold; goes on when she is well"}}}}};
}

DemoPatient ines()
{
    return {.name = "Ines Rookwood",
            .age = 45,
            .birthMonth = 10,
            .birthDay = 3,
            .note = "Sent by her doctor; first visit next week."};
}

} // namespace

std::vector<DemoPatient> demoStrokePatients()
{
    return {odile(), solveig(), yetunde(), fenna(), amina(), ines()};
}

} // namespace quadrille::app
