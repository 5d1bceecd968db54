// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/measurement_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cstdlib>

namespace quadrille::app
{

namespace
{

struct MeasurementWords {
    Q_DECLARE_TR_FUNCTIONS(MeasurementWords)
};

int decimalsOf(std::string_view kind)
{
    const MeasurementKind* known = measurementKind(kind);
    return known != nullptr ? known->decimals : 3;
}

QString withMeasuredUnit(const QString& number, std::string_view kind, const std::string& ucum)
{
    const QString unit = measuredUnit(kind, ucum);
    if (unit.isEmpty()) {
        return number;
    }
    return unit == QStringLiteral("°") ? number + unit : number + noBreakSpace() + unit;
}

QString thresholdNumber(const MeasurementKind& kind, std::int64_t thousandths,
                        const QuantityText& text)
{
    // Published thresholds have more digits than the value is shown with.
    const QString number = text.shortNumber(static_cast<double>(thousandths) / 1e3, 3);
    const std::string unit(kind.unit);
    return isScoreOfTen(kind.key, unit) ? number : withMeasuredUnit(number, kind.key, unit);
}

QString betterText(const ChangeJudgement& judgement)
{
    if (!judgement.better) {
        return {};
    }
    return *judgement.better ? MeasurementWords::tr("better") : MeasurementWords::tr("worse");
}

/// What all thresholds of a kind are called; both are, or one.
QString meaningName(const std::vector<ChangeThreshold>& thresholds)
{
    const bool detectable = std::ranges::any_of(thresholds, [](const ChangeThreshold& threshold) {
        return threshold.meaning == ThresholdMeaning::detectable;
    });
    return detectable ? MeasurementWords::tr("detectable change")
                      : MeasurementWords::tr("important change");
}

/// The change held against the thresholds next to it.
QString heldText(const MeasurementKind& kind, const ChangeJudgement& judgement,
                 const QuantityText& text)
{
    const auto isMuchBetter = [](const ChangeThreshold& threshold) {
        return threshold.meaning == ThresholdMeaning::muchBetter;
    };
    auto [reached, notReached, better] = judgement;
    if (!reached.empty()) {
        std::erase_if(notReached, isMuchBetter); // no shortfall: the important change is there
    }
    const auto number = [&](const ChangeThreshold& threshold) {
        return thresholdNumber(kind, threshold.thousandths, text);
    };
    if (reached.empty() && notReached.empty()) {
        return MeasurementWords::tr("no published threshold");
    }
    if (notReached.empty() && isMuchBetter(reached.back())) {
        return MeasurementWords::tr("reaches %1, what people called much better")
            .arg(number(reached.back()));
    }
    if (notReached.empty()) {
        return (reached.size() == 1 ? MeasurementWords::tr("reaches the %1 of %2")
                                    : MeasurementWords::tr("reaches every %1, up to %2"))
            .arg(meaningName(reached), number(reached.back()));
    }
    if (reached.empty()) {
        return MeasurementWords::tr("below the %1 of %2")
            .arg(meaningName(notReached), number(notReached.front()));
    }
    return MeasurementWords::tr("reaches %1, below %2")
        .arg(number(reached.back()), number(notReached.front()));
}

/// Whether a threshold that heldText() speaks of was not checked against its text.
bool restsOnMemory(const ChangeJudgement& judgement)
{
    const auto isFromMemory = [](const ChangeThreshold& threshold) {
        return threshold.source.fromMemory;
    };
    const auto& [reached, notReached, better] = judgement;
    if (notReached.empty()) { // every one of them is meant
        return std::ranges::any_of(reached, isFromMemory);
    }
    return isFromMemory(notReached.front()) || (!reached.empty() && isFromMemory(reached.back()));
}

std::optional<std::int64_t> thousandthsFrom(QString word, const QuantityText& text)
{
    const bool negative = word.startsWith(QLatin1Char('-')) || word.startsWith(QChar(0x2212));
    if (negative) {
        word.remove(0, 1);
    }
    word.replace(text.locale().decimalPoint(), QStringLiteral("."));
    word.replace(QLatin1Char(','), QLatin1Char('.'));
    constexpr qsizetype mostDigits = 12;
    const QString whole = word.section(QLatin1Char('.'), 0, 0);
    const QString rest = word.section(QLatin1Char('.'), 1);
    const QString digits = whole + rest.leftJustified(3, QLatin1Char('0'));
    const bool isNumber = !(whole + rest).isEmpty() && rest.size() <= 3 &&
                          digits.size() <= mostDigits &&
                          std::ranges::all_of(digits, [](QChar c) { return c.digitValue() >= 0; });
    if (!isNumber) {
        return std::nullopt;
    }
    std::int64_t number = 0;
    for (const QChar digit : digits) {
        number = number * 10 + digit.digitValue();
    }
    return negative ? -number : number;
}

} // namespace

QString measuredUnit(std::string_view kind, const std::string& ucum)
{
    return isScoreOfTen(kind, ucum) ? MeasurementWords::tr("of 10", "a value on a scale")
                                    : QString::fromStdString(tradeUnitOf(ucum));
}

QString measuredNumber(std::string_view kind, std::int64_t thousandths, const QuantityText& text)
{
    return text.shortNumber(static_cast<double>(thousandths) / 1e3, decimalsOf(kind));
}

QString measuredText(std::string_view kind, std::int64_t thousandths, const std::string& ucum,
                     const QuantityText& text)
{
    return withMeasuredUnit(measuredNumber(kind, thousandths, text), kind, ucum);
}

QString changeOfValueText(std::string_view kind, std::int64_t change, const std::string& ucum,
                          const QuantityText& text)
{
    if (change == 0) {
        return MeasurementWords::tr("no change");
    }
    const QString number = measuredNumber(kind, std::abs(change), text);
    const QString sign = change > 0 ? QStringLiteral("+") : QString(QChar(0x2212));
    // Three points less are not "−3 of 10".
    return sign + (isScoreOfTen(kind, ucum) ? number : withMeasuredUnit(number, kind, ucum));
}

QString trialsText(const Measurement& measurement, const QuantityText& text)
{
    if (measurement.trials.empty()) {
        return {};
    }
    QStringList numbers;
    for (const std::int64_t trial : measurement.trials) {
        numbers.append(measuredNumber(measurement.kind, trial, text));
    }
    const QString count = text.count(static_cast<std::int64_t>(measurement.trials.size()));
    const QString list = numbers.join(QStringLiteral("; "));
    return measurement.counted == Counted::best
               ? MeasurementWords::tr("best of %1: %2").arg(count, list)
               : MeasurementWords::tr("mean of %1: %2").arg(count, list);
}

QString judgementText(const MeasurementKind& kind, std::int64_t change, const QuantityText& text)
{
    const ChangeJudgement judgement = judgeChange(kind, change);
    QStringList parts;
    if (const QString better = betterText(judgement); !better.isEmpty()) {
        parts.append(better);
    }
    parts.append(heldText(kind, judgement, text));
    if (restsOnMemory(judgement)) {
        parts.append(MeasurementWords::tr("from memory"));
    }
    return parts.join(QStringLiteral(", "));
}

std::optional<std::vector<std::int64_t>> valuesFrom(const QString& typed, const QuantityText& text)
{
    QString words = typed;
    words.replace(QLatin1Char(';'), QLatin1Char(' ')).replace(noBreakSpace(), QStringLiteral(" "));
    std::vector<std::int64_t> values;
    for (const QString& word : words.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const auto value = thousandthsFrom(word, text);
        if (!value) {
            return std::nullopt;
        }
        values.push_back(*value);
    }
    return values;
}

} // namespace quadrille::app
