// SPDX-License-Identifier: GPL-3.0-or-later
// Settings that the practice keeps, and what a block started from. Rules of our own, no source.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/history.h"
#include "db/house_settings.h"
#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

HouseSettings someSettings(const std::string& name = "Knees, first weeks")
{
    const Stimulator unit = tests::aFullUnit();
    Block block;
    block.sites = {tests::aFullSite(unit)};
    block.schedule = DaysPerWeek{3};
    block.sessionsPerDay = 2;
    block.weeks = 6;
    HouseSettings kept = houseSettingsFrom(block, unit);
    kept.name = name;
    kept.condition = "Knee replacement";
    kept.note = "As agreed in spring";
    return kept;
}

class HouseSettingsInTheStore : public testing::Test
{
protected:
    HouseSettings added(HouseSettings kept)
    {
        kept.id = must(store->write(
            author(), "keep", [&](Writing& writing) { return addHouseSettings(writing, kept); }));
        return kept;
    }
    auto change(const HouseSettings& kept)
    {
        return store->write(author(), "change",
                            [&](Writing& writing) { changeHouseSettings(writing, kept); });
    }
    auto byHand(const std::string& statement)
    {
        return store->write(author(), "by hand",
                            [&](Writing& writing) { run(writing.connection(), statement); });
    }
    std::vector<HouseSettings> all() { return must(store->read(houseSettings)); }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(HouseSettingsInTheStore, ComeBackAsTheyWereKept)
{
    const HouseSettings kept = added(someSettings());
    EXPECT_THAT(all(), ElementsAre(kept));
    EXPECT_THAT(must(store->read(verify)), IsEmpty());
}

TEST_F(HouseSettingsInTheStore, AreCalledOtherwiseOverTheVersionThatWasRead)
{
    HouseSettings kept = added(someSettings());
    kept.name = "Knees, later";
    kept.note = "Changed";
    must(change(kept));
    HouseSettings stale = kept;
    stale.name = "Knees, never";
    EXPECT_EQ(codeOf(change(stale)), ErrorCode::changedElsewhere);
    kept.version = 2;
    EXPECT_THAT(all(), ElementsAre(kept));
}

TEST_F(HouseSettingsInTheStore, AreWithdrawnNotDeletedAndTheirNameIsFreeAgain)
{
    HouseSettings kept = added(someSettings());
    kept.withdrawn = true;
    must(change(kept));
    EXPECT_THAT(all(), IsEmpty());
    added(someSettings());
    EXPECT_THAT(all(), SizeIs(1));
    EXPECT_EQ(codeOf(byHand("DELETE FROM house_settings")), ErrorCode::refused);
    EXPECT_EQ(codeOf(byHand("UPDATE house_settings SET withdrawn = 0 WHERE id = 1")),
              ErrorCode::refused);
}

TEST_F(HouseSettingsInTheStore, NeedANameOfTheirOwn)
{
    const HouseSettings first = added(someSettings());
    EXPECT_EQ(
        codeOf(store->write(author(), "keep",
                            [&](Writing& writing) { addHouseSettings(writing, someSettings()); })),
        ErrorCode::notUnique);
    EXPECT_EQ(codeOf(store->write(
                  author(), "keep",
                  [&](Writing& writing) { addHouseSettings(writing, someSettings("  ")); })),
              ErrorCode::notFilled);
    HouseSettings second = added(someSettings("Others"));
    second.name = first.name;
    EXPECT_EQ(codeOf(change(second)), ErrorCode::notUnique);
    EXPECT_EQ(codeOf(byHand("UPDATE house_settings SET name = 'Others' WHERE id = 1")),
              ErrorCode::refused);
    EXPECT_EQ(codeOf(byHand("UPDATE OR REPLACE house_settings SET name = 'Others' WHERE id = 1")),
              ErrorCode::refused);
}

TEST_F(HouseSettingsInTheStore, NeverChangeTheirFigures)
{
    HouseSettings kept = added(someSettings());
    kept.settings.onTime += std::chrono::seconds(1);
    EXPECT_EQ(codeOf(change(kept)), ErrorCode::refused);
    EXPECT_EQ(codeOf(byHand("UPDATE house_settings SET on_time_ms = 9000")), ErrorCode::refused);
    EXPECT_EQ(codeOf(byHand("UPDATE house_settings SET weeks = 9")), ErrorCode::refused);
    EXPECT_EQ(codeOf(byHand("INSERT OR REPLACE INTO house_settings SELECT * FROM house_settings")),
              ErrorCode::refused);
}

TEST_F(HouseSettingsInTheStore, AreBoundedAsTheSettingsOfASiteAre)
{
    HouseSettings kept = someSettings();
    kept.settings.offTime = std::chrono::hours(2);
    EXPECT_EQ(codeOf(store->write(author(), "keep",
                                  [&](Writing& writing) { addHouseSettings(writing, kept); })),
              ErrorCode::outOfRange);
    added(someSettings());
    // A copy under another name, with one value out of its bounds.
    const auto codeOfCopy = [&](const std::string& column, const std::string& value) {
        const auto raw = temp.rawConnection();
        std::string names;
        std::string values;
        Statement columns(*raw, "SELECT name FROM pragma_table_info('house_settings') "
                                "WHERE name <> 'id'");
        while (columns.next()) {
            const std::string name = columns.takeText();
            names += (names.empty() ? "" : ", ") + name;
            const std::string other = name == "name" ? "'Copy'" : name;
            values += (values.empty() ? "" : ", ") + (name == column ? value : other);
        }
        const Transaction undone(*raw, dialect::beginWriting);
        try {
            run(*raw, "INSERT INTO house_settings (" + names + ") SELECT " + values +
                          " FROM house_settings");
        } catch (const SqlError& error) {
            return error.code();
        }
        return 0;
    };
    constexpr int checkFailed = 275; // SQLITE_CONSTRAINT_CHECK, sqlite.org/rescode.html
    EXPECT_EQ(codeOfCopy("weeks", "52"), 0);
    for (const auto& [column, value] :
         std::vector<std::pair<std::string, std::string>>{{"name", "' '"},
                                                          {"ramp_habit", "'sometimes'"},
                                                          {"waveform", "'square'"},
                                                          {"pulse_frequency_mhz", "99"},
                                                          {"phase_duration_us", "-1"},
                                                          {"interphase_gap_us", "-1"},
                                                          {"second_phase_duration_us", "0"},
                                                          {"carrier_frequency_mhz", "99999"},
                                                          {"burst_duty_permille", "1001"},
                                                          {"on_time_ms", "0"},
                                                          {"off_time_ms", "-1"},
                                                          {"ramp_up_ms", "-1"},
                                                          {"ramp_down_ms", "3600001"},
                                                          {"session_length_ms", "0"},
                                                          {"sessions_per_day", "7"},
                                                          {"days_per_week", "8"},
                                                          {"weeks", "53"},
                                                          {"withdrawn", "2"},
                                                          {"version", "0"}}) {
        EXPECT_EQ(codeOfCopy(column, value), checkFailed) << column;
    }
}

TEST_F(HouseSettingsInTheStore, AreKeptWithTheirRowInTheChangeRecord)
{
    added(someSettings());
    const auto rows = must(store->read([](Reading& reading) {
        return numberFrom(reading.connection(),
                          "SELECT count(*) FROM change_record WHERE record_kind = "
                          "'house_settings' AND act = 'created'");
    }));
    EXPECT_EQ(rows, 1);
}

/// What a block of a draft or a plan started from.
class OriginOfABlock : public HouseSettingsInTheStore
{
protected:
    Draft draftFromAStudy(bool changedSince)
    {
        Draft draft = tests::aDraft(ids);
        draft.blocks.front().origin = BlockOrigin{"Feil 2011", changedSince};
        return draft;
    }
    void issue(const Draft& draft)
    {
        must(store->write(author(), "issue plan", [&](Writing& writing) {
            return issuePlan(
                writing, draft,
                {.fromDate = day(2026, 2, 9), .reason = "first plan", .issuedBy = ids.practitioner},
                day(2026, 3, 12));
        }));
    }
};

TEST_F(OriginOfABlock, IsKeptInDraftAndPlan)
{
    Draft draft = draftFromAStudy(true);
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, draft); }));
    const auto saved = must(store->read([&](Reading& r) { return draftOf(r, ids.course); }));
    ASSERT_TRUE(saved);
    EXPECT_EQ(saved->blocks, draft.blocks);
    draft.version = 1;
    issue(draft);
    const auto plans = must(store->read([&](Reading& r) { return plansOf(r, ids.course); }));
    ASSERT_THAT(plans, SizeIs(1));
    EXPECT_EQ(plans.front().blocks, draft.blocks);
    EXPECT_THAT(must(store->read(verify)), IsEmpty());
}

TEST_F(OriginOfABlock, IsSealedWithThePlan)
{
    issue(draftFromAStudy(false));
    {
        const auto raw = temp.rawConnection();
        run(*raw, "DROP TRIGGER block_update");
        run(*raw, "UPDATE block SET starting_point = 'Another' WHERE plan IS NOT NULL");
    }
    const auto complaints = must(store->read(verify));
    EXPECT_THAT(complaints, testing::Contains(Complaint{Fault::changedPlan, "plan 1",
                                                        "it is not what was issued"}));
}

TEST_F(OriginOfABlock, IsNamedBeforeItCanBeChangedSince)
{
    Draft draft = tests::aDraft(ids);
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, draft); }));
    const auto insert = [&](const std::string& origin, const std::string& changed) {
        return byHand("INSERT INTO block (draft, ordinal, weeks, days_per_week, sessions_per_day, "
                      "site_order, starting_point, changed_since) SELECT draft, 9, 1, 1, 1, "
                      "site_order, " +
                      origin + ", " + changed + " FROM block");
    };
    EXPECT_FALSE(insert("NULL", "1"));
    EXPECT_FALSE(insert("' '", "0"));
    EXPECT_FALSE(insert("'Feil'", "2"));
    EXPECT_TRUE(insert("'Feil'", "1"));
}

} // namespace
} // namespace quadrille::db
