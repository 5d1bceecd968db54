// SPDX-License-Identifier: GPL-3.0-or-later
// Settings within those of published trials and of the consensus of Nussbaum et al. 2017
// (Physiother Can 69(5)); who has them is invented.
#include "app/demo/demo_records.h"

namespace quadrille::app
{

namespace
{

using namespace literals;
using namespace std::chrono_literals;

const std::string seated = "Sit, knee bent to about 60°, lower leg strapped to the chair";
const std::string straight = "Lie on your back, a rolled towel under the knee";

std::vector<Place> thigh(Side side, Amplitude lateral, Amplitude medial)
{
    return {{.muscle = "vastus lateralis",
             .side = side,
             .channel = 1,
             .padWidth = 50_mm,
             .padHeight = 90_mm,
             .lastTolerated = lateral,
             .ceiling = lateral + 10_mA,
             .position = seated,
             .instruction = "Tighten the thigh with each contraction."},
            {.muscle = "vastus medialis",
             .side = side,
             .channel = 2,
             .padWidth = 50_mm,
             .padHeight = 50_mm,
             .lastTolerated = medial,
             .ceiling = medial + 10_mA,
             .position = seated}};
}

std::vector<Place> wholeThigh(Side side, Amplitude amplitude, const std::string& position)
{
    return {{.muscle = "quadriceps",
             .side = side,
             .channel = 1,
             .padWidth = 80_mm,
             .padHeight = 130_mm,
             .lastTolerated = amplitude,
             .ceiling = amplitude + 15_mA,
             .position = position}};
}

std::vector<DemoVisit> agnesVisits()
{
    const TreatedSide right = TreatedSide::right;
    return {kneeVisit(1, right,
                      {.torque = {38, 41, 39.5},
                       .otherTorque = 91,
                       .stimulated = 6.5,
                       .lag = 12,
                       .bend = 86,
                       .otherBend = 132,
                       .painAtRest = 4,
                       .painUnderLoad = 7,
                       .upAndGo = {19.4, 18.6},
                       .chairStands = 7}),
            kneeVisit(3, right,
                      {.torque = {52, 55, 54},
                       .otherTorque = 93,
                       .stimulated = 16,
                       .lag = 7,
                       .bend = 95,
                       .otherBend = 132,
                       .painAtRest = 3,
                       .painUnderLoad = 6,
                       .upAndGo = {17.1, 16.7}}),
            kneeVisit(5, right,
                      {.torque = {66, 68, 67.5},
                       .otherTorque = 94,
                       .stimulated = 22.5,
                       .lag = 3,
                       .bend = 104,
                       .otherBend = 132,
                       .painAtRest = 2,
                       .painUnderLoad = 4,
                       .upAndGo = {14.4, 14.0},
                       .chairStands = 9})};
}

std::vector<DemoVisit> raviVisits()
{
    const TreatedSide left = TreatedSide::left;
    return {kneeVisit(1, left,
                      {.torque = {88, 92, 90},
                       .otherTorque = 214,
                       .lag = 8,
                       .bend = 105,
                       .otherBend = 142,
                       .painAtRest = 2,
                       .painUnderLoad = 5}),
            kneeVisit(6, left,
                      {.torque = {148, 155, 151},
                       .otherTorque = 218,
                       .lag = 1,
                       .bend = 131,
                       .otherBend = 142,
                       .painAtRest = 0,
                       .painUnderLoad = 2})};
}

DemoPatient agnes()
{
    const std::vector<Place> early = thigh(Side::right, 38_mA, 30_mA);
    const std::vector<Place> later = thigh(Side::right, 52_mA, 38_mA);
    const Dosage first{35_Hz, 300_us, 6s, 18s, 2s, 1s, 16min};
    const Dosage second{50_Hz, 300_us, 8s, 24s, 2s, 1s, 16min, 2};
    const Dosage third{50_Hz, 350_us, 10s, 30s, 2s, 1s, 20min, 2};
    Dosage fourth{50_Hz, 350_us, 10s, 25s, 2s, 1s, 20min, 2};
    fourth.schedule = WeekdaySet::mondayToFriday().without(std::chrono::Friday);
    return {.name = "Agnes Thorley",
            .age = 67,
            .birthMonth = 6,
            .birthDay = 4,
            .note = "Hears less on the left. Her daughter helps with the pads.",
            .courses = {
                {.problem = "Knee replacement",
                 .unit = DemoUnit::twoChannelA,
                 .week = 5,
                 .plans = {{.reason = "First plan after the operation",
                            .blocks = {demoBlock(2, first, early), demoBlock(2, second, early),
                                       demoBlock(4, third, later), demoBlock(4, fourth, later)}}},
                 .treatedSide = TreatedSide::right,
                 .visits = agnesVisits(),
                 .pads = {selfAdhesivePads(1, "right thigh", 50_mm, 90_mm)}}}};
}

/// The first set was worn after five weeks.
std::vector<DemoPads> raviPads()
{
    DemoPads worn = selfAdhesivePads(1, "left thigh", 50_mm, 90_mm);
    worn.outOfUseWeek = 6;
    return {worn, selfAdhesivePads(6, "left thigh", 50_mm, 90_mm)};
}

DemoPatient ravi()
{
    const Dosage start{50_Hz, 300_us, 10s, 30s, 1500ms, 1s, 20min, 2};
    const Dosage dense{50_Hz, 300_us, 10s, 20s, 1500ms, 1s, 20min, 2};
    const Dosage often{50_Hz, 300_us, 10s, 20s, 1500ms, 1s, 20min, 3};
    const Dosage longer{50_Hz, 350_us, 10s, 20s, 1500ms, 1s, 20min, 3};
    const auto weak = thigh(Side::left, 42_mA, 34_mA);
    const auto strong = stronger(weak, 12_mA);
    return {.name = "Ravi Menshaw",
            .age = 24,
            .birthMonth = 9,
            .birthDay = 17,
            .practitioner = DemoPractitioner::anselm,
            .courses = {
                {.problem = "ACL graft",
                 .week = 8,
                 .startsOn = 1,
                 .plans = {{.reason = "First plan after the graft",
                            .blocks = {demoBlock(4, start, weak), demoBlock(12, dense, weak)}},
                           {.fromWeek = 3,
                            .reason = "Tolerates more; shorter rests from week 3",
                            .blocks = {demoBlock(2, start, weak), demoBlock(14, dense, weak)}},
                           {.fromWeek = 6,
                            .reason = "Step up: three sessions a day, stronger",
                            .blocks = {demoBlock(2, start, weak), demoBlock(3, dense, weak),
                                       demoBlock(5, often, strong), demoBlock(6, longer, strong)}}},
                 .treatedSide = TreatedSide::left,
                 .visits = raviVisits(),
                 .pads = raviPads()}}};
}

DemoPatient lucia()
{
    Dosage dosage{50_Hz, 200_us, 10s, 50s, 2s, 1s, 15min};
    dosage.schedule = everyOtherDay();
    const auto weak = wholeThigh(Side::right, 30_mA, seated);
    const auto strong = stronger(weak, 10_mA);
    return {.name = "Lucía Fernvale",
            .age = 29,
            .birthMonth = 1,
            .birthDay = 22,
            .courses = {
                {.problem = "ACL graft",
                 .unit = DemoUnit::bursts,
                 .week = 2,
                 .screening = {.answers = {{.question = "varicose_veins",
                                            .answer = Answer::yes,
                                            .note = "Left calf, no pads there",
                                            .places = {{BodyRegion::lowerLeg, PlaceSide::left}}},
                                           {.question = "recent_repair",
                                            .answer = Answer::yes,
                                            .note = "No full extension against load yet"}}},
                 .plans = {{.reason = "First plan after the graft",
                            .blocks = {inBursts(demoBlock(6, dosage, weak)),
                                       inBursts(demoBlock(10, dosage, strong))}}}}}};
}

DemoPatient tom()
{
    Dosage dosage{50_Hz, 300_us, 10s, 50s, 2s, 1s, 15min};
    dosage.schedule = everyOtherDay();
    const auto first = wholeThigh(Side::left, 35_mA, seated);
    const auto second = stronger(first, 8_mA);
    const auto third = stronger(first, 15_mA);
    const std::vector<Block> plan{demoBlock(4, dosage, first), demoBlock(4, dosage, second),
                                  demoBlock(4, dosage, third)};
    return {
        .name = "Tom Everling",
        .age = 49,
        .birthMonth = 11,
        .birthDay = 30,
        .courses = {{.problem = "Knee arthritis",
                     .unit = DemoUnit::twoChannelB,
                     .week = 11,
                     .plans = {{.reason = "First plan", .blocks = plan}},
                     .treatedSide = TreatedSide::left,
                     .visits = {kneeVisit(1, TreatedSide::left,
                                          {.torque = {96, 101},
                                           .otherTorque = 128,
                                           .lag = 2,
                                           .bend = 118,
                                           .otherBend = 130,
                                           .painAtRest = 3,
                                           .painUnderLoad = 6,
                                           .upAndGo = {11.2, 10.8},
                                           .chairStands = 11})},
                     .pads = {rubberPads(1, "left thigh", ElectrodeType::carbonRubberSponge)}}}};
}

DemoPatient nils()
{
    const Dosage dosage{50_Hz, 250_us, 10s, 40s, 2s, 1s, 20min};
    return {.name = "Nils Haverford",
            .age = 61,
            .birthMonth = 4,
            .birthDay = 9,
            .courses = {{.problem = "Knee arthritis",
                         .unit = DemoUnit::twoChannelB,
                         .week = 9,
                         .endedAfter = 8,
                         .plans = {{.reason = "First plan",
                                    .blocks = {demoBlock(
                                        8, dosage, wholeThigh(Side::right, 44_mA, seated))}}}}}};
}

DemoPatient otto()
{
    const Dosage dosage{50_Hz, 250_us, 15s, 45s, 3s, 1s, 15min, 2, WeekdaySet::everyDay()};
    const auto places = wholeThigh(Side::left, 40_mA, straight);
    return {.name = "Otto Wrenhall",
            .age = 77,
            .birthMonth = 2,
            .birthDay = 11,
            .practitioner = DemoPractitioner::anselm,
            .note = "Return visit postponed twice.",
            .courses = {{.problem = "Knee replacement",
                         .week = 9,
                         .startsOn = 2,
                         .plans = {{.reason = "First plan after the operation",
                                    .blocks = {demoBlock(6, dosage, places)}}}}}};
}

DemoPatient mei()
{
    const Dosage dosage{50_Hz, 250_us, 15s, 45s, 3s, 1s, 15min, 2, WeekdaySet::everyDay()};
    return {.name = "Mei Garrowby",
            .age = 70,
            .birthMonth = 8,
            .birthDay = 2,
            .courses = {{.problem = "Knee replacement",
                         .week = 2,
                         .startsOn = 3,
                         .plans = {{.reason = "First plan, begun on the second day",
                                    .blocks = {demoBlock(
                                        6, dosage, wholeThigh(Side::right, 32_mA, straight))}}}}}};
}

DemoPatient priya()
{
    const Dosage dosage{50_Hz, 300_us, 10s, 30s, 2s, 1s, 15min};
    const std::vector<Place> places{{.muscle = "vastus medialis",
                                     .side = Side::left,
                                     .padWidth = 50_mm,
                                     .padHeight = 50_mm,
                                     .lastTolerated = 36_mA,
                                     .ceiling = 45_mA,
                                     .position = straight}};
    return {.name = "Priya Sandiford",
            .age = 33,
            .birthMonth = 12,
            .birthDay = 19,
            .courses = {
                {.problem = "Pain behind the kneecap",
                 .week = 20,
                 .endedAfter = 6,
                 .plans = {{.reason = "First plan", .blocks = {demoBlock(6, dosage, places)}}}}}};
}

DemoPatient callum()
{
    return {.name = "Callum Pettifer",
            .age = 19,
            .birthMonth = 3,
            .birthDay = 1,
            .practitioner = DemoPractitioner::anselm,
            .courses = {{.problem = "ACL graft",
                         .week = 1,
                         .screening = {.answers = {{.question = "recent_repair",
                                                    .answer = Answer::yes,
                                                    .note = "Graft, three weeks ago"}},
                                       .isSigned = false}}}};
}

DemoPatient rhona()
{
    Dosage dosage{75_Hz, 250_us, 10s, 50s, 2s, 1s, 15min};
    dosage.schedule = DaysPerWeek{3};
    Dosage next = dosage;
    next.offTime = 40s;
    const auto places = wholeThigh(Side::right, 38_mA, seated);
    return {
        .name = "Rhona Castlegate",
        .age = 65,
        .birthMonth = 10,
        .birthDay = 14,
        .courses = {
            {.problem = "Knee arthritis",
             .week = 8,
             .plans = {{.reason = "First plan", .blocks = {demoBlock(6, dosage, places)}}},
             .draft = {demoBlock(6, dosage, places), demoBlock(6, next, stronger(places, 6_mA))}}}};
}

} // namespace

std::vector<DemoPatient> demoKneePatients()
{
    return {agnes(), ravi(), lucia(), tom(), nils(), otto(), mei(), priya(), callum(), rhona()};
}

} // namespace quadrille::app
