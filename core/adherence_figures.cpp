// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/adherence_figures.h"

#include <algorithm>

namespace quadrille
{

namespace
{

std::optional<Share> shareOf(std::int64_t part, std::int64_t whole)
{
    return whole > 0 ? std::optional(Share{part, whole}) : std::nullopt;
}

/// Finds the longest row of known days without a session, day after day.
class GapCounter
{
public:
    void take(const LivedDay& day, bool isKnown)
    {
        const bool follows = m_last && day.day == *m_last + std::chrono::days(1);
        m_last = day.day;
        const bool counts = isKnown && day.asked && !day.asked->isPaused;
        if (!counts || !follows) {
            m_row = 0;
        }
        if (!counts) {
            return;
        }
        m_row = day.counts.delivered() > 0 ? 0 : m_row + 1;
        m_longest = std::max(m_longest.value_or(0), m_row);
    }
    std::optional<int> longest() const { return m_longest; }

private:
    std::optional<Date> m_last;
    int m_row = 0;
    std::optional<int> m_longest;
};

} // namespace

AdherenceFigures figuresBetween(const CourseAsLived& course, Date from, Date to)
{
    AdherenceFigures figures{.from = from, .to = to, .sessions = {}};
    DoseCounts dose;
    GapCounter gap;
    bool reported = false;
    auto day = std::ranges::lower_bound(course.days, from, {}, &LivedDay::day);
    for (; day != course.days.end() && day->day <= to; ++day) {
        figures.sessions += day->counts;
        dose += day->dose;
        gap.take(*day, course.isKnown(day->day));
        reported = reported || day->counts.delivered() > 0;
    }
    figures.session = shareOf(figures.sessions.done, figures.sessions.known());
    if (dose.sessionsWithoutDose == 0) {
        figures.time = shareOf(dose.delivered.time.count(), dose.prescribed.time.count());
        figures.contractions = shareOf(dose.delivered.contractions, dose.prescribed.contractions);
        figures.onTime = shareOf(dose.delivered.onTime.count(), dose.prescribed.onTime.count());
    }
    figures.contractionsReported = dose.contractionsReported;
    figures.contractionsComputed = dose.contractionsComputed;
    const bool diaryReaches =
        course.isKnown(std::max(from, course.startDate)) && to >= course.startDate && from <= to;
    if (reported || diaryReaches) {
        figures.sessionsDelivered = figures.sessions.delivered();
        figures.overUse = OverUse{figures.sessions.extra, dose.overUse};
    }
    figures.longestGap = gap.longest();
    return figures;
}

} // namespace quadrille
