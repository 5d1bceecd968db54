// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/text_block.h"

#include <gtest/gtest.h>

using namespace quadrille::app;

namespace
{

QString lettersOf(const TextBlock& block)
{
    QString letters;
    for (int i = 0; i < block.lineCount(); ++i) {
        letters += block.lineText(i);
    }
    return letters.remove(QLatin1Char(' '));
}

} // namespace

TEST(TextBlock, BreaksBetweenWordsAndKeepsThemAll)
{
    const QString text = QStringLiteral("Sit with the knee bent and the foot against the wall");
    const TextBlock block(plain(text), PrintText::text, PrintSize::normal, 100);
    EXPECT_GT(block.lineCount(), 2);
    EXPECT_LE(block.naturalWidth(), 100);
    EXPECT_EQ(lettersOf(block), QString(text).remove(QLatin1Char(' ')));
    EXPECT_TRUE(text.contains(block.lineText(0)));
}

TEST(TextBlock, AWordWiderThanTheLineIsBrokenAnywhere)
{
    const QString word(QStringLiteral("m").repeated(300));
    const TextBlock block(bold(word), PrintText::text, PrintSize::large, 150);
    EXPECT_GT(block.lineCount(), 10);
    EXPECT_LE(block.naturalWidth(), 150);
    EXPECT_EQ(lettersOf(block), word);
}

TEST(TextBlock, EmptyTextHasNoHeightToSpeakOf)
{
    EXPECT_LE(TextBlock(plain(QString()), PrintText::text, PrintSize::normal, 100).lineCount(), 1);
}

TEST(TextBlock, TypedLinesStayLines)
{
    const TextBlock block(plain(typedText("one\ntwo")), PrintText::text, PrintSize::normal, 300);
    ASSERT_EQ(block.lineCount(), 2);
    EXPECT_EQ(block.lineText(1), QStringLiteral("two"));
}

TEST(TextBlock, BoldPiecesAreWider)
{
    const QString text = QStringLiteral("seventy milliamperes");
    EXPECT_GT(widthOf(bold(text), PrintText::text, PrintSize::normal),
              widthOf(plain(text), PrintText::text, PrintSize::normal));
}

// A point is a point: 100 digits of 14 pt Noto Sans are as wide as its advance of 572/1000 em says
// (the font's own table).
TEST(TextBlock, WidthsAreInPoints)
{
    const QString digits(QStringLiteral("0").repeated(100));
    EXPECT_NEAR(widthOf(plain(digits), PrintText::text, PrintSize::normal), 100 * 14 * 0.572, 2);
}
