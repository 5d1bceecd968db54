// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/quantity_text.h"

#include "core/settings.h"

#include <QCoreApplication>
#include <QDate>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <utility>

namespace quadrille::app
{

namespace
{

struct UnitWords {
    Q_DECLARE_TR_FUNCTIONS(UnitWords)
};

/// How many decimals a value of this unit is shown with, at most, and whether it always has them.
struct Decimals {
    int most;
    bool always;
};

Decimals decimalsOf(Unit unit)
{
    switch (unit) {
    case Unit::microcoulomb:
        return {1, true};
    case Unit::milliamperePerSquareCentimetre:
    case Unit::microcoulombPerSquareCentimetre:
    case Unit::milliwattPerSquareCentimetre:
    case Unit::millijoule:
        return {2, true};
    case Unit::milliwatt:
    case Unit::squareCentimetre:
    case Unit::percent:
        return {1, false};
    case Unit::milliampere:
    case Unit::millicoulomb:
        return {1, false};
    default:
        return {3, false};
    }
}

/// Base units in one shown unit.
std::int64_t scaleOf(Field field)
{
    switch (field) {
    case Field::pulseFrequency:
    case Field::carrierFrequency:
    case Field::onTime:
    case Field::offTime:
    case Field::rampUp:
    case Field::rampDown:
    case Field::lastToleratedAmplitude:
    case Field::amplitudeCeiling:
        return 1000;
    case Field::burstDuty:
        return 10;
    case Field::sessionLength:
        return 60'000;
    default:
        return 1;
    }
}

QString withUnit(const QString& number, Unit unit)
{
    const QString symbol = unitSymbol(unit);
    return symbol.isEmpty() ? number : number + noBreakSpace() + symbol;
}

} // namespace

QString noBreakSpace()
{
    return QStringLiteral("\u00A0");
}

QDate toQDate(Date date)
{
    const std::chrono::year_month_day day{date};
    return {int(day.year()), static_cast<int>(unsigned(day.month())),
            static_cast<int>(unsigned(day.day()))};
}

Date fromQDate(QDate date)
{
    return Date(std::chrono::year_month_day(std::chrono::year(date.year()),
                                            std::chrono::month(static_cast<unsigned>(date.month())),
                                            std::chrono::day(static_cast<unsigned>(date.day()))));
}

QuantityText::QuantityText(const QLocale& locale)
    : m_locale(locale)
{
    m_locale.setNumberOptions(QLocale::OmitGroupSeparator);
}

QString QuantityText::number(double value, int decimals) const
{
    if (!std::isfinite(value)) {
        return QStringLiteral("—");
    }
    QString digits = m_locale.toString(std::abs(value), 'f', decimals);
    // Groups of three by a no-break space, whatever the locale uses, from 1 000.
    const qsizetype point = digits.indexOf(m_locale.decimalPoint());
    const qsizetype whole = point < 0 ? digits.size() : point;
    for (qsizetype at = whole - 3; at > 0; at -= 3) {
        digits.insert(at, noBreakSpace());
    }
    const bool negative = value < 0 && m_locale.toString(0.0, 'f', decimals) != digits;
    return negative ? QStringLiteral("\u2212") + digits : digits;
}

QString QuantityText::shortNumber(double value, int mostDecimals) const
{
    int decimals = mostDecimals;
    const double scale = std::pow(10.0, mostDecimals);
    auto rounded = static_cast<long double>(std::round(std::abs(value) * scale));
    while (decimals > 0 && std::fmod(rounded, 10.0L) == 0.0L) {
        rounded /= 10.0L;
        --decimals;
    }
    return number(value, decimals);
}

QString QuantityText::count(std::int64_t value) const
{
    return number(static_cast<double>(value), 0);
}

QString QuantityText::amount(const Amount& amount) const
{
    const Decimals decimals = decimalsOf(amount.unit);
    const QString digits = decimals.always ? number(amount.value, decimals.most)
                                           : shortNumber(amount.value, decimals.most);
    return withUnit(digits, amount.unit);
}

QString QuantityText::settingNumber(Field field, std::int64_t count) const
{
    return shortNumber(static_cast<double>(count) / static_cast<double>(scaleOf(field)), 3);
}

QString QuantityText::setting(Field field, std::int64_t count) const
{
    return withUnit(settingNumber(field, count), shownUnit(field));
}

QString QuantityText::range(Field field, std::int64_t least, std::int64_t most) const
{
    if (least == most) {
        return UnitWords::tr("%1 only").arg(setting(field, least));
    }
    return UnitWords::tr("%1 to %2").arg(settingNumber(field, least), setting(field, most));
}

QString QuantityText::time(Milliseconds time) const
{
    using namespace std::chrono;
    const auto hour = duration_cast<hours>(time);
    const auto minute = duration_cast<minutes>(time - hour);
    const Milliseconds rest = time - hour - minute;
    const QString secondsText = shortNumber(static_cast<double>(rest.count()) / 1e3, 1) +
                                noBreakSpace() + unitSymbol(Unit::second);
    if (hour.count() > 0) {
        return withUnit(count(hour.count()), Unit::none) + noBreakSpace() + UnitWords::tr("h") +
               QLatin1Char(' ') + withUnit(count(minute.count()), Unit::minute);
    }
    if (minute.count() > 0) {
        const bool twoDigits = rest >= seconds(10) || rest % seconds(1) != Milliseconds(0);
        return withUnit(count(minute.count()), Unit::minute) + QLatin1Char(' ') +
               (twoDigits ? secondsText : m_locale.toString(0) + secondsText);
    }
    return secondsText;
}

QString QuantityText::shortTime(Milliseconds time) const
{
    using namespace std::chrono;
    const bool wholeMinutes =
        time >= minutes(1) && time < hours(1) && time % minutes(1) == Milliseconds(0);
    return wholeMinutes ? withUnit(count(duration_cast<minutes>(time).count()), Unit::minute)
                        : this->time(time);
}

QString QuantityText::ratioToOne(double ratio) const
{
    return UnitWords::tr("%1 : 1", "off to on ratio")
        .arg(shortNumber(ratio, 2))
        .replace(QLatin1Char(' '), noBreakSpace());
}

QString QuantityText::percent(double share, int mostDecimals) const
{
    return withUnit(shortNumber(share * 100.0, mostDecimals), Unit::percent);
}

QString QuantityText::date(Date date) const
{
    return m_locale.toString(toQDate(date), QStringLiteral("d MMM yyyy"));
}

QString QuantityText::dayAndMonth(Date date) const
{
    return m_locale.toString(toQDate(date), QStringLiteral("d MMM"));
}

QString QuantityText::weekdayAndDay(Date date) const
{
    return m_locale.toString(toQDate(date), QStringLiteral("ddd d MMM"));
}

QString QuantityText::weekdayDate(Date date) const
{
    return m_locale.toString(toQDate(date), QStringLiteral("ddd d MMM yyyy"));
}

QString QuantityText::longDate(Date date) const
{
    return m_locale.toString(toQDate(date), QStringLiteral("dddd d MMMM yyyy"));
}

QString QuantityText::shortWeekday(Weekday day) const
{
    return m_locale.standaloneDayName(static_cast<int>(day.iso_encoding()), QLocale::ShortFormat);
}

QString QuantityText::longWeekday(Weekday day) const
{
    return m_locale.standaloneDayName(static_cast<int>(day.iso_encoding()), QLocale::LongFormat);
}

std::optional<std::int64_t> QuantityText::settingFrom(Field field, const QString& text) const
{
    QString digits = text.simplified();
    const QString symbol = unitSymbol(shownUnit(field));
    if (!symbol.isEmpty() && digits.endsWith(symbol, Qt::CaseInsensitive)) {
        digits.chop(symbol.size());
    }
    digits.remove(QLatin1Char(' '))
        .remove(noBreakSpace())
        .replace(QLatin1Char(','), QLatin1Char('.'));
    digits.replace(m_locale.decimalPoint(), QStringLiteral("."));
    std::int64_t scaled = 0;      // the digits as one whole number
    std::int64_t denominator = 1; // ten to the number of decimals
    bool seenPoint = false;
    bool seenDigit = false;
    for (const QChar c : std::as_const(digits)) {
        if (c == QLatin1Char('.') && !seenPoint) {
            seenPoint = true;
            continue;
        }
        const int digit = c.digitValue();
        const auto tenfold = checkedProduct(scaled, 10);
        if (digit < 0 || !tenfold || denominator > 100'000'000) {
            return std::nullopt;
        }
        scaled = *tenfold + digit;
        seenDigit = true;
        if (seenPoint) {
            denominator *= 10;
        }
    }
    const auto base = checkedProduct(scaled, scaleOf(field));
    if (!seenDigit || !base) {
        return std::nullopt;
    }
    // A third of a minute is no whole number of milliseconds: the nearest one is meant.
    if (*base % denominator != 0 && field != Field::sessionLength) {
        return std::nullopt;
    }
    return (*base + denominator / 2) / denominator;
}

std::optional<Date> QuantityText::dateFrom(const QString& text) const
{
    const QString day = text.simplified();
    if (const auto iso = dateFromIso(day.toStdString())) {
        return iso;
    }
    static const std::array formats{QStringLiteral("d MMM yyyy"), QStringLiteral("d MMMM yyyy"),
                                    QStringLiteral("ddd d MMM yyyy"), QStringLiteral("d.M.yyyy")};
    QStringList all{m_locale.dateFormat(QLocale::ShortFormat),
                    m_locale.dateFormat(QLocale::LongFormat)};
    // Two digits for a year would turn a birth in 1958 into 2058 or the other way round.
    all.front().replace(QRegularExpression(QStringLiteral("y+")), QStringLiteral("yyyy"));
    all.front()
        .replace(QStringLiteral("dd"), QStringLiteral("d"))
        .replace(QStringLiteral("MM"), QStringLiteral("M"));
    std::ranges::copy(formats, std::back_inserter(all));
    for (const QString& format : std::as_const(all)) {
        const QDate parsed = m_locale.toDate(day, format);
        if (parsed.isValid() && parsed.year() >= 1800) {
            return fromQDate(parsed);
        }
    }
    return std::nullopt;
}

QString QuantityText::dateExample() const
{
    return m_locale.toString(QDate(2026, 12, 31), QStringLiteral("d MMM yyyy"));
}

QString unitSymbol(Unit unit)
{
    switch (unit) {
    case Unit::none:
    case Unit::count:
        return {};
    case Unit::percent:
        return QStringLiteral("%");
    case Unit::hertz:
        return QStringLiteral("Hz");
    case Unit::kilohertz:
        return QStringLiteral("kHz");
    case Unit::microsecond:
        return QStringLiteral("µs");
    case Unit::second:
        return QStringLiteral("s");
    case Unit::minute:
        return UnitWords::tr("min");
    case Unit::week:
        return UnitWords::tr("weeks");
    case Unit::milliampere:
        return QStringLiteral("mA");
    case Unit::microcoulomb:
        return QStringLiteral("µC");
    case Unit::millicoulomb:
        return QStringLiteral("mC");
    case Unit::microcoulombPerSquareCentimetre:
        return QStringLiteral("µC/cm²");
    case Unit::milliamperePerSquareCentimetre:
        return QStringLiteral("mA/cm²");
    case Unit::milliwatt:
        return QStringLiteral("mW");
    case Unit::milliwattPerSquareCentimetre:
        return QStringLiteral("mW/cm²");
    case Unit::millijoule:
        return QStringLiteral("mJ");
    case Unit::millimetre:
        return QStringLiteral("mm");
    case Unit::squareCentimetre:
        return QStringLiteral("cm²");
    }
    return {};
}

QString unitWord(Unit unit)
{
    switch (unit) {
    case Unit::percent:
        return UnitWords::tr("percent");
    case Unit::hertz:
        return UnitWords::tr("hertz");
    case Unit::microsecond:
        return UnitWords::tr("microseconds");
    case Unit::second:
        return UnitWords::tr("seconds");
    case Unit::minute:
        return UnitWords::tr("minutes");
    case Unit::milliampere:
        return UnitWords::tr("milliamperes");
    case Unit::millimetre:
        return UnitWords::tr("millimetres");
    default:
        return unitSymbol(unit);
    }
}

Unit shownUnit(Field field)
{
    return amountIn(field, 0).unit;
}

} // namespace quadrille::app
