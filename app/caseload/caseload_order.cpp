// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_order.h"

#include "app/caseload/patient_search.h"

#include <QCollator>

#include <algorithm>
#include <limits>

namespace quadrille::app
{

namespace
{

CaseloadGroup groupOf(const CaseloadEntry& entry)
{
    if (entry.hasEnded) {
        return CaseloadGroup::ended;
    }
    return entry.needsAttention() ? CaseloadGroup::needsAttention : CaseloadGroup::nothingWaiting;
}

bool isShown(const CaseloadEntry& entry, const CaseloadWish& wish, bool searching)
{
    if (wish.topic) {
        return isUnder(*wish.topic, entry);
    }
    switch (wish.filter) {
    case CaseloadFilter::all:
        return searching || !entry.hasEnded;
    case CaseloadFilter::needsAttention:
        return entry.needsAttention();
    case CaseloadFilter::ended:
        return entry.hasEnded;
    }
    return false;
}

/// Courses without a week come after those with one.
int weekRank(const CaseloadEntry& entry)
{
    return entry.week.value_or(std::numeric_limits<int>::max());
}

int reasonRank(const CaseloadEntry& entry)
{
    return entry.reasons.empty() ? std::numeric_limits<int>::max()
                                 : static_cast<int>(entry.reasons.front().reason);
}

void sortRows(std::vector<std::size_t>& rows, const std::vector<CaseloadEntry>& entries,
              CaseloadSort sort, const QCollator& collator)
{
    const auto rank = [&](std::size_t row) {
        switch (sort) {
        case CaseloadSort::attention:
            return reasonRank(entries[row]);
        case CaseloadSort::week:
            return weekRank(entries[row]);
        case CaseloadSort::name:
            break;
        }
        return 0;
    };
    std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
        if (rank(a) != rank(b)) {
            return rank(a) < rank(b);
        }
        return collator.compare(entries[a].name.first, entries[b].name.first) < 0;
    });
}

} // namespace

bool isUnder(DeskTopic topic, const CaseloadEntry& entry)
{
    switch (topic) {
    case DeskTopic::draftsToIssue:
        return entry.hasReason(AttentionReason::draftNotIssued);
    case DeskTopic::coursesWithoutPlan:
        return entry.hasReason(AttentionReason::noPlan);
    case DeskTopic::plansEndingSoon:
        return entry.endsWithinAWeek;
    }
    return false;
}

CaseloadArrangement arrange(const std::vector<CaseloadEntry>& entries, const CaseloadWish& wish,
                            const QLocale& locale)
{
    const QString wanted = folded(wish.search);
    const bool searching = !wanted.isEmpty();
    CaseloadArrangement arrangement;
    std::vector<CaseloadArrangement::Group> groups{{CaseloadGroup::needsAttention, {}},
                                                   {CaseloadGroup::nothingWaiting, {}},
                                                   {CaseloadGroup::ended, {}}};
    for (std::size_t row = 0; row < entries.size(); ++row) {
        const CaseloadEntry& entry = entries[row];
        if (!matches(entry.searchable, wanted)) {
            continue;
        }
        arrangement.all += searching || !entry.hasEnded ? 1 : 0;
        arrangement.needsAttention += entry.needsAttention() ? 1 : 0;
        arrangement.ended += entry.hasEnded ? 1 : 0;
        if (isShown(entry, wish, searching)) {
            groups[static_cast<std::size_t>(groupOf(entry))].rows.push_back(row);
        }
    }
    const QCollator collator(locale);
    for (CaseloadArrangement::Group& group : groups) {
        if (!group.rows.empty()) {
            sortRows(group.rows, entries, wish.sort, collator);
            arrangement.groups.push_back(std::move(group));
        }
    }
    return arrangement;
}

} // namespace quadrille::app
