// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fatigue_parameters.h"

namespace quadrille
{

const FatigueParameters& ableBodiedKneeExtensors()
{
    return fatigueParameterSets().front();
}

const std::vector<FatigueParameters>& fatigueParameterSets()
{
    static const std::vector<FatigueParameters> sets{
        {.name = "able-bodied knee extensors",
         .source = {"Ding, Wexler, Binder-Macleod, J Appl Physiol 2000;88:917 and J Electromyogr "
                    "Kinesiol 2003;13:575, read in later papers that quote them"},
         .activationTime = 20.0,
         .forceScaleAtRest = 3.009,
         .halfActivationAtRest = 0.103,
         .relaxationTimeAtRest = 50.957,
         .crossBridgeTime = 60.0,
         .recoveryTime = 127'000.0,
         .forceScalePerImpulse = -4.0e-7,
         .halfActivationPerImpulse = 1.9e-8,
         .relaxationPerImpulse = 2.1e-5,
         .pulseAfterPulse = 1.04,
         .leastPhaseDuration = 131.405,
         .phaseDurationScale = 194.138,
         .fullPhaseDuration = 600.0}};
    return sets;
}

} // namespace quadrille
