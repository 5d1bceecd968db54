// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/contraction_run_body.h"
#include "core/force_peak.h"
#include "core/lanes.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace quadrille;

TEST(Lanes, CarryAMuscleEachAsIfItWereAlone)
{
    // Exactly: the same operations in the same order, on steps chosen for the rested muscle.
    const PulseTrain train{20.0, 50, 6000.0, 1000.0, 200.0, 100.0, 1.0};
    ContractionRun<Lanes> together(train, ableBodiedKneeExtensors());
    Muscle<Lanes> muscles;
    for (std::size_t lane = 0; lane < laneCount; ++lane) {
        muscles.unrecoveredImpulse.setLane(lane, 1e6 * static_cast<double>(lane));
    }
    const ContractionForces<Lanes> all = together.run(muscles, 0.0);
    for (std::size_t lane = 0; lane < laneCount; ++lane) {
        ContractionRun<double> alone(train, ableBodiedKneeExtensors());
        Muscle<double> muscle;
        muscle.unrecoveredImpulse = 1e6 * static_cast<double>(lane);
        const ContractionForces<double> one = alone.run(muscle, 0.0);
        EXPECT_NEAR(all.peak.lane(lane) / one.peak, 1.0, 1e-9);
        EXPECT_NEAR(all.impulse.lane(lane) / one.impulse, 1.0, 1e-9);
        EXPECT_NEAR(muscles.unrecoveredImpulse.lane(lane) / muscle.unrecoveredImpulse, 1.0, 1e-9);
    }
}

TEST(ForcePeak, OfAPolynomialOfDegreeFiveIsExact)
{
    // f(t) = 1 + 3 t − 2 t² + 0.3 t³ − 0.1 t⁵ on 0 … 1.2, its maximum by bisection of the
    // derivative.
    const auto at = [](double t) {
        return ForceAt<double>{1 + 3 * t - 2 * t * t + 0.3 * t * t * t - 0.1 * std::pow(t, 5),
                               3 - 4 * t + 0.9 * t * t - 0.5 * std::pow(t, 4),
                               -4 + 1.8 * t - 2.0 * t * t * t};
    };
    double low = 0.0;
    double high = 1.2;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (at(middle).slope > 0.0 ? low : high) = middle;
    }
    EXPECT_NEAR(peakBetween<double>(at(0.0), at(1.2), 1.2), at(low).force, 1e-12);
}
