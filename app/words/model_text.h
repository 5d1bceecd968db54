// SPDX-License-Identifier: GPL-3.0-or-later
// What must be said wherever a figure of the force–fatigue model is shown.
#pragma once

#include "core/block_fatigue.h"
#include "core/fatigue_prediction.h"
#include "core/model_comparability.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// "model, group values, not this patient": stands beside every figure of the model.
QString modelMark();
/// Stands where figures of the model will stand once it has them; one sentence.
QString modelPendingText();
/// One sentence.
QString modelLimitText(ModelLimit limit);
/// Why the model must not judge a difference; one sentence.
QString modelRefusalText(ModelRefusal refusal);
/// What a comparison with the model leaves out of account; one sentence each, empty for none.
std::vector<QString> modelIgnoredText(const ModelComparability& comparability);
/// Why a site has no fatigue ratio; empty where it has one.
QString noFatigueRatioText(const FatigueStep& step);
/// Why the model has no answer for settings at all; one sentence.
QString notInModelText();

} // namespace quadrille::app
