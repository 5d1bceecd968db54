// SPDX-License-Identifier: GPL-3.0-or-later
// Copying the printed diary: the place in it, and what each key does there. No key writes what the
// patient did not: minutes as prescribed stand for a tick, and skin, amplitude, comfort and remark
// are never taken from another day.
#pragma once

#include "core/diary_form.h"
#include "core/written_diary.h"

#include <cstddef>
#include <optional>
#include <string>

namespace quadrille
{

/// Minutes, amplitude and comfort belong to a session, the others to the day.
enum class DiaryField { minutes, amplitude, comfort, skin, pad, remark };

inline bool belongsToSession(DiaryField field)
{
    return field <= DiaryField::comfort;
}

/// A field of the diary.
struct DiaryPlace {
    Date day;
    int session = 1; ///< also kept while a field of the day is chosen
    DiaryField field = DiaryField::minutes;
    std::size_t site = 0; ///< of an amplitude: its place among the sites of the day
    friend bool operator==(const DiaryPlace&, const DiaryPlace&) = default;
};

/// Days that are filled together, both ends included.
struct DiaryRun {
    Date from;
    Date to;
    friend bool operator==(const DiaryRun&, const DiaryRun&) = default;
};

/// Why a key wrote nothing.
enum class DiaryRefusal {
    dayToCome,         ///< after today
    outsideCourse,     ///< after the last day of the course
    nothingPrescribed, ///< a rest day, or a session beyond the prescribed ones
    lengthNotKnown,    ///< the plan's settings give none
    nothingToFill,     ///< everything prescribed has its minutes
    nothingAbove,      ///< the day above is another week's or has no minutes
    daysAreFree,       ///< which days of the week they were only the patient knows
    sessionsFull,      ///< no more sessions fit on a day
    lastSession,       ///< nothing prescribed is left up to today
    nothingReceived,   ///< no receipt to withdraw
};

/// What writes gives the reason why it did not.
using DiaryAnswer = std::optional<DiaryRefusal>;

inline constexpr int mostSessionsOfDay = 24;

/// The pages while they are copied: a value, so that an undo step keeps the one before.
class DiarySheet
{
public:
    DiarySheet() = default;
    /// Begins at the first session that has no minutes and may have some; else on the last day.
    DiarySheet(DiaryForm form, WrittenDiary diary);

    const DiaryForm& form() const { return m_form; }
    const WrittenDiary& diary() const { return m_diary; }
    const DiaryPlace& place() const { return m_place; }
    int page() const { return m_form.pageOf(m_place.day); }
    /// What was typed into the field so far; empty while it is untouched.
    const std::string& typed() const { return m_typed; }
    bool isTouched() const { return !m_typed.empty(); }
    /// The marked days, or the day of the place.
    DiaryRun run() const;
    bool isMarked() const { return m_anchor.has_value(); }
    /// Lines of a day: prescribed sessions, reported ones and the one that is open for more.
    int linesOf(Date day) const;
    /// What Space would enter in a line that has no minutes.
    std::optional<Milliseconds> offeredIn(Date day, int session) const;

    /// Another diary on the same form: undo, redo, a merge.
    void setDiary(WrittenDiary diary);
    void setForm(DiaryForm form);

    // What writes.
    DiaryAnswer asPrescribed();
    /// Minutes as prescribed for every session of the run that has none.
    DiaryAnswer fillRun();
    /// The same from the place to the end of its week. Where the patient chose the days, nobody but
    /// the paper says which they were.
    DiaryAnswer restOfWeek();
    /// The minutes of the day above, for sessions that have none; nothing but minutes.
    DiaryAnswer copyAbove();
    /// One digit or decimal sign ('.'), into an untouched field in place of what stood there. Other
    /// signs, and more digits than a value has, write nothing. Skin takes 0 to 3; above 0 the pad
    /// is the next field.
    DiaryAnswer type(char sign);
    /// Takes the last sign back; an untouched field is emptied.
    DiaryAnswer backspace();
    /// Empties the field; of the minutes the whole session.
    DiaryAnswer empty();
    DiaryAnswer setPad(const std::string& pad);
    DiaryAnswer setRemark(const std::string& remark);
    DiaryAnswer receivedThroughHere();
    DiaryAnswer withdrawReceived();

    // What moves.
    /// The next session, then the next day that has one, up to today.
    DiaryAnswer goOn();
    /// Opens a line for one more session of the day.
    DiaryAnswer openExtra();
    /// False at the first and the last field of all pages.
    bool nextField(bool forward);
    void moveDays(int days);
    /// Marks the days up to the one so many away.
    void extendRun(int days);
    void turnPage(int by);
    void goTo(const DiaryPlace& place);
    /// The skin field, pad or remark of the day.
    void goToField(DiaryField field);
    /// The next sign begins the field anew.
    void endTyping() { m_typed.clear(); }

private:
    const DiaryFormDay& formDay(Date day) const;
    DiaryAnswer whyNotOn(Date day) const;
    bool canBeFilled(Date day, int session) const;
    void write(Date day, int session, Milliseconds time);
    DiaryAnswer fill(Date from, int session, Date to);
    DiaryAnswer typeNumber();
    void moveTo(const DiaryPlace& place);
    std::vector<DiaryPlace> fieldsOf(Date day) const;

    DiaryForm m_form;
    WrittenDiary m_diary;
    DiaryPlace m_place;
    std::optional<Date> m_anchor; ///< where a marked run begins
    std::string m_typed;
};

} // namespace quadrille
