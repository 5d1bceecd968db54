// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/line_marks.h"

namespace quadrille::app
{

namespace
{

DayState stateOf(SessionState state)
{
    switch (state) {
    case SessionState::toCome:
        return DayState::toCome;
    case SessionState::notKnownYet:
        return DayState::noDiaryYet;
    case SessionState::done:
        return DayState::done;
    case SessionState::partly:
        return DayState::partlyDone;
    case SessionState::missed:
        return DayState::missed;
    case SessionState::extra:
        return DayState::doneNotPrescribed;
    }
    return DayState::notPrescribed;
}

} // namespace

std::vector<DayMark> lineMarks(const LivedDay* day, const std::vector<DiaryEntry>& entries,
                               int lines)
{
    std::vector<DayMark> marks(static_cast<std::size_t>(lines));
    for (DayMark& mark : marks) {
        mark.state = DayState::notPrescribed;
    }
    if (day == nullptr) {
        return marks;
    }
    std::vector<bool> reported(marks.size(), false);
    std::vector<SessionState> open;
    for (const SessionOfDay& session : day->sessions) {
        if (!session.entry) {
            open.push_back(session.state);
            continue;
        }
        const auto line = static_cast<std::size_t>(entries[*session.entry].sessionNumber) - 1;
        if (line < marks.size()) {
            marks[line].state = stateOf(session.state);
            reported[line] = true;
        }
    }
    const auto asked = day->asked ? static_cast<std::size_t>(day->asked->sessions) : 0;
    const bool anyDay = day->asked && day->asked->anyDay;
    auto next = open.begin();
    for (std::size_t line = 0; line < marks.size(); ++line) {
        if (reported[line]) {
            continue;
        }
        if (next != open.end()) {
            marks[line].state = stateOf(*next++);
        } else if (anyDay && line < asked) { // the week is counted as a whole
            marks[line].state = day->standing == DayStanding::notKnownYet ? DayState::noDiaryYet
                                : day->standing == DayStanding::toCome    ? DayState::toCome
                                                                          : DayState::notPrescribed;
        }
    }
    return marks;
}

} // namespace quadrille::app
