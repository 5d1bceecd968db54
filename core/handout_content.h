// SPDX-License-Identifier: GPL-3.0-or-later
// What a handout says, as figures in order: no words, no pixels. app/print words it and draws it.
#pragma once

#include "core/calendar.h"
#include "core/course.h"
#include "core/people.h"
#include "core/placement.h"
#include "core/plan.h"
#include "core/result.h"
#include "core/screening_gate.h"
#include "core/settings.h"
#include "core/waveform.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// What a patient must know to use a stimulator safely. The order is the order on paper.
enum class Caution {
    // always
    onlyAsShownOnThisPerson,
    neverHeadFaceOrNeck,
    neverAcrossChest, ///< also one pad each side of it, or chest to back
    neverOverBrokenSkin,
    stimulatorsOwnInstructionsFirst,
    noSubstituteForAdvice,
    keepFromChildren,
    // before
    skinCleanDryWhole,
    padsStillSticky,  ///< self-adhesive pads only
    padsMoistAndFirm, ///< carbon rubber pads only
    cablesWhole,
    startAtZero,
    notWhileDrivingBathingAsleep,
    // during
    strongIsRightSharpIsNot,
    turnDownBeforeTouchingPads,
    suddenChangeSwitchOff,
    // after
    pinkFadesWithinHour,
    soreForTwoDays,
    padsBackAway,
    // stop and ring
    skinStillRedOrBlistered,
    jointSwollenHotOrWorse,
    oneLimbSwollenOrPainful,
    faintOrOddHeartbeat,
    stillSoreOnThirdDay,
    healthChanged,
    inDoubt, ///< stop and ring; never move a pad or change a dose
};

/// The cautions by the place where the patient needs them.
struct HandoutCautions {
    std::vector<Caution> always;
    std::vector<Caution> before;
    std::vector<Caution> during;
    std::vector<Caution> after;
    std::vector<Caution> stopAndRing;
    friend bool operator==(const HandoutCautions&, const HandoutCautions&) = default;
};

/// One setting in base units (see countIn()).
struct HandoutSetting {
    Field field = Field::none;
    std::int64_t count = 0;
    bool fixed = false; ///< the unit offers this one value only
    friend bool operator==(const HandoutSetting&, const HandoutSetting&) = default;
};

/// Contractions of one site in one sitting. They differ where the session ends inside an on phase.
struct HandoutContractions {
    std::int64_t started = 0;
    std::int64_t completed = 0;
    friend bool operator==(const HandoutContractions&, const HandoutContractions&) = default;
};

/// What the patient feels, cycle by cycle: the on phase with its ramps, then the rest.
struct HandoutRhythm {
    Milliseconds onPhase{};
    Milliseconds offTime{};
    HandoutContractions contractions;
    bool restsFirst = false; ///< the unit begins with an off time
    friend bool operator==(const HandoutRhythm&, const HandoutRhythm&) = default;
};

/// Settings to be made on the unit, in the order in which it asks for them. Amplitude is left out:
/// it stands with the site.
struct HandoutSettings {
    std::optional<Waveform> waveform = std::nullopt; ///< only where the unit offers a choice
    std::vector<HandoutSetting> inAskingOrder;
    std::optional<HandoutRhythm> rhythm = std::nullopt;
    bool isEmpty() const { return !waveform && inAskingOrder.empty() && !rhythm; }
    friend bool operator==(const HandoutSettings&, const HandoutSettings&) = default;
};

/// One site of a card.
struct HandoutSite {
    std::string muscle;
    Side side = Side::right;
    int channel = 1;
    std::vector<Pad> pads;
    HandoutSettings own; ///< what differs between the sites of the block
    /// What was tolerated last is known on the first card of a handout only.
    AmplitudeGuidance amplitude;
    std::string position;
    std::string instruction;
    friend bool operator==(const HandoutSite&, const HandoutSite&) = default;
};

/// One block, as the card that the patient keeps beside the stimulator.
struct HandoutCard {
    CourseWeek firstWeek;
    CourseWeek lastWeek;
    Date firstDay;      ///< never before the plan's from-date
    Date lastDay;       ///< never after the course's end
    Weekday weekBegins; ///< the weekday of the course's start: course weeks run from it
    Schedule schedule;
    int sessionsPerDay = 1;
    SiteOrder siteOrder = SiteOrder::together;
    /// Length of one sitting: the longest site, or all of them in turn. Nothing where a site's
    /// settings cannot be run.
    std::optional<Milliseconds> sitting = std::nullopt;
    HandoutSettings common; ///< what is the same at all sites
    /// By channel where they run at once, in the block's order where they run in turn.
    std::vector<HandoutSite> sites;
    friend bool operator==(const HandoutCard&, const HandoutCard&) = default;
};

/// All that a handout says.
struct HandoutContent {
    Practice practice;
    std::string patientName;
    std::string patientReference;
    std::string problem;
    int courseNumber = 1;
    int planNumber = 1;
    Date planFrom;
    std::string planIssuedBy;
    Date printedOn;
    std::optional<std::string> printedBy = std::nullopt; ///< the practitioner at the screen, if any
    std::string stimulatorName;
    /// Of the units of this stimulator that are lent for the course, as the practice numbers them;
    /// whoever reads the store fills them in.
    std::vector<std::string> inventoryNumbers = {};
    std::map<Field, std::string> ownWords = {}; ///< see Stimulator
    RampHabit rampHabit = RampHabit::includedInOnTime;
    std::vector<HandoutCard> cards;             ///< empty when every block is over
    std::optional<Date> lastDay = std::nullopt; ///< of the whole plan; nothing without blocks
    HandoutCautions cautions;
    std::vector<GateAdvice> advice = {}; ///< of this person's precautions; each has a text
    friend bool operator==(const HandoutContent&, const HandoutContent&) = default;
};

/// The handout of an issued plan: one card per block that is not over on the day of printing.
/// Before the from-date these are all blocks the plan will be in force for. Nothing is printed
/// while `gate` is shut for the plan's sites: the errors of passGate().
Result<HandoutContent> handoutContent(const Practice& practice, const Patient& patient,
                                      const Course& course, const Plan& plan,
                                      const ScreeningGate& gate,
                                      const std::optional<std::string>& printedBy, Date printedOn);

} // namespace quadrille
