// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/starting_point.h"

#include "core/session_timing.h"
#include "core/suitability.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

Milliseconds timeOf(const StartingPoint& point, Field field)
{
    return Milliseconds(citedIn(point, field).figure().value_or(0));
}

PointDose::Week weekOf(std::int64_t contractions, Milliseconds onPhase, std::int64_t sessions)
{
    return {contractions * sessions, contractions * sessions * onPhase};
}

/// Settings that make sense, with the timing that is cited.
Settings timedSettings(const StartingPoint& point)
{
    Settings settings = presetSettings(commonStimulator());
    settings.onTime = timeOf(point, Field::onTime);
    settings.offTime = timeOf(point, Field::offTime);
    settings.rampUp = timeOf(point, Field::rampUp);
    settings.rampDown = timeOf(point, Field::rampDown);
    settings.sessionLength = timeOf(point, Field::sessionLength);
    return settings;
}

/// What a block asks for each week, but for its amplitudes.
struct Asked {
    std::vector<Settings> settings; ///< each different one once
    Schedule schedule;
    int sessionsPerDay;
    friend bool operator==(const Asked&, const Asked&) = default;
};

Asked askedBy(const Block& block)
{
    Asked asked{{}, block.schedule, block.sessionsPerDay};
    for (const Site& site : block.sites) {
        Settings settings = site.settings;
        settings.amplitude = {};
        if (std::ranges::find(asked.settings, settings) == asked.settings.end()) {
            asked.settings.push_back(settings);
        }
    }
    return asked;
}

} // namespace

CitedCount citedIn(const StartingPoint& point, Field field)
{
    const auto found = point.figures.find(field);
    return found == point.figures.end() ? CitedCount{} : found->second;
}

StartingPoint startingPointFrom(const HouseSettings& kept)
{
    StartingPoint point;
    point.name = kept.name;
    point.citationStanding = Standing::own;
    point.note = kept.note;
    point.house = kept.id;
    if (!kept.muscle.empty()) {
        point.muscles = {kept.muscle};
    }
    if (!kept.condition.empty()) {
        point.conditions = {kept.condition};
    }
    const auto own = [](std::int64_t count) { return CitedCount{count, count, Standing::own, {}}; };
    point.waveform = {{kept.settings.waveform}, Standing::own, {}};
    point.rampRule = {kept.rampHabit, Standing::own};
    for (const Field field : standardAskingOrder()) {
        const bool isAmplitude =
            field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
        const auto count = countIn(kept.settings, field);
        if (count && !isAmplitude && appliesTo(field, kept.settings.waveform)) {
            point.figures[field] = own(*count);
        }
    }
    point.figures[Field::sessionsPerDay] = own(kept.sessionsPerDay);
    point.figures[Field::weekdays] = own(kept.daysPerWeek);
    point.figures[Field::weeks] = own(kept.weeks);
    return point;
}

std::optional<PointDose> doseOf(const StartingPoint& point, RampHabit habit)
{
    if (point.use != PointUse::plan || !citedIn(point, Field::onTime).figure()) {
        return std::nullopt;
    }
    if (habit == RampHabit::addedToOnTime &&
        (citedIn(point, Field::rampUp).isRange() || citedIn(point, Field::rampDown).isRange())) {
        return std::nullopt;
    }
    Settings settings = timedSettings(point);
    const auto counted = point.contractions.figure();
    if (counted) {
        settings.offTime = std::max(settings.offTime, Milliseconds(1)); // the count does not ask
        settings.sessionLength = settings.rampUp + settings.onTime + settings.rampDown;
    } else if (!citedIn(point, Field::offTime).figure()) {
        return std::nullopt;
    }
    const Result<SessionTiming> timing = sessionTiming(settings, habit);
    if (!timing) {
        return std::nullopt;
    }
    PointDose dose;
    dose.contractions = counted.value_or(timing->contractionsCompleted);
    dose.onPhase = timing->onPhase;
    dose.plateau = timing->plateau;
    dose.sessionOnTime = dose.contractions * dose.onPhase;
    const CitedCount sessions = citedIn(point, Field::sessionsPerDay);
    const CitedCount days = citedIn(point, Field::weekdays);
    if (isOffered(sessions.standing) && isOffered(days.standing)) {
        dose.least = weekOf(dose.contractions, dose.onPhase, sessions.least * days.least);
        dose.most = weekOf(dose.contractions, dose.onPhase, sessions.most * days.most);
    }
    return dose;
}

std::optional<CannotApply> cannotApply(const StartingPoint& point, const Block* block,
                                       const std::optional<Stimulator>& unit)
{
    if (point.use == PointUse::subTetanic) {
        return CannotApply::subTetanic;
    }
    if (point.use == PointUse::citationOnly) {
        return CannotApply::citationOnly;
    }
    if (!unit) {
        return CannotApply::noUnit;
    }
    if (hasStop(suitabilityFindings(*unit))) {
        return CannotApply::unitWillNotDo;
    }
    if (block == nullptr || block->sites.empty()) {
        return CannotApply::noSite;
    }
    return std::nullopt;
}

void markChangedSince(const std::vector<Block>& before, std::vector<Block>& after)
{
    for (Block& block : after) {
        if (!block.origin || block.origin->changedSince) {
            continue;
        }
        bool hadOrigin = false;
        bool askedTheSame = false;
        for (const Block& earlier : before) {
            if (earlier.origin == block.origin) {
                hadOrigin = true;
                askedTheSame = askedTheSame || askedBy(earlier) == askedBy(block);
            }
        }
        block.origin->changedSince = hadOrigin && !askedTheSame;
    }
}

} // namespace quadrille
