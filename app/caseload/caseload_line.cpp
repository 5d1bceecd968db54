// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_line.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr std::chrono::days soon{7};

void addCourse(CaseloadLine& line, const db::CaseloadCourse& course, Date today)
{
    line.course = course.id;
    line.hasEnded = !isRunning(course, today);
    const auto week = courseWeekOf(course.startDate, today);
    if (week && !line.hasEnded) {
        line.week = week->number;
    }
    const auto last = lastPlannedDay(course);
    line.endsWithinAWeek = !line.hasEnded && last && *last >= today && *last - today <= soon;
}

} // namespace

bool CaseloadLine::hasReason(AttentionReason reason) const
{
    return std::any_of(reasons.begin(), reasons.end(),
                       [&](const Attention& attention) { return attention.reason == reason; });
}

CaseloadLine lineOf(const db::CaseloadFacts& facts, Date today)
{
    CaseloadLine line;
    line.patient = facts.patient;
    line.name = QString::fromStdString(facts.name);
    line.searchable = QString::fromStdString(facts.words);
    if (facts.course) {
        addCourse(line, *facts.course, today);
    }
    line.reasons = attentionOf(facts.course, today);
    return line;
}

} // namespace quadrille::app
