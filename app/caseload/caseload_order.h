// SPDX-License-Identifier: GPL-3.0-or-later
// Which rows are shown, in which groups and order, and how many there are behind each filter.
#pragma once

#include "app/caseload/caseload_line.h"

#include <QLocale>
#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

enum class CaseloadFilter { all, needsAttention, ended };
enum class CaseloadSort { attention, name, week };
enum class CaseloadGroup { needsAttention, nothingWaiting, ended };

/// What lies on the desk, as the side sheet counts it.
enum class DeskTopic { draftsToIssue, coursesWithoutPlan, plansEnded, plansEndingSoon };

/// What the person asked to see.
struct CaseloadWish {
    CaseloadFilter filter = CaseloadFilter::all;
    CaseloadSort sort = CaseloadSort::attention;
    QString search;                                ///< as typed
    std::optional<DeskTopic> topic = std::nullopt; ///< only what lies under one line of the desk
};

/// Current patients by their index in the lines.
struct CaseloadArrangement {
    struct Group {
        CaseloadGroup kind = CaseloadGroup::needsAttention;
        std::vector<std::size_t> rows;
    };
    std::vector<Group> groups; ///< none of them empty
    bool showsEnded = false;   ///< ended courses follow
    int all = 0;               ///< behind each filter, with this search
    int needsAttention = 0;
    int ended = 0;
    bool endedIsMore = false; ///< so many were counted, and there may be more
};

/// Puts the lines in the order of their names as `locale` compares them.
void sortByName(std::vector<CaseloadLine>& lines, const QLocale& locale);

/// `lines`: all current patients, sorted by name. `ended`: how many ended courses the search
/// matches. They stand behind their own filter; while something is searched they are found from
/// "all" as well, in a group of their own.
CaseloadArrangement arrange(const std::vector<CaseloadLine>& lines, const CaseloadWish& wish,
                            int ended);

bool isUnder(DeskTopic topic, const CaseloadLine& line);

} // namespace quadrille::app
