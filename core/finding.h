// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/field.h"
#include "core/units.h"

#include <optional>
#include <string_view>
#include <vector>

namespace quadrille
{

/// How much a finding weighs.
enum class Severity {
    note,      ///< worth knowing
    attention, ///< needs the practitioner's judgement; nothing is blocked
    stop,      ///< the settings cannot be run as they stand: no figures, no issue
};

/// What was found. app/error_text words each; the order is by subject, not by weight.
enum class FindingCode {
    // the settings contradict themselves
    notFilled,
    outsideArithmetic,    ///< outside any range a stimulator could have
    pulsesOverlap,        ///< frequency × pulse length > 1
    noPlateauLeft,        ///< ramps longer than the on time they lie in (stop)
    plateauIsZero,        ///< ramps fill the on time
    noOffTime,            ///< contractions cannot be told apart
    sessionShorterThanOn, ///< not one whole contraction
    lastContractionCut,   ///< the session ends inside an on phase
    ceilingBelowTolerated,
    // the settings against the stimulator
    outsideStimulator, ///< limit: least or most, whichever is broken
    offStep,           ///< between two steps; limit: the nearest lower step
    waveformNotOffered,
    channelNotThere,
    channelUsedTwice,
    timingMustBeShared,
    // the stimulator itself
    directCurrentUnsuitable,
    noWorkRestCycles,
    offNeverLongerThanOn,
    phaseShortForLargeMuscles,
    outputLowForLargeMuscles,
    // lending a unit
    safetyCheckOverdue, ///< figure: days
    unitOfAnotherKind,
    courseHasAUnit,
    // dose
    currentDensityHigh,
    rmsCurrentHigh,
    pulseEnergyHigh,
    powerDensityHigh,
    onTimeUnderOneSecond,
    offTimeUnderOneSecond,
    offShorterThanOn,
    // plan
    noSites,
    noPads,
    noWeekdays,
    onTimeStepLarge,
    // strength-duration curve
    poorFit,       ///< the law misses the thresholds by more than the limit
    chronaxieLong, ///< longer than an innervated muscle's
    fitUnchecked,  ///< two durations only: the law meets them whether it holds or not
    // session in the clinic
    skinBrokenBefore, ///< where a pad is to lie
    skinBrokenAfter,
    motorBelowSensory,   ///< the twitch before the feeling; limit: the sensory threshold
    toleratedBelowMotor, ///< limit: the motor threshold
    noContractionSeen,
};

/// Where a limit comes from. `fromMemory` means: not checked against the original text, and said so
/// wherever the limit is shown.
struct Source {
    std::string_view name;
    bool fromMemory = false;
    friend bool operator==(const Source&, const Source&) = default;
};

/// What the practitioner can do about it.
enum class Advice {
    none,
    setToLimit,
    setToNearestStep,
    fillIn,
    shortenRampsOrLengthenOn,
    lowerFrequencyOrPhase,
    lengthenOff,
    lengthenSession,
    lowerSession,
    largerPadOrLessAmplitude,
    lessAmplitude,
    chooseAnotherStimulator,
    chooseAnotherChannel,
    addSite,
    addPads,
    chooseWeekdays,
    checkStep,
    checkThresholds,
    measureMoreDurations,
    moveOrPostpone,
    stopAndExamine,
    checkPlacement,
};

/// A remark on one value: shown beside it and printed in the record.
struct Finding {
    FindingCode code = FindingCode::notFilled;
    Severity severity = Severity::note;
    Field field = Field::none;
    std::optional<Amount> figure = std::nullopt; ///< the value that was found
    std::optional<Amount> limit = std::nullopt;  ///< what it is held against
    Source source = {};
    Advice advice = Advice::none;
    friend bool operator==(const Finding&, const Finding&) = default;
};

/// True when one of the findings forbids running the settings.
bool hasStop(const std::vector<Finding>& findings);
/// The gravest first; equals keep their order.
void sortBySeverity(std::vector<Finding>& findings);

} // namespace quadrille
