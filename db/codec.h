// SPDX-License-Identifier: GPL-3.0-or-later
// What each type of core is in the store: amounts as whole base units, dates and moments as ISO
// 8601 text, choices as words. One way in (valueOf) and one way out (take…) for each.
#pragma once

#include "db/sql.h"

#include "core/body_region.h"
#include "core/calendar.h"
#include "core/clinic_session.h"
#include "core/course.h"
#include "core/diary.h"
#include "core/electrode_set.h"
#include "core/field.h"
#include "core/follow_up.h"
#include "core/ids.h"
#include "core/measurement_kinds.h"
#include "core/people.h"
#include "core/placement.h"
#include "core/plan.h"
#include "core/quantity.h"
#include "core/screening.h"
#include "core/stimulator.h"
#include "core/units.h"
#include "core/waveform.h"

#include <concepts>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille::db
{

/// The words under which choices are stored.
std::string_view wordOf(Waveform waveform);
std::string_view wordOf(RampHabit habit);
std::string_view wordOf(CycleStart start);
std::string_view wordOf(UsageCounter counter);
std::string_view wordOf(Side side);
std::string_view wordOf(PadMaterial material);
std::string_view wordOf(PadShape shape);
std::string_view wordOf(Lead lead);
std::string_view wordOf(SiteOrder order);
std::string_view wordOf(Field field);
std::string_view wordOf(Segment choice);
std::string_view wordOf(BodySide choice);
std::string_view wordOf(Answer choice);
std::string_view wordOf(DiarySource choice);
std::string_view wordOf(CounterExplanation choice);
std::string_view wordOf(Decision choice);
std::string_view wordOf(DocumentKind choice);
std::string_view wordOf(Medium choice);
std::string_view wordOf(SkinLook choice);
std::string_view wordOf(QuestionClass choice);
std::string_view wordOf(Reach choice);
std::string_view wordOf(AdvicePlace choice);
std::string_view wordOf(BodyRegion choice);
std::string_view wordOf(PlaceSide choice);
std::string_view wordOf(Sensation choice);
std::string_view wordOf(TreatedSide choice);
std::string_view wordOf(Counted choice);
std::string_view wordOf(ElectrodeType choice);

/// The choice behind a word; nothing for a word that is none.
template <class Choice>
std::optional<Choice> choiceOf(std::string_view word) = delete;
template <>
std::optional<Waveform> choiceOf(std::string_view word);
template <>
std::optional<RampHabit> choiceOf(std::string_view word);
template <>
std::optional<CycleStart> choiceOf(std::string_view word);
template <>
std::optional<UsageCounter> choiceOf(std::string_view word);
template <>
std::optional<Side> choiceOf(std::string_view word);
template <>
std::optional<PadMaterial> choiceOf(std::string_view word);
template <>
std::optional<PadShape> choiceOf(std::string_view word);
template <>
std::optional<Lead> choiceOf(std::string_view word);
template <>
std::optional<SiteOrder> choiceOf(std::string_view word);
template <>
std::optional<Field> choiceOf(std::string_view word);
template <>
std::optional<Segment> choiceOf(std::string_view word);
template <>
std::optional<BodySide> choiceOf(std::string_view word);
template <>
std::optional<Answer> choiceOf(std::string_view word);
template <>
std::optional<DiarySource> choiceOf(std::string_view word);
template <>
std::optional<CounterExplanation> choiceOf(std::string_view word);
template <>
std::optional<Decision> choiceOf(std::string_view word);
template <>
std::optional<DocumentKind> choiceOf(std::string_view word);
template <>
std::optional<Medium> choiceOf(std::string_view word);
template <>
std::optional<SkinLook> choiceOf(std::string_view word);
template <>
std::optional<QuestionClass> choiceOf(std::string_view word);
template <>
std::optional<Reach> choiceOf(std::string_view word);
template <>
std::optional<AdvicePlace> choiceOf(std::string_view word);
template <>
std::optional<BodyRegion> choiceOf(std::string_view word);
template <>
std::optional<PlaceSide> choiceOf(std::string_view word);
template <>
std::optional<Sensation> choiceOf(std::string_view word);
template <>
std::optional<TreatedSide> choiceOf(std::string_view word);
template <>
std::optional<Counted> choiceOf(std::string_view word);
template <>
std::optional<ElectrodeType> choiceOf(std::string_view word);

/// "20260312T104200Z": a moment without the marks that some file systems refuse in names.
QString momentInFileName(Moment moment);

/// The longest text that is kept, in bytes of UTF-8.
inline constexpr std::size_t longestText = 1U << 20U;
/// Text as it is. Failure badFormat when it is longer than longestText, no Unicode or holds a NUL,
/// which no database keeps whole.
Value valueOf(const std::string& text);
Value valueOf(Date date);
Value valueOf(Moment moment);

template <std::same_as<bool> Flag>
Value valueOf(Flag flag)
{
    return std::int64_t(flag ? 1 : 0);
}
inline Value valueOf(int number)
{
    return std::int64_t(number);
}
inline Value valueOf(std::int64_t number)
{
    return number;
}
template <class Tag>
Value valueOf(Quantity<Tag> quantity)
{
    return quantity.count();
}
inline Value valueOf(Milliseconds time)
{
    return time.count();
}
template <class Record>
Value valueOf(Id<Record> id)
{
    return id.key();
}
template <class Choice>
requires std::is_enum_v<Choice> Value valueOf(Choice choice)
{
    return std::string(wordOf(choice));
}
template <class Known>
Value valueOf(const std::optional<Known>& known)
{
    return known ? valueOf(*known) : Value();
}

// The next column of a row. Failure storeDamaged when it holds nothing of the kind.
bool takeFlag(Statement& row);
int takeInt(Statement& row);
Date takeDate(Statement& row);
std::optional<Date> takeOptionalDate(Statement& row);
std::optional<int> takeOptionalInt(Statement& row);
Moment takeMoment(Statement& row);
Milliseconds takeMilliseconds(Statement& row);

template <class Record>
Id<Record> takeId(Statement& row)
{
    return Id<Record>(row.takeInteger());
}
template <class Record>
std::optional<Id<Record>> takeOptionalId(Statement& row)
{
    const auto key = row.takeOptionalInteger();
    return key ? std::optional(Id<Record>(*key)) : std::nullopt;
}
template <class Q>
Q takeQuantity(Statement& row)
{
    return Q::fromCount(row.takeInteger());
}
template <class Q>
std::optional<Q> takeOptionalQuantity(Statement& row)
{
    const auto count = row.takeOptionalInteger();
    return count ? std::optional(Q::fromCount(*count)) : std::nullopt;
}

[[noreturn]] void failOnWord(const std::string& word);
template <class Choice>
Choice takeChoice(Statement& row)
{
    const std::string word = row.takeText();
    const auto choice = choiceOf<Choice>(word);
    if (!choice) {
        failOnWord(word);
    }
    return *choice;
}

template <class Choice>
std::optional<Choice> takeOptionalChoice(Statement& row)
{
    const auto word = row.takeOptionalText();
    if (!word) {
        return std::nullopt;
    }
    const auto choice = choiceOf<Choice>(*word);
    if (!choice) {
        failOnWord(*word);
    }
    return choice;
}

} // namespace quadrille::db
