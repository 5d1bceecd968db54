// SPDX-License-Identifier: GPL-3.0-or-later
// Records to write down in tests, sparse ones and ones with every field filled.
#pragma once

#include "tests/support/fixed_clock.h"
#include "tests/support/screened.h"
#include "tests/support/temp_store.h"

#include "db/courses.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"
#include "db/stimulators.h"

#include "core/people.h"
#include "core/plan.h"
#include "core/stimulator.h"

#include <string>

namespace quadrille::tests
{

inline const db::Author& author()
{
    static const db::Author program{.practitioner = std::nullopt, .name = "Set-up"};
    return program;
}

inline Practitioner aPractitioner()
{
    return {.name = "Ruta Vennel", .registrationNumber = "PT 20417", .initials = "RV"};
}

inline Patient aPatient(const std::string& reference = "1001",
                        const std::string& name = "Agnes Thorley")
{
    return {.reference = reference,
            .name = name,
            .birthDate = day(1958, 6, 4),
            .telephone = "01632 960117",
            .note = "",
            .archived = false};
}

inline Course aCourse(PatientId patient)
{
    return {.patient = patient, .problem = "Knee replacement", .startDate = day(2026, 2, 9)};
}

inline Stimulator aUnit(const std::string& name = "Two-channel unit A")
{
    Stimulator unit = commonStimulator();
    unit.name = name;
    return unit;
}

/// A unit with every optional range and an asking order of its own.
inline Stimulator aFullUnit(const std::string& name = "Everything unit")
{
    using namespace literals;
    using namespace std::chrono_literals;
    Stimulator unit = aUnit(name);
    unit.waveforms = {Waveform::asymmetricBalancedBiphasic, Waveform::symmetricBiphasic,
                      Waveform::kilohertzBursts};
    unit.channels = 4;
    unit.channelsShareTiming = false;
    unit.rampHabit = RampHabit::addedToOnTime;
    unit.cycleStart = CycleStart::withOff;
    unit.usageCounter = UsageCounter::usesAndTime;
    unit.memories = 5;
    unit.mostOutput = 95500_uA;
    unit.ownWords = {{Field::onTime, "Work"}, {Field::amplitudeCeiling, "Level"}};
    unit.interphaseGap = {0_us, 200_us, 50_us, 100_us};
    unit.secondPhaseDuration = {100_us, 2000_us, 10_us, 400_us};
    unit.carrierFrequency = {1000_Hz_carrier, 10000_Hz_carrier, 500_Hz_carrier, 2500_Hz_carrier};
    unit.burstDuty = {10_percent_burst, 50_percent_burst, 5_percent_burst, 20_percent_burst};
    unit.askingOrder = {Field::sessionLength, Field::pulseFrequency, Field::amplitudeCeiling};
    return unit;
}

inline Site aSite(const Stimulator& unit)
{
    using namespace literals;
    Site site;
    site.muscle = "vastus lateralis";
    site.side = Side::right;
    site.channel = 1;
    site.settings = presetSettings(unit);
    site.pads = {{.width = 50_mm, .height = 90_mm, .lead = Lead::a},
                 {.width = 50_mm, .height = 90_mm, .lead = Lead::b}};
    return site;
}

inline Block aBlock(const Stimulator& unit)
{
    Block block;
    block.sites = {aSite(unit)};
    return block;
}

/// A site with every optional value given, and pads of every kind.
inline Site aFullSite(const Stimulator& unit)
{
    using namespace literals;
    Site site = aSite(unit);
    site.muscle = "vastus medialis";
    site.side = Side::left;
    site.channel = 2;
    site.position = "Sit, knee bent to 60°, ankle strapped";
    site.instruction = "Tighten the thigh\nwith each contraction.";
    site.settings.interphaseGap = 100_us;
    site.settings.secondPhaseDuration = 400_us;
    site.settings.carrierFrequency = 2500_Hz_carrier;
    site.settings.burstDuty = 50_percent_burst;
    site.settings.amplitude = {.lastTolerated = 45500_uA, .ceiling = 60_mA};
    site.pads = {{.material = PadMaterial::carbonRubber,
                  .shape = PadShape::round,
                  .width = 50_mm,
                  .height = 50_mm,
                  .lead = Lead::b},
                 {.width = 50_mm, .height = 90_mm, .lead = Lead::a},
                 {.width = 40_mm, .height = 40_mm, .lead = Lead::a}};
    return site;
}

/// Signs an all-clear screening of a course, so that the gate is open for half a year.
inline ScreeningId signAllClear(db::Writing& writing, CourseId course, PractitionerId practitioner,
                                Date day)
{
    const ScreeningId id = db::addScreening(writing, allClear(course));
    db::signScreening(writing, id, 1, practitioner, day);
    return id;
}

enum class Screened { yes, no };

/// A practice that has a practitioner, a stimulator and a patient with a course.
struct Practiced {
    PractitionerId practitioner;
    StimulatorId stimulator;
    PatientId patient;
    CourseId course;
};

/// Screened: its course has a screening signed on 9 February 2026 with nothing against stimulation.
inline Practiced aPracticeWithCourse(db::Store& store, Screened screened = Screened::yes)
{
    return must(store.write(author(), "set up", [&](db::Writing& writing) {
        const PractitionerId practitioner = db::addPractitioner(writing, aPractitioner());
        const StimulatorId unit = db::addStimulator(writing, aUnit());
        const PatientId patient = db::addPatient(writing, aPatient());
        const CourseId course = db::addCourse(writing, aCourse(patient));
        if (screened == Screened::yes) {
            signAllClear(writing, course, practitioner, day(2026, 2, 9));
        }
        return Practiced{practitioner, unit, patient, course};
    }));
}

inline Draft aDraft(const Practiced& ids)
{
    return {.id = std::nullopt,
            .course = ids.course,
            .stimulator = ids.stimulator,
            .blocks = {aBlock(aUnit())}};
}

/// Issues a plan of one block on 12 March 2026.
inline PlanId anIssuedPlan(db::Store& store, const Practiced& ids)
{
    return must(store.write(author(), "issue plan", [&](db::Writing& writing) {
        return db::issuePlan(
            writing, aDraft(ids),
            {.fromDate = day(2026, 2, 9), .reason = "first plan", .issuedBy = ids.practitioner},
            day(2026, 3, 12));
    }));
}

} // namespace quadrille::tests
