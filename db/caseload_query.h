// SPDX-License-Identifier: GPL-3.0-or-later
// What the caseload shows: for every current patient the little that orders and counts, for those
// in view the whole row; ended courses page by page.
#pragma once

#include "db/store.h"

#include "core/course.h"
#include "core/course_state.h"
#include "core/diary.h"
#include "core/people.h"
#include "core/plan.h"
#include "core/screening_gate.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

/// A patient and the course shown: one without a last day before the others, then the one that
/// ends later, then the later start.
struct CaseloadRow {
    Patient patient;                             ///< without segment lengths
    std::optional<Course> course = std::nullopt; ///< none entered yet
    /// Plans with their blocks and sites; pads are left empty, of the copied unit there is the ramp
    /// habit.
    std::vector<Plan> plans;
    bool hasDraft = false;
    /// The last weeks of the diary, for the grid; see db/course_records.h.
    std::vector<Pause> pauses = {};
    std::vector<DiaryEntry> entries = {};
    std::vector<DiaryDay> days = {};
    std::vector<DiaryReceived> receipts = {};
    bool screeningSigned = false; ///< the latest screening of the course
    std::optional<Date> screeningValidThrough = std::nullopt; ///< of a signed one
};

/// What of the course shown decides whether somebody waits for something.
struct CaseloadCourse {
    CourseId id{0};
    Date startDate;
    std::optional<Date> endDate = std::nullopt;
    std::optional<int> plannedWeeks = std::nullopt; ///< of the plan issued last; none without one
    bool hasDraft = false;
    bool screeningSigned = false; ///< the latest screening of the course
    std::optional<Date> screeningValidThrough = std::nullopt; ///< of a signed one
};

/// One line of the caseload, so little that thousands are read at once.
struct CaseloadFacts {
    PatientId patient{0};
    std::string name;
    std::string words;      ///< what is searched: folded name, reference, problems, muscles, sides
    std::string foldedName; ///< orders the pages of ended courses
    std::optional<CaseloadCourse> course = std::nullopt; ///< none entered yet
};

/// Every patient that is not archived and whose shown course has not ended before `today`, or who
/// has none, by folded name.
std::vector<CaseloadFacts> currentCaseload(Reading& reading, Date today);

/// A search over the courses that ended before `today`.
struct EndedSearch {
    Date today;
    std::vector<std::string> words; ///< folded; each stands somewhere in the line's own
};
/// Of a search with words no more than this are counted: a common letter is in nearly every line,
/// and nobody reads on so far.
inline constexpr int mostCounted = 1000;
/// How many there are; with words, mostCounted where there are so many or more.
int countEnded(Reading& reading, const EndedSearch& search);
/// The next `most` by folded name, after `last` or from the beginning.
std::vector<CaseloadFacts> endedCaseload(Reading& reading, const EndedSearch& search,
                                         const std::optional<CaseloadFacts>& last, int most);

/// The rows of these patients without the diary, in their order; one that is archived or erased
/// meanwhile is left out. Meant for what is in view.
std::vector<CaseloadRow> caseloadRows(Reading& reading, const std::vector<PatientId>& patients);

} // namespace quadrille::db
