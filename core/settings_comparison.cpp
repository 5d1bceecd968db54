// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/settings_comparison.h"

#include "core/limits.h"

#include <algorithm>
#include <cassert>
#include <iterator>

namespace quadrille
{

namespace
{

using Value = std::optional<Amount>;

Amount ratioOf(double value)
{
    return {value, Unit::none};
}

Value timingValue(ComparedFigure figure, const SessionTiming& timing)
{
    switch (figure) {
    case ComparedFigure::onPhase:
        return amountOf(timing.onPhase);
    case ComparedFigure::plateau:
        return amountOf(timing.plateau);
    case ComparedFigure::cycle:
        return amountOf(timing.cycle);
    case ComparedFigure::sessionLength:
        return amountOf(timing.session);
    case ComparedFigure::contractionsStarted:
        return countOf(timing.contractionsStarted);
    case ComparedFigure::contractionsCompleted:
        return countOf(timing.contractionsCompleted);
    case ComparedFigure::totalOnTime:
        return amountOf(timing.totalOnTime);
    case ComparedFigure::dutyCycle:
        return ratioOf(timing.dutyCycle());
    case ComparedFigure::offOnRatio:
        return ratioOf(timing.offOnRatio());
    case ComparedFigure::pulses:
        return countOf(timing.pulses);
    default:
        return std::nullopt;
    }
}

Value doseValue(ComparedFigure figure, const Dose& dose)
{
    switch (figure) {
    case ComparedFigure::phaseCharge:
        return amountOf(dose.phaseCharge);
    case ComparedFigure::chargeDensity:
        return amountOf(dose.chargeDensity);
    case ComparedFigure::rmsTrain:
        return amountOf(dose.rmsTrain);
    case ComparedFigure::rmsCycle:
        return amountOf(dose.rmsCycle);
    case ComparedFigure::currentDensity:
        return amountOf(dose.currentDensity);
    case ComparedFigure::powerDensityTrain:
        return amountOf(dose.powerDensityTrain);
    case ComparedFigure::powerDensityCycle:
        return amountOf(dose.powerDensityCycle);
    default:
        return std::nullopt;
    }
}

Value weekValue(ComparedFigure figure, const WeekFigures& week)
{
    switch (figure) {
    case ComparedFigure::weekContractions:
        return countOf(week.contractionsCompleted);
    case ComparedFigure::weekOnTime:
        return amountOf(week.onTime);
    case ComparedFigure::weekPulses:
        return countOf(week.pulses);
    case ComparedFigure::weekCharge:
        return week.charge ? Value(amountOf(*week.charge)) : std::nullopt;
    default:
        return std::nullopt;
    }
}

Value fatigueValue(ComparedFigure figure, const FatiguePrediction& prediction)
{
    const auto part = [](const std::optional<FatigueRatio>& ratio, double FatigueRatio::*which) {
        return ratio ? Value(ratioOf((*ratio).*which)) : std::nullopt;
    };
    switch (figure) {
    case ComparedFigure::fatigueRatioIntegral:
        return part(prediction.lastToFirst, &FatigueRatio::forceTimeIntegral);
    case ComparedFigure::fatigueRatioPeak:
        return part(prediction.lastToFirst, &FatigueRatio::peak);
    case ComparedFigure::fatigueRatioIntegralOfThree:
        return part(prediction.lastThreeToFirstThree, &FatigueRatio::forceTimeIntegral);
    case ComparedFigure::fatigueRatioPeakOfThree:
        return part(prediction.lastThreeToFirstThree, &FatigueRatio::peak);
    default:
        return std::nullopt;
    }
}

void append(std::vector<Finding>& to, const std::vector<Finding>& from)
{
    std::ranges::copy(from, std::back_inserter(to));
}

/// `memory`: none where the model is not asked.
Result<ComparedCase> figuresOf(const SettingsCase& given, FatigueMemory* memory,
                               const FatigueOptions& options)
{
    const Result<SessionTiming> timing = sessionTiming(given.settings, given.habit, given.start);
    if (!timing) {
        Error error = timing.error();
        error.subject = given.name;
        return error;
    }
    ComparedCase result;
    result.name = given.name;
    append(result.findings, settingsFindings(given.settings, given.habit, given.start));
    append(result.findings, timingFindings(*timing));
    std::optional<Dose> dose;
    if (const auto amplitude = doseAmplitude(given.settings.amplitude);
        amplitude && given.smallerPad) {
        dose = doseOf(given.settings, *amplitude, *given.smallerPad, *timing);
        append(result.findings, doseFindings(given.settings, *dose));
    }
    std::optional<WeekFigures> week;
    if (given.sessionsPerWeek) {
        week = weekOf(*timing, *given.sessionsPerWeek,
                      dose ? std::optional(dose->phaseCharge) : std::nullopt);
    }
    std::optional<FatiguePrediction> prediction;
    if (memory != nullptr) {
        if (auto predicted =
                memory->predict(withoutLead(given.settings, *timing), given.habit, options)) {
            prediction = *std::move(predicted);
        }
        result.limits = modelLimits(given.settings, options);
    }
    result.isInModel = prediction.has_value();
    for (const ComparedFigure figure : comparedFigures()) {
        Value value = timingValue(figure, *timing);
        if (!value && dose) {
            value = doseValue(figure, *dose);
        }
        if (!value && week) {
            value = weekValue(figure, *week);
        }
        if (!value && prediction) {
            value = fatigueValue(figure, *prediction);
        }
        result.values.push_back({figure, value, std::nullopt});
    }
    sortBySeverity(result.findings);
    return result;
}

Result<std::vector<ComparedCase>> compare(const std::vector<SettingsCase>& cases,
                                          FatigueMemory* memory, const FatigueOptions& options)
{
    std::vector<ComparedCase> compared;
    for (const SettingsCase& given : cases) {
        Result<ComparedCase> figures = figuresOf(given, memory, options);
        if (!figures) {
            return figures.error();
        }
        if (!compared.empty()) {
            const SettingsCase& first = cases.front();
            figures->model = modelComparability(first.settings, first.habit, given.settings,
                                                given.habit, options.phaseDurationRecruits);
            for (std::size_t i = 0; i < figures->values.size(); ++i) {
                ComparedValue& value = figures->values[i];
                const ComparedValue& base = compared.front().values[i];
                const bool mayJudge = !isModelFigure(value.figure) || figures->model.isAllowed();
                if (value.value && base.value && mayJudge) {
                    value.difference = value.value->value - base.value->value;
                }
            }
        }
        compared.push_back(*std::move(figures));
    }
    return compared;
}

} // namespace

const std::vector<ComparedFigure>& comparedFigures()
{
    static const std::vector<ComparedFigure> all = [] {
        std::vector<ComparedFigure> figures;
        const int last = static_cast<int>(ComparedFigure::fatigueRatioPeakOfThree);
        for (int i = 0; i <= last; ++i) {
            figures.push_back(static_cast<ComparedFigure>(i));
        }
        return figures;
    }();
    return all;
}

bool isModelFigure(ComparedFigure figure)
{
    return figure >= ComparedFigure::fatigueRatioIntegral;
}

const ComparedValue& ComparedCase::value(ComparedFigure figure) const
{
    const auto found = std::ranges::find(values, figure, &ComparedValue::figure);
    assert(found != values.end());
    return *found;
}

Result<std::vector<ComparedCase>> compareSettings(const std::vector<SettingsCase>& cases,
                                                  FatigueMemory& memory,
                                                  const FatigueOptions& options)
{
    return compare(cases, &memory, options);
}

Result<std::vector<ComparedCase>> compareWithoutModel(const std::vector<SettingsCase>& cases)
{
    return compare(cases, nullptr, {});
}

} // namespace quadrille
