// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/typed_value.h"

#include "app/words/measurement_text.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct TypedWords {
    Q_DECLARE_TR_FUNCTIONS(TypedWords)
};

TypedValue problemOf(const QString& sentence)
{
    TypedValue value;
    value.problem = sentence;
    return value;
}

/// Seconds for the ten metres, each followed by its unit, become speeds.
bool readAsSpeeds(std::vector<std::int64_t>& values)
{
    for (std::int64_t& value : values) {
        const auto speed = speedOverTenMetres(value);
        if (!speed) {
            return false;
        }
        value = *speed;
    }
    return true;
}

} // namespace

TypedValue typedValue(const MeasurementKind& kind, const QString& typed, const QuantityText& text)
{
    QString numbers = typed.simplified();
    static const QRegularExpression seconds(QStringLiteral("\\s*s(?=\\s|;|$)"));
    const bool inSeconds = kind.key == walkTenMetres && numbers.contains(seconds);
    if (inSeconds) {
        numbers.remove(seconds);
    }
    auto values = valuesFrom(numbers, text);
    if (!values || (inSeconds && !readAsSpeeds(*values))) {
        return problemOf(TypedWords::tr("“%1” is no number. Enter one, or several trials with a "
                                        "blank between, for example 61 64.5.")
                             .arg(typed.simplified()));
    }
    TypedValue value;
    if (values->empty()) {
        return value;
    }
    if (values->size() == 1) {
        value.thousandths = values->front();
        return value;
    }
    if (kind.trials == Counted::one) {
        return problemOf(TypedWords::tr("“%1” are several numbers, and this takes one. Enter the "
                                        "one that counts.")
                             .arg(typed.simplified()));
    }
    if (values->size() > mostTrials) {
        return problemOf(
            TypedWords::tr("“%1” are more than %2 trials. Keep the %2 that count.")
                .arg(typed.simplified(), text.count(static_cast<std::int64_t>(mostTrials))));
    }
    value.trials = *values;
    value.counted = kind.trials;
    value.thousandths = valueOfTrials(kind.trials, kind.better, *values);
    return value;
}

TypedNote typedNote(const MeasurementKind& kind, const TypedValue& value, const std::string& unit,
                    const QuantityText& text)
{
    TypedNote note;
    if (!value.problem.isEmpty()) {
        return {value.problem, true};
    }
    if (!value.thousandths) {
        return note;
    }
    const QString shown = measuredText(kind.key, *value.thousandths, unit, text);
    if (!isPlausible(kind, *value.thousandths)) {
        return {TypedWords::tr("%1 is outside the usual %2 to %3: look again")
                    .arg(shown, measuredNumber(kind.key, kind.least, text),
                         measuredText(kind.key, kind.most, unit, text)),
                true};
    }
    if (!value.trials.empty()) {
        const QString count = text.count(static_cast<std::int64_t>(value.trials.size()));
        note.text = value.counted == Counted::best
                        ? TypedWords::tr("best of %1: %2").arg(count, shown)
                        : TypedWords::tr("mean of %1: %2").arg(count, shown);
    } else if (kind.key == walkTenMetres) {
        note.text = shown;
    }
    return note;
}

void setTyped(Measurement& measurement, const TypedValue& value)
{
    measurement.thousandths = value.thousandths.value_or(0);
    measurement.counted = value.counted;
    measurement.trials = value.trials;
}

QString typedText(const Measurement& measurement, const QuantityText& text)
{
    const auto number = [&](std::int64_t thousandths) {
        return text.shortNumber(static_cast<double>(thousandths) / 1e3, 3)
            .replace(QChar(0x2212), QLatin1Char('-'))
            .remove(noBreakSpace());
    };
    if (measurement.trials.empty()) {
        return number(measurement.thousandths);
    }
    QStringList trials;
    for (const std::int64_t trial : measurement.trials) {
        trials.append(number(trial));
    }
    return trials.join(QLatin1Char(' '));
}

} // namespace quadrille::app
