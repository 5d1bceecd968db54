// SPDX-License-Identifier: GPL-3.0-or-later
// Pausing, going on, ending and reopening a course: what is to be saved for each.
//
//            pause          go on
//   running ───────▶ paused ───────▶ running
//      │ end                            ▲ the next plan, issued
//      ▼           reopen               │
//    ended ─────────────────────▶ paused
//
// A reopened course stands still from the day after its end: the days since then were not
// prescribed, and the plan that ended does not come back by itself.
#pragma once

#include "core/course_state.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// The first pause that shares a day with `wanted` (itself and withdrawn ones aside); nothing when
/// it is free.
std::optional<Pause> pauseInTheWay(const std::vector<Pause>& pauses, const Pause& wanted);

/// The pause that contains `today`, or else the next one to come; nothing when the course is to run
/// on.
std::optional<Pause> standingPause(const std::vector<Pause>& pauses, Date today);

/// `pause` when the course goes on from `firstDay`: it ends the day before. One that never began is
/// withdrawn. `firstDay` is on or after the pause's first day.
Pause endedBy(const Pause& pause, Date firstDay);

/// What reopening saves.
struct Reopening {
    Course course;              ///< without its end
    std::vector<Pause> changed; ///< in the order in which they are to be saved, before `added`
    std::optional<Pause> added; ///< nothing when no day was lost, or a pause stands over the end
};
/// `course` has ended or is to end. Pauses after its end make way for the one until the next plan;
/// one that reaches over the end lasts until then. A course that still runs on `today` only loses
/// its end.
Reopening reopened(const Course& course, const std::vector<Pause>& pauses,
                   const std::string& reason, Date today);

} // namespace quadrille
