// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/day_sites.h"

#include <algorithm>

namespace quadrille
{

DaySites::DaySites(const CourseRecords& records, const std::vector<PlanSiteKey>& keys)
    : m_records(records)
{
    for (const PrescribedDay& day : prescribedDays(records.course, records.plans, records.pauses)) {
        m_blocks.emplace(day.day, day.block);
    }
    for (const PlanSiteKey& key : keys) {
        const auto plan = std::ranges::find(records.plans, key.plan, &Plan::number);
        if (plan != records.plans.end()) {
            const auto place = static_cast<std::size_t>(plan - records.plans.begin());
            m_keys[{place, key.block}][key.site] = key.key;
        }
    }
}

std::optional<BlockInForce> DaySites::blockOn(Date day) const
{
    if (const auto found = m_blocks.find(day); found != m_blocks.end()) {
        return found->second;
    }
    const auto plan = planInForce(m_records.plans, day);
    if (!plan || m_records.plans[*plan].blocks.empty() || day < m_records.course.startDate) {
        return std::nullopt;
    }
    return BlockInForce{*plan, m_records.plans[*plan].blocks.size() - 1};
}

std::variant<std::int64_t, CellProblem> DaySites::siteOf(Date day,
                                                         const ColumnMeaning& meaning) const
{
    const auto place = blockOn(day);
    if (!place) {
        return CellProblem::noSiteOnChannel;
    }
    const std::vector<Site>& sites = m_records.plans[place->plan].blocks[place->block].sites;
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < sites.size(); ++i) {
        const bool fits = (meaning.channel == 0 || sites[i].channel == meaning.channel) &&
                          (meaning.site.empty() || siteWords(sites[i]) == meaning.site);
        if (fits && found) {
            return CellProblem::severalSites;
        }
        found = fits ? std::optional(i) : found;
    }
    const auto keys = m_keys.find(*place);
    if (!found || keys == m_keys.end() || !keys->second.contains(*found)) {
        return CellProblem::noSiteOnChannel;
    }
    return keys->second.at(*found);
}

std::string siteWords(const Site& site)
{
    const std::string side = site.side == Side::left    ? " left"
                             : site.side == Side::right ? " right"
                                                        : "";
    return headingWords(site.muscle + side);
}

std::vector<std::string> siteWordsOf(const std::vector<Plan>& plans)
{
    std::vector<std::string> all;
    for (const Plan& plan : plans) {
        for (const Block& block : plan.blocks) {
            for (const Site& site : block.sites) {
                const std::string words = siteWords(site);
                if (std::ranges::find(all, words) == all.end()) {
                    all.push_back(words);
                }
            }
        }
    }
    return all;
}

int mostChannel(const std::vector<Plan>& plans)
{
    int most = 0;
    for (const Plan& plan : plans) {
        for (const Block& block : plan.blocks) {
            for (const Site& site : block.sites) {
                most = std::max(most, site.channel);
            }
        }
    }
    return most;
}

} // namespace quadrille
