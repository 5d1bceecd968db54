// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/field.h"
#include "core/units.h"

#include <QLocale>
#include <QString>

#include <cstdint>
#include <optional>

namespace quadrille::app
{

/// The one place where quantities become text and text becomes quantities. Decimal sign, digits and
/// dates follow the locale that is passed in; a no-break space stands before every unit and between
/// groups of three digits.
class QuantityText
{
public:
    explicit QuantityText(const QLocale& locale);

    const QLocale& locale() const { return m_locale; }

    /// A number with exactly `decimals` decimals.
    QString number(double value, int decimals) const;
    /// A number with as many decimals as it needs, at most `mostDecimals`.
    QString shortNumber(double value, int mostDecimals) const;
    QString count(std::int64_t value) const;
    /// A value with its unit: "50 Hz", "2.30 mA/cm²".
    QString amount(const Amount& amount) const;
    /// A setting with its unit, all its digits: "42.5 mA".
    QString setting(Field field, std::int64_t count) const;
    /// The same without the unit.
    QString settingNumber(Field field, std::int64_t count) const;
    /// "50 to 400 µs".
    QString range(Field field, std::int64_t least, std::int64_t most) const;
    /// A time to read: "45 s", "5 min 00 s", "8 h 53 min".
    QString time(Milliseconds time) const;
    /// The same without seconds that are zero: "50 min".
    QString shortTime(Milliseconds time) const;
    /// "3 : 1".
    QString ratioToOne(double ratio) const;
    /// 0 … 1 as "25 %".
    QString percent(double share, int mostDecimals = 1) const;

    /// "9 Feb 2026"
    QString date(Date date) const;
    /// "9 Feb"
    QString dayAndMonth(Date date) const;
    /// "Thu 12 Mar"
    QString weekdayAndDay(Date date) const;
    /// "Thu 12 Mar 2026"
    QString weekdayDate(Date date) const;
    /// "Thursday 12 March 2026"
    QString longDate(Date date) const;
    /// "Mon", ISO weekday.
    QString shortWeekday(Weekday day) const;
    QString longWeekday(Weekday day) const;

    /// Reads a setting in base units. Point and comma both separate decimals; the unit may follow.
    /// Nothing when it is no number, has more digits than the base unit holds, or does not fit 64
    /// bits.
    std::optional<std::int64_t> settingFrom(Field field, const QString& text) const;
    /// Reads a day as the locale writes it (short or long) or as YYYY-MM-DD; nothing when it is no
    /// such day.
    std::optional<Date> dateFrom(const QString& text) const;
    /// How this locale wants a day typed, for hints: "31/12/2026".
    QString dateExample() const;

private:
    QLocale m_locale;
};

QString noBreakSpace();
QDate toQDate(Date date);
/// `date` must be valid.
Date fromQDate(QDate date);

/// "µs", "mA/cm²"; empty for pure numbers.
QString unitSymbol(Unit unit);
/// "microseconds", for a voice to read.
QString unitWord(Unit unit);
/// The unit in which a setting is shown and typed.
Unit shownUnit(Field field);

} // namespace quadrille::app
