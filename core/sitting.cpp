// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitting.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

/// What one site has received by `time`, which lies within its session.
SittingDose doseWithin(const SessionTiming& timing, Milliseconds time)
{
    const Milliseconds cycled = std::max(time - timing.lead, Milliseconds(0));
    const Milliseconds rest = cycled % timing.cycle;
    const std::int64_t cycles = cycled / timing.cycle;
    SittingDose dose;
    dose.time = time;
    dose.contractions = cycles + (rest >= timing.onPhase ? 1 : 0);
    dose.onTime = cycles * timing.onPhase + std::min(rest, timing.onPhase);
    return dose;
}

} // namespace

SittingDose& SittingDose::operator+=(const SittingDose& other)
{
    time += other.time;
    contractions += other.contractions;
    onTime += other.onTime;
    return *this;
}

SittingDose operator*(const SittingDose& dose, int times)
{
    return {dose.time * times, dose.contractions * times, dose.onTime * times};
}

Sitting::Sitting(SiteOrder order, std::vector<SessionTiming> sites)
    : m_order(order)
    , m_sites(std::move(sites))
{
    Milliseconds length{};
    for (const SessionTiming& site : m_sites) {
        length =
            m_order == SiteOrder::together ? std::max(length, site.session) : length + site.session;
    }
    m_whole.time = length; // after() ends there
    m_whole = after(length);
}

std::optional<Sitting> Sitting::of(const Block& block, RampHabit habit, CycleStart start)
{
    std::vector<SessionTiming> sites;
    for (const Site& site : block.sites) {
        const auto timing = sessionTiming(site.settings, habit, start);
        if (!timing) {
            return std::nullopt;
        }
        sites.push_back(*timing);
    }
    return sites.empty() ? std::nullopt : std::optional(Sitting(block.siteOrder, std::move(sites)));
}

SittingDose Sitting::after(Milliseconds time) const
{
    Milliseconds left = std::clamp(time, Milliseconds(0), m_whole.time);
    SittingDose dose;
    for (const SessionTiming& site : m_sites) {
        const SittingDose part = doseWithin(site, std::min(left, site.session));
        if (m_order == SiteOrder::oneAfterAnother) {
            dose += part;
            left -= part.time;
        } else {
            dose.time = std::max(dose.time, part.time);
            dose.contractions = std::max(dose.contractions, part.contractions);
            dose.onTime = std::max(dose.onTime, part.onTime);
        }
    }
    return dose;
}

} // namespace quadrille
