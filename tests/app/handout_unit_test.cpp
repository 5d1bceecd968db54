// SPDX-License-Identifier: GPL-3.0-or-later
// A handout speaks the language of the unit that it is for.
#include "app/print/handout_words.h"
#include "tests/app/handout_samples.h"

#include <QLocale>

#include <gtest/gtest.h>
#include <stdexcept>
#include <string>

namespace quadrille::app
{
namespace
{

HandoutText wordsOf(const HandoutContent& content)
{
    return HandoutWords(QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)))
        .of(content);
}

/// With blanks for no-break spaces.
std::string read(const QString& text)
{
    return QString(text).replace(noBreakSpace(), QStringLiteral(" ")).toStdString();
}

std::string read(const RichText& text)
{
    return read(plainText(text));
}

const SettingLine& rowNamed(const CardText& card, const std::string& name)
{
    for (const SettingGroup& group : card.settings) {
        for (const SettingLine& row : group.rows) {
            if (row.name.toStdString() == name) {
                return row;
            }
        }
    }
    throw std::runtime_error("no setting " + name);
}

} // namespace

TEST(HandoutOfAUnit, TheUnitsOwnWordComesFirstAndOursBesideIt)
{
    Plan plan = tests::samplePlan({tests::blockWithSites(1, false)});
    plan.stimulator.ownWords = {{Field::onTime, "Work"},
                                {Field::offTime, "OFF TIME"},
                                {Field::sessionLength, "Timer"},
                                {Field::amplitudeCeiling, "Level"}};
    const CardText card = wordsOf(tests::sampleContent(plan)).cards.at(0);
    EXPECT_EQ(read(rowNamed(card, "Work (on time)").value), "10 s");
    EXPECT_EQ(read(rowNamed(card, "Work (on time)").note), "ramps inside the on time");
    EXPECT_EQ(read(rowNamed(card, "Timer (session)").value), "20 min");
    EXPECT_EQ(read(rowNamed(card, "OFF TIME").value), "25 s") << "the same word is not said twice";
    EXPECT_EQ(read(rowNamed(card, "Ramp up").value), "2 s") << "none is built in";
    EXPECT_EQ(read(card.sites.howStrong),
              "How strong (“Level” on your unit): as strong as you can bear, without sharp pain, "
              "and never above the figure at the right.");
}

TEST(HandoutOfAUnit, TheLentUnitIsNamedByItsInventoryNumber)
{
    HandoutContent content =
        tests::sampleContent(tests::samplePlan({tests::blockWithSites(1, false)}));
    EXPECT_EQ(read(wordsOf(content).cards.at(0).stimulatorName), "Two-channel unit A");
    content.inventoryNumbers = {"U-03"};
    EXPECT_EQ(read(wordsOf(content).cards.at(0).stimulatorName), "Two-channel unit A, unit U-03");
    content.inventoryNumbers = {"U-03", "U-07"};
    EXPECT_EQ(read(wordsOf(content).cards.at(0).stimulatorName),
              "Two-channel unit A, units U-03, U-07");
}

// By hand: 20 min less the first rest of 25 s are 33 cycles of 35 s and 20 s, which hold one more
// pull.
TEST(HandoutOfAUnit, AUnitThatBeginsWithARestSaysSo)
{
    Plan plan = tests::samplePlan({tests::blockWithSites(1, false)});
    plan.stimulator.cycleStart = CycleStart::withOff;
    EXPECT_EQ(read(wordsOf(tests::sampleContent(plan)).cards.at(0).steps.at(3).body.at(0)),
              "It begins with a rest. It pulls for 10 s and rests for 25 s, 34 times.");
}

} // namespace quadrille::app
