// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_words.h"

#include <QCoreApplication>

#include <cmath>

namespace quadrille::app
{

namespace
{

struct DiaryWords {
    Q_DECLARE_TR_FUNCTIONS(DiaryWords)
};

constexpr double millisecondsOfMinute = 60'000.0;

QString minutesText(std::int64_t milliseconds, const QuantityText& text)
{
    return minutesNumber(Milliseconds(milliseconds), text) + noBreakSpace() +
           unitSymbol(Unit::minute);
}

QString milliamperesText(std::int64_t microamperes, const QuantityText& text)
{
    return amplitudeNumber(Amplitude::fromCount(microamperes), text) + noBreakSpace() +
           unitSymbol(Unit::milliampere);
}

QString skinMarkText(const DiaryRemark& remark, const WrittenDay& day)
{
    const QString pad =
        day.skinPad.empty() ? DiaryWords::tr("pad not said") : QString::fromStdString(day.skinPad);
    return remark.figure == static_cast<int>(Skin::blisterOrBurn)
               ? DiaryWords::tr("blister or burn (%1). Stop until the skin has been examined.")
                     .arg(pad)
               : DiaryWords::tr("skin mark still there next day (%1). See the skin before the next "
                                "session.")
                     .arg(pad);
}

QString remarkSentence(const DiaryRemark& remark, const WrittenDay& day, const QuantityText& text)
{
    switch (remark.kind) {
    case DiaryRemarkKind::dayToCome:
        return DiaryWords::tr("this day is still to come. Take the entry out.");
    case DiaryRemarkKind::outsideCourse:
        return DiaryWords::tr("the course has ended before. Take the entry out, or reopen the "
                              "course.");
    case DiaryRemarkKind::minutesMissing:
        return DiaryWords::tr("the minutes of session %1 are missing. Type them, or 0 for not "
                              "done.")
            .arg(remark.place.session);
    case DiaryRemarkKind::overTimer:
        return DiaryWords::tr("session of %1? The stimulator stops at %2. Type what one session "
                              "lasted; a second one is a line of its own (+).")
            .arg(minutesText(remark.figure, text), minutesText(remark.limit, text));
    case DiaryRemarkKind::overDay:
        return DiaryWords::tr("session of %1? A day has %2.")
            .arg(minutesText(remark.figure, text), minutesText(remark.limit, text));
    case DiaryRemarkKind::overUnit:
        return DiaryWords::tr("%1? The stimulator gives at most %2.")
            .arg(milliamperesText(remark.figure, text), milliamperesText(remark.limit, text));
    case DiaryRemarkKind::comfortOutside:
        return DiaryWords::tr("comfort %1? It is a number from 0 (unbearable) to 10 (no "
                              "discomfort).")
            .arg(text.count(remark.figure));
    case DiaryRemarkKind::skinMark:
        return skinMarkText(remark, day);
    case DiaryRemarkKind::overCeiling:
        return DiaryWords::tr("%1 is over the ceiling of %2 set for home.")
            .arg(milliamperesText(remark.figure, text), milliamperesText(remark.limit, text));
    case DiaryRemarkKind::overUse:
        return DiaryWords::tr("%1 where %2 are prescribed: over-use, no credit.")
            .arg(minutesText(remark.figure, text), minutesText(remark.limit, text));
    case DiaryRemarkKind::extraSession:
        return DiaryWords::tr("more sessions than prescribed: over-use, no credit.");
    }
    return {};
}

QString fieldText(const DiarySheet& sheet, const QuantityText& text)
{
    const DiaryPlace& place = sheet.place();
    switch (place.field) {
    case DiaryField::minutes: {
        const auto offered = sheet.offeredIn(place.day, place.session);
        return offered ? DiaryWords::tr("type the minutes, or press Space for %1")
                             .arg(minutesText(offered->count(), text))
                       : DiaryWords::tr("type the minutes");
    }
    case DiaryField::amplitude:
        return DiaryWords::tr("amplitude in mA, as the patient wrote it");
    case DiaryField::comfort:
        return DiaryWords::tr("comfort, 0 (unbearable) to 10 (no discomfort)");
    case DiaryField::skin:
        return DiaryWords::tr("skin: 0 nothing, 1 gone within the hour, 2 still there next day, 3 "
                              "blister or burn");
    case DiaryField::pad:
        return DiaryWords::tr("under which pad, then Enter");
    case DiaryField::remark:
        return DiaryWords::tr("the remark of the day, then Enter");
    }
    return {};
}

QString sessionText(const WrittenSession& session, const QuantityText& text)
{
    QStringList parts{session.time ? minutesText(session.time->count(), text)
                                   : DiaryWords::tr("no minutes")};
    for (const auto& [site, amplitude] : session.amplitudes) {
        parts << milliamperesText(amplitude.count(), text);
    }
    if (session.comfort) {
        parts << DiaryWords::tr("comfort %1").arg(*session.comfort);
    }
    return parts.join(QStringLiteral(", "));
}

QString nothingWritten()
{
    return DiaryWords::tr("nothing");
}

} // namespace

QString minutesNumber(Milliseconds time, const QuantityText& text)
{
    return text.shortNumber(static_cast<double>(time.count()) / millisecondsOfMinute, 2);
}

QString amplitudeNumber(Amplitude amplitude, const QuantityText& text)
{
    return text.shortNumber(amplitude.shown(), 3);
}

QString refusalText(DiaryRefusal refusal, const DiarySheet& sheet, const QuantityText& text)
{
    const QString day = text.weekdayAndDay(sheet.place().day);
    switch (refusal) {
    case DiaryRefusal::dayToCome:
        return DiaryWords::tr("%1 is still to come: nothing is entered ahead.").arg(day);
    case DiaryRefusal::outsideCourse:
        return DiaryWords::tr("The course has ended before %1. Reopen it to enter more.").arg(day);
    case DiaryRefusal::nothingPrescribed:
        return DiaryWords::tr("Nothing is prescribed here. Type the minutes of an extra session.");
    case DiaryRefusal::lengthNotKnown:
        return DiaryWords::tr("The plan gives no session length for this day. Type the minutes.");
    case DiaryRefusal::nothingToFill:
        return DiaryWords::tr("Every prescribed session here has its minutes already.");
    case DiaryRefusal::nothingAbove:
        return DiaryWords::tr("The day above has no minutes to copy.");
    case DiaryRefusal::daysAreFree:
        return DiaryWords::tr("The patient chose the days of this week. Mark the days on the paper "
                              "with Shift and an arrow, then press F.");
    case DiaryRefusal::sessionsFull:
        return DiaryWords::tr("A day has at most %1 sessions.").arg(mostSessionsOfDay);
    case DiaryRefusal::lastSession:
        return DiaryWords::tr("That was the last session up to today. L sets how far the diary "
                              "has come back, Ctrl S saves.");
    case DiaryRefusal::nothingReceived:
        return DiaryWords::tr("No diary is set as received.");
    }
    return {};
}

QString remarkText(const DiaryRemark& remark, const WrittenDay& day, const QuantityText& text)
{
    return DiaryWords::tr("%1: %2", "day, what is said of it")
        .arg(text.weekdayAndDay(remark.place.day), remarkSentence(remark, day, text));
}

QString expectedText(const DiarySheet& sheet, const QuantityText& text)
{
    const DiaryPlace& place = sheet.place();
    const QString day = text.weekdayAndDay(place.day);
    if (!belongsToSession(place.field)) {
        return DiaryWords::tr("%1: %2", "day, what the field expects")
            .arg(day, fieldText(sheet, text));
    }
    return DiaryWords::tr("%1, session %2: %3", "day, number, what the field expects")
        .arg(day, QString::number(place.session), fieldText(sheet, text));
}

QString spokenPlace(const DiarySheet& sheet, const QuantityText& text)
{
    const DiaryPlace& place = sheet.place();
    const WrittenDay& day = sheet.diary().on(place.day);
    const auto session = day.sessions.find(place.session);
    QString written = nothingWritten();
    if (belongsToSession(place.field) && session != day.sessions.end()) {
        written = sessionText(session->second, text);
    } else if (place.field == DiaryField::skin && day.skin) {
        written = skinText(*day.skin);
    }
    return DiaryWords::tr("%1. Written: %2.").arg(expectedText(sheet, text), written);
}

QString skinText(Skin skin)
{
    switch (skin) {
    case Skin::nothing:
        return DiaryWords::tr("nothing seen");
    case Skin::goneWithinTheHour:
        return DiaryWords::tr("gone within the hour");
    case Skin::thereNextDay:
        return DiaryWords::tr("still there next day");
    case Skin::blisterOrBurn:
        return DiaryWords::tr("blister or burn");
    }
    return {};
}

QString clashName(const DiaryClash& clash, const QuantityText& text)
{
    const QString day = text.weekdayAndDay(clash.day);
    switch (clash.part) {
    case DiaryPart::session:
        return DiaryWords::tr("%1, session %2").arg(day, QString::number(clash.session));
    case DiaryPart::skin:
        return DiaryWords::tr("%1, skin").arg(day);
    case DiaryPart::remark:
        return DiaryWords::tr("%1, remark").arg(day);
    case DiaryPart::receivedThrough:
        return DiaryWords::tr("Received through");
    }
    return {};
}

QString clashText(const DiaryClash& clash, const WrittenDiary& diary, const QuantityText& text)
{
    if (clash.part == DiaryPart::receivedThrough) {
        return diary.receivedThrough ? text.weekdayAndDay(*diary.receivedThrough)
                                     : nothingWritten();
    }
    const WrittenDay& day = diary.on(clash.day);
    if (clash.part == DiaryPart::skin) {
        return !day.skin ? nothingWritten()
               : day.skinPad.empty()
                   ? skinText(*day.skin)
                   : DiaryWords::tr("%1 (%2)", "skin, pad")
                         .arg(skinText(*day.skin), QString::fromStdString(day.skinPad));
    }
    if (clash.part == DiaryPart::remark) {
        return day.remark.empty() ? nothingWritten() : QString::fromStdString(day.remark);
    }
    const auto session = day.sessions.find(clash.session);
    return session != day.sessions.end() ? sessionText(session->second, text) : nothingWritten();
}

QStringList totalsText(const AdherenceFigures& figures, const QuantityText& text)
{
    QStringList lines;
    const auto count = [&](std::int64_t number) { return text.count(number); };
    if (figures.session) {
        lines << DiaryWords::tr("Sessions done: %1 of %2.")
                     .arg(count(figures.session->part), count(figures.session->whole));
    }
    if (figures.time) {
        lines << DiaryWords::tr("Minutes: %1 of %2.")
                     .arg(minutesNumber(Milliseconds(figures.time->part), text),
                          minutesNumber(Milliseconds(figures.time->whole), text));
    }
    if (figures.contractions) {
        lines << DiaryWords::tr("Contractions: %1 of %2.")
                     .arg(count(figures.contractions->part), count(figures.contractions->whole));
    }
    if (figures.sessions.partly > 0) {
        lines << DiaryWords::tr("Cut short: %1.").arg(count(figures.sessions.partly));
    }
    if (figures.sessions.missed > 0) {
        lines << DiaryWords::tr("Missed: %1.").arg(count(figures.sessions.missed));
    }
    if (figures.sessions.extra > 0) {
        lines << DiaryWords::tr("Extra, no credit: %1.").arg(count(figures.sessions.extra));
    }
    if (figures.sessions.notKnownYet > 0) {
        lines
            << DiaryWords::tr("Past, not known yet: %1.").arg(count(figures.sessions.notKnownYet));
    }
    if (lines.isEmpty()) {
        lines << DiaryWords::tr("Nothing is known of these weeks yet.");
    }
    return lines;
}

QString explanationName(CounterExplanation explanation)
{
    switch (explanation) {
    case CounterExplanation::unitSwapped:
        return DiaryWords::tr("Unit swapped");
    case CounterExplanation::counterReset:
        return DiaryWords::tr("Counter reset");
    case CounterExplanation::anotherUser:
        return DiaryWords::tr("Another user");
    case CounterExplanation::other:
        return DiaryWords::tr("Something else");
    }
    return {};
}

namespace
{

QString differenceText(const CountedAndEntered& both, const QuantityText& text)
{
    const auto percent = both.differencePercent();
    if (!percent || both.entered == both.counted) {
        return {};
    }
    const QString size = text.percent(std::abs(*percent) / 100.0, 0);
    return both.entered > both.counted ? DiaryWords::tr(" (diary %1 more)").arg(size)
                                       : DiaryWords::tr(" (diary %1 less)").arg(size);
}

} // namespace

QString comparisonText(const CounterComparison& comparison, const QuantityText& text)
{
    if (comparison.countsBackwards) {
        return DiaryWords::tr("The counter shows less than at the reading before, so nothing is "
                              "compared. Say why.");
    }
    QStringList parts;
    if (comparison.uses) {
        parts << DiaryWords::tr("uses: %1 counted, %2 reported%3")
                     .arg(text.count(comparison.uses->counted),
                          text.count(comparison.uses->entered),
                          differenceText(*comparison.uses, text));
    }
    if (comparison.time) {
        parts << DiaryWords::tr("minutes: %1 counted, %2 reported%3")
                     .arg(minutesNumber(Milliseconds(comparison.time->counted), text),
                          minutesNumber(Milliseconds(comparison.time->entered), text),
                          differenceText(*comparison.time, text));
    }
    if (parts.isEmpty()) {
        return DiaryWords::tr("The two readings have no counter in common.");
    }
    QString sentence = parts.join(QStringLiteral("; "));
    sentence[0] = sentence[0].toUpper();
    return comparison.diaryIsKnown
               ? DiaryWords::tr("%1.", "comparison").arg(sentence)
               : DiaryWords::tr("%1. The diary has not come back for all these days, so the "
                                "difference says nothing yet.")
                     .arg(sentence);
}

} // namespace quadrille::app
