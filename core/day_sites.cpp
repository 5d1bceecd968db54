// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/day_sites.h"

#include <algorithm>

namespace quadrille
{

std::span<const std::int64_t> keysOf(const SiteKeys& keys, const BlockInForce& block)
{
    const bool isKnown = block.plan < keys.size() && block.block < keys[block.plan].size();
    return isKnown ? std::span<const std::int64_t>(keys[block.plan][block.block])
                   : std::span<const std::int64_t>();
}

std::optional<BlockInForce> blockReportedOn(const CourseRecords& records, Date day)
{
    const auto week = courseWeekOf(records.course.startDate, day);
    const auto plan = planInForce(records.plans, day);
    if (!week || !plan || !isRunning(records.course, day) || records.plans[*plan].blocks.empty()) {
        return std::nullopt;
    }
    const std::vector<Block>& blocks = records.plans[*plan].blocks;
    return BlockInForce{*plan, blockOf(blocks, *week).value_or(blocks.size() - 1)};
}

std::variant<std::int64_t, CellProblem> DaySites::siteOf(Date day,
                                                         const ColumnMeaning& meaning) const
{
    const auto place = blockReportedOn(m_records, day);
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
    const auto keys = keysOf(m_keys, *place);
    if (!found || *found >= keys.size()) {
        return CellProblem::noSiteOnChannel;
    }
    return keys[*found];
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
