// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/exact_decimal.h"

#include <gtest/gtest.h>
#include <limits>
#include <string>

using namespace quadrille::app;

TEST(ExactDecimal, IsAWholeNumberOfBaseUnits)
{
    EXPECT_EQ(countFromDecimal("42.5", 1000), 42'500);
    EXPECT_EQ(countFromDecimal("2.5", 1000), 2'500);
    EXPECT_EQ(countFromDecimal("0.001", 1000), 1);
    EXPECT_EQ(countFromDecimal("300", 1), 300);
    EXPECT_EQ(countFromDecimal("007", 1), 7);
    EXPECT_EQ(countFromDecimal("-1.25", 1000), -1'250);
    EXPECT_EQ(countFromDecimal("0", 1000), 0);
}

TEST(ExactDecimal, RefusesDecimalsThatTheBaseUnitCannotHold)
{
    EXPECT_EQ(countFromDecimal("2.5001", 1000), std::nullopt);
    EXPECT_EQ(countFromDecimal("300.5", 1), std::nullopt);
    EXPECT_EQ(countFromDecimal("2.5000", 1000), 2'500); // zeros say nothing more
    EXPECT_EQ(countFromDecimal("300.00", 1), 300);
}

TEST(ExactDecimal, RefusesWhatIsNoDecimalNumber)
{
    for (const std::string text : {"", "-", ".", "5.", ".5", "1.2.3", "1,5", "1e3", "+5", " 5",
                                   "5 ", "0x10", "nan", "inf", "--1", "1-", "５"}) {
        EXPECT_EQ(countFromDecimal(text, 1000), std::nullopt) << "'" << text << "'";
    }
}

TEST(ExactDecimal, RefusesWhatLeavesSixtyFourBits)
{
    EXPECT_EQ(countFromDecimal("9223372036854775807", 1), std::numeric_limits<std::int64_t>::max());
    EXPECT_EQ(countFromDecimal("9223372036854775808", 1), std::nullopt);
    EXPECT_EQ(countFromDecimal("9223372036854775.807", 1000),
              std::numeric_limits<std::int64_t>::max());
    EXPECT_EQ(countFromDecimal("9223372036854775.808", 1000), std::nullopt);
    EXPECT_EQ(countFromDecimal(std::string(400, '9'), 1000), std::nullopt);
}

TEST(ExactDecimal, IsWrittenWithoutNeedlessZeros)
{
    EXPECT_EQ(decimalFrom(42'500, 1000), QStringLiteral("42.5"));
    EXPECT_EQ(decimalFrom(1, 1000), QStringLiteral("0.001"));
    EXPECT_EQ(decimalFrom(4'000, 1000), QStringLiteral("4"));
    EXPECT_EQ(decimalFrom(0, 1000), QStringLiteral("0"));
    EXPECT_EQ(decimalFrom(-250, 1000), QStringLiteral("-0.25"));
    EXPECT_EQ(decimalFrom(10'625'000, 1'000'000), QStringLiteral("10.625"));
}

TEST(ExactDecimal, ComesBackAsItWasWritten)
{
    for (std::int64_t count = -2'500; count <= 2'500; ++count) {
        ASSERT_EQ(countFromDecimal(decimalFrom(count, 1000).toStdString(), 1000), count);
    }
}
