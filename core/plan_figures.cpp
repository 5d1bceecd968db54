// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan_figures.h"

#include "core/limits.h"
#include "core/suitability.h"

#include <algorithm>
#include <iterator>

namespace quadrille
{

namespace
{

void append(std::vector<Finding>& to, const std::vector<Finding>& from)
{
    std::ranges::copy(from, std::back_inserter(to));
}

Finding stop(FindingCode code, Field field, Advice advice)
{
    return {.code = code, .severity = Severity::stop, .field = field, .advice = advice};
}

std::vector<Finding> siteFindings(const Site& site, const Stimulator& stimulator)
{
    std::vector<Finding> findings;
    if (site.muscle.empty()) {
        findings.push_back(stop(FindingCode::notFilled, Field::muscle, Advice::fillIn));
    }
    if (site.channel < 1 || site.channel > stimulator.channels) {
        Finding finding =
            stop(FindingCode::channelNotThere, Field::channel, Advice::chooseAnotherChannel);
        finding.figure = countOf(site.channel);
        finding.limit = countOf(stimulator.channels);
        findings.push_back(finding);
    }
    const bool bothLeads =
        std::ranges::any_of(site.pads, [](const Pad& p) { return p.lead == Lead::a; }) &&
        std::ranges::any_of(site.pads, [](const Pad& p) { return p.lead == Lead::b; });
    if (!bothLeads || !std::ranges::all_of(site.pads, isPossible)) {
        findings.push_back(stop(FindingCode::noPads, Field::padSize, Advice::addPads));
    }
    append(findings, stimulatorFindings(site.settings, stimulator));
    append(findings, settingsFindings(site.settings, stimulator.rampHabit, stimulator.cycleStart));
    return findings;
}

bool hasPossibleDays(const Block& block)
{
    return daysPerWeek(block) >= 1 && daysPerWeek(block) <= 7;
}

bool hasPossibleSessions(const Block& block)
{
    return block.sessionsPerDay >= 1 && block.sessionsPerDay <= 6;
}

SiteFigures siteFigures(const Block& block, const Site& site, const Stimulator& stimulator)
{
    SiteFigures figures;
    figures.findings = siteFindings(site, stimulator);
    if (const auto timing =
            sessionTiming(site.settings, stimulator.rampHabit, stimulator.cycleStart)) {
        figures.timing = *timing;
        append(figures.findings, timingFindings(*timing));
        const auto amplitude = doseAmplitude(site.settings.amplitude);
        const auto area = smallerPadArea(site.pads);
        if (amplitude && area && std::ranges::all_of(site.pads, isPossible)) {
            figures.dose = doseOf(site.settings, *amplitude, *area, *timing);
            append(figures.findings, doseFindings(site.settings, *figures.dose));
        }
        if (hasPossibleDays(block) && hasPossibleSessions(block)) {
            figures.week =
                weekOf(*timing, sessionsPerWeek(block),
                       figures.dose ? std::optional(figures.dose->phaseCharge) : std::nullopt);
        }
    }
    sortBySeverity(figures.findings);
    return figures;
}

bool sameTiming(const Settings& a, const Settings& b)
{
    return std::ranges::all_of(sharedTimingFields(),
                               [&](Field field) { return countIn(a, field) == countIn(b, field); });
}

std::vector<Finding> channelFindings(const Block& block, const Stimulator& stimulator)
{
    std::vector<Finding> findings;
    const bool together = block.siteOrder == SiteOrder::together;
    for (std::size_t i = 1; together && i < block.sites.size(); ++i) {
        const Site& site = block.sites[i];
        const auto sameChannel = [&](const Site& earlier) {
            return earlier.channel == site.channel;
        };
        if (std::any_of(block.sites.begin(), block.sites.begin() + static_cast<std::ptrdiff_t>(i),
                        sameChannel)) {
            Finding finding =
                stop(FindingCode::channelUsedTwice, Field::channel, Advice::chooseAnotherChannel);
            finding.figure = countOf(site.channel);
            findings.push_back(finding);
        }
        if (stimulator.channelsShareTiming &&
            !sameTiming(site.settings, block.sites.front().settings)) {
            findings.push_back(stop(FindingCode::timingMustBeShared, Field::onTime,
                                    Advice::chooseAnotherStimulator));
        }
    }
    return findings;
}

std::vector<Finding> ownFindings(const Block& block, const Stimulator& stimulator)
{
    // What only speaks against the unit is said where it is chosen, not in each block.
    std::vector<Finding> findings = suitabilityFindings(stimulator);
    std::erase_if(findings, [](const Finding& f) { return f.severity != Severity::stop; });
    if (block.sites.empty()) {
        findings.push_back(stop(FindingCode::noSites, Field::muscle, Advice::addSite));
    }
    if (!hasPossibleDays(block)) {
        findings.push_back(stop(FindingCode::noWeekdays, Field::weekdays, Advice::chooseWeekdays));
    }
    if (block.weeks < 1 || block.weeks > 52) {
        findings.push_back(stop(FindingCode::outsideArithmetic, Field::weeks, Advice::setToLimit));
    }
    if (!hasPossibleSessions(block)) {
        findings.push_back(
            stop(FindingCode::outsideArithmetic, Field::sessionsPerDay, Advice::setToLimit));
    }
    append(findings, channelFindings(block, stimulator));
    return findings;
}

template <class Number>
Number combine(SiteOrder order, Number soFar, Number next)
{
    return order == SiteOrder::together ? std::max(soFar, next) : soFar + next;
}

} // namespace

WeekFigures weekOf(const SessionTiming& timing, std::int64_t sessions,
                   std::optional<ChargePerPhase> phaseCharge)
{
    WeekFigures week;
    week.sessions = sessions;
    week.contractionsStarted = sessions * timing.contractionsStarted;
    week.contractionsCompleted = sessions * timing.contractionsCompleted;
    week.onTime = sessions * timing.totalOnTime;
    week.pulses = sessions * timing.pulses;
    if (phaseCharge) {
        week.charge = totalCharge(week.pulses, *phaseCharge);
    }
    return week;
}

bool BlockFigures::hasStop() const
{
    return quadrille::hasStop(findings) || std::ranges::any_of(sites, [](const SiteFigures& s) {
               return quadrille::hasStop(s.findings);
           });
}

BlockFigures blockFigures(const Block& block, const Stimulator& stimulator)
{
    BlockFigures figures;
    figures.findings = ownFindings(block, stimulator);
    std::ranges::transform(block.sites, std::back_inserter(figures.sites),
                           [&](const Site& site) { return siteFigures(block, site, stimulator); });
    const auto all = [&](auto SiteFigures::*part) {
        return !figures.sites.empty() && std::ranges::all_of(figures.sites, [&](const auto& site) {
            return (site.*part).has_value();
        });
    };
    const SiteOrder order = block.siteOrder;
    if (all(&SiteFigures::timing)) {
        figures.sitting = Milliseconds(0);
        figures.contractions = 0;
        for (const SiteFigures& site : figures.sites) {
            figures.sitting = combine(order, *figures.sitting, site.timing->session);
            figures.contractions =
                combine(order, *figures.contractions, site.timing->contractionsCompleted);
        }
    }
    if (all(&SiteFigures::week)) {
        figures.weekOnTime = Milliseconds(0);
        figures.weekContractions = 0;
        for (const SiteFigures& site : figures.sites) {
            figures.weekOnTime = combine(order, *figures.weekOnTime, site.week->onTime);
            figures.weekContractions =
                combine(order, *figures.weekContractions, site.week->contractionsCompleted);
        }
    }
    return figures;
}

std::optional<Finding> stepFinding(const BlockFigures& before, const BlockFigures& after,
                                   double largeShare)
{
    if (!before.weekOnTime || !after.weekOnTime || before.weekOnTime->count() == 0) {
        return std::nullopt;
    }
    const double share = static_cast<double>((*after.weekOnTime - *before.weekOnTime).count()) /
                         static_cast<double>(before.weekOnTime->count());
    if (share <= largeShare) {
        return std::nullopt;
    }
    return Finding{.code = FindingCode::onTimeStepLarge,
                   .severity = Severity::attention,
                   .field = Field::none,
                   .figure = Amount{100.0 * share, Unit::percent},
                   .limit = Amount{100.0 * largeShare, Unit::percent},
                   .source = limits::commonPractice,
                   .advice = Advice::checkStep};
}

} // namespace quadrille
