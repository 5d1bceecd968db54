// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/unit_fit.h"

#include <algorithm>
#include <map>

namespace quadrille
{

namespace
{

bool isAmplitude(Field field)
{
    return field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
}

/// The highest value of the unit at or below `count`, which is not below the least.
std::int64_t stepBelow(std::int64_t count, const CountRange& range)
{
    const std::int64_t nearest = range.nearestStep(count);
    if (nearest <= count) {
        return nearest;
    }
    const std::int64_t past = (count - range.least) % std::max<std::int64_t>(range.step, 1);
    return count - past;
}

FitValue valueOf(const std::optional<std::int64_t>& count)
{
    return count ? FitValue(*count) : FitValue();
}

/// Fits one site step by step, and remembers the first reason for which a setting was touched.
class Fitting
{
public:
    Fitting(const Settings& wanted, const Stimulator& unit)
        : m_wanted(wanted)
        , m_settings(wanted)
        , m_unit(unit)
    {
    }

    void takeWaveform()
    {
        const auto& offered = m_unit.waveforms;
        if (std::ranges::find(offered, m_settings.waveform) != offered.end()) {
            return;
        }
        const auto balanced = std::ranges::find_if(offered, isChargeBalanced);
        if (balanced == offered.end()) {
            return; // the unit will not do at all; its findings say so
        }
        m_settings.waveform = *balanced;
        const Settings presets = presetSettings(m_unit);
        for (const Field field : standardAskingOrder()) {
            const bool isNew = appliesTo(field, *balanced) && !appliesTo(field, m_wanted.waveform);
            if (isNew && countIn(presets, field)) {
                set(field, countIn(presets, field), FitReason::waveformNotOffered);
            }
        }
    }

    void keepOnPhase(RampHabit wantedHabit)
    {
        if (wantedHabit == m_unit.rampHabit) {
            return;
        }
        takeStep(Field::rampUp);
        takeStep(Field::rampDown);
        const Milliseconds ramps = m_settings.rampUp + m_settings.rampDown;
        const Milliseconds onTime = wantedHabit == RampHabit::includedInOnTime
                                        ? m_wanted.onTime - ramps
                                        : m_wanted.rampUp + m_wanted.onTime + m_wanted.rampDown;
        set(Field::onTime, onTime.count(), FitReason::rampHabit);
    }

    void takeStep(Field field)
    {
        const auto count = countIn(m_settings, field);
        if (!appliesTo(field, m_settings.waveform) || !count) {
            return;
        }
        const auto range = rangeOf(m_unit, field);
        if (range) {
            set(field, possibleCount(field, *count, *range), reasonOf(*count, *range));
        } else if (field == Field::interphaseGap) {
            set(field, 0, FitReason::notOnUnit);
        }
    }

    /// The second phase of an asymmetric pulse is the longer one.
    void lengthenSecondPhase()
    {
        const auto range = rangeOf(m_unit, Field::secondPhaseDuration);
        const std::int64_t first = m_settings.phaseDuration.count();
        const auto second = countIn(m_settings, Field::secondPhaseDuration);
        if (m_settings.waveform != Waveform::asymmetricBalancedBiphasic || !range || !second ||
            *second >= first) {
            return;
        }
        std::int64_t longer = range->nearestStep(first);
        if (longer < first) {
            longer = std::min(longer + range->step, range->most);
        }
        set(Field::secondPhaseDuration, longer, FitReason::outsideRange);
    }

    void shortenRamps()
    {
        if (m_unit.rampHabit != RampHabit::includedInOnTime) {
            return;
        }
        for (const Field ramp : {Field::rampDown, Field::rampUp}) {
            const std::int64_t over =
                (m_settings.rampUp + m_settings.rampDown - m_settings.onTime).count();
            if (over <= 0) {
                return;
            }
            const CountRange range = *rangeOf(m_unit, ramp);
            const std::int64_t shorter = std::max(*countIn(m_settings, ramp) - over, range.least);
            set(ramp, stepBelow(shorter, range), FitReason::rampsTooLong);
        }
    }

    /// More charge in each phase than anybody tolerated must not be printed as tolerated.
    void forgetWhatAnotherPulseGave()
    {
        if (m_settings.waveform != m_wanted.waveform ||
            m_settings.phaseDuration > m_wanted.phaseDuration) {
            set(Field::lastToleratedAmplitude, std::nullopt, FitReason::otherPulse);
        }
    }

    void set(Field field, std::optional<std::int64_t> count, FitReason why)
    {
        if (countIn(m_settings, field) != count) {
            setCount(m_settings, field, count);
            m_reasons.emplace(field, why);
        }
    }

    const Settings& settings() const { return m_settings; }

    std::vector<FitChange> changes() const
    {
        std::vector<FitChange> changes;
        if (m_settings.waveform != m_wanted.waveform) {
            changes.push_back({Field::waveform, m_wanted.waveform, m_settings.waveform,
                               FitReason::waveformNotOffered});
        }
        for (const Field field : standardAskingOrder()) {
            const auto wanted = countIn(m_wanted, field);
            const auto possible = countIn(m_settings, field);
            const bool meant = appliesTo(field, m_wanted.waveform);
            if (wanted != possible || (!meant && m_reasons.contains(field))) {
                changes.push_back({field, meant ? valueOf(wanted) : FitValue(), valueOf(possible),
                                   m_reasons.at(field)});
            }
        }
        return changes;
    }

private:
    static FitReason reasonOf(std::int64_t count, const CountRange& range)
    {
        if (range.isFixed()) {
            return FitReason::fixedOnUnit;
        }
        return range.contains(count) ? FitReason::betweenSteps : FitReason::outsideRange;
    }

    Settings m_wanted;
    Settings m_settings;
    const Stimulator& m_unit;
    std::map<Field, FitReason> m_reasons;
};

void fitAlone(Fitting& fitting, const Stimulator& unit, std::optional<RampHabit> wantedHabit)
{
    fitting.takeWaveform();
    fitting.keepOnPhase(wantedHabit.value_or(unit.rampHabit));
    fitting.takeStep(Field::phaseDuration);
    fitting.forgetWhatAnotherPulseGave();
    std::ranges::for_each(standardAskingOrder(), [&](Field field) { fitting.takeStep(field); });
    fitting.lengthenSecondPhase();
    fitting.shortenRamps();
}

} // namespace

std::optional<std::int64_t> possibleCount(Field field, std::int64_t wanted, const CountRange& range)
{
    if (!isAmplitude(field)) {
        return range.nearestStep(wanted);
    }
    return wanted < range.least ? std::nullopt : std::optional(stepBelow(wanted, range));
}

Fit fit(const Settings& wanted, const Stimulator& unit, std::optional<RampHabit> wantedHabit)
{
    Fitting fitting(wanted, unit);
    fitAlone(fitting, unit, wantedHabit);
    return {fitting.settings(), fitting.changes()};
}

bool BlockFit::isNeeded() const
{
    return std::ranges::any_of(changes, [](const auto& site) { return !site.empty(); });
}

BlockFit fit(const Block& wanted, const Stimulator& unit, std::optional<RampHabit> wantedHabit)
{
    BlockFit fitted{wanted, {}};
    const bool shared = unit.channelsShareTiming && wanted.siteOrder == SiteOrder::together;
    for (Site& site : fitted.block.sites) {
        Fitting fitting(site.settings, unit);
        fitAlone(fitting, unit, wantedHabit);
        const Settings& first = fitted.block.sites.front().settings; // fitted already
        for (const Field field : sharedTimingFields()) {
            if (shared && &site != &fitted.block.sites.front()) {
                fitting.set(field, countIn(first, field), FitReason::sharedTiming);
            }
        }
        site.settings = fitting.settings();
        fitted.changes.push_back(fitting.changes());
    }
    return fitted;
}

} // namespace quadrille
