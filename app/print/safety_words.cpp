// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/safety_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

struct SafetyWords {
    Q_DECLARE_TR_FUNCTIONS(SafetyWords)
};

QString useText(Caution caution)
{
    switch (caution) {
    case Caution::onlyAsShownOnThisPerson:
        return SafetyWords::tr("Use it only as shown, on the person it was set up for.");
    case Caution::neverHeadFaceOrNeck:
        return SafetyWords::tr("Never on the head or face, nor on the front or side of the neck.");
    case Caution::neverAcrossChest:
        return SafetyWords::tr(
            "Never across the chest: not one pad on each side, not chest to back.");
    case Caution::neverOverBrokenSkin:
        return SafetyWords::tr("Never over broken or sore skin.");
    case Caution::stimulatorsOwnInstructionsFirst:
        return SafetyWords::tr("Follow the stimulator’s own instructions as well.");
    case Caution::noSubstituteForAdvice:
        return SafetyWords::tr("These pages do not replace the advice of a licensed practitioner.");
    case Caution::keepFromChildren:
        return SafetyWords::tr("Keep it away from children.");
    case Caution::skinCleanDryWhole:
        return SafetyWords::tr("Skin clean, dry and whole. No cream.");
    case Caution::padsStillSticky:
        return SafetyWords::tr("Pads still sticky all over.");
    case Caution::padsMoistAndFirm:
        return SafetyWords::tr("Rubber pads evenly moist and held firmly.");
    case Caution::cablesWhole:
        return SafetyWords::tr("Cables and plugs whole.");
    case Caution::startAtZero:
        return SafetyWords::tr("Every channel at zero before you switch on.");
    case Caution::notWhileDrivingBathingAsleep:
        return SafetyWords::tr("Not while driving, using machines, bathing or asleep.");
    default:
        return {};
    }
}

QString watchText(Caution caution)
{
    switch (caution) {
    case Caution::strongIsRightSharpIsNot:
        return SafetyWords::tr("Strong is right. Sharp, burning or stinging is not: switch off.");
    case Caution::turnDownBeforeTouchingPads:
        return SafetyWords::tr("Turn down to zero before you touch a pad.");
    case Caution::suddenChangeSwitchOff:
        return SafetyWords::tr("If it suddenly feels weaker or stronger, switch off and ring us.");
    case Caution::pinkFadesWithinHour:
        return SafetyWords::tr("Pink skin that fades within an hour is normal.");
    case Caution::soreForTwoDays:
        return SafetyWords::tr("Sore muscles for a day or two are normal.");
    case Caution::padsBackAway:
        return SafetyWords::tr("Put the pads away clean, as their packet says.");
    case Caution::skinStillRedOrBlistered:
        return SafetyWords::tr(
            "the skin is still red after an hour, or has a blister, burn or sore");
    case Caution::jointSwollenHotOrWorse:
        return SafetyWords::tr("a joint swells, gets hot, or hurts more each day");
    case Caution::oneLimbSwollenOrPainful:
        return SafetyWords::tr("one calf or one arm swells or hurts");
    case Caution::faintOrOddHeartbeat:
        return SafetyWords::tr("you feel faint, or your heart beats oddly");
    case Caution::stillSoreOnThirdDay:
        return SafetyWords::tr("your muscles are still sore on the third day");
    case Caution::healthChanged:
        return SafetyWords::tr("your health has changed: an operation, an implant, a pregnancy");
    case Caution::inDoubt:
        return SafetyWords::tr("you are in doubt: do not move a pad or change a setting yourself");
    default:
        return {};
    }
}

SafetyList list(const QString& heading, ListMark mark, const std::vector<Caution>& cautions)
{
    SafetyList list{heading, mark, {}};
    std::ranges::transform(cautions, std::back_inserter(list.items), cautionText);
    return list;
}

} // namespace

QString cautionText(Caution caution)
{
    const QString use = useText(caution);
    return use.isEmpty() ? watchText(caution) : use;
}

SafetyText safetyText(const HandoutContent& content)
{
    const HandoutCautions& cautions = content.cautions;
    SafetyText safety;
    safety.title = SafetyWords::tr("Doing it safely");
    safety.stopTitle = SafetyWords::tr("When to stop");
    safety.lists = {list(SafetyWords::tr("Always"), ListMark::square, cautions.always),
                    list(SafetyWords::tr("Before"), ListMark::box, cautions.before),
                    list(SafetyWords::tr("During"), ListMark::square, cautions.during),
                    list(SafetyWords::tr("After"), ListMark::square, cautions.after)};
    for (const GateAdvice& advice : content.advice) {
        // In the order of AdvicePlace, behind the list of what is always so.
        safety.lists[1 + static_cast<std::size_t>(advice.place)].items.push_back(
            QString::fromStdString(advice.advice).simplified());
    }
    safety.stop =
        list(SafetyWords::tr("Stop, and ring us, if"), ListMark::diamond, cautions.stopAndRing);

    RingText practice;
    practice.who = typedText(content.practice.name);
    if (practice.who.isEmpty()) {
        practice.who = SafetyWords::tr("Your practice");
    }
    practice.number = typedText(content.practice.telephone);
    if (!content.planIssuedBy.empty()) {
        practice.below = SafetyWords::tr("Ask for %1.").arg(typedText(content.planIssuedBy));
    }
    RingText emergency;
    emergency.who = SafetyWords::tr("Chest pain, hard to breathe");
    emergency.number = typedText(content.practice.emergencyNumber);
    emergency.below = SafetyWords::tr("Switch off, pads off, ring at once.");
    safety.ring = {practice, emergency};
    return safety;
}

} // namespace quadrille::app
