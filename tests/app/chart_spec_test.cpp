// SPDX-License-Identifier: GPL-3.0-or-later
// What charts show, before anything is drawn.
#include "app/charts/cycle_chart.h"
#include "app/charts/force_chart.h"
#include "app/charts/variant_chart.h"
#include "app/charts/week_chart.h"
#include "tests/core/examples.h"
#include "tests/support/reference_table.h"

#include "core/block_fatigue.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::test;
using namespace std::chrono_literals;
using testing::ElementsAre;

namespace
{

const QuantityText& british()
{
    static const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    return text;
}

WeeksToShow contractions()
{
    WeeksToShow weeks{.name = QStringLiteral("Contractions per week"),
                      .plannedWord = QStringLiteral("planned"),
                      .doneWord = QStringLiteral("done")};
    weeks.planned = {200, 200, 300, 300};
    weeks.done = {160, 225, std::nullopt, std::nullopt};
    weeks.window = {{1, 3}, 1, 4, 2};
    return weeks;
}

/// Each curve with its stroke, in the order of the dialog: the block first.
VariantForces variants(const std::vector<std::vector<double>>& shares)
{
    VariantForces forces{.name = QStringLiteral("Predicted force"),
                         .note = QStringLiteral("model, not this patient")};
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const QString name = QString(QChar(static_cast<char16_t>(i == 0 ? u'P' : u'@' + i)));
        forces.curves.push_back({name, shares[i], i});
    }
    return forces;
}

QStringList textsOf(const ChartSpec& spec)
{
    QStringList texts;
    for (const ChartText& text : spec.texts) {
        texts.append(text.text);
    }
    return texts;
}

} // namespace

TEST(WeekChart, OutlinesWhatIsPlannedAndFillsWhatIsDone)
{
    const ChartSpec spec = weekChart(contractions(), british());
    ASSERT_EQ(spec.bars.size(), 2U);
    EXPECT_FALSE(spec.bars[0].filled);
    EXPECT_THAT(spec.bars[0].heights, ElementsAre(200, 200, 300, 300));
    EXPECT_TRUE(spec.bars[1].filled);
    EXPECT_THAT(spec.bars[1].heights, ElementsAre(160, 225, std::nullopt, std::nullopt))
        << "what is not known yet is no bar of nought";
}

TEST(WeekChart, LeavesThePlanVisibleWhereMoreWasDone)
{
    const ChartSpec spec = weekChart(contractions(), british());
    EXPECT_THAT(spec.bars[1].limits, ElementsAre(std::nullopt, 200, std::nullopt, std::nullopt));
}

TEST(WeekChart, NumbersChangesAndTheWeekOfToday)
{
    const ChartSpec spec = weekChart(contractions(), british());
    EXPECT_EQ(textsOf(spec),
              QStringList({QStringLiteral("200"), QStringLiteral("200"), QStringLiteral("300")}));
    EXPECT_FALSE(spec.texts[0].bold);
    EXPECT_TRUE(spec.texts[1].bold) << "week 2 is now";
    EXPECT_THAT(spec.dividers, ElementsAre(2.5)) << "block 2 begins with week 3";
}

TEST(WeekChart, StandsOnTheColumnsOfTheGridsWindow)
{
    WeeksToShow weeks = contractions();
    weeks.window.firstShown = 3;
    weeks.window.hasNumbers = true;
    const ChartSpec spec = weekChart(weeks, british());
    EXPECT_EQ(spec.x.least, 0.5);
    EXPECT_EQ(spec.x.most, 2.5);
    EXPECT_EQ(spec.x.tickNames, QStringList({QStringLiteral("3"), QStringLiteral("4")}));
    EXPECT_EQ(spec.bars[0].heights.front(), 300);
    EXPECT_EQ(spec.table.rows[2].place, 1.0) << "the table keeps all weeks";
}

TEST(WeekChart, HasATableWithUnitsInItsHeads)
{
    WeeksToShow weeks = contractions();
    weeks.unit = Unit::minute;
    const ChartSpec spec = weekChart(weeks, british());
    EXPECT_EQ(spec.table.columns,
              QStringList({QStringLiteral("Week"), QStringLiteral("planned, min"),
                           QStringLiteral("done, min")}));
    EXPECT_EQ(spec.table.rows[1].cells,
              QStringList({QStringLiteral("2"), QStringLiteral("200"), QStringLiteral("225")}));
    EXPECT_EQ(spec.table.rows[2].cells.back(), QStringLiteral("—"));
    EXPECT_EQ(rowText(spec.table, 1),
              QStringLiteral("Week 2: 200\u00A0min planned, 225\u00A0min done"));
    EXPECT_EQ(rowText(spec.table, 2), QStringLiteral("Week 3: 300\u00A0min planned"));
}

TEST(WeekRatioChart, DrawsAPieceForEachRunOfWeeksAndNoneWhereNothingMayBeSaid)
{
    WeekRatiosToShow weeks{.name = QStringLiteral("Fatigue ratio"),
                           .note = QStringLiteral("model")};
    weeks.ratios = {0.71, 0.71, std::nullopt, 0.76, 0.76, 0.76};
    weeks.window = {{1, 3, 4, 6}, 1, 6, 1};
    const ChartSpec spec = weekRatioChart(weeks, british());
    ASSERT_EQ(spec.lines.size(), 3U) << "a block limit ends a piece";
    EXPECT_EQ(textsOf(spec), QStringList({QStringLiteral("0.71"), QStringLiteral("0.76"),
                                          QStringLiteral("0.76")}));
    EXPECT_TRUE(spec.texts[0].bold);
    EXPECT_EQ(spec.table.rows[2].readout, QStringLiteral("—"));
    EXPECT_TRUE(spec.spoken.contains(weeks.note)) << "never without its mark";
}

// Against the reference table of forces, contraction by contraction.
TEST(ForceChart, ShowsEachContractionInPercentOfTheFirst)
{
    const ReferenceTable table =
        ReferenceTable::fromFile(QUADRILLE_TEST_REFERENCE "/model_per_contraction.csv");
    ForcesToShow forces{.name = QStringLiteral("Predicted force"),
                        .note = QStringLiteral("model, not this patient")};
    forces.shares = peakShares(someSettings(), someStimulator()); // the table's case P01
    const ChartSpec spec = forceChart(forces, british());
    ASSERT_EQ(spec.bars.front().heights.size(), 75U);
    for (std::size_t row = 0; row < 75; ++row) {
        ASSERT_EQ(table.text(row, "case_id"), "P01");
        EXPECT_NEAR(*spec.bars.front().heights[row], 100.0 * table.number(row, "peak_relative"),
                    1e-5);
    }
    EXPECT_EQ(textsOf(spec), QStringList(QStringLiteral("0.58"))) << "58.255644 % at the end";
    EXPECT_EQ(spec.x.ticks.front(), 1.0);
    EXPECT_FALSE(spec.spoken.contains(QStringLiteral(" N"))) << "never newtons";
}

TEST(ForceChart, SetsTheBlockBeforeBesideIt)
{
    ForcesToShow forces{.name = QStringLiteral("Predicted force"), .note = {}};
    forces.shares = {1.0, 0.8, 0.7};
    forces.before = {1.0, 0.9};
    forces.nameNow = QStringLiteral("Block 3");
    forces.nameBefore = QStringLiteral("Block 2");
    const ChartSpec spec = forceChart(forces, british());
    EXPECT_EQ(spec.lines.front().kind, ChartLine::Kind::comparison);
    EXPECT_EQ(textsOf(spec), QStringList({QStringLiteral("0.90 Block 2"), QStringLiteral("0.70")}));
    EXPECT_EQ(rowText(spec.table, 1),
              QStringLiteral("Contraction 2: 80\u00A0%, Block 2 90\u00A0%"));
    EXPECT_EQ(spec.table.rows[2].cells.back(), QStringLiteral("—")) << "two contractions only";
}

TEST(ForceChart, KeepsRatiosApartThatAreNearlyTheSame)
{
    ForcesToShow forces;
    forces.shares = {1.0, 0.70};
    forces.before = {1.0, 0.71};
    const ChartSpec spec = forceChart(forces, british());
    EXPECT_GE(spec.texts[0].at.y() - spec.texts[1].at.y(), 11.0 - 1e-9);
}

// Labels stand 9 of a hundred apart, the highest no higher than the axis, 104: from the top 104,
// 95, 86; 30 is far below and stays where its curve ends.
TEST(VariantChart, MovesALabelDownOnlyAsFarAsTheOneAboveItNeeds)
{
    const ChartSpec spec =
        variantChart(variants({{1.0, 0.30}, {1.0, 0.98}, {1.0, 0.99}, {1.0, 1.00}}), british());
    ASSERT_NEAR(spec.y.most, 104.0, 1e-9);
    EXPECT_EQ(textsOf(spec), QStringList({QStringLiteral("P 0.30"), QStringLiteral("A 0.98"),
                                          QStringLiteral("B 0.99"), QStringLiteral("C 1.00")}));
    ASSERT_EQ(spec.texts.size(), 4U);
    EXPECT_NEAR(spec.texts[0].at.y(), 30.0, 1e-9);
    EXPECT_NEAR(spec.texts[1].at.y(), 86.0, 1e-9);
    EXPECT_NEAR(spec.texts[2].at.y(), 95.0, 1e-9);
    EXPECT_NEAR(spec.texts[3].at.y(), 104.0, 1e-9);
    EXPECT_TRUE(spec.texts[0].bold) << "the block";
}

TEST(VariantChart, NamesACurveThatEndsEarlyWhereItEnds)
{
    const ChartSpec spec = variantChart(variants({{1.0, 0.9, 0.8}, {1.0, 0.6}}), british());
    EXPECT_EQ(textsOf(spec), QStringList({QStringLiteral("A 0.60"), QStringLiteral("P 0.80"),
                                          QStringLiteral("A")}));
    ASSERT_EQ(spec.texts.size(), 3U);
    EXPECT_EQ(spec.texts[0].place, ChartText::Place::edge);
    EXPECT_EQ(spec.texts[2].place, ChartText::Place::below);
    EXPECT_NEAR(spec.texts[2].at.x(), 2.0, 1e-9);
    EXPECT_NEAR(spec.texts[2].at.y(), 60.0, 1e-9);
    ASSERT_EQ(spec.table.rows.size(), 3U);
    EXPECT_EQ(spec.table.rows[2].cells.back(), QStringLiteral("—")) << "not a force of nought";
}

TEST(VariantChart, DrawsASingleContractionAsAPoint)
{
    const ChartSpec spec = variantChart(variants({{1.0}, {1.0}}), british());
    ASSERT_EQ(spec.lines.size(), 2U);
    EXPECT_EQ(spec.lines[0].marker, ChartLine::Marker::filled);
    EXPECT_EQ(spec.lines[1].marker, ChartLine::Marker::open);
    EXPECT_THAT(spec.x.ticks, ElementsAre(1.0));
    ASSERT_EQ(spec.texts.size(), 2U);
    EXPECT_GE(std::abs(spec.texts[0].at.y() - spec.texts[1].at.y()), 9.0 - 1e-9);
}

TEST(CycleChart, HasARowForEachCorner)
{
    Settings settings = someSettings();
    settings.rampUp = 1s;
    const auto timing = sessionTiming(settings, RampHabit::includedInOnTime);
    const ChartSpec spec =
        cycleChart({*timing, Amplitude::fromCount(40'000), {}, {}, {}}, british());
    ASSERT_EQ(spec.table.rows.size(), 4U) << "no ramp down: the plateau ends with the on phase";
    EXPECT_EQ(spec.table.rows[1].cells[1], QStringLiteral("1"));
    EXPECT_EQ(spec.table.rows.back().place, 16.0);
}

TEST(ChartTable, FindsTheNearestRow)
{
    ChartTable table;
    EXPECT_FALSE(rowNearest(table, 1.0));
    table.rows = {{1.0, {}, {}}, {2.0, {}, {}}, {3.0, {}, {}}};
    EXPECT_EQ(rowNearest(table, 2.4), 1U);
    EXPECT_EQ(rowNearest(table, 99.0), 2U);
}
