// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_measurements.h"

#include <cmath>

namespace quadrille::app
{

namespace
{

using namespace literals;

const std::string gauge = "hand-held gauge, strap";
const std::string sixty = "knee at 60°";

std::int64_t thousandthsOf(double value)
{
    return static_cast<std::int64_t>(std::llround(value * 1e3));
}

Measurement valueOf(std::string_view key, Side side, const std::vector<double>& trials,
                    const std::string& method = {}, const std::string& subject = {})
{
    const MeasurementKind& kind = *measurementKind(key);
    Measurement made;
    made.kind = key;
    made.subject = subject;
    made.side = side;
    made.unit = kind.unit;
    made.method = method;
    for (const double trial : trials) {
        made.trials.push_back(thousandthsOf(trial));
    }
    if (const auto counts = valueOfTrials(kind.trials, kind.better, made.trials)) {
        made.counted = kind.trials;
        made.thousandths = *counts;
    } else {
        made.thousandths = made.trials.front();
        made.trials.clear();
    }
    return made;
}

Measurement torqueOf(std::string_view key, Side side, const std::vector<double>& trials)
{
    Measurement torque = valueOf(key, side, trials, sixty, "quadriceps");
    torque.device = gauge;
    return torque;
}

} // namespace

DemoVisit kneeVisit(int week, TreatedSide treated, const KneeValues& values)
{
    const Side side = treated == TreatedSide::left ? Side::left : Side::right;
    const Side other = side == Side::left ? Side::right : Side::left;
    DemoVisit visit{.week = week, .values = {}};
    const auto add = [&](Measurement value) { visit.values.push_back(std::move(value)); };
    add(torqueOf(isometricTorque, side, values.torque));
    add(torqueOf(isometricTorque, other, {values.otherTorque}));
    if (values.stimulated > 0.0) {
        add(torqueOf(stimulatedTorque, side, {values.stimulated}));
    }
    add(valueOf("extensor_lag", side, {static_cast<double>(values.lag)}, "sitting"));
    const std::string lying = "active, lying";
    add(valueOf("range_of_motion", side, {static_cast<double>(values.bend)}, lying,
                "knee flexion"));
    add(valueOf("range_of_motion", other, {static_cast<double>(values.otherBend)}, lying,
                "knee flexion"));
    add(valueOf("pain_at_rest", Side::middle, {static_cast<double>(values.painAtRest)}));
    add(valueOf("pain_under_load", Side::middle, {static_cast<double>(values.painUnderLoad)},
                "stairs down"));
    if (!values.upAndGo.empty()) {
        add(valueOf("timed_up_and_go", Side::middle, values.upAndGo));
    }
    if (values.chairStands > 0) {
        add(valueOf("chair_stands_30_s", Side::middle, {static_cast<double>(values.chairStands)},
                    "seat 44 cm, arms crossed"));
    }
    return visit;
}

DemoPads selfAdhesivePads(int week, const std::string& place, Length width, Length height)
{
    ElectrodeSet set;
    set.description = place;
    set.pads = 4;
    set.type = ElectrodeType::selfAdhesive;
    set.shape = PadShape::rectangle;
    set.width = width;
    set.height = height;
    set.life = usualLife(*set.type);
    return {.week = week, .outOfUseWeek = std::nullopt, .set = set};
}

DemoPads rubberPads(int week, const std::string& place, ElectrodeType type)
{
    DemoPads pads = selfAdhesivePads(week, place, 80_mm, 130_mm);
    pads.set.pads = 2;
    pads.set.type = type;
    pads.set.life = usualLife(type);
    return pads;
}

} // namespace quadrille::app
