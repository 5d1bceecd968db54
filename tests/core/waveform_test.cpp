// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/waveform.h"

#include <gtest/gtest.h>

using namespace quadrille;

// Common practice, no source.
TEST(Waveform, OnlyBalancedCurrentsMayBeUsedAtHome)
{
    EXPECT_TRUE(isChargeBalanced(Waveform::symmetricBiphasic));
    EXPECT_TRUE(isChargeBalanced(Waveform::asymmetricBalancedBiphasic));
    EXPECT_TRUE(isChargeBalanced(Waveform::kilohertzBursts));
    EXPECT_FALSE(isChargeBalanced(Waveform::unbalancedPulses));
    EXPECT_FALSE(isChargeBalanced(Waveform::directCurrent));
}
