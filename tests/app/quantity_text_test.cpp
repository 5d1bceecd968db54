// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/quantity_text.h"
#include "tests/support/fixed_clock.h"

#include <gtest/gtest.h>
#include <random>

using namespace quadrille;
using namespace quadrille::app;
using namespace std::chrono_literals;
using quadrille::tests::day;

namespace
{

QuantityText british()
{
    return QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom));
}

QuantityText german()
{
    return QuantityText(QLocale(QLocale::German, QLocale::Germany));
}

QString withPlainSpaces(QString text)
{
    return text.replace(noBreakSpace(), QStringLiteral(" "));
}

} // namespace

TEST(QuantityText, PutsANoBreakSpaceBeforeTheUnit)
{
    EXPECT_EQ(british().amount({50.0, Unit::hertz}), QStringLiteral("50\u00A0Hz"));
    EXPECT_EQ(british().amount({2.3, Unit::milliamperePerSquareCentimetre}),
              QStringLiteral("2.30\u00A0mA/cm²"));
    EXPECT_EQ(british().percent(0.25), QStringLiteral("25\u00A0%"));
}

TEST(QuantityText, GroupsDigitsFromAThousandWithNoBreakSpaces)
{
    EXPECT_EQ(british().count(999), QStringLiteral("999"));
    EXPECT_EQ(british().count(3480), QStringLiteral("3\u00A0480"));
    EXPECT_EQ(german().number(1234567.5, 1), QStringLiteral("1\u00A0234\u00A0567,5"));
}

TEST(QuantityText, ShowsOnlyTheDecimalsThatASettingHas)
{
    EXPECT_EQ(british().settingNumber(Field::lastToleratedAmplitude, 42'500),
              QStringLiteral("42.5"));
    EXPECT_EQ(british().settingNumber(Field::lastToleratedAmplitude, 60'000), QStringLiteral("60"));
    EXPECT_EQ(german().settingNumber(Field::rampUp, 1500), QStringLiteral("1,5"));
}

TEST(QuantityText, ReadsPointAndCommaAndTheUnitBehind)
{
    for (const QString& text :
         {QStringLiteral("42.5"), QStringLiteral("42,5"), QStringLiteral(" 42.5 mA"),
          QStringLiteral("42.5\u00A0mA"), QStringLiteral("42.5ma")}) {
        EXPECT_EQ(british().settingFrom(Field::amplitudeCeiling, text), 42'500)
            << text.toStdString();
        EXPECT_EQ(german().settingFrom(Field::amplitudeCeiling, text), 42'500)
            << text.toStdString();
    }
}

TEST(QuantityText, RefusesWhatIsNoValue)
{
    for (const char* text : {"", " ", "abc", "-5", "1.2.3", "5 kg", "1e3", "0.00001",
                             "99999999999999999999", "0x10", "."}) {
        EXPECT_FALSE(british().settingFrom(Field::onTime, QString::fromUtf8(text)).has_value())
            << text;
    }
}

TEST(QuantityText, ASettingSurvivesBeingWrittenAndReadAgain)
{
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937_64 random(seed);
    for (int i = 0; i < 500; ++i) {
        for (const Field field : {Field::pulseFrequency, Field::phaseDuration, Field::onTime,
                                  Field::amplitudeCeiling}) {
            const std::int64_t count =
                std::uniform_int_distribution<std::int64_t>(0, 10'000'000)(random);
            for (const QuantityText& text : {british(), german()}) {
                EXPECT_EQ(text.settingFrom(field, text.setting(field, count)), count);
            }
        }
    }
}

TEST(QuantityText, TellsTimesAsPeopleReadThem)
{
    EXPECT_EQ(withPlainSpaces(british().time(45s)), QStringLiteral("45 s"));
    EXPECT_EQ(withPlainSpaces(british().time(5min)), QStringLiteral("5 min 00 s"));
    EXPECT_EQ(withPlainSpaces(british().time(8h + 53min)), QStringLiteral("8 h 53 min"));
    EXPECT_EQ(withPlainSpaces(british().time(594'500ms)), QStringLiteral("9 min 54.5 s"));
}

TEST(QuantityText, ReadsADayHoweverThePracticeWritesIt)
{
    const Date expected = day(1958, 6, 4);
    for (const char* text :
         {"4 Jun 1958", "4 June 1958", "1958-06-04", "04/06/1958", "4/6/1958", "4.6.1958"}) {
        EXPECT_EQ(british().dateFrom(QString::fromUtf8(text)), expected) << text;
    }
    EXPECT_EQ(german().dateFrom(QStringLiteral("4.6.1958")), expected);
}

TEST(QuantityText, NeverGuessesTheCenturyOfABirthDate)
{
    for (const char* text : {"4/6/58", "30 Feb 2020", "31.4.2020", "yesterday", "4 Jun"}) {
        EXPECT_FALSE(british().dateFrom(QString::fromUtf8(text)).has_value()) << text;
    }
}

TEST(QuantityText, WritesWhatItCanReadForEveryDate)
{
    for (int i = 0; i < 800; ++i) {
        const Date date = day(1931, 1, 1) + std::chrono::days(i * 47);
        EXPECT_EQ(british().dateFrom(british().date(date)), date);
        EXPECT_EQ(german().dateFrom(german().date(date)), date);
    }
}
