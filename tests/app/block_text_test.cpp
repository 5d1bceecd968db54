// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/block_text.h"
#include "app/words/plan_rows.h"
#include "tests/support/records.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::literals;
using namespace quadrille::tests;
using namespace std::chrono_literals;
using testing::ElementsAre;

namespace
{

/// Lines with plain blanks, to be read here.
std::vector<std::string> plain(const QStringList& lines)
{
    std::vector<std::string> all;
    for (const QString& line : lines) {
        all.push_back(QString(line).replace(noBreakSpace(), QStringLiteral(" ")).toStdString());
    }
    return all;
}

/// Two sites of the same settings.
Block aBlockOfTwo()
{
    Block block = aBlock(aUnit());
    block.sites.push_back(aSite(aUnit()));
    block.sites[1].muscle = "vastus medialis";
    block.sites[1].channel = 2;
    for (Site& site : block.sites) {
        site.settings.onTime = 8s;
        site.settings.offTime = 24s;
        site.settings.sessionLength = 16min;
    }
    return block;
}

Plan planOf(std::vector<Block> blocks)
{
    Plan plan;
    plan.stimulator = aUnit();
    plan.blocks = std::move(blocks);
    return plan;
}

class BlockText : public testing::Test
{
protected:
    const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    std::vector<std::string> changes(const Block& before, const Block& after) const
    {
        return plain(changeLines(before, after, 1, text));
    }
    const PlanRow* row(const std::vector<PlanRow>& rows, const char* section,
                       const char* label) const
    {
        for (const PlanRow& one : rows) {
            if (one.section == QLatin1String(section) && one.label == QLatin1String(label)) {
                return &one;
            }
        }
        return nullptr;
    }
};

} // namespace

TEST_F(BlockText, ABlockShowsOnlyWhatChangedAgainstTheOneBefore)
{
    Block after = aBlockOfTwo();
    for (Site& site : after.sites) {
        site.settings.onTime = 10s;
    }
    after.sites[1].settings.amplitude.ceiling = 48_mA;
    after.sessionsPerDay = 2;
    EXPECT_THAT(changes(aBlockOfTwo(), after),
                ElementsAre("Sessions once a day → twice a day", "On time 8 → 10 s",
                            "Site 2: Ceiling — → 48 mA"));
    EXPECT_THAT(plain(spokenChanges(aBlockOfTwo(), after, 1, text)),
                ElementsAre("Sessions from once a day to twice a day", "On time from 8 s to 10 s",
                            "Site 2: Ceiling from — to 48 mA"));
}

TEST_F(BlockText, ABlockThatAsksForTheSameSaysSo)
{
    EXPECT_THAT(changes(aBlockOfTwo(), aBlockOfTwo()), ElementsAre("as Block 1"));
}

TEST_F(BlockText, DaysAreCountedWhereTheirNumberChangesAndNamedWhereNot)
{
    Block after = aBlockOfTwo();
    after.schedule = DaysPerWeek{4};
    EXPECT_THAT(changes(aBlockOfTwo(), after), ElementsAre("A week 5 days → 4 days"));
    after.schedule = DaysPerWeek{5};
    EXPECT_THAT(changes(aBlockOfTwo(), after),
                ElementsAre("Days Mon, Tue, Wed, Thu, Fri → 5 days a week, any"));
}

TEST_F(BlockText, SitesThatComeAndGoAreNamed)
{
    Block after = aBlockOfTwo();
    after.sites[1].side = Side::left;
    EXPECT_THAT(changes(aBlockOfTwo(), after),
                ElementsAre("Without vastus medialis, right", "New: vastus medialis, left"));
}

TEST_F(BlockText, TheSizeOfTheStepIsOneLineWhereBothGrowAlike)
{
    EXPECT_THAT(plain(stepLines({.onTime = 0.25, .contractions = 0.25}, text)),
                ElementsAre("On time, contractions +25 %"));
    EXPECT_THAT(plain(stepLines({.onTime = 0.25, .contractions = 0.0}, text)),
                ElementsAre("On time a week +25 %", "Contractions a week same"));
    EXPECT_THAT(plain(stepLines({.onTime = -0.2, .contractions = 0.004}, text)),
                ElementsAre("On time a week −20 %", "Contractions a week +0.4 %"));
    EXPECT_TRUE(stepLines({}, text).isEmpty());
}

TEST_F(BlockText, TwoPlansStandSideBySideByBlockSiteAndSetting)
{
    Block changed = aBlockOfTwo();
    changed.sites[0].settings.onTime = 10s;
    const auto rows = planRows(planOf({aBlockOfTwo()}), planOf({changed}), text);
    const PlanRow* onTime = row(rows, "Block 1, vastus lateralis, right", "On time");
    ASSERT_NE(onTime, nullptr);
    EXPECT_EQ(plain({onTime->left, onTime->right}), (std::vector<std::string>{"8 s", "10 s"}));
    EXPECT_TRUE(onTime->differs());
    EXPECT_EQ(std::ranges::count_if(rows, &PlanRow::differs), 1) << "nothing else is marked";
    EXPECT_FALSE(row(rows, "Block 1, vastus medialis, right", "On time")->differs());
}

TEST_F(BlockText, AMuscleWrittenInOtherLettersStandsBesideItself)
{
    Block changed = aBlockOfTwo();
    changed.sites[0].muscle = "Vastus Lateralis";
    changed.sites[0].settings.onTime = 10s;
    const auto rows = planRows(planOf({aBlockOfTwo()}), planOf({changed}), text);
    const PlanRow* onTime = row(rows, "Block 1, vastus lateralis, right", "On time");
    ASSERT_NE(onTime, nullptr);
    EXPECT_EQ(plain({onTime->left, onTime->right}), (std::vector<std::string>{"8 s", "10 s"}));
}

TEST_F(BlockText, ABlockThatOnlyOnePlanHasIsNotKnownInTheOther)
{
    Block second = aBlockOfTwo();
    second.weeks = 2;
    const auto rows = planRows(planOf({aBlockOfTwo()}), planOf({aBlockOfTwo(), second}), text);
    const PlanRow* weeks = row(rows, "Block 2", "Weeks");
    ASSERT_NE(weeks, nullptr);
    EXPECT_EQ(weeks->left, QStringLiteral("—"));
    EXPECT_EQ(weeks->right, QStringLiteral("weeks 5–6"));
    EXPECT_FALSE(row(rows, "Block 1", "Weeks")->differs());
}

TEST_F(BlockText, ASiteIsFoundInTheOtherPlanWhereverItStands)
{
    Block turned = aBlockOfTwo();
    std::swap(turned.sites[0], turned.sites[1]);
    const auto rows = planRows(planOf({aBlockOfTwo()}), planOf({turned}), text);
    EXPECT_TRUE(std::ranges::none_of(rows, &PlanRow::differs));
}
