// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/contraction_run.h"

#include <algorithm>
#include <cmath>

namespace quadrille
{

double PulseTrain::shareAt(double time) const
{
    double share = 1.0;
    if (rampUp > 0.0) {
        share = std::min(share, time / rampUp);
    }
    if (rampDown > 0.0) {
        share = std::min(share, (onPhase - time) / rampDown);
    }
    return recruitedShare * std::max(share, 0.0);
}

StepLadder::StepLadder(double top, double activationTime)
    : m_top(top)
{
    double length = top;
    for (StepTable& step : m_steps) {
        step = StepTable(length, activationTime);
        length /= 2.0;
    }
}

} // namespace quadrille
