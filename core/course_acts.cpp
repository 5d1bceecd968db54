// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/course_acts.h"

#include <algorithm>

namespace quadrille
{

namespace
{

bool endsBefore(const Pause& pause, Date day)
{
    return pause.toDate && *pause.toDate < day;
}

} // namespace

std::optional<Pause> pauseInTheWay(const std::vector<Pause>& pauses, const Pause& wanted)
{
    const auto found = std::ranges::find_if(pauses, [&](const Pause& pause) {
        const bool isItself = pause.id && pause.id == wanted.id;
        return !isItself && !pause.withdrawn && !endsBefore(pause, wanted.fromDate) &&
               !endsBefore(wanted, pause.fromDate);
    });
    return found != pauses.end() ? std::optional(*found) : std::nullopt;
}

std::optional<Pause> standingPause(const std::vector<Pause>& pauses, Date today)
{
    std::optional<Pause> next;
    for (const Pause& pause : pauses) {
        const bool counts = !pause.withdrawn && !endsBefore(pause, today);
        if (counts && (!next || pause.fromDate < next->fromDate)) {
            next = pause;
        }
    }
    return next;
}

Pause endedBy(const Pause& pause, Date firstDay)
{
    Pause ended = pause;
    if (firstDay <= pause.fromDate) {
        ended.withdrawn = true;
    } else {
        ended.toDate = firstDay - std::chrono::days(1);
    }
    return ended;
}

Reopening reopened(const Course& course, const std::vector<Pause>& pauses,
                   const std::string& reason, Date today)
{
    Reopening saves{course, {}, std::nullopt};
    saves.course.endDate.reset();
    saves.course.endReason.clear();
    if (isRunning(course, today)) {
        return saves;
    }
    const Date from = *course.endDate + std::chrono::days(1);
    std::optional<Pause> over;
    for (const Pause& pause : pauses) {
        if (contains(pause, from) && pause.fromDate < from) {
            over = pause;
        } else if (!pause.withdrawn && pause.fromDate >= from) {
            Pause gone = pause;
            gone.withdrawn = true;
            saves.changed.push_back(gone);
        }
    }
    if (!over) {
        saves.added = Pause{.course = course.id, .fromDate = from, .reason = reason};
    } else if (over->toDate) {
        over->toDate.reset();
        saves.changed.push_back(*over); // last: the later ones have made way
    }
    return saves;
}

} // namespace quadrille
