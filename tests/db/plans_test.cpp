// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/plans.h"

#include "core/limits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using namespace literals;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

const Date today = day(2026, 3, 12);

class PlanStore : public testing::Test
{
protected:
    /// A draft with every kind of block, site and pad, which can't be issued as it stands.
    Draft fullDraft() const
    {
        const Stimulator unit = tests::aFullUnit();
        Draft draft = tests::aDraft(ids);
        Block weekdays{.weeks = 2,
                       .schedule = WeekdaySet::fromBits(0b1010101),
                       .sessionsPerDay = 3,
                       .siteOrder = SiteOrder::oneAfterAnother,
                       .sites = {tests::aFullSite(unit), tests::aSite(unit)}};
        Block anyDays{.weeks = 52, .schedule = DaysPerWeek{4}, .sites = {}};
        Block none{.weeks = 1, .schedule = WeekdaySet(), .sites = {tests::aSite(unit)}};
        none.sites[0].pads.clear();
        none.sites[0].side = Side::middle;
        none.sites[0].muscle.clear();
        draft.blocks = {weekdays, anyDays, none};
        return draft;
    }
    DraftId save(const Draft& draft)
    {
        return must(store->write(author(), "save draft",
                                 [&](Writing& writing) { return saveDraft(writing, draft); }));
    }
    void keep(const Draft& draft)
    {
        must(store->write(author(), "keep draft",
                          [&](Writing& writing) { keepUnsavedDraft(writing, draft); }));
    }
    std::optional<Draft> draft()
    {
        return must(store->read([&](Reading& reading) { return draftOf(reading, ids.course); }));
    }
    std::optional<UnsavedDraft> unsaved()
    {
        return must(
            store->read([&](Reading& reading) { return unsavedDraftOf(reading, ids.course); }));
    }
    Result<PlanId> issue(const Draft& draft, Date fromDate = today)
    {
        const Issue issue{
            .fromDate = fromDate, .reason = "first plan", .issuedBy = ids.practitioner};
        return store->write(author(), "issue plan", [&](Writing& writing) {
            return issuePlan(writing, draft, issue, today);
        });
    }
    std::vector<Plan> plans()
    {
        return must(store->read([&](Reading& reading) { return plansOf(reading, ids.course); }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(PlanStore, ADraftComesBackAsSaved)
{
    EXPECT_EQ(draft(), std::nullopt);
    Draft full = fullDraft();
    full.id = save(full);
    full.version = 1;
    EXPECT_EQ(draft(), full);
}

TEST_F(PlanStore, ADraftWithoutUnitAndBlocksIsADraftToo)
{
    Draft empty{.course = ids.course, .blocks = {}};
    empty.id = save(empty);
    empty.version = 1;
    EXPECT_EQ(draft(), empty);
}

TEST_F(PlanStore, ADraftKeepsWhyVariantsWereAdopted)
{
    Draft adopted = tests::aDraft(ids);
    adopted.adoptedReasons = {"tires less", "fits \"into\" the lunch break"};
    keep(adopted);
    EXPECT_EQ(unsaved()->draft.adoptedReasons, adopted.adoptedReasons);
    save(adopted);
    EXPECT_EQ(draft()->adoptedReasons, adopted.adoptedReasons);
    adopted.version = 1;
    must(issue(adopted));
    EXPECT_EQ(draft(), std::nullopt) << "the plan has a reason of its own";
}

TEST_F(PlanStore, SavingAgainKeepsTheDraftsKeyAndReplacesAllOfIt)
{
    const DraftId id = save(fullDraft());
    Draft simple = tests::aDraft(ids);
    simple.version = 1;
    EXPECT_EQ(save(simple), id);
    simple.id = id;
    simple.version = 2;
    EXPECT_EQ(draft(), simple);
}

TEST_F(PlanStore, ADraftIsSavedOnlyOverTheOneItWasMadeFrom)
{
    const Draft seen = tests::aDraft(ids);
    save(seen);
    const auto late = store->write(author(), "save draft", [&](Writing& writing) {
        return saveDraft(writing, seen); // made when there was none
    });
    ASSERT_EQ(codeOf(late), ErrorCode::changedElsewhere);
    EXPECT_EQ(late.error().detail, "Set-up");
    EXPECT_EQ(codeOf(issue(seen)), ErrorCode::changedElsewhere);
    EXPECT_EQ(draft()->version, 1);
}

TEST_F(PlanStore, UnsavedWorkStandsBesideTheSavedDraft)
{
    EXPECT_FALSE(unsaved());
    Draft simple = tests::aDraft(ids);
    simple.id = save(simple);
    simple.version = 1;
    Draft full = fullDraft();
    keep(full);
    full.id = simple.id;
    EXPECT_EQ(draft(), simple);
    ASSERT_TRUE(unsaved());
    EXPECT_EQ(unsaved()->draft, full);
    EXPECT_EQ(unsaved()->keptAt, temp.clock.now());
    must(store->write(author(), "drop",
                      [&](Writing& writing) { dropUnsavedDraft(writing, ids.course); }));
    EXPECT_FALSE(unsaved());
    EXPECT_EQ(draft(), simple);
}

TEST_F(PlanStore, UnsavedWorkWithoutASavedDraftIsNoDraft)
{
    keep(fullDraft());
    EXPECT_EQ(draft(), std::nullopt);
    EXPECT_EQ(unsaved()->draft, fullDraft());
}

TEST_F(PlanStore, SavingDropsWhatWasKeptUnsaved)
{
    keep(fullDraft());
    save(tests::aDraft(ids));
    EXPECT_FALSE(unsaved());
}

TEST_F(PlanStore, DiscardingDropsBoth)
{
    save(tests::aDraft(ids));
    keep(fullDraft());
    must(store->write(author(), "discard",
                      [&](Writing& writing) { discardDraft(writing, ids.course); }));
    EXPECT_EQ(draft(), std::nullopt);
    EXPECT_FALSE(unsaved());
}

TEST_F(PlanStore, ADraftOutsideTheArithmeticIsRefusedWithItsBounds)
{
    Draft wild = tests::aDraft(ids);
    wild.blocks[0].sites[0].settings.pulseFrequency = 20'000_Hz;
    const auto saved = store->write(author(), "save draft",
                                    [&](Writing& writing) { return saveDraft(writing, wild); });
    ASSERT_EQ(codeOf(saved), ErrorCode::outOfRange);
    EXPECT_EQ(saved.error().field, Field::pulseFrequency);
    EXPECT_THAT(saved.error().figures,
                testing::ElementsAre(Amount{20'000, Unit::hertz}, Amount{0.1, Unit::hertz},
                                     Amount{10'000, Unit::hertz}));
    EXPECT_EQ(draft(), std::nullopt);
}

TEST_F(PlanStore, SettingsThatDoNotApplyToTheWaveformAreKept)
{
    Draft bursts = tests::aDraft(ids);
    Settings& settings = bursts.blocks[0].sites[0].settings;
    settings.waveform = Waveform::kilohertzBursts;
    settings.phaseDuration = 0_us;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    bursts.id = save(bursts);
    bursts.version = 1;
    EXPECT_EQ(draft(), bursts);
}

TEST_F(PlanStore, ImpossiblePadsAreRefused)
{
    Draft draft = tests::aDraft(ids);
    draft.blocks[0].sites[0].pads[0] = {
        .shape = PadShape::round, .width = 50_mm, .height = 90_mm, .lead = Lead::a};
    const auto saved = store->write(author(), "save draft",
                                    [&](Writing& writing) { return saveDraft(writing, draft); });
    ASSERT_EQ(codeOf(saved), ErrorCode::outOfRange);
    EXPECT_EQ(saved.error().field, Field::padSize);
}

TEST_F(PlanStore, IssuingMakesAPlanAndEndsTheDraft)
{
    Draft work = tests::aDraft(ids);
    save(work);
    work.version = 1;
    keep(work);
    const PlanId id = must(issue(work, day(2026, 2, 9)));
    EXPECT_EQ(draft(), std::nullopt);
    EXPECT_FALSE(unsaved());
    Stimulator unit = tests::aUnit();
    unit.id = ids.stimulator;
    const Plan expected{.id = id,
                        .course = ids.course,
                        .number = 1,
                        .issuedOn = today,
                        .issuedBy = ids.practitioner,
                        .issuedByName = "Ruta Vennel",
                        .fromDate = day(2026, 2, 9),
                        .reason = "first plan",
                        .stimulator = unit,
                        .limitsVersion = limitsVersion,
                        .blocks = work.blocks};
    EXPECT_THAT(plans(), testing::ElementsAre(expected));
}

TEST_F(PlanStore, APlanKeepsTheSegmentLengthsOfItsDay)
{
    Patient agnes = tests::aPatient();
    agnes.id = ids.patient;
    agnes.segmentLengths = {{Segment::shank, BodySide::right, 380_mm}};
    const auto change = [&] {
        must(store->write(author(), "measure",
                          [&](Writing& writing) { changePatient(writing, agnes); }));
    };
    change();
    must(issue(tests::aDraft(ids)));
    agnes.version = 2;
    agnes.segmentLengths[0].length = 385_mm;
    change();
    EXPECT_THAT(plans().at(0).segmentLengths,
                testing::ElementsAre(SegmentLength{Segment::shank, BodySide::right, 380_mm}));
}

TEST_F(PlanStore, APlanWithEverythingFilledComesBackAsIssued)
{
    Stimulator unit = tests::aFullUnit();
    unit.id = must(store->write(author(), "add stimulator",
                                [&](Writing& writing) { return addStimulator(writing, unit); }));
    Draft full{.course = ids.course, .stimulator = unit.id, .blocks = {}};
    Block block{.weeks = 52,
                .schedule = DaysPerWeek{7},
                .sessionsPerDay = 6,
                .siteOrder = SiteOrder::oneAfterAnother,
                .sites = {tests::aFullSite(unit), tests::aFullSite(unit)}};
    block.sites[0].side = Side::middle;
    full.blocks = {block, tests::aBlock(unit)};
    full.blocks[1].sites[0].settings.secondPhaseDuration = 400_us;
    must(issue(full));
    ASSERT_THAT(plans(), testing::SizeIs(1));
    EXPECT_EQ(plans()[0].blocks, full.blocks);
    EXPECT_EQ(plans()[0].stimulator, unit);
}

TEST_F(PlanStore, PlansAreNumberedAndTheEarliestComesFirst)
{
    must(issue(tests::aDraft(ids)));
    must(issue(tests::aDraft(ids), day(2026, 3, 20)));
    ASSERT_THAT(plans(), testing::SizeIs(2));
    EXPECT_EQ(plans()[0].number, 1);
    EXPECT_EQ(plans()[1].number, 2);
    EXPECT_EQ(plans()[1].fromDate, day(2026, 3, 20));
}

TEST_F(PlanStore, OldPlansKeepTheUnitAsItWas)
{
    must(issue(tests::aDraft(ids)));
    Stimulator changed = tests::aUnit();
    changed.id = ids.stimulator;
    changed.phaseDuration.most = 500_us;
    changed.askingOrder = {Field::onTime};
    must(store->write(author(), "change stimulator",
                      [&](Writing& writing) { changeStimulator(writing, changed); }));
    must(issue(tests::aDraft(ids)));
    EXPECT_EQ(plans()[0].stimulator.phaseDuration.most, 400_us);
    EXPECT_EQ(plans()[1].stimulator, changed);
}

TEST_F(PlanStore, PlansOnAnUnchangedUnitShareItsCopy)
{
    must(issue(tests::aDraft(ids)));
    must(issue(tests::aDraft(ids)));
    const auto copies = must(store->read([](Reading& reading) {
        return numberFrom(reading.connection(),
                          "SELECT count(*) FROM stimulator WHERE copy_of IS NOT NULL");
    }));
    EXPECT_EQ(copies, 1);
    EXPECT_THAT(must(store->read([](Reading& reading) { return stimulators(reading); })),
                testing::SizeIs(1));
}

TEST_F(PlanStore, OnlyTheFirstPlanMayBeginBeforeItsIssue)
{
    must(issue(tests::aDraft(ids), day(2026, 2, 9)));
    const auto second = issue(tests::aDraft(ids), day(2026, 3, 11));
    ASSERT_EQ(codeOf(second), ErrorCode::refused);
    EXPECT_EQ(second.error().field, Field::fromDate);
    EXPECT_THAT(plans(), testing::SizeIs(1));
}

TEST_F(PlanStore, WhatCannotBeRunIsNotIssued)
{
    Draft noBlocks = tests::aDraft(ids);
    noBlocks.blocks.clear();
    EXPECT_EQ(codeOf(issue(noBlocks)), ErrorCode::refused);

    Draft noUnit = tests::aDraft(ids);
    noUnit.stimulator.reset();
    EXPECT_EQ(codeOf(issue(noUnit)), ErrorCode::refused);

    Draft noPads = tests::aDraft(ids);
    noPads.blocks[0].sites[0].pads.clear();
    EXPECT_EQ(codeOf(issue(noPads)), ErrorCode::refused);

    Draft noPlateau = tests::aDraft(ids);
    noPlateau.blocks[0].sites[0].settings.rampUp = std::chrono::seconds(30);
    EXPECT_EQ(codeOf(issue(noPlateau)), ErrorCode::refused);
    EXPECT_THAT(plans(), testing::IsEmpty());
}

TEST_F(PlanStore, AFailedIssueLeavesTheDraft)
{
    Draft work = tests::aDraft(ids);
    work.id = save(work);
    work.version = 1;
    const auto issued = store->write(author(), "issue plan", [&](Writing& writing) {
        return issuePlan(writing, work,
                         {.fromDate = today, .reason = "", .issuedBy = PractitionerId(99)}, today);
    });
    EXPECT_EQ(codeOf(issued), ErrorCode::notFound);
    EXPECT_EQ(draft(), work);
    EXPECT_THAT(plans(), testing::IsEmpty());
}

TEST_F(PlanStore, ADraftOfNoCourseIsNotFound)
{
    Draft lost = tests::aDraft(ids);
    lost.course = CourseId(99);
    const auto saved = store->write(author(), "save draft",
                                    [&](Writing& writing) { return saveDraft(writing, lost); });
    EXPECT_EQ(codeOf(saved), ErrorCode::notFound);
    lost.course.reset();
    EXPECT_EQ(codeOf(store->write(author(), "keep",
                                  [&](Writing& writing) { keepUnsavedDraft(writing, lost); })),
              ErrorCode::notFound);
}

} // namespace
} // namespace quadrille::db
