// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/what_if_text.h"

#include "app/words/finding_text.h"
#include "app/words/model_text.h"
#include "app/words/trade_words.h"

#include "core/settings.h"

#include <QCoreApplication>
#include <QStringList>

#include <cmath>

namespace quadrille::app
{

namespace
{

struct WhatIfWords {
    Q_DECLARE_TR_FUNCTIONS(WhatIfWords)
};

constexpr int ratioDecimals = 2;
constexpr double percent = 100.0;
/// From here on a difference in percent is told without decimals.
constexpr double wholePercent = 10.0;

Milliseconds timeOf(double seconds)
{
    return Milliseconds(std::llround(seconds * 1e3));
}

/// A ratio whose difference is told as it is: a share of a share would mislead.
bool isRatio(ComparedFigure figure)
{
    return figure == ComparedFigure::dutyCycle || figure == ComparedFigure::offOnRatio ||
           isModelFigure(figure);
}

QString withSign(const QString& digits, double value)
{
    return value > 0.0 ? QLatin1Char('+') + digits : digits; // minus comes with the number
}

/// The difference of two values as they are shown, so that what stands on the screen adds up.
double shownDifference(double value, double planned, int decimals)
{
    const double shift = std::pow(10.0, decimals);
    return (std::round(value * shift) - std::round(planned * shift)) / shift;
}

/// The same digits as nought.
bool isNought(double value, int decimals)
{
    return std::abs(value) * std::pow(10.0, decimals) < 0.5;
}

QString refusalText(const SearchRefusal& refusal, const Wish& wish, const QuantityText& text)
{
    const QString limit = text.shortTime(timeOf(refusal.limit.value * 60.0));
    switch (refusal.reason) {
    case NoSetting::sessionTooShort:
        return WhatIfWords::tr("Even with the shortest off time of the unit it takes %1. Allow "
                               "a longer session, or shorten the dose first.")
            .arg(limit);
    case NoSetting::sessionTimerEnds:
        return WhatIfWords::tr("The session timer of the unit ends at %1, before that is done.")
            .arg(limit);
    case NoSetting::betweenTimerSteps:
        return WhatIfWords::tr("No length on the timer of the unit gives just this dose: each "
                               "ends inside a contraction, or with one more or less.");
    case NoSetting::ratioNotReached: {
        const auto* ratio = std::get_if<KeepRatio>(&wish);
        return WhatIfWords::tr("Even the longest off time that can be used here keeps %1 only, "
                               "not %2 (%3).")
            .arg(text.number(refusal.limit.value, ratioDecimals),
                 text.number(ratio != nullptr ? ratio->ratio : 0.0, ratioDecimals), modelMark());
    }
    case NoSetting::offTimeIsFixed:
        return WhatIfWords::tr("The off time of this unit is fixed; it keeps %1 (%2).")
            .arg(text.number(refusal.limit.value, ratioDecimals), modelMark());
    case NoSetting::noContractions:
        return WhatIfWords::tr("There is not a single whole contraction to go by. Lengthen the "
                               "session first.");
    case NoSetting::noForce:
        return WhatIfWords::tr("The model has no force for these settings, so no fatigue ratio.");
    case NoSetting::stopped:
        return WhatIfWords::tr("Stopped before there was an answer. The variant stays as it is.");
    }
    return {};
}

QString foundText(const SearchFound& found, const QuantityText& text)
{
    const auto named = [&](Field field) {
        return WhatIfWords::tr("%1 %2", "setting, value")
            .arg(fieldName(field), text.setting(field, *countIn(found.settings, field)));
    };
    return WhatIfWords::tr("%1, %2, contractions %3.", "off time, session length, count")
        .arg(named(Field::offTime), named(Field::sessionLength).toLower(),
             text.count(found.timing.contractionsCompleted));
}

} // namespace

QString variantName(std::size_t variant)
{
    return QString(QChar(static_cast<char16_t>(u'A' + variant)));
}

QString comparedName(ComparedFigure figure)
{
    switch (figure) {
    case ComparedFigure::contractionsCompleted:
    case ComparedFigure::weekContractions:
        return WhatIfWords::tr("Contractions");
    case ComparedFigure::totalOnTime:
        return WhatIfWords::tr("Total on time");
    case ComparedFigure::weekOnTime:
        return WhatIfWords::tr("On time");
    case ComparedFigure::dutyCycle:
        return WhatIfWords::tr("Duty cycle");
    case ComparedFigure::offOnRatio:
        return WhatIfWords::tr("Off : on ratio");
    case ComparedFigure::pulses:
    case ComparedFigure::weekPulses:
        return WhatIfWords::tr("Pulses");
    case ComparedFigure::weekCharge:
        return WhatIfWords::tr("Charge, one phase");
    case ComparedFigure::phaseCharge:
        return WhatIfWords::tr("Phase charge");
    case ComparedFigure::chargeDensity:
        return WhatIfWords::tr("Charge density");
    case ComparedFigure::rmsTrain:
        return WhatIfWords::tr("r.m.s. current");
    case ComparedFigure::currentDensity:
        return WhatIfWords::tr("Current density");
    case ComparedFigure::powerDensityTrain:
        return WhatIfWords::tr("Power density");
    case ComparedFigure::fatigueRatioIntegral:
        return WhatIfWords::tr("Fatigue ratio");
    case ComparedFigure::fatigueRatioPeak:
        return WhatIfWords::tr("of peak force");
    default:
        return {};
    }
}

QString comparedText(ComparedFigure figure, const std::optional<Amount>& value,
                     const QuantityText& text)
{
    if (!value) {
        return QStringLiteral("—");
    }
    switch (figure) {
    case ComparedFigure::dutyCycle:
        return text.percent(value->value);
    case ComparedFigure::offOnRatio:
        return text.ratioToOne(value->value);
    case ComparedFigure::totalOnTime:
    case ComparedFigure::weekOnTime:
        return text.shortTime(timeOf(value->value));
    default:
        return isModelFigure(figure) ? text.number(value->value, ratioDecimals)
                                     : text.amount(*value);
    }
}

QString differenceText(const ComparedValue& value, const QuantityText& text)
{
    if (!value.value || !value.difference) {
        return {};
    }
    const double difference = *value.difference;
    const double planned = value.value->value - difference;
    const QString same = WhatIfWords::tr("same");
    if (value.figure == ComparedFigure::dutyCycle) {
        const double points = shownDifference(value.value->value * percent, planned * percent, 1);
        return isNought(points, 1) ? same
                                   : WhatIfWords::tr("%1 points", "of percent, with its sign")
                                         .arg(withSign(text.shortNumber(points, 1), points));
    }
    if (isRatio(value.figure)) {
        const double shown = shownDifference(value.value->value, planned, ratioDecimals);
        return isNought(shown, ratioDecimals) ? same
                                              : withSign(text.number(shown, ratioDecimals), shown);
    }
    if (difference == 0.0 || planned == 0.0) {
        return difference == 0.0 ? same : QString();
    }
    const double part = difference / planned * percent;
    const int decimals = std::abs(part) < wholePercent ? 1 : 0;
    return isNought(part, decimals) ? same
                                    : withSign(text.shortNumber(part, decimals), part) +
                                          noBreakSpace() + unitSymbol(Unit::percent);
}

QString notComparedText(const Judgement& judgement)
{
    if (!judgement.missing) {
        return {};
    }
    switch (*judgement.missing) {
    case NotCompared::planCannotRun:
        return WhatIfWords::tr("Nothing to compare with while a value of the block stops it.");
    case NotCompared::cannotRun:
        return WhatIfWords::tr("Nothing to compare while a value of the variant stops it.");
    case NotCompared::outsideModel:
        return notInModelText();
    case NotCompared::amplitudeDiffers:
        return WhatIfWords::tr("Amplitude differs: the model takes no notice of it, the muscle "
                               "does, so it must not judge this.");
    case NotCompared::phaseDurationDiffers:
        return WhatIfWords::tr("Phase duration differs: the model takes no notice of it, the "
                               "muscle does, so it must not judge this.");
    case NotCompared::modelMisleads:
        break;
    }
    QStringList refusals;
    for (const ModelRefusal refusal : judgement.refusals) {
        refusals.append(modelRefusalText(refusal));
    }
    return refusals.join(QLatin1Char(' '));
}

QStringList modelSentences(const WhatIfFigures& figures)
{
    if (figures.noneCompared) {
        return {notComparedText({figures.noneCompared})};
    }
    QStringList lines;
    bool differs = false;
    for (std::size_t variant = 0; variant < figures.variants.size(); ++variant) {
        const Judgement& judgement = figures.variants[variant].judgement;
        differs = differs || judgement.differs;
        if (judgement.missing) {
            lines.append(WhatIfWords::tr("%1: %2", "variant, why it is not compared")
                             .arg(variantName(variant), notComparedText(judgement)));
        }
    }
    if (lines.isEmpty() && !differs) {
        lines.append(WhatIfWords::tr("The model only compares: change the off time or the session "
                                     "length of a variant."));
    }
    return lines;
}

QStringList limitSentences(const WhatIf& whatIf, const WhatIfFigures& figures,
                           const QString& planName, const QuantityText& text)
{
    QStringList lines;
    const auto add = [&](const QString& name, const VariantFigures& of) {
        for (const Finding& finding : of.findings) {
            if (finding.severity != Severity::note) {
                const FindingText words = findingText(finding, text);
                lines.append(
                    WhatIfWords::tr("%1: %2", "block or variant, what is found")
                        .arg(name, QStringList{words.what, words.source}.join(QLatin1Char(' ')))
                        .trimmed());
            }
        }
    };
    if (!smallerPadArea(whatIf.plan.sites[whatIf.site].pads)) {
        lines.append(WhatIfWords::tr("No dose without the pads of the site: describe both."));
    } else if (!doseAmplitude(whatIf.planned().amplitude)) {
        lines.append(WhatIfWords::tr("No dose of the block while neither a ceiling nor the last "
                                     "tolerated amplitude is known."));
    }
    add(planName, figures.plan);
    for (std::size_t variant = 0; variant < figures.variants.size(); ++variant) {
        if (whatIf.variants[variant] != whatIf.plan) { // else said of the block
            add(variantName(variant), figures.variants[variant]);
        }
    }
    return lines;
}

QString wishAnswerText(const WishAnswer& answer, const Wish& wish, const QuantityText& text)
{
    if (const auto* found = std::get_if<SearchFound>(&answer)) {
        return foundText(*found, text);
    }
    if (const auto* refusal = std::get_if<SearchRefusal>(&answer)) {
        return refusalText(*refusal, wish, text);
    }
    const auto& judgement = std::get<Judgement>(answer);
    return judgement.missing == NotCompared::cannotRun
               ? WhatIfWords::tr("A value of the variant stops it. Mend that first.")
               : notComparedText(judgement);
}

} // namespace quadrille::app
