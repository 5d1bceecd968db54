// SPDX-License-Identifier: GPL-3.0-or-later
// What a starting point makes of a block on a unit.
#include "core/settings_search.h"
#include "core/starting_point.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

/// Applies to one block step by step.
class Application
{
public:
    Application(const StartingPoint& point, const Block& block, const Stimulator& unit)
        : m_point(point)
        , m_before(block)
        , m_unit(unit)
    {
        m_applied.block = block;
    }

    void takeSettings()
    {
        const Settings presets = presetSettings(m_unit);
        for (Site& site : m_applied.block.sites) {
            Settings& settings = site.settings;
            takeWaveform(settings);
            for (const Field field : standardAskingOrder()) {
                const auto figure = citedIn(m_point, field).figure();
                if (figure && hasMeaning(field)) {
                    setCount(settings, field, figure);
                } else if (!countIn(settings, field) && appliesTo(field, settings.waveform)) {
                    setCount(settings, field, countIn(presets, field));
                }
            }
            settings.amplitude = {}; // no business of the unit's steps
            convertOnTime(settings);
        }
    }

    void fitToUnit()
    {
        BlockFit fitted = fit(m_applied.block, m_unit);
        m_applied.block = std::move(fitted.block);
        m_changes = std::move(fitted.changes.front());
    }

    void takeContractions()
    {
        const auto contractions = m_point.contractions.figure();
        if (!contractions) {
            return;
        }
        for (Site& site : m_applied.block.sites) {
            Settings settings = site.settings;
            settings.sessionLength = m_unit.sessionLength.most; // any that can be run
            const auto answer = sessionForContractions(settings, m_unit, *contractions);
            const auto* found = answer ? std::get_if<SearchFound>(&*answer) : nullptr;
            if (found == nullptr) {
                return; // the session stays as it stands, and nothing is claimed
            }
            site.settings.sessionLength = found->settings.sessionLength;
            if (&site == &m_applied.block.sites.front()) {
                m_applied.contractions = found->timing.contractionsCompleted;
            }
        }
    }

    void takeSchedule()
    {
        Block& block = m_applied.block;
        const auto days = citedIn(m_point, Field::weekdays).figure();
        if (days && daysPerWeek(block) != *days) {
            constexpr int wholeWeek = 7;
            if (*days == wholeWeek) {
                block.schedule = WeekdaySet::everyDay();
            } else {
                block.schedule = DaysPerWeek{static_cast<int>(*days)};
            }
        }
        if (const auto sessions = citedIn(m_point, Field::sessionsPerDay).figure()) {
            block.sessionsPerDay = static_cast<int>(*sessions);
        }
        if (const auto weeks = citedIn(m_point, Field::weeks).figure()) {
            block.weeks = static_cast<int>(*weeks);
        }
    }

    /// Amplitudes stay with their sites, but for what was tolerated with another pulse: more charge
    /// than anybody tolerated must not be printed as tolerated.
    void keepAmplitudes()
    {
        for (std::size_t i = 0; i < m_before.sites.size(); ++i) {
            const Settings& was = m_before.sites[i].settings;
            Settings& is = m_applied.block.sites[i].settings;
            is.amplitude = was.amplitude;
            const bool otherPulse =
                is.waveform != was.waveform || is.phaseDuration > was.phaseDuration;
            if (otherPulse && is.amplitude.lastTolerated) {
                is.amplitude.lastTolerated.reset();
                m_applied.forgotTolerated = true;
            }
        }
    }

    void report()
    {
        reportWaveform();
        for (const Field field :
             {Field::pulseFrequency, Field::phaseDuration, Field::interphaseGap,
              Field::secondPhaseDuration, Field::carrierFrequency, Field::burstDuty, Field::onTime,
              Field::offTime, Field::rampUp, Field::rampDown}) {
            reportSetting(field);
        }
        reportDose();
        const Block& block = m_applied.block;
        reportCount(Field::sessionsPerDay, block.sessionsPerDay);
        reportCount(Field::weekdays, daysPerWeek(block));
        reportCount(Field::weeks, block.weeks);
        if (m_applied.plateauMeant) {
            const Settings& first = block.sites.front().settings;
            m_applied.plateauGiven = m_unit.rampHabit == RampHabit::addedToOnTime
                                         ? first.onTime
                                         : first.onTime - first.rampUp - first.rampDown;
        }
        m_applied.block.origin = BlockOrigin{m_point.name, false};
    }

    AppliedPoint take() { return std::move(m_applied); }

private:
    void takeWaveform(Settings& settings) const
    {
        const std::vector<Waveform>& any = m_point.waveform.any;
        if (isOffered(m_point.waveform.standing) && !any.empty() &&
            std::ranges::find(any, settings.waveform) == any.end()) {
            const auto offered = std::ranges::find_if(any, [&](Waveform waveform) {
                return std::ranges::find(m_unit.waveforms, waveform) != m_unit.waveforms.end();
            });
            if (offered != any.end()) { // or what stands is nearer than what nobody can have
                settings.waveform = *offered;
            }
        }
    }

    /// A half cycle of a carrier is no phase duration of a pulse.
    bool hasMeaning(Field field) const
    {
        const std::vector<Waveform>& any = m_point.waveform.any;
        return any.empty() || std::ranges::any_of(any, [&](Waveform waveform) {
                   return appliesTo(field, waveform);
               });
    }

    /// Where the unit counts its ramps otherwise than the source: another on time, the same plateau
    /// with the ramps that the unit can do.
    void convertOnTime(Settings& settings)
    {
        const auto meant = m_point.rampRule.habit;
        if (!meant || !isOffered(m_point.rampRule.standing) || *meant == m_unit.rampHabit ||
            !citedIn(m_point, Field::onTime).figure()) {
            return;
        }
        const Milliseconds plateau = *meant == RampHabit::addedToOnTime
                                         ? settings.onTime
                                         : settings.onTime - settings.rampUp - settings.rampDown;
        for (const Field ramp : {Field::rampUp, Field::rampDown}) {
            const auto range = rangeOf(m_unit, ramp);
            setCount(settings, ramp, range->nearestStep(*countIn(settings, ramp)));
        }
        settings.onTime = *meant == RampHabit::addedToOnTime
                              ? plateau + settings.rampUp + settings.rampDown
                              : plateau;
        if (!m_applied.plateauMeant) {
            m_applied.plateauMeant = plateau; // of the first site, as all that is reported
        }
    }

    std::optional<FitReason> whyChanged(Field field) const
    {
        const auto found = std::ranges::find(m_changes, field, &FitChange::field);
        return found == m_changes.end() ? std::nullopt : std::optional(found->why);
    }

    void reportWaveform()
    {
        const Waveform becomes = m_applied.block.sites.front().settings.waveform;
        const std::vector<Waveform>& any = m_point.waveform.any;
        AppliedFigure figure{Field::waveform, Outcome::leftEmpty, becomes, {}};
        if (isOffered(m_point.waveform.standing) && !any.empty()) {
            const bool isTaken = std::ranges::find(any, becomes) != any.end();
            figure.outcome = isTaken ? Outcome::taken : Outcome::unitGivesOther;
            if (!isTaken) {
                figure.why = FitReason::waveformNotOffered;
            }
        }
        m_applied.figures.push_back(figure);
    }

    void reportSetting(Field field)
    {
        const Settings& first = m_applied.block.sites.front().settings;
        const auto count = countIn(first, field);
        const bool means = appliesTo(field, first.waveform) && count;
        const FitValue becomes = means ? FitValue(*count) : FitValue();
        const CitedCount cited = citedIn(m_point, field);
        AppliedFigure figure{field, Outcome::leftEmpty, becomes, {}};
        if (!isOffered(cited.standing) || !hasMeaning(field)) {
            const bool isExtra = field == Field::interphaseGap; // none unless somebody names one
            if (!isOffered(cited.standing) && (!means || isExtra)) {
                return; // neither the source nor the unit has it
            }
        } else if (cited.isRange()) {
            figure.outcome = Outcome::choose;
        } else if (count == cited.least && means) {
            figure.outcome = Outcome::taken;
        } else {
            figure.outcome = Outcome::unitGivesOther;
            figure.why = reasonFor(field, means);
        }
        m_applied.figures.push_back(figure);
    }

    FitReason reasonFor(Field field, bool means) const
    {
        if (!means) {
            return FitReason::waveformNotOffered;
        }
        if (field == Field::onTime && m_applied.plateauMeant) {
            return FitReason::rampHabit;
        }
        if (const auto why = whyChanged(field)) {
            return *why;
        }
        const auto range = rangeOf(m_unit, field); // a ramp that was brought to a step beforehand
        if (range && range->isFixed()) {
            return FitReason::fixedOnUnit;
        }
        return range && range->contains(citedIn(m_point, field).least) ? FitReason::betweenSteps
                                                                       : FitReason::outsideRange;
    }

    void reportDose()
    {
        if (!isOffered(m_point.contractions.standing)) {
            return reportSetting(Field::sessionLength);
        }
        const auto count = countIn(m_applied.block.sites.front().settings, Field::sessionLength);
        AppliedFigure figure{Field::sessionLength, Outcome::choose, valueOf(count), {}};
        if (const auto wanted = m_point.contractions.figure()) {
            const bool isTaken = m_applied.contractions == wanted;
            figure.outcome = isTaken ? Outcome::taken : Outcome::unitGivesOther;
            if (!isTaken) {
                figure.why =
                    m_applied.contractions ? FitReason::betweenSteps : FitReason::outsideRange;
            }
        }
        m_applied.figures.push_back(figure);
    }

    void reportCount(Field field, std::int64_t becomes)
    {
        const CitedCount cited = citedIn(m_point, field);
        const Outcome outcome = !isOffered(cited.standing) ? Outcome::leftEmpty
                                : cited.isRange()          ? Outcome::choose
                                                           : Outcome::taken;
        m_applied.figures.push_back({field, outcome, becomes, {}});
    }

    static FitValue valueOf(const std::optional<std::int64_t>& count)
    {
        return count ? FitValue(*count) : FitValue();
    }

    const StartingPoint& m_point;
    const Block& m_before;
    const Stimulator& m_unit;
    std::vector<FitChange> m_changes; ///< of the first site
    AppliedPoint m_applied;
};

} // namespace

AppliedPoint applied(const StartingPoint& point, const Block& block, const Stimulator& unit)
{
    Application application(point, block, unit);
    application.takeSettings();
    application.fitToUnit();
    application.takeContractions();
    application.takeSchedule();
    application.keepAmplitudes();
    application.report();
    return application.take();
}

} // namespace quadrille
