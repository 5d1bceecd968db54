// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/spoken_day.h"

#include <QCoreApplication>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct GridWords {
    Q_DECLARE_TR_FUNCTIONS(GridWords)
};

/// One session is said as such: a voice would read "1 sessions" aloud.
QString stateWords(const DayMark& day)
{
    const int asked = day.sessionsPrescribed;
    switch (day.state) {
    case DayState::blank:
        return GridWords::tr("not in this course");
    case DayState::notPrescribed:
        return GridWords::tr("nothing prescribed");
    case DayState::toCome:
        return asked == 1 ? GridWords::tr("one session to come")
                          : GridWords::tr("%n sessions to come", nullptr, asked);
    case DayState::noDiaryYet:
        return asked == 1 ? GridWords::tr("one session, no diary yet")
                          : GridWords::tr("%n sessions, no diary yet", nullptr, asked);
    case DayState::partlyDone:
        if (asked == 1) {
            return GridWords::tr("one session partly done");
        }
        [[fallthrough]];
    case DayState::done:
        return asked == 1
                   ? GridWords::tr("%1 of one session done").arg(day.sessionsDone)
                   : GridWords::tr("%1 of %n sessions done", nullptr, asked).arg(day.sessionsDone);
    case DayState::missed:
        return asked == 1 ? GridWords::tr("one session missed")
                          : GridWords::tr("%n sessions missed", nullptr, asked);
    case DayState::doneNotPrescribed:
        return GridWords::tr("done, nothing prescribed");
    case DayState::paused:
        return GridWords::tr("paused");
    }
    return {};
}

} // namespace

QString spokenDay(const CourseGrid& grid, GridPlace place, const QuantityText& text)
{
    const DayMark& day =
        grid.weeks[static_cast<std::size_t>(place.column)][static_cast<std::size_t>(place.row)];
    QStringList parts{stateWords(day)};
    if (day.sessionsExtra > 0 && day.state != DayState::doneNotPrescribed) {
        parts << GridWords::tr("more than prescribed: %1").arg(day.sessionsExtra);
    }
    if (day.skinMark) {
        parts << GridWords::tr("skin mark");
    }
    if (!day.note.isEmpty()) {
        parts << GridWords::tr("note: %1").arg(day.note);
    }
    return GridWords::tr("%1, week %2: %3")
        .arg(text.longDate(dayAt(grid, place.column, place.row)),
             QString::number(grid.firstWeek.number + place.column),
             parts.join(QStringLiteral(", ")));
}

} // namespace quadrille::app
