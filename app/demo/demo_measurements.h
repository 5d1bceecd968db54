// SPDX-License-Identifier: GPL-3.0-or-later
// What the demo's patients were measured with and which pads they got. All of it is invented.
#pragma once

#include "core/course.h"
#include "core/electrode_set.h"
#include "core/measurement.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// The values of one visit, without course and day.
struct DemoVisit {
    int week =
        1; ///< held on the working day before this week of the course begins; 1: the first visit
    std::vector<Measurement> values;
};

/// A set of pads, handed out on the working day before a week begins.
struct DemoPads {
    int week = 1;
    std::optional<int> outOfUseWeek = std::nullopt;
    ElectrodeSet set;
};

/// A visit after a knee operation, in the units of the screen.
struct KneeValues {
    std::vector<double> torque;       ///< trials of the treated side, N·m
    double otherTorque = 0.0;         ///< N·m
    double stimulated = 0.0;          ///< N·m; 0: not measured
    int lag = 0;                      ///< degrees
    int bend = 0;                     ///< degrees
    int otherBend = 0;                ///< degrees
    int painAtRest = 0;               ///< 0 … 10
    int painUnderLoad = 0;            ///< 0 … 10
    std::vector<double> upAndGo = {}; ///< trials, s
    int chairStands = 0;              ///< 0: not measured
};
DemoVisit kneeVisit(int week, TreatedSide treated, const KneeValues& values);

/// Two pads a channel, both channels.
DemoPads selfAdhesivePads(int week, const std::string& place, Length width, Length height);
DemoPads rubberPads(int week, const std::string& place, ElectrodeType type);

} // namespace quadrille::app
