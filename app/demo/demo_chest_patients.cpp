// SPDX-License-Identifier: GPL-3.0-or-later
// Lungs, hearts and long weakness. Settings within those of Maddocks 2016 (Lancet Respir Med 4),
// Neder 2002 (Thorax 57) and Quittan 1999 (Artif Organs 23) where those fit; who has them is
// invented.
#include "app/demo/demo_records.h"

namespace quadrille::app
{

namespace
{

using namespace literals;
using namespace std::chrono_literals;

std::vector<Place> bothThighs(Amplitude amplitude)
{
    return bothSides({.muscle = "quadriceps",
                      .padWidth = 80_mm,
                      .padHeight = 130_mm,
                      .lastTolerated = amplitude,
                      .ceiling = amplitude + 12_mA,
                      .position = "Sit in an armchair, feet on the floor",
                      .instruction = "Keep breathing quietly."});
}

DemoPatient bohdan()
{
    Dosage start{50_Hz, 350_us, 2s, 15s, 500ms, 500ms, 30min, 1, WeekdaySet::everyDay()};
    Dosage middle = start;
    middle.onTime = 5s;
    Dosage late = start;
    late.onTime = 10s;
    return {.name = "Bohdan Kressel",
            .age = 71,
            .birthMonth = 3,
            .birthDay = 5,
            .note = "Rings in the afternoon only.",
            .courses = {{.problem = "COPD",
                         .unit = DemoUnit::fourChannel,
                         .week = 5,
                         .plans = {{.reason = "First plan",
                                    .blocks = {demoBlock(4, start, bothThighs(22_mA)),
                                               demoBlock(4, middle, bothThighs(26_mA))}},
                                   {.fromWeek = 4,
                                    .reason = "Tolerates it well; longer contractions a week early",
                                    .blocks = {demoBlock(3, start, bothThighs(22_mA)),
                                               demoBlock(3, middle, bothThighs(30_mA)),
                                               demoBlock(2, late, bothThighs(34_mA))}}}}}};
}

DemoPatient gwen()
{
    const Dosage start{50_Hz, 350_us, 2s, 18s, 500ms, 500ms, 15min};
    const Dosage middle{50_Hz, 350_us, 5s, 20s, 1s, 500ms, 20min};
    const Dosage late{50_Hz, 350_us, 10s, 30s, 1s, 1s, 30min};
    return {
        .name = "Gwen Polstead",
        .age = 73,
        .birthMonth = 12,
        .birthDay = 1,
        .practitioner = DemoPractitioner::anselm,
        .courses = {
            {.problem = "COPD",
             .unit = DemoUnit::twoChannelA,
             .week = 0,
             .screening = {.openChange = {{.question = "blood_clot",
                                           .answer = Answer::notKnown,
                                           .note = "Left calf swollen; scan asked for",
                                           .places = {{BodyRegion::lowerLeg, PlaceSide::left}}}}},
             .plans = {{.reason = "First plan",
                        .blocks = {demoBlock(2, start, bothThighs(18_mA)),
                                   demoBlock(4, middle, bothThighs(22_mA)),
                                   demoBlock(4, late, bothThighs(26_mA))}}}}}};
}

DemoPatient desmond()
{
    const Dosage start{50_Hz, 300_us, 5s, 20s, 2s, 1s, 20min};
    const Dosage later{50_Hz, 350_us, 8s, 24s, 2s, 1s, 20min};
    return {
        .name = "Desmond Achterby",
        .age = 80,
        .birthMonth = 10,
        .birthDay = 9,
        .note = "Thin skin on both thighs: look at it at each visit.",
        .courses = {
            {.problem = "Frailty after a hospital stay",
             .unit = DemoUnit::twoChannelA,
             .week = 3,
             .screening = {.answers = {{.question = "broken_skin",
                                        .answer = Answer::yes,
                                        .note = "Thin skin on both thighs, whole",
                                        .places = {{BodyRegion::thigh, PlaceSide::both}}}},
                           .wentAheadOf = "broken_skin",
                           .wentAheadWhy = "Large pads, low amplitude, his daughter looks at the "
                                           "skin each day"},
             .plans = {{.reason = "First plan at home",
                        .blocks = {demoBlock(4, start, bothThighs(24_mA)),
                                   demoBlock(4, later, bothThighs(28_mA))}}}}}};
}

DemoPatient maren()
{
    Dosage dosage{50_Hz, 300_us, 5s, 20s, 2s, 1s, 15min};
    dosage.schedule = DaysPerWeek{4};
    return {.name = "Maren Oakshott",
            .age = 88,
            .birthMonth = 4,
            .birthDay = 30,
            .courses = {{.problem = "Frailty after a hospital stay",
                         .unit = DemoUnit::twoChannelA,
                         .week = 0,
                         .screening = {.isSigned = false},
                         .draft = {demoBlock(4, dosage, bothThighs(16_mA))}}}};
}

DemoPatient hamid()
{
    Dosage dosage{50_Hz, 350_us, 2s, 6s, 500ms, 500ms, 30min};
    dosage.schedule = DaysPerWeek{5};
    return {.name = "Hamid Larkfield",
            .age = 66,
            .birthMonth = 7,
            .birthDay = 21,
            .practitioner = DemoPractitioner::anselm,
            .courses = {{.problem = "Heart failure, stable",
                         .unit = DemoUnit::twoChannelA,
                         .week = 6,
                         .startsOn = 2,
                         .screening = {.answers = {{.question = "heart_disease",
                                                    .answer = Answer::yes,
                                                    .note = "Stable since May, on tablets"},
                                                   {.question = "muscle_breakdown",
                                                    .answer = Answer::yes,
                                                    .note = "Takes a statin"}}},
                         .plans = {{.reason = "First plan, agreed with the heart clinic",
                                    .blocks = {demoBlock(8, dosage, bothThighs(26_mA))}}}}}};
}

DemoPatient jorma()
{
    const Dosage dosage{50_Hz, 350_us, 2s, 6s, 500ms, 500ms, 20min};
    return {.name = "Jorma Vickerage",
            .age = 82,
            .birthMonth = 5,
            .birthDay = 18,
            .note = "Ended early: back in hospital.",
            .courses = {{.problem = "Heart failure, stable",
                         .unit = DemoUnit::fourChannel,
                         .week = 14,
                         .endedAfter = 3,
                         .plans = {{.reason = "First plan, agreed with the heart clinic",
                                    .blocks = {demoBlock(8, dosage, bothThighs(20_mA))}}}}}};
}

DemoPatient edwin()
{
    Dosage lungs{50_Hz, 350_us, 5s, 15s, 1s, 1s, 20min};
    lungs.schedule = everyOtherDay();
    Dosage knee{50_Hz, 300_us, 10s, 50s, 2s, 1s, 20min};
    return {
        .name = "Edwin Marlpit",
        .age = 69,
        .birthMonth = 11,
        .birthDay = 11,
        .courses = {{.problem = "COPD",
                     .unit = DemoUnit::twoChannelA,
                     .week = 24,
                     .startsOn = 1,
                     .endedAfter = 12,
                     .plans = {{.reason = "First plan",
                                .blocks = {demoBlock(12, lungs, bothThighs(25_mA))}}}},
                    {.problem = "Knee arthritis",
                     .unit = DemoUnit::twoChannelB,
                     .week = 4,
                     .plans = {{.reason = "First plan",
                                .blocks = {demoBlock(6, knee, {bothThighs(34_mA).front()})}}}}}};
}

DemoPatient gareth()
{
    const Dosage thighs{50_Hz, 400_us, 5s, 15s, 2s, 1s, 30min};
    const Dosage shins{50_Hz, 250_us, 5s, 10s, 2s, 1s, 20min};
    Place tibialis{.muscle = "tibialis anterior",
                   .padWidth = 50_mm,
                   .padHeight = 50_mm,
                   .lastTolerated = 18_mA,
                   .ceiling = 24_mA,
                   .position = "Sit in an armchair, heels on the floor"};
    std::vector<Place> shinPlaces = bothSides(tibialis);
    shinPlaces[0].channel = 3;
    shinPlaces[1].channel = 4;
    const auto mixed = [&](int weeks, Amplitude amplitude) {
        Block block = demoBlock(weeks, thighs, bothThighs(amplitude));
        const Block shin = demoBlock(weeks, shins, shinPlaces);
        block.sites.insert(block.sites.end(), shin.sites.begin(), shin.sites.end());
        return block;
    };
    return {.name = "Gareth Inchmere",
            .age = 59,
            .birthMonth = 1,
            .birthDay = 15,
            .courses = {{.problem = "Weakness after intensive care",
                         .unit = DemoUnit::fourChannel,
                         .week = 4,
                         .startsOn = 3,
                         .plans = {{.reason = "First plan at home",
                                    .blocks = {mixed(4, 30_mA), mixed(4, 38_mA)}}}}}};
}

} // namespace

std::vector<DemoPatient> demoChestPatients()
{
    return {bohdan(), gwen(), desmond(), maren(), hamid(), jorma(), edwin(), gareth()};
}

} // namespace quadrille::app
