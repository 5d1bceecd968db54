// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/finding_text.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct FindingWords {
    Q_DECLARE_TR_FUNCTIONS(FindingWords)
};

struct Gaps {
    QString field;
    QString figure;
    QString limit;
};

QString settingSentence(FindingCode code, const Gaps& gaps)
{
    switch (code) {
    case FindingCode::notFilled:
        return FindingWords::tr("%1 is empty.").arg(gaps.field);
    case FindingCode::outsideArithmetic:
        return FindingWords::tr("%1 of %2 is outside what can be calculated (limit %3).")
            .arg(gaps.field, gaps.figure, gaps.limit);
    case FindingCode::pulsesOverlap:
        return FindingWords::tr(
                   "One pulse takes %1, but the next one comes after %2: the pulses overlap.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::noPlateauLeft:
        return FindingWords::tr("Both ramps together take %1, the on time that holds them is %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::plateauIsZero:
        return FindingWords::tr(
            "The ramps fill the whole on time: full strength is reached for an instant only.");
    case FindingCode::noOffTime:
        return FindingWords::tr("Without off time there are no contractions to count.");
    case FindingCode::sessionShorterThanOn:
        return FindingWords::tr("A session of %1 ends before the first contraction (%2) does.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::lastContractionCut:
        return FindingWords::tr("The session ends %1 into a contraction of %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::ceilingBelowTolerated:
        return FindingWords::tr("The ceiling of %1 lies below the last tolerated %2.")
            .arg(gaps.figure, gaps.limit);
    default:
        return {};
    }
}

QString stimulatorSentence(FindingCode code, const Gaps& gaps)
{
    switch (code) {
    case FindingCode::outsideStimulator:
        return FindingWords::tr("%1 of %2 is outside what this stimulator offers (limit %3).")
            .arg(gaps.field, gaps.figure, gaps.limit);
    case FindingCode::offStep:
        return FindingWords::tr(
                   "%1 of %2 lies between two steps of this stimulator; the nearest is %3.")
            .arg(gaps.field, gaps.figure, gaps.limit);
    case FindingCode::waveformNotOffered:
        return FindingWords::tr("This stimulator does not give the chosen waveform.");
    case FindingCode::channelNotThere:
        return FindingWords::tr("This stimulator has %1 channel(s), not %2.")
            .arg(gaps.limit, gaps.figure);
    case FindingCode::channelUsedTwice:
        return FindingWords::tr("Channel %1 is used by two sites at once.").arg(gaps.figure);
    case FindingCode::timingMustBeShared:
        return FindingWords::tr(
            "The channels of this stimulator share their timing; the sites of this block differ.");
    case FindingCode::directCurrentUnsuitable:
        return FindingWords::tr("Direct or unbalanced current is not suitable for muscle exercise: "
                                "it can burn the skin.");
    case FindingCode::noWorkRestCycles:
        return FindingWords::tr("This stimulator has no on and off times of its own, so it will "
                                "not do for muscle exercise.");
    default:
        return {};
    }
}

QString unitSentence(const Finding& finding, const Gaps& gaps)
{
    switch (finding.code) {
    case FindingCode::offNeverLongerThanOn:
        return FindingWords::tr("The off time ends at %1 and can’t be longer than an on phase of "
                                "%2: the muscle can’t rest longer than it works.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::phaseShortForLargeMuscles:
        return FindingWords::tr("The phase duration ends at %1; large muscles need %2 or more.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::outputLowForLargeMuscles:
        return FindingWords::tr("It gives %1 at most, which is weak for large muscles (%2 or more "
                                "was used on the quadriceps).")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::safetyCheckOverdue:
        return FindingWords::tr("The safety check of this unit is %n day(s) overdue.", nullptr,
                                static_cast<int>(finding.figure ? finding.figure->value : 0));
    case FindingCode::unitOfAnotherKind:
        return FindingWords::tr("This unit is of another kind than the stimulator that the course "
                                "is planned for.");
    case FindingCode::courseHasAUnit:
        return FindingWords::tr("This course has a unit already.");
    default:
        return {};
    }
}

QString doseSentence(FindingCode code, const Gaps& gaps)
{
    switch (code) {
    case FindingCode::currentDensityHigh:
        return FindingWords::tr(
                   "Current density %1 is over %2: take special care, this level is not a ban.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::rmsCurrentHigh:
        return FindingWords::tr("The r.m.s. current of %1 is over %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::pulseEnergyHigh:
        return FindingWords::tr("One pulse carries %1 into 500 ohm, over %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::powerDensityHigh:
        return FindingWords::tr("Power density %1 is over %2.").arg(gaps.figure, gaps.limit);
    case FindingCode::onTimeUnderOneSecond:
        return FindingWords::tr("An on phase of %1 is shorter than %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::offTimeUnderOneSecond:
        return FindingWords::tr("An off time of %1 is shorter than %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::offShorterThanOn:
        return FindingWords::tr("The off time (%1) is shorter than the on phase (%2): the muscle "
                                "rests less than it works.")
            .arg(gaps.figure, gaps.limit);
    default:
        return {};
    }
}

QString planSentence(FindingCode code, const Gaps& gaps)
{
    switch (code) {
    case FindingCode::noSites:
        return FindingWords::tr("This block has no site.");
    case FindingCode::noPads:
        return FindingWords::tr(
            "This site needs a pad on each of the two leads, with sides of 5 to 400 mm.");
    case FindingCode::noWeekdays:
        return FindingWords::tr("No day of the week is chosen.");
    case FindingCode::onTimeStepLarge:
        return FindingWords::tr("The on time per week grows by %1 against the block before (a "
                                "large step is over %2).")
            .arg(gaps.figure, gaps.limit);
    default:
        return {};
    }
}

QString curveSentence(FindingCode code, const Gaps& gaps)
{
    switch (code) {
    case FindingCode::poorFit:
        return FindingWords::tr("The fitted curve misses the thresholds by %1 of their mean "
                                "(r.m.s.; a poor fit is over %2).")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::chronaxieLong:
        return FindingWords::tr("A chronaxie of %1 is over %2, which is unlikely for an innervated "
                                "muscle.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::fitUnchecked:
        return FindingWords::tr("A curve meets the thresholds of %1 phase durations whether the "
                                "law holds or not.")
            .arg(gaps.figure);
    case FindingCode::skinBrokenBefore:
        return FindingWords::tr("The skin is broken where a pad is to lie.");
    case FindingCode::skinBrokenAfter:
        return FindingWords::tr("The skin was broken or blistered after the session.");
    case FindingCode::motorBelowSensory:
        return FindingWords::tr("The motor threshold of %1 lies below the sensory one of %2.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::toleratedBelowMotor:
        return FindingWords::tr("The most tolerated, %1, lies below the motor threshold of %2: no "
                                "contraction is to be expected.")
            .arg(gaps.figure, gaps.limit);
    case FindingCode::noContractionSeen:
        return FindingWords::tr("No contraction was seen.");
    default:
        return {};
    }
}

QString settingAdvice(Advice advice, const Gaps& gaps)
{
    switch (advice) {
    case Advice::setToLimit:
    case Advice::setToNearestStep:
        return gaps.limit.isEmpty()
                   ? FindingWords::tr("Choose another value.")
                   : FindingWords::tr("Set %1, or choose another value.").arg(gaps.limit);
    case Advice::fillIn:
        return FindingWords::tr("Fill it in.");
    case Advice::shortenRampsOrLengthenOn:
        return FindingWords::tr("Shorten the ramps or lengthen the on time.");
    case Advice::lowerFrequencyOrPhase:
        return FindingWords::tr(
            "Lower the pulse frequency or the phase duration; check that µs were meant.");
    case Advice::lengthenOff:
        return FindingWords::tr("Lengthen the off time.");
    case Advice::lengthenSession:
    case Advice::lowerSession:
        return FindingWords::tr("Change the session length.");
    default:
        return {};
    }
}

QString otherAdvice(Advice advice)
{
    switch (advice) {
    case Advice::largerPadOrLessAmplitude:
        return FindingWords::tr("Take a larger pad or a lower ceiling.");
    case Advice::lessAmplitude:
        return FindingWords::tr("Set a lower ceiling.");
    case Advice::chooseAnotherStimulator:
        return FindingWords::tr("Choose another stimulator or make the settings equal.");
    case Advice::chooseAnotherChannel:
        return FindingWords::tr("Choose another channel.");
    case Advice::addSite:
        return FindingWords::tr("Add the muscle to be exercised.");
    case Advice::addPads:
        return FindingWords::tr("Enter the pads.");
    case Advice::chooseWeekdays:
        return FindingWords::tr("Choose at least one day.");
    case Advice::checkStep:
        return FindingWords::tr("Check that the step is meant.");
    case Advice::checkThresholds:
        return FindingWords::tr("Check the thresholds, or measure them again.");
    case Advice::measureMoreDurations:
        return FindingWords::tr("Measure at more phase durations.");
    case Advice::moveOrPostpone:
        return FindingWords::tr("Never over broken skin: move the pad, or wait until it has "
                                "healed.");
    case Advice::stopAndExamine:
        return FindingWords::tr("Stop and examine before anything goes home.");
    case Advice::checkPlacement:
        return FindingWords::tr("Look for the motor point again, or raise the amplitude as "
                                "tolerated.");
    default:
        return {};
    }
}

} // namespace

FindingText findingText(const Finding& finding, const QuantityText& text)
{
    const Gaps gaps{fieldName(finding.field),
                    finding.figure ? text.amount(*finding.figure) : QString(),
                    finding.limit ? text.amount(*finding.limit) : QString()};
    FindingText words;
    for (const QString& sentence :
         {settingSentence(finding.code, gaps), stimulatorSentence(finding.code, gaps),
          unitSentence(finding, gaps), doseSentence(finding.code, gaps),
          planSentence(finding.code, gaps), curveSentence(finding.code, gaps)}) {
        if (!sentence.isEmpty()) {
            words.what = sentence;
        }
    }
    words.advice = settingAdvice(finding.advice, gaps) + otherAdvice(finding.advice);
    if (finding.advice == Advice::chooseAnotherStimulator &&
        finding.code != FindingCode::timingMustBeShared) {
        words.advice = FindingWords::tr("Choose another stimulator.");
    }
    if (!finding.source.name.empty()) {
        const QString name = QString::fromUtf8(finding.source.name.data(),
                                               static_cast<qsizetype>(finding.source.name.size()));
        words.source =
            finding.source.fromMemory
                ? FindingWords::tr("Source: %1; value from memory, not checked against the text.")
                      .arg(name)
                : FindingWords::tr("Source: %1.").arg(name);
    }
    return words;
}

} // namespace quadrille::app
