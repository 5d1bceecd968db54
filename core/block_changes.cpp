// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/block_changes.h"

#include "core/block_fatigue.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

/// Places of one site in the two blocks.
struct Pair {
    std::size_t before;
    std::size_t after;
};

struct Matching {
    std::vector<Pair> pairs;
    std::vector<std::size_t> removed; ///< places before
    std::vector<std::size_t> added;   ///< places after
};

Matching match(const Block& before, const Block& after)
{
    Matching found;
    std::vector<bool> taken(before.sites.size(), false);
    for (std::size_t i = 0; i < after.sites.size(); ++i) {
        if (const auto partner = sameSiteBefore(after, i, before)) {
            taken[*partner] = true;
            found.pairs.push_back({*partner, i});
        } else {
            found.added.push_back(i);
        }
    }
    for (std::size_t i = 0; i < taken.size(); ++i) {
        if (!taken[i]) {
            found.removed.push_back(i);
        }
    }
    return found;
}

std::vector<BlockChange> ownChanges(const Block& before, const Block& after)
{
    std::vector<BlockChange> changes;
    if (before.schedule != after.schedule) {
        changes.push_back({.part = ChangedPart::schedule, .field = Field::weekdays});
    }
    if (before.sessionsPerDay != after.sessionsPerDay) {
        changes.push_back({.part = ChangedPart::sessionsPerDay, .field = Field::sessionsPerDay});
    }
    // How sites follow one another says nothing where there is one.
    if (before.siteOrder != after.siteOrder && before.sites.size() > 1 && after.sites.size() > 1) {
        changes.push_back({.part = ChangedPart::siteOrder});
    }
    return changes;
}

/// Appends what `valueOf` tells apart: once for all sites where all change alike, else a site each.
template <class ValueOf>
void appendWhereDifferent(std::vector<BlockChange>& changes, const Block& before,
                          const Block& after, const Matching& sites, ChangedPart part, Field field,
                          const ValueOf& valueOf)
{
    const auto from = [&](const Pair& pair) { return valueOf(before.sites[pair.before]); };
    const auto to = [&](const Pair& pair) { return valueOf(after.sites[pair.after]); };
    const auto differs = [&](const Pair& pair) { return from(pair) != to(pair); };
    const auto first = std::ranges::find_if(sites.pairs, differs);
    if (first == sites.pairs.end()) {
        return;
    }
    const bool all = std::ranges::all_of(sites.pairs, [&](const Pair& pair) {
        return from(pair) == from(*first) && to(pair) == to(*first);
    });
    for (const Pair& pair : sites.pairs) {
        if (differs(pair) && (!all || &pair == &*first)) {
            changes.push_back({part, field, pair.before, pair.after, all});
        }
    }
}

/// The value that the waveform of the site uses; what it leaves aside differs from nothing.
std::optional<std::int64_t> usedCount(const Settings& settings, Field field)
{
    const bool isAmplitude =
        field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
    return isAmplitude || appliesTo(field, settings.waveform) ? countIn(settings, field)
                                                              : std::nullopt;
}

std::optional<double> growth(double before, double after)
{
    return before > 0.0 ? std::optional((after - before) / before) : std::nullopt;
}

} // namespace

std::vector<BlockChange> blockChanges(const Block& before, const Block& after)
{
    std::vector<BlockChange> changes = ownChanges(before, after);
    const Matching sites = match(before, after);
    for (const std::size_t site : sites.removed) {
        changes.push_back({.part = ChangedPart::siteRemoved, .siteBefore = site});
    }
    for (const std::size_t site : sites.added) {
        changes.push_back({.part = ChangedPart::siteAdded, .siteAfter = site});
    }
    const auto compare = [&](ChangedPart part, Field field, const auto& valueOf) {
        appendWhereDifferent(changes, before, after, sites, part, field, valueOf);
    };
    compare(ChangedPart::waveform, Field::waveform,
            [](const Site& site) { return site.settings.waveform; });
    for (const Field field : standardAskingOrder()) {
        compare(ChangedPart::setting, field,
                [field](const Site& site) { return usedCount(site.settings, field); });
    }
    compare(ChangedPart::channel, Field::channel, [](const Site& site) { return site.channel; });
    compare(ChangedPart::pads, Field::padSize, [](const Site& site) { return site.pads; });
    compare(ChangedPart::position, Field::position, [](const Site& site) { return site.position; });
    compare(ChangedPart::instruction, Field::instruction,
            [](const Site& site) { return site.instruction; });
    return changes;
}

StepSize stepSize(const BlockFigures& before, const BlockFigures& after)
{
    StepSize step;
    if (before.weekOnTime && after.weekOnTime) {
        step.onTime = growth(static_cast<double>(before.weekOnTime->count()),
                             static_cast<double>(after.weekOnTime->count()));
    }
    if (before.weekContractions && after.weekContractions) {
        step.contractions = growth(static_cast<double>(*before.weekContractions),
                                   static_cast<double>(*after.weekContractions));
    }
    return step;
}

} // namespace quadrille
