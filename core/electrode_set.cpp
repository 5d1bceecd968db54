// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/electrode_set.h"

#include <algorithm>

namespace quadrille
{

ElectrodeLife usualLife(ElectrodeType type)
{
    switch (type) {
    case ElectrodeType::selfAdhesive:
        return {.uses = 20, .months = 1};
    case ElectrodeType::carbonRubberSponge:
    case ElectrodeType::carbonRubberGel:
        break;
    }
    return {.uses = std::nullopt, .months = 12};
}

const ElectrodeLife& lifeOf(const ElectrodeLives& lives, ElectrodeType type)
{
    switch (type) {
    case ElectrodeType::selfAdhesive:
        return lives.selfAdhesive;
    case ElectrodeType::carbonRubberSponge:
        return lives.carbonRubberSponge;
    case ElectrodeType::carbonRubberGel:
        break;
    }
    return lives.carbonRubberGel;
}

ElectrodeLife& lifeOf(ElectrodeLives& lives, ElectrodeType type)
{
    switch (type) {
    case ElectrodeType::selfAdhesive:
        return lives.selfAdhesive;
    case ElectrodeType::carbonRubberSponge:
        return lives.carbonRubberSponge;
    case ElectrodeType::carbonRubberGel:
        break;
    }
    return lives.carbonRubberGel;
}

ElectrodeWear wearOf(const ElectrodeSet& set, const std::vector<DiaryEntry>& diary, Date asOf)
{
    ElectrodeWear wear;
    if (set.withdrawn || asOf < set.issuedOn) {
        return wear;
    }
    wear.inUse = !set.outOfUseOn || asOf < *set.outOfUseOn;
    wear.uses = static_cast<int>(std::ranges::count_if(diary, [&](const DiaryEntry& entry) {
        const bool whileInUse = entry.day >= set.issuedOn && entry.day <= asOf &&
                                (!set.outOfUseOn || entry.day < *set.outOfUseOn);
        return whileInUse && !entry.withdrawn && entry.duration > Milliseconds(0);
    }));
    wear.usedUp = set.life.uses && wear.uses >= *set.life.uses;
    if (set.life.months) {
        wear.tooOldFrom = monthsLater(set.issuedOn, std::chrono::months(*set.life.months));
        wear.tooOld = asOf >= *wear.tooOldFrom;
    }
    return wear;
}

std::vector<std::size_t> setsToReplace(const std::vector<ElectrodeSet>& sets,
                                       const std::vector<DiaryEntry>& diary, Date asOf)
{
    std::vector<std::size_t> due;
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (wearOf(sets[i], diary, asOf).replacementDue()) {
            due.push_back(i);
        }
    }
    return due;
}

} // namespace quadrille
