// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/measurement_chart.h"
#include "app/measurements/typed_value.h"
#include "app/words/measurement_text.h"
#include "tests/support/fixed_clock.h"

#include <QLocale>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::app
{
namespace
{

using testing::ElementsAre;
using tests::day;

class MeasurementText : public testing::Test
{
protected:
    std::string shown(std::string_view kind, std::int64_t thousandths)
    {
        return measuredText(kind, thousandths, std::string(measurementKind(kind)->unit), text)
            .toStdString();
    }
    TypedValue typed(std::string_view kind, const char* words)
    {
        return typedValue(*measurementKind(kind), QString::fromUtf8(words), text);
    }

    QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    QuantityText german{QLocale(QLocale::German)};
};

TEST_F(MeasurementText, ShowsTheUnitOfTheTradeAfterANoBreakSpaceAndDegreesWithoutOne)
{
    EXPECT_EQ(shown("isometric_torque", 68'500), "68.5\u00A0N·m");
    EXPECT_EQ(shown("range_of_motion", -4'000), "\u22124°");
    EXPECT_EQ(shown("walk_10_m", 833), "0.83\u00A0m/s");
    EXPECT_EQ(shown("grip_force", 31'000), "31\u00A0kg");
    EXPECT_EQ(shown("pain_at_rest", 3'000), "3\u00A0of 10");
    EXPECT_EQ(measuredText(ownKind, 85'000, "{score}", text).toStdString(), "85\u00A0score");
    EXPECT_EQ(measuredText("girth", 44'500, "cm", german).toStdString(), "44,5\u00A0cm");
}

TEST_F(MeasurementText, SignsAChange)
{
    EXPECT_EQ(changeOfValueText("isometric_torque", 13'000, "N.m", text).toStdString(),
              "+13\u00A0N·m");
    EXPECT_EQ(changeOfValueText("timed_up_and_go", -2'600, "s", text).toStdString(),
              "\u22122.6\u00A0s");
    EXPECT_EQ(changeOfValueText("pain_at_rest", -2'000, "{score}", text).toStdString(), "\u22122");
    EXPECT_EQ(changeOfValueText(ownKind, 5'000, "{score}", text).toStdString(), "+5\u00A0score");
    EXPECT_EQ(changeOfValueText("girth", 0, "cm", text).toStdString(), "no change");
}

TEST_F(MeasurementText, ReadsOneNumberOrTrialsWithPointOrComma)
{
    EXPECT_EQ(valuesFrom(QStringLiteral("61.5"), text), std::vector<std::int64_t>{61'500});
    EXPECT_EQ(valuesFrom(QStringLiteral("61,5"), german), std::vector<std::int64_t>{61'500});
    EXPECT_EQ(valuesFrom(QStringLiteral(" 61 64.5; 66 "), text),
              (std::vector<std::int64_t>{61'000, 64'500, 66'000}));
    EXPECT_EQ(valuesFrom(QStringLiteral("-5"), text), std::vector<std::int64_t>{-5'000});
    EXPECT_EQ(valuesFrom(QStringLiteral(".5"), text), std::vector<std::int64_t>{500});
    EXPECT_EQ(valuesFrom({}, text), std::vector<std::int64_t>{});
    for (const char* wrong : {"61.2345", "six", "1.2.3", "--1", "5 s", "999999999999", ".", "-"}) {
        EXPECT_FALSE(valuesFrom(QString::fromLatin1(wrong), text)) << wrong;
    }
}

TEST_F(MeasurementText, TrialsMakeAValueAsTheKindSays)
{
    const TypedValue best = typed("isometric_torque", "61 64.5 66");
    EXPECT_EQ(best.thousandths, 66'000);
    EXPECT_EQ(best.counted, Counted::best);
    EXPECT_THAT(best.trials, ElementsAre(61'000, 64'500, 66'000));
    EXPECT_EQ(typedNote(*measurementKind("isometric_torque"), best, "N.m", text).text.toStdString(),
              "best of 3: 66\u00A0N·m");
    EXPECT_EQ(typed("grip_force", "30 31 32").thousandths, 31'000); // mean
    EXPECT_EQ(typed("grip_force", "30").counted, Counted::one);
    EXPECT_TRUE(typed("isometric_torque", "").isEmpty());
    EXPECT_FALSE(typed("pain_at_rest", "3 4").problem.isEmpty());
    EXPECT_FALSE(typed("isometric_torque", "1 2 3 4 5 6").problem.isEmpty());
}

TEST_F(MeasurementText, AWalkIsReadInSecondsOnlyWhereTheySaySo)
{
    EXPECT_EQ(typed("walk_10_m", "0.83").thousandths, 830);
    EXPECT_EQ(typed("walk_10_m", "12 s").thousandths, 833);
    EXPECT_EQ(typed("walk_10_m", "12s 12.4 s").trials, (std::vector<std::int64_t>{833, 806}));
    EXPECT_FALSE(typed("walk_10_m", "0 s").problem.isEmpty());
    EXPECT_FALSE(typed("timed_up_and_go", "12 s").problem.isEmpty());
}

TEST_F(MeasurementText, WhatATypedValueShowsIsReadBackAsItself)
{
    Measurement one;
    one.thousandths = -4'250;
    EXPECT_EQ(typed("range_of_motion", typedText(one, text).toUtf8().constData()).thousandths,
              -4'250);
    one.trials = {1'234'500, 2'000};
    EXPECT_EQ(typed("range_of_motion", typedText(one, text).toUtf8().constData()).trials,
              one.trials);
}

TEST_F(MeasurementText, NeverCallsAChangeOneWithoutAPublishedThreshold)
{
    const auto judged = [&](std::string_view kind, std::int64_t change) {
        return judgementText(*measurementKind(kind), change, text).toStdString();
    };
    EXPECT_EQ(judged("isometric_torque", 27'000), "better, no published threshold");
    EXPECT_EQ(judged("girth", 2'000), "no published threshold");
    EXPECT_EQ(judged("extensor_lag", -9'000),
              "better, reaches the detectable change of 5°, from memory");
    EXPECT_EQ(judged("extensor_lag", 2'000),
              "worse, below the detectable change of 5°, from memory");
    EXPECT_EQ(judged("timed_up_and_go", -3'000),
              "better, reaches every detectable change, up to 2.49\u00A0s, from memory");
    EXPECT_EQ(judged("timed_up_and_go", -1'120), "better, reaches 1.1\u00A0s, below 1.14\u00A0s");
    EXPECT_EQ(judged("pain_at_rest", -500), "better, below the important change of 1");
    EXPECT_EQ(judged("pain_at_rest", -1'000), "better, reaches the important change of 1");
    EXPECT_EQ(judged("pain_at_rest", -2'000), "better, reaches 2, what people called much better");
    EXPECT_EQ(judged("pain_at_rest", 1'000), "worse, no published threshold");
}

TEST_F(MeasurementText, TheChartKeepsNamesOfNearLinesApart)
{
    MeasurementsToShow shown;
    shown.courseStart = day(2026, 2, 9);
    shown.weeks = 12;
    shown.lines = {{.name = QStringLiteral("right"),
                    .points = {{day(2026, 3, 9), 92.0, QStringLiteral("92 N·m")}}},
                   {.name = QStringLiteral("left"),
                    .points = {{day(2026, 3, 9), 94.0, QStringLiteral("94 N·m")}},
                    .compared = true}};
    const ChartSpec spec = measurementChart(shown, text);
    ASSERT_THAT(spec.texts, testing::SizeIs(2));
    EXPECT_GT(spec.texts[1].at.y() - spec.texts[0].at.y(), 10.0);
    EXPECT_DOUBLE_EQ(spec.lines[0].points[0].x(), 4.5); // day 28: the start of week 5
    EXPECT_DOUBLE_EQ(spec.y.least, 0.0);
    EXPECT_GE(spec.y.most, 94.0);
}

} // namespace
} // namespace quadrille::app
