// SPDX-License-Identifier: GPL-3.0-or-later
// Which rows are shown, in which groups and order, and how many there are behind each filter.
#pragma once

#include "app/caseload/caseload_entry.h"

#include <QLocale>

#include <optional>
#include <vector>

namespace quadrille::app
{

enum class CaseloadFilter { all, needsAttention, ended };
enum class CaseloadSort { attention, name, week };
enum class CaseloadGroup { needsAttention, nothingWaiting, ended };

/// What lies on the desk, as the side sheet counts it.
enum class DeskTopic { draftsToIssue, coursesWithoutPlan, plansEndingSoon };

/// What the person asked to see.
struct CaseloadWish {
    CaseloadFilter filter = CaseloadFilter::all;
    CaseloadSort sort = CaseloadSort::attention;
    QString search;                                ///< as typed
    std::optional<DeskTopic> topic = std::nullopt; ///< only what lies under one line of the desk
};

/// Rows by their index in the entries.
struct CaseloadArrangement {
    struct Group {
        CaseloadGroup kind = CaseloadGroup::needsAttention;
        std::vector<std::size_t> rows;
    };
    std::vector<Group> groups; ///< none of them empty
    int all = 0;               ///< behind each filter, with this search
    int needsAttention = 0;
    int ended = 0;
};

/// Ended courses stand behind their own filter; while something is searched they are found from
/// "all" as well, in a group of their own. Names are compared as `locale` does.
CaseloadArrangement arrange(const std::vector<CaseloadEntry>& entries, const CaseloadWish& wish,
                            const QLocale& locale);

bool isUnder(DeskTopic topic, const CaseloadEntry& entry);

} // namespace quadrille::app
