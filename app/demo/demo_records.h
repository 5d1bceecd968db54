// SPDX-License-Identifier: GPL-3.0-or-later
// How the demo practice is written down: patients with their courses and plans, in weeks before
// today. All of it is invented.
#pragma once

#include "app/demo/demo_measurements.h"

#include "core/calendar.h"
#include "core/plan.h"
#include "core/screening.h"
#include "core/units.h"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// The practice's stimulators, in the order of demoStimulators().
enum class DemoUnit { twoChannelA, twoChannelB, rampsAdded, fourChannel, bursts, relief, galvanic };

/// The practice's practitioners, in the order of demoPractitioners().
enum class DemoPractitioner { ruta, anselm };

struct DemoPlan {
    int fromWeek =
        1; ///< of the course; issued on its first day, the first plan at the visit before
    std::string reason;
    std::vector<Block> blocks; ///< from the course's first week on
};

/// Signed at the first visit. What is not named is answered no.
struct DemoScreening {
    std::vector<ScreeningAnswer> answers = {};
    /// The question that a practitioner went ahead of on the same day, and why; empty: of none.
    std::string wentAheadOf = {};
    std::string wentAheadWhy = {};
    /// Begun again on the last working day and not signed: what was answered otherwise; empty: not
    /// begun again.
    std::vector<ScreeningAnswer> openChange = {};
    bool isSigned = true;
};

/// Entered on the working day before its first week.
struct DemoPause {
    int fromWeek = 1;
    std::optional<int> weeks = std::nullopt; ///< none: until further notice
    std::string reason;
};

struct DemoCourse {
    std::string problem;
    DemoUnit unit = DemoUnit::twoChannelA;
    /// The course week that today lies in, had the course begun on a Monday; 0 begins next Monday.
    int week = 1;
    int startsOn = 0;                             ///< days after that Monday, 0 … 4
    std::optional<int> endedAfter = std::nullopt; ///< weeks
    DemoScreening screening = DemoScreening();
    std::vector<DemoPlan> plans = {};
    std::optional<TreatedSide> treatedSide = std::nullopt;
    std::vector<DemoVisit> visits = {};
    std::vector<DemoPads> pads = {};
    std::vector<DemoPause> pauses = {};
    std::vector<Block> draft = {}; ///< the next plan, saved on a day of last week; none if empty
};

struct DemoPatient {
    std::string name;
    int age = 0; ///< today, in years
    int birthMonth = 1;
    int birthDay = 1;
    DemoPractitioner practitioner = DemoPractitioner::ruta;
    std::string note = {};
    std::vector<DemoCourse> courses = {};
    bool archived = false;
};

/// The settings that the sites of a block share.
struct Dosage {
    PulseFrequency pulseFrequency;
    PhaseDuration phaseDuration;
    Milliseconds onTime{};
    Milliseconds offTime{};
    Milliseconds rampUp{};
    Milliseconds rampDown{};
    Milliseconds sessionLength{};
    int sessionsPerDay = 1;
    Schedule schedule = WeekdaySet::mondayToFriday();
};

/// A muscle with its two pads, of equal size, and how strong it is stimulated.
struct Place {
    std::string muscle;
    Side side = Side::right;
    int channel = 1;
    Length padWidth;
    Length padHeight;
    std::optional<Amplitude> lastTolerated = std::nullopt;
    std::optional<Amplitude> ceiling = std::nullopt;
    std::string position = {};
    std::string instruction = {};
};

Block demoBlock(int weeks, const Dosage& dosage, const std::vector<Place>& places);
/// The same muscle on both sides: right on channel 1, left on channel 2.
std::vector<Place> bothSides(Place right);
/// The same places, each `more` stronger.
std::vector<Place> stronger(std::vector<Place> places, Amplitude more);
/// The block with an asymmetric, charge-balanced pulse.
Block asymmetric(Block block, PhaseDuration secondPhase);
/// The block with bursts of a 2.5 kHz sine, half of each burst period filled; the pulse frequency
/// becomes the burst rate.
Block inBursts(Block block);

/// Monday, Wednesday and Friday.
WeekdaySet everyOtherDay();

// The patients, by what they are treated for.
std::vector<DemoPatient> demoKneePatients();
std::vector<DemoPatient> demoJointPatients();
std::vector<DemoPatient> demoChestPatients();
std::vector<DemoPatient> demoStrokePatients();

} // namespace quadrille::app
