// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_order.h"

#include "app/caseload/patient_search.h"

#include <QCollator>

#include <algorithm>
#include <limits>
#include <utility>

namespace quadrille::app
{

namespace
{

bool isShown(const CaseloadLine& line, const CaseloadWish& wish)
{
    if (wish.topic) {
        return isUnder(*wish.topic, line);
    }
    switch (wish.filter) {
    case CaseloadFilter::all:
        return true;
    case CaseloadFilter::needsAttention:
        return line.needsAttention();
    case CaseloadFilter::ended:
        break;
    }
    return false;
}

/// Courses without a week come after those with one.
int weekRank(const CaseloadLine& line)
{
    return line.week.value_or(std::numeric_limits<int>::max());
}

int reasonRank(const CaseloadLine& line)
{
    return line.reasons.empty() ? std::numeric_limits<int>::max()
                                : static_cast<int>(line.reasons.front().reason);
}

int rankOf(const CaseloadLine& line, CaseloadSort sort)
{
    switch (sort) {
    case CaseloadSort::attention:
        return reasonRank(line);
    case CaseloadSort::week:
        return weekRank(line);
    case CaseloadSort::name:
        break;
    }
    return 0;
}

} // namespace

bool isUnder(DeskTopic topic, const CaseloadLine& line)
{
    switch (topic) {
    case DeskTopic::draftsToIssue:
        return line.hasReason(AttentionReason::draftNotIssued);
    case DeskTopic::coursesWithoutPlan:
        return line.hasReason(AttentionReason::noPlan);
    case DeskTopic::plansEnded:
        return line.hasReason(AttentionReason::planOver);
    case DeskTopic::plansEndingSoon:
        return line.endsWithinAWeek;
    }
    return false;
}

void sortByName(std::vector<CaseloadLine>& lines, const QLocale& locale)
{
    const QCollator collator(locale);
    std::vector<std::pair<QCollatorSortKey, std::size_t>> keys;
    keys.reserve(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        keys.emplace_back(collator.sortKey(lines[i].name), i);
    }
    std::ranges::stable_sort(
        keys, [](const auto& a, const auto& b) { return a.first.compare(b.first) < 0; });
    std::vector<CaseloadLine> sorted;
    sorted.reserve(lines.size());
    for (const auto& [key, i] : keys) {
        sorted.push_back(std::move(lines[i]));
    }
    lines = std::move(sorted);
}

CaseloadArrangement arrange(const std::vector<CaseloadLine>& lines, const CaseloadWish& wish,
                            int ended)
{
    const QStringList wanted = wantedWords(wish.search);
    CaseloadArrangement arrangement;
    CaseloadArrangement::Group waiting{CaseloadGroup::needsAttention, {}};
    CaseloadArrangement::Group quiet{CaseloadGroup::nothingWaiting, {}};
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const CaseloadLine& line = lines[i];
        if (!matches(line.searchable, wanted)) {
            continue;
        }
        ++arrangement.all;
        arrangement.needsAttention += line.needsAttention() ? 1 : 0;
        if (isShown(line, wish)) {
            (line.needsAttention() ? waiting : quiet).rows.push_back(i);
        }
    }
    for (CaseloadArrangement::Group* group : {&waiting, &quiet}) {
        std::ranges::stable_sort(group->rows, {},
                                 [&](std::size_t row) { return rankOf(lines[row], wish.sort); });
        if (!group->rows.empty()) {
            arrangement.groups.push_back(std::move(*group));
        }
    }
    arrangement.ended = ended;
    arrangement.all += wanted.isEmpty() ? 0 : ended;
    const bool endedWanted = wish.filter == CaseloadFilter::ended ||
                             (wish.filter == CaseloadFilter::all && !wanted.isEmpty());
    arrangement.showsEnded = !wish.topic && endedWanted && ended > 0;
    return arrangement;
}

} // namespace quadrille::app
