// SPDX-License-Identifier: GPL-3.0-or-later
// The diary in words: what a field expects, why a key wrote nothing, what is to be said of an
// entry, and what a page amounts to.
#pragma once

#include "app/words/quantity_text.h"

#include "core/adherence_figures.h"
#include "core/counter_comparison.h"
#include "core/diary_remarks.h"

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// "12.5", minutes without their unit.
QString minutesNumber(Milliseconds time, const QuantityText& text);
/// "38", milliamperes without their unit.
QString amplitudeNumber(Amplitude amplitude, const QuantityText& text);

QString refusalText(DiaryRefusal refusal, const DiarySheet& sheet, const QuantityText& text);
/// One sentence with the day.
QString remarkText(const DiaryRemark& remark, const WrittenDay& day, const QuantityText& text);
/// What the field of the place expects, for the status line.
QString expectedText(const DiarySheet& sheet, const QuantityText& text);
/// The place and what stands in it, for a voice.
QString spokenPlace(const DiarySheet& sheet, const QuantityText& text);
/// "nothing", "gone within the hour" …
QString skinText(Skin skin);
/// What a part of the diary is called, and what it says in one of two diaries.
QString clashName(const DiaryClash& clash, const QuantityText& text);
QString clashText(const DiaryClash& clash, const WrittenDiary& diary, const QuantityText& text);

/// The figures of a page, a sentence each; what does not exist is left out.
QStringList totalsText(const AdherenceFigures& figures, const QuantityText& text);

QString explanationName(CounterExplanation explanation);
/// Uses and minutes of two readings, counted and entered, and how they differ.
QString comparisonText(const CounterComparison& comparison, const QuantityText& text);

} // namespace quadrille::app
