// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plan_draft.h"
#include "tests/support/records.h"

#include <QSignalSpy>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;

namespace
{

class DraftOfOneBlock : public testing::Test
{
protected:
    DraftOfOneBlock()
    {
        Stimulator unit = aUnit();
        unit.id = StimulatorId(1);
        saved.stimulator = unit.id;
        saved.blocks = {aBlock(unit)};
        draft.setStimulators({unit});
        draft.load(saved, std::nullopt);
    }
    std::int64_t onTime() const
    {
        return *countIn(draft.block()->sites.front().settings, Field::onTime);
    }
    Draft saved;
    PlanDraft draft;
};

} // namespace

TEST_F(DraftOfOneBlock, TurningABoxIsOneStepOfUndo)
{
    const std::int64_t before = onTime();
    for (const std::int64_t count : {5000, 6000, 7000}) {
        draft.setSetting(Field::onTime, count);
    }
    EXPECT_EQ(onTime(), 7000);
    draft.undoStack().undo();
    EXPECT_EQ(onTime(), before);
    EXPECT_FALSE(draft.isChanged());
    draft.undoStack().redo();
    EXPECT_EQ(onTime(), 7000);
}

TEST_F(DraftOfOneBlock, LeavingTheBoxBeginsAnotherStep)
{
    draft.setSetting(Field::onTime, 5000);
    draft.endStep();
    draft.setSetting(Field::onTime, 6000);
    draft.undoStack().undo();
    EXPECT_EQ(onTime(), 5000);
}

TEST_F(DraftOfOneBlock, ASettingGoesToAllSitesAndAnAmplitudeToOne)
{
    Site second = draft.block()->sites.front();
    second.channel = 2;
    draft.addSite(second);
    draft.setSetting(Field::offTime, 20'000);
    draft.setAmplitude(1, Field::amplitudeCeiling, 55'000);
    ASSERT_EQ(draft.block()->sites.size(), 2U);
    EXPECT_EQ(countIn(draft.block()->sites[0].settings, Field::offTime), 20'000);
    EXPECT_EQ(countIn(draft.block()->sites[1].settings, Field::offTime), 20'000);
    EXPECT_EQ(countIn(draft.block()->sites[1].settings, Field::amplitudeCeiling), 55'000);
    EXPECT_NE(countIn(draft.block()->sites[0].settings, Field::amplitudeCeiling), 55'000);
}

TEST_F(DraftOfOneBlock, ANewBlockCopiesTheLastOneAndBecomesTheCurrentOne)
{
    draft.addBlock();
    ASSERT_EQ(draft.draft().blocks.size(), 2U);
    EXPECT_EQ(draft.draft().blocks[1], draft.draft().blocks[0]);
    EXPECT_EQ(draft.currentBlock(), 1U);
    draft.undoStack().undo();
    EXPECT_EQ(draft.currentBlock(), 0U);
}

TEST_F(DraftOfOneBlock, RevertIsItselfUndone)
{
    draft.setSetting(Field::onTime, 9000);
    draft.revert();
    EXPECT_FALSE(draft.isChanged());
    draft.undoStack().undo();
    EXPECT_EQ(onTime(), 9000);
}

TEST_F(DraftOfOneBlock, UnsavedWorkOfLastTimeComesBackAsOneStep)
{
    Draft unsaved = saved;
    setCount(unsaved.blocks.front().sites.front().settings, Field::onTime, 8000);
    draft.load(saved, unsaved);
    EXPECT_EQ(onTime(), 8000);
    EXPECT_TRUE(draft.isChanged());
    draft.undoStack().undo();
    EXPECT_EQ(draft.draft(), saved);
}

TEST_F(DraftOfOneBlock, NothingIsAnnouncedWhenNothingChanges)
{
    QSignalSpy changed(&draft, &PlanDraft::changed);
    draft.setSetting(Field::onTime, onTime());
    EXPECT_EQ(changed.count(), 0);
    EXPECT_FALSE(draft.undoStack().canUndo());
}

TEST_F(DraftOfOneBlock, AnotherUnitChangesTheWaveformToOneThatItGives)
{
    Stimulator bursts = aUnit("Burst unit");
    bursts.id = StimulatorId(2);
    bursts.waveforms = {Waveform::kilohertzBursts};
    using namespace literals;
    bursts.carrierFrequency = {1000_Hz_carrier, 10000_Hz_carrier, 500_Hz_carrier, 2500_Hz_carrier};
    bursts.burstDuty = {10_percent_burst, 50_percent_burst, 10_percent_burst, 50_percent_burst};
    draft.setStimulators({draft.stimulators().front(), bursts});
    draft.chooseStimulator(StimulatorId(2));
    const Settings& settings = draft.block()->sites.front().settings;
    EXPECT_EQ(settings.waveform, Waveform::kilohertzBursts);
    EXPECT_EQ(settings.carrierFrequency, 2500_Hz_carrier);
    EXPECT_TRUE(draft.figuresOf(0)->contractions.has_value());
}
