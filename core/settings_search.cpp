// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/settings_search.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace quadrille
{

namespace
{

/// The values that a unit offers for one setting, in order; the greatest is reachable even where it
/// lies between two steps.
class Steps
{
public:
    explicit Steps(const CountRange& range)
        : m_range(range)
        , m_last(range.step <= 0 ? 0 : (range.most - range.least + range.step - 1) / range.step)
    {
    }
    std::int64_t last() const { return m_last; }
    Milliseconds at(std::int64_t index) const
    {
        return Milliseconds(std::min(m_range.least + index * m_range.step, m_range.most));
    }
    /// Index of the first value at or above `time`; past last() where there is none.
    std::int64_t firstFrom(Milliseconds time) const
    {
        if (time.count() <= m_range.least) {
            return 0;
        }
        if (time.count() > m_range.most) {
            return m_last + 1;
        }
        return m_range.step <= 0 ? 0
                                 : (time.count() - m_range.least + m_range.step - 1) / m_range.step;
    }

private:
    CountRange m_range;
    std::int64_t m_last;
};

Steps stepsOf(const Stimulator& stimulator, Field field)
{
    return Steps(rangeOf(stimulator, field).value_or(CountRange{}));
}

Amount longestTimer(const Stimulator& stimulator)
{
    return {static_cast<double>(stimulator.sessionLength.most.count()) / 60e3, Unit::minute};
}

/// The first session on the timer from `shortest` on that ends nowhere inside an on phase and gives
/// what `isSame` asks for.
template <class IsSame>
std::optional<SearchFound> sessionFrom(Settings settings, const Stimulator& stimulator,
                                       Milliseconds shortest, Milliseconds longest, IsSame&& isSame)
{
    const Steps timer = stepsOf(stimulator, Field::sessionLength);
    for (std::int64_t i = timer.firstFrom(shortest); i <= timer.last(); ++i) {
        settings.sessionLength = timer.at(i);
        if (settings.sessionLength > longest) {
            return std::nullopt;
        }
        const Result<SessionTiming> timing =
            sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart);
        if (!timing) {
            return std::nullopt;
        }
        if (isSame(*timing)) {
            return SearchFound{settings, *timing};
        }
        if (timing->session >= shortest + timing->cycle) {
            return std::nullopt;
        }
    }
    return std::nullopt;
}

/// The shortest session with at least `contractions`, which may cut one more.
SearchAnswer shortestWithAtLeast(Settings settings, const Stimulator& stimulator,
                                 Milliseconds shortest)
{
    const Steps timer = stepsOf(stimulator, Field::sessionLength);
    const std::int64_t index = timer.firstFrom(shortest);
    if (index > timer.last()) {
        return SearchRefusal{NoSetting::sessionTimerEnds, longestTimer(stimulator)};
    }
    settings.sessionLength = timer.at(index);
    const Result<SessionTiming> timing =
        sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart);
    if (!timing) {
        return SearchRefusal{NoSetting::betweenTimerSteps, {}};
    }
    return SearchFound{settings, *timing};
}

SearchRefusal tooShort(Milliseconds needed)
{
    return {NoSetting::sessionTooShort, {static_cast<double>(needed.count()) / 60e3, Unit::minute}};
}

} // namespace

Result<SearchAnswer> sessionForContractions(const Settings& settings, const Stimulator& stimulator,
                                            std::int64_t contractions)
{
    const Result<SessionTiming> timing =
        sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart);
    if (!timing) {
        return timing.error();
    }
    if (contractions < 1) {
        return SearchAnswer(SearchRefusal{NoSetting::noContractions, {}});
    }
    const auto cycles = checkedProduct(contractions, timing->cycle.count());
    if (!cycles) {
        return SearchAnswer(SearchRefusal{NoSetting::sessionTimerEnds, longestTimer(stimulator)});
    }
    const Milliseconds shortest = sessionLengthFor(contractions, *timing);
    const auto exactly =
        sessionFrom(settings, stimulator, shortest, stimulator.sessionLength.most,
                    [&](const SessionTiming& t) { return t.contractionsStarted == contractions; });
    return exactly ? SearchAnswer(*exactly) : shortestWithAtLeast(settings, stimulator, shortest);
}

Result<SearchAnswer> longestOffTime(const Settings& settings, const Stimulator& stimulator,
                                    KeptDose kept, Milliseconds longestSession)
{
    const Result<SessionTiming> now =
        sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart);
    if (!now) {
        return now.error();
    }
    const bool byOnTime = kept == KeptDose::totalOnTime;
    if (!byOnTime && now->contractionsCompleted == 0) {
        return SearchAnswer(SearchRefusal{NoSetting::noContractions, {}});
    }
    const std::int64_t contractions =
        byOnTime ? (now->totalOnTime + now->onPhase - Milliseconds(1)) / now->onPhase
                 : now->contractionsCompleted;
    const Milliseconds onTime = byOnTime ? now->totalOnTime : contractions * now->onPhase;
    const auto isSame = [&](const SessionTiming& t) {
        return byOnTime ? t.totalOnTime == onTime : t.contractionsStarted == contractions;
    };
    // Between the contractions, and before the first on a unit that begins with one.
    const std::int64_t rests =
        contractions - (stimulator.cycleStart == CycleStart::withOff ? 0 : 1);
    const Steps offTimes = stepsOf(stimulator, Field::offTime);
    const Milliseconds room = std::min(longestSession, stimulator.sessionLength.most);
    bool fits = false;
    for (std::int64_t i = offTimes.last(); i >= 0; --i) {
        Settings changed = settings;
        changed.offTime = offTimes.at(i);
        const Milliseconds shortest = onTime + rests * changed.offTime;
        if (shortest > room || changed.offTime == Milliseconds(0)) {
            continue;
        }
        fits = true;
        if (const auto found = sessionFrom(changed, stimulator, shortest, room, isSame)) {
            return SearchAnswer(*found);
        }
    }
    if (fits) {
        return SearchAnswer(SearchRefusal{NoSetting::betweenTimerSteps, {}});
    }
    return SearchAnswer(tooShort(onTime + rests * offTimes.at(0)));
}

namespace
{

/// Settings with another off time, and what the model says of them.
class OffTimeTrial
{
public:
    OffTimeTrial(const Settings& settings, const Stimulator& stimulator, KeptLength kept,
                 std::int64_t contractions, FatigueMemory& memory, const FatigueOptions& options)
        : m_settings(settings)
        , m_stimulator(stimulator)
        , m_kept(kept)
        , m_contractions(contractions)
        , m_memory(memory)
        , m_options(options)
        , m_offTimes(stepsOf(stimulator, Field::offTime))
    {
    }
    const Steps& offTimes() const { return m_offTimes; }

    /// Nothing where the timer ends before the contractions are done.
    std::optional<SearchFound> at(std::int64_t index) const
    {
        Settings settings = m_settings;
        settings.offTime = m_offTimes.at(index);
        if (m_kept == KeptLength::contractions) {
            const auto answer = sessionForContractions(settings, m_stimulator, m_contractions);
            const auto* found = answer ? std::get_if<SearchFound>(&*answer) : nullptr;
            return found ? std::optional(*found) : std::nullopt;
        }
        const Result<SessionTiming> timing =
            sessionTiming(settings, m_stimulator.rampHabit, m_stimulator.cycleStart);
        return timing ? std::optional(SearchFound{settings, *timing}) : std::nullopt;
    }

    /// The longest off time with which the session can be run; the first where none can. A session
    /// that was to have several contractions must keep two: one alone tires nothing.
    std::int64_t longestThatRuns() const
    {
        std::int64_t runs = 0;
        std::int64_t fails = m_offTimes.last() + 1;
        while (fails - runs > 1) {
            const std::int64_t middle = runs + (fails - runs) / 2;
            const auto trial = at(middle);
            const bool compares =
                trial && (m_contractions < 2 || trial->timing.contractionsCompleted >= 2);
            (compares ? runs : fails) = middle;
        }
        return runs;
    }

    /// The fatigue ratio; nothing where there is none.
    std::optional<double> ratio(const std::optional<SearchFound>& trial) const
    {
        if (!trial) {
            return std::nullopt;
        }
        const auto prediction = m_memory.predict(withoutLead(trial->settings, trial->timing),
                                                 m_stimulator.rampHabit, m_options);
        if (!prediction || !prediction->lastToFirst) {
            return std::nullopt;
        }
        return prediction->lastToFirst->forceTimeIntegral;
    }

private:
    const Settings& m_settings;
    const Stimulator& m_stimulator;
    KeptLength m_kept;
    std::int64_t m_contractions;
    FatigueMemory& m_memory;
    const FatigueOptions& m_options;
    Steps m_offTimes;
};

} // namespace

Result<SearchAnswer> smallestOffTime(const Settings& settings, const Stimulator& stimulator,
                                     double ratio, KeptLength kept, FatigueMemory& memory,
                                     const FatigueOptions& options, const std::stop_token& stop)
{
    if (!(ratio > 0.0) || !std::isfinite(ratio)) {
        return Error{ErrorCode::outOfRange, {}, {}, Field::offTime, {{ratio, Unit::none}}};
    }
    const Result<SessionTiming> timing =
        sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart);
    if (!timing) {
        return timing.error();
    }
    const auto now = memory.predict(withoutLead(settings, *timing), stimulator.rampHabit, options);
    if (!now) {
        return now.error();
    }
    if (timing->contractionsCompleted == 0) {
        return SearchAnswer(SearchRefusal{NoSetting::noContractions, {}});
    }
    if (!now->lastToFirst) {
        return SearchAnswer(SearchRefusal{NoSetting::noForce, {}});
    }
    const OffTimeTrial trial(settings, stimulator, kept, timing->contractionsCompleted, memory,
                             options);
    const auto keeps = [&](std::int64_t index) {
        const auto reached = trial.ratio(trial.at(index));
        return reached && *reached >= ratio;
    };
    std::int64_t low = -1;
    std::int64_t high = trial.longestThatRuns();
    if (!keeps(high)) {
        const auto most = trial.ratio(trial.at(high));
        if (!most) {
            return SearchAnswer(
                SearchRefusal{NoSetting::sessionTimerEnds, longestTimer(stimulator)});
        }
        return SearchAnswer(SearchRefusal{stimulator.offTime.isFixed() ? NoSetting::offTimeIsFixed
                                                                       : NoSetting::ratioNotReached,
                                          {*most, Unit::none}});
    }
    while (high - low > 1 && !stop.stop_requested()) {
        const std::int64_t middle = low + (high - low) / 2;
        (keeps(middle) ? high : low) = middle;
    }
    while (high > 0 && !stop.stop_requested() && keeps(high - 1)) {
        --high;
    }
    if (stop.stop_requested()) {
        return SearchAnswer(SearchRefusal{NoSetting::stopped, {}});
    }
    return SearchAnswer(*trial.at(high));
}

} // namespace quadrille
