// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plan_findings.h"

#include "core/unit_fit.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct FindingActs {
    Q_DECLARE_TR_FUNCTIONS(FindingActs)
};

} // namespace

std::vector<PlacedFinding> placedFindings(const BlockFigures& figures,
                                          const std::optional<BlockFigures>& before)
{
    std::vector<PlacedFinding> placed;
    for (const Finding& finding : figures.findings) {
        placed.push_back({finding});
    }
    for (std::size_t site = 0; site < figures.sites.size(); ++site) {
        for (const Finding& finding : figures.sites[site].findings) {
            const bool everywhere =
                std::ranges::all_of(figures.sites, [&](const SiteFigures& other) {
                    return std::ranges::find(other.findings, finding) != other.findings.end();
                });
            if (!everywhere) {
                placed.push_back({finding, site});
            } else if (site == 0) {
                placed.push_back({finding});
            }
        }
    }
    if (const auto step = before ? stepFinding(*before, figures) : std::nullopt) {
        placed.push_back({*step});
    }
    std::ranges::stable_sort(placed, std::ranges::greater{},
                             [](const PlacedFinding& p) { return p.finding.severity; });
    return placed;
}

std::optional<std::int64_t> remedyCount(const PlacedFinding& placed, const Block* block,
                                        const std::optional<Stimulator>& unit)
{
    const bool mends = placed.finding.code == FindingCode::outsideStimulator ||
                       placed.finding.code == FindingCode::offStep;
    const std::size_t site = placed.site.value_or(0);
    if (!mends || !unit || block == nullptr || site >= block->sites.size()) {
        return std::nullopt;
    }
    const auto count = countIn(block->sites[site].settings, placed.finding.field);
    const auto range = rangeOf(*unit, placed.finding.field);
    return count && range ? possibleCount(placed.finding.field, *count, *range) : std::nullopt;
}

QString remedyText(const PlacedFinding& placed, const Block* block,
                   const std::optional<Stimulator>& unit, const QuantityText& text)
{
    const auto count = remedyCount(placed, block, unit);
    return count ? FindingActs::tr("&Set %1").arg(text.setting(placed.finding.field, *count))
                 : QString();
}

} // namespace quadrille::app
