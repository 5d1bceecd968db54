// SPDX-License-Identifier: GPL-3.0-or-later
// Several settings side by side: every figure, and the difference to the first.
#pragma once

#include "core/dose.h"
#include "core/fatigue_memory.h"
#include "core/finding.h"
#include "core/model_comparability.h"
#include "core/plan_figures.h"
#include "core/session_timing.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// What is compared. The order is that of a reader's questions: time, dose, fatigue.
enum class ComparedFigure {
    onPhase,
    plateau,
    cycle,
    sessionLength,
    contractionsStarted,
    contractionsCompleted,
    totalOnTime,
    dutyCycle,
    offOnRatio,
    pulses,
    phaseCharge,
    chargeDensity,
    rmsTrain,
    rmsCycle,
    currentDensity,
    powerDensityTrain,
    powerDensityCycle,
    weekContractions,
    weekOnTime,
    weekPulses,
    weekCharge,
    fatigueRatioIntegral, ///< last / first, force–time integral: the safer one
    fatigueRatioPeak,
    fatigueRatioIntegralOfThree, ///< last three / first three
    fatigueRatioPeakOfThree,
};
const std::vector<ComparedFigure>& comparedFigures();
/// Those that come from the force–fatigue model.
bool isModelFigure(ComparedFigure figure);

/// Settings to compare, as they would be used.
struct SettingsCase {
    std::string name; ///< as the person knows it
    Settings settings;
    RampHabit habit = RampHabit::includedInOnTime;
    std::optional<PadArea> smallerPad = std::nullopt;
    std::optional<std::int64_t> sessionsPerWeek = std::nullopt; ///< ≥ 1
    CycleStart start = CycleStart::withOn;
};

/// One figure of one case.
struct ComparedValue {
    ComparedFigure figure = ComparedFigure::onPhase;
    std::optional<Amount> value = std::nullopt; ///< nothing where it can't be known
    /// Value − value of the first case; nothing for the first one, and where the model must not
    /// judge the difference.
    std::optional<double> difference = std::nullopt;
};

struct ComparedCase {
    std::string name;
    std::vector<ComparedValue> values; ///< in the order of comparedFigures()
    std::vector<Finding> findings;     ///< of the settings, their timing and dose
    ModelComparability model;          ///< against the first case
    std::vector<ModelLimit> limits;    ///< what must be said beside the model's figures
    bool isInModel = false;            ///< the model can run these settings
    const ComparedValue& value(ComparedFigure figure) const;
};

/// Compares with the first of `cases`. Error: the first case that cannot run at all, as
/// sessionTiming() gives it, with its name as subject. Without pad or amplitude there is no dose,
/// without sessions per week no week, outside the model no fatigue ratio; the rest stands.
Result<std::vector<ComparedCase>> compareSettings(const std::vector<SettingsCase>& cases,
                                                  FatigueMemory& memory,
                                                  const FatigueOptions& options = {});

/// The same without asking the model: its figures are nothing, and it takes no time.
Result<std::vector<ComparedCase>> compareWithoutModel(const std::vector<SettingsCase>& cases);

} // namespace quadrille
