// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/trade_words.h"

#include "app/words/quantity_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct TradeWords {
    Q_DECLARE_TR_FUNCTIONS(TradeWords)
};

QString settingName(Field field)
{
    switch (field) {
    case Field::waveform:
        return TradeWords::tr("Waveform");
    case Field::pulseFrequency:
        return TradeWords::tr("Pulse frequency");
    case Field::phaseDuration:
        return TradeWords::tr("Phase duration");
    case Field::interphaseGap:
        return TradeWords::tr("Gap between phases");
    case Field::secondPhaseDuration:
        return TradeWords::tr("Second phase");
    case Field::carrierFrequency:
        return TradeWords::tr("Carrier frequency");
    case Field::burstDuty:
        return TradeWords::tr("Burst duty");
    case Field::onTime:
        return TradeWords::tr("On time");
    case Field::offTime:
        return TradeWords::tr("Off time");
    case Field::rampUp:
        return TradeWords::tr("Ramp up");
    case Field::rampDown:
        return TradeWords::tr("Ramp down");
    case Field::sessionLength:
        return TradeWords::tr("Session");
    case Field::lastToleratedAmplitude:
        return TradeWords::tr("Last tolerated");
    case Field::amplitudeCeiling:
        return TradeWords::tr("Ceiling");
    default:
        return {};
    }
}

QString planFieldName(Field field)
{
    switch (field) {
    case Field::weeks:
        return TradeWords::tr("Weeks");
    case Field::weekdays:
        return TradeWords::tr("Days");
    case Field::sessionsPerDay:
        return TradeWords::tr("Sessions per day");
    case Field::muscle:
        return TradeWords::tr("Muscle");
    case Field::side:
        return TradeWords::tr("Side");
    case Field::channel:
        return TradeWords::tr("Channel");
    case Field::padSize:
        return TradeWords::tr("Pads");
    case Field::position:
        return TradeWords::tr("Position");
    case Field::instruction:
        return TradeWords::tr("Instruction");
    case Field::stimulator:
        return TradeWords::tr("Stimulator");
    case Field::outputType:
        return TradeWords::tr("Output");
    case Field::channels:
        return TradeWords::tr("Channels");
    case Field::askingOrder:
        return TradeWords::tr("Order of settings");
    case Field::mostOutput:
        return TradeWords::tr("Maximum output");
    case Field::memories:
        return TradeWords::tr("Memories");
    case Field::ownWord:
        return TradeWords::tr("Word on the unit");
    default:
        return {};
    }
}

QString recordFieldName(Field field)
{
    switch (field) {
    case Field::name:
        return TradeWords::tr("Name");
    case Field::reference:
        return TradeWords::tr("Reference");
    case Field::birthDate:
        return TradeWords::tr("Date of birth");
    case Field::telephone:
        return TradeWords::tr("Telephone");
    case Field::address:
        return TradeWords::tr("Address");
    case Field::registrationNumber:
        return TradeWords::tr("Registration number");
    case Field::initials:
        return TradeWords::tr("Initials");
    case Field::problem:
        return TradeWords::tr("Problem");
    case Field::startDate:
        return TradeWords::tr("Start date");
    case Field::endDate:
        return TradeWords::tr("Last day");
    case Field::fromDate:
        return TradeWords::tr("In force from");
    case Field::reason:
        return TradeWords::tr("Reason");
    case Field::practitioner:
        return TradeWords::tr("Practitioner");
    case Field::threshold:
        return TradeWords::tr("Threshold");
    case Field::inventoryNumber:
        return TradeWords::tr("Inventory number");
    case Field::dueBack:
        return TradeWords::tr("Due back");
    case Field::givenBack:
        return TradeWords::tr("Given back");
    default:
        return {};
    }
}

} // namespace

QString fieldName(Field field, Waveform waveform)
{
    if (field == Field::pulseFrequency && waveform == Waveform::kilohertzBursts) {
        return TradeWords::tr("Burst rate");
    }
    for (const auto& name : {settingName(field), planFieldName(field), recordFieldName(field)}) {
        if (!name.isEmpty()) {
            return name;
        }
    }
    return {};
}

QString waveformName(Waveform waveform)
{
    switch (waveform) {
    case Waveform::symmetricBiphasic:
        return TradeWords::tr("Symmetric biphasic");
    case Waveform::asymmetricBalancedBiphasic:
        return TradeWords::tr("Asymmetric biphasic, balanced");
    case Waveform::kilohertzBursts:
        return TradeWords::tr("Bursts of kHz current");
    case Waveform::unbalancedPulses:
        return TradeWords::tr("Unbalanced pulses");
    case Waveform::directCurrent:
        return TradeWords::tr("Direct current");
    }
    return {};
}

QString rampHabitName(RampHabit habit)
{
    return habit == RampHabit::includedInOnTime ? TradeWords::tr("ramps inside the on time")
                                                : TradeWords::tr("ramps added to the on time");
}

QString cycleStartName(CycleStart start)
{
    return start == CycleStart::withOn ? TradeWords::tr("with an on time")
                                       : TradeWords::tr("with an off time");
}

QString usageCounterName(UsageCounter counter)
{
    switch (counter) {
    case UsageCounter::none:
        return TradeWords::tr("none");
    case UsageCounter::uses:
        return TradeWords::tr("uses");
    case UsageCounter::time:
        return TradeWords::tr("time");
    case UsageCounter::usesAndTime:
        return TradeWords::tr("uses and time");
    }
    return {};
}

QString sideName(Side side)
{
    switch (side) {
    case Side::left:
        return TradeWords::tr("left");
    case Side::right:
        return TradeWords::tr("right");
    case Side::middle:
        return {};
    }
    return {};
}

QString padMaterialName(PadMaterial material)
{
    return material == PadMaterial::selfAdhesive ? TradeWords::tr("self-adhesive")
                                                 : TradeWords::tr("carbon rubber");
}

QString padSize(const Pad& pad, const QuantityText& text)
{
    if (pad.shape == PadShape::round) {
        return TradeWords::tr("round %1").arg(text.amount(amountOf(pad.width)));
    }
    return text.count(pad.width.count()) + noBreakSpace() + QStringLiteral("×") + noBreakSpace() +
           text.amount(amountOf(pad.height));
}

QString siteName(const Site& site)
{
    const QString muscle = QString::fromStdString(site.muscle);
    const QString side = sideName(site.side);
    return side.isEmpty() ? muscle : TradeWords::tr("%1, %2", "muscle, side").arg(muscle, side);
}

QString scheduleName(const Schedule& schedule, const QuantityText& text)
{
    if (const auto* any = std::get_if<DaysPerWeek>(&schedule)) {
        return TradeWords::tr("%n day(s) a week, any", nullptr, any->days);
    }
    const WeekdaySet days = std::get<WeekdaySet>(schedule);
    if (days == WeekdaySet::everyDay()) {
        return TradeWords::tr("every day");
    }
    QStringList names;
    for (unsigned day = 1; day <= 7; ++day) {
        if (days.contains(Weekday(day))) {
            names.append(text.shortWeekday(Weekday(day)));
        }
    }
    return names.join(QStringLiteral(", "));
}

QString timesADay(int sessions)
{
    switch (sessions) {
    case 1:
        return TradeWords::tr("once a day");
    case 2:
        return TradeWords::tr("twice a day");
    default:
        return TradeWords::tr("%n times a day", nullptr, sessions);
    }
}

QString daysOfWeek(int days)
{
    return TradeWords::tr("%n day(s)", nullptr, days);
}

QString years(int age)
{
    return TradeWords::tr("%n year(s)", nullptr, age);
}

QString weeksName(CourseWeek first, int weeks)
{
    if (weeks == 1) {
        return TradeWords::tr("week %1").arg(first.number);
    }
    return TradeWords::tr("weeks %1–%2").arg(first.number).arg(first.number + weeks - 1);
}

} // namespace quadrille::app
