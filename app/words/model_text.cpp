// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/model_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct ModelWords {
    Q_DECLARE_TR_FUNCTIONS(ModelWords)
};

} // namespace

QString modelMark()
{
    return ModelWords::tr("model, group values, not this patient");
}

QString modelPendingText()
{
    return ModelWords::tr("The model is still computing.");
}

QString modelLimitText(ModelLimit limit)
{
    switch (limit) {
    case ModelLimit::groupValuesNotThisPatient:
        return ModelWords::tr(
            "The fatigue ratios come from a model with group values, not from this patient.");
    case ModelLimit::comparesSettingsOnly:
        return ModelWords::tr("They serve only to compare settings that differ in off time or "
                              "session length; they do not predict what a muscle will lose.");
    case ModelLimit::isometricOnly:
        return ModelWords::tr("The model is of isometric knee extension in healthy adults: no "
                              "movement, pain, skin, drifting pads or denervated muscle.");
    case ModelLimit::amplitudeNotInModel:
        return ModelWords::tr("Amplitude does not enter the model.");
    case ModelLimit::minutesExtrapolated:
        return ModelWords::tr("The model was measured over minutes; a session of this length is "
                              "extrapolated, and looks alike after about 8 minutes.");
    case ModelLimit::frequencyExtrapolated:
        return ModelWords::tr("The model was measured from 10 to 100 Hz; this pulse frequency is "
                              "extrapolated.");
    case ModelLimit::noLastingFatigue:
        return ModelWords::tr("It knows no fatigue that lasts for hours or days and no training.");
    case ModelLimit::phaseDurationUncertain:
        return ModelWords::tr("How phase duration recruits was measured in other muscles than "
                              "these and sets in too late for able-bodied adults.");
    }
    return {};
}

QString modelRefusalText(ModelRefusal refusal)
{
    switch (refusal) {
    case ModelRefusal::frequencyDiffers:
        return ModelWords::tr("Pulse frequency differs: the model does not show that a lower "
                              "frequency at equal force tires less, so it misleads here.");
    case ModelRefusal::onPhaseDiffers:
        return ModelWords::tr("The on phase differs: the model favours longer contractions at the "
                              "same off : on ratio, experiments do not, so it misleads here.");
    case ModelRefusal::recruitmentDiffers:
        return ModelWords::tr("Recruitment differs: the model says that less recruited muscle "
                              "tires less, recruited fibres do not, so it misleads here.");
    case ModelRefusal::rampsDiffer:
        return ModelWords::tr("Ramps differ: they change recruitment during the contraction, which "
                              "the model must not judge.");
    case ModelRefusal::waveformDiffers:
        return ModelWords::tr("The waveform differs: the model knows none.");
    case ModelRefusal::pulseFormDiffers:
        return ModelWords::tr("The form of the pulse differs: the model knows none.");
    }
    return {};
}

std::vector<QString> modelIgnoredText(const ModelComparability& comparability)
{
    std::vector<QString> texts;
    if (comparability.amplitudeIgnored) {
        texts.push_back(ModelWords::tr(
            "Amplitudes differ too; the model takes no notice of them, the muscle does."));
    }
    if (comparability.phaseDurationIgnored) {
        texts.push_back(ModelWords::tr(
            "Phase durations differ too; the model takes no notice of them, the muscle does."));
    }
    return texts;
}

QString noFatigueRatioText(const FatigueStep& step)
{
    if (!step.missing) {
        return {};
    }
    switch (*step.missing) {
    case NoFatigueRatio::noBlockBefore:
        return ModelWords::tr("The model only compares: there is no block before this one.");
    case NoFatigueRatio::muscleNotBefore:
        return ModelWords::tr("The model only compares: the block before has no site on this "
                              "muscle.");
    case NoFatigueRatio::cannotRun:
        return ModelWords::tr("Nothing to compare while a value of this block or of the one before "
                              "stops it.");
    case NoFatigueRatio::outsideModel:
        return notInModelText();
    case NoFatigueRatio::modelMisleads:
        break;
    }
    QStringList refusals;
    for (const ModelRefusal refusal : step.comparability.refusals) {
        refusals.append(modelRefusalText(refusal));
    }
    return refusals.join(QLatin1Char(' '));
}

QString notInModelText()
{
    return ModelWords::tr("The model does not know these settings: it covers biphasic pulses from "
                          "1 to 150 Hz, at most 30,000 in a contraction and no more than 150 "
                          "contractions a second, and no kHz bursts.");
}

} // namespace quadrille::app
