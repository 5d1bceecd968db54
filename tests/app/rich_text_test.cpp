// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/rich_text.h"

#include <gtest/gtest.h>

using namespace quadrille::app;

TEST(RichText, BoldArgumentsStandWhereTheSentencePutsThem)
{
    const RichText text =
        withBold(QStringLiteral("%2 before %1."), {QStringLiteral("one"), QStringLiteral("two")});
    const RichText expected{{QStringLiteral("two"), true},
                            {QStringLiteral(" before "), false},
                            {QStringLiteral("one"), true},
                            {QStringLiteral("."), false}};
    EXPECT_EQ(text, expected);
}

TEST(RichText, APercentSignWithoutArgumentIsText)
{
    EXPECT_EQ(plainText(withBold(QStringLiteral("at 50 % of %1, %7"), {QStringLiteral("it")})),
              QStringLiteral("at 50 % of it, %7"));
}

TEST(RichText, TypedLinesStayLinesAndControlCharactersBecomeBlanks)
{
    EXPECT_EQ(typedText("  one\r\ntwo\tthree\n"), QStringLiteral("one\u2028two three"));
}
