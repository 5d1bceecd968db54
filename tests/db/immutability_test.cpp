// SPDX-License-Identifier: GPL-3.0-or-later
// Tries to change what is never changed, with plain SQL past the store.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/failure.h"
#include "db/sql.h"

#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using tests::must;

constexpr int raisedByTrigger = 1811; // SQLITE_CONSTRAINT_TRIGGER, sqlite.org/rescode.html

class Immutability : public testing::Test
{
protected:
    Immutability()
    {
        tests::anIssuedPlan(*store, ids);
        must(store->write(tests::author(), "save draft", [&](Writing& writing) {
            return saveDraft(writing, tests::aDraft(ids));
        }));
    }
    /// Every table as text, to see that nothing has changed.
    std::string everything()
    {
        std::string all;
        for (const char* query :
             {"SELECT group_concat(id || course || number || reason || issued) FROM plan",
              "SELECT group_concat(id || ifnull(plan, 'd') || ordinal || weeks) FROM block",
              "SELECT group_concat(id || block || muscle || on_time_ms) FROM site",
              "SELECT group_concat(site || '.' || ordinal || width_mm) FROM pad",
              "SELECT group_concat(id || name || channels || sealed) FROM stimulator",
              "SELECT group_concat(stimulator || field || most) FROM stimulator_range",
              "SELECT group_concat(stimulator || waveform) FROM stimulator_waveform",
              "SELECT group_concat(stimulator || field) FROM stimulator_asking_order",
              "SELECT group_concat(id || what || act) FROM change_record"}) {
            Statement row(*raw, query);
            row.next();
            all += row.takeOptionalText().value_or("-") + "\n";
        }
        return all;
    }
    void expectRefused(const std::string& sql)
    {
        const std::string before = everything();
        try {
            run(*raw, sql);
            ADD_FAILURE() << "went through: " << sql;
        } catch (const SqlError& error) {
            EXPECT_EQ(error.code(), raisedByTrigger) << sql << ": " << error.what();
        }
        EXPECT_EQ(everything(), before) << sql;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    std::unique_ptr<Connection> raw = temp.rawConnection();
};

const std::string issuedBlock = "(SELECT id FROM block WHERE plan IS NOT NULL)";
const std::string issuedSite = "(SELECT id FROM site WHERE block = " + issuedBlock + ")";
const std::string copiedUnit = "(SELECT id FROM stimulator WHERE copy_of IS NOT NULL)";
const std::string siteValues =
    "muscle, side, channel, position, instruction, waveform, pulse_frequency_mhz, "
    "phase_duration_us, interphase_gap_us, second_phase_duration_us, carrier_frequency_mhz, "
    "burst_duty_permille, on_time_ms, off_time_ms, ramp_up_ms, ramp_down_ms, session_length_ms, "
    "last_tolerated_amplitude_ua, amplitude_ceiling_ua";

TEST_F(Immutability, AnIssuedPlanIsNeverChangedOrRemoved)
{
    expectRefused("UPDATE plan SET reason = 'another'");
    expectRefused("UPDATE plan SET issued = 0");
    expectRefused("UPDATE plan SET from_date = '2027-01-01'");
    expectRefused("DELETE FROM plan");
}

TEST_F(Immutability, AnIssuedPlanIsNotReplacedEither)
{
    const std::string same = "SELECT id, course, number, issued_on, issued_by, issued_by_name, "
                             "from_date, 'another', stimulator, limits_version, 0, 0 FROM plan";
    expectRefused("INSERT OR REPLACE INTO plan " + same);
    expectRefused(
        "INSERT OR REPLACE INTO plan SELECT id + 1, course, number, issued_on, "
        "issued_by, issued_by_name, from_date, 'another', stimulator, limits_version, 0, 0 "
        "FROM plan");
    // An unissued row, moved onto the issued one.
    run(*raw, "INSERT INTO plan SELECT id + 1, course, number + 1, issued_on, issued_by, "
              "issued_by_name, '2026-04-01', reason, stimulator, limits_version, 0, 0 FROM plan");
    expectRefused("UPDATE OR REPLACE plan SET id = id - 1 WHERE issued = 0");
    expectRefused("UPDATE OR REPLACE plan SET number = number - 1 WHERE issued = 0");
}

TEST_F(Immutability, BlocksOfAnIssuedPlanStay)
{
    expectRefused("UPDATE block SET weeks = 9 WHERE plan IS NOT NULL");
    expectRefused("UPDATE block SET plan = NULL, draft = (SELECT id FROM draft), ordinal = 7 "
                  "WHERE plan IS NOT NULL");
    expectRefused("DELETE FROM block WHERE plan IS NOT NULL");
    expectRefused("INSERT INTO block (plan, ordinal, weeks, weekdays, sessions_per_day, "
                  "site_order) SELECT id, 2, 4, 31, 1, 'together' FROM plan");
    expectRefused("UPDATE block SET draft = NULL, plan = (SELECT id FROM plan), ordinal = 2 "
                  "WHERE draft IS NOT NULL");
    expectRefused("INSERT OR REPLACE INTO block (id, draft, ordinal, weeks, weekdays, "
                  "sessions_per_day, site_order) SELECT " +
                  issuedBlock + ", id, 9, 4, 31, 1, 'together' FROM draft");
}

TEST_F(Immutability, SitesOfAnIssuedPlanStay)
{
    expectRefused("UPDATE site SET on_time_ms = 9000 WHERE block = " + issuedBlock);
    expectRefused("DELETE FROM site WHERE block = " + issuedBlock);
    expectRefused("INSERT INTO site (block, ordinal, " + siteValues + ") SELECT " + issuedBlock +
                  ", 2, " + siteValues + " FROM site LIMIT 1");
    expectRefused("INSERT OR REPLACE INTO site (id, block, ordinal, " + siteValues + ") SELECT " +
                  issuedSite + ", (SELECT id FROM block WHERE draft IS NOT NULL), 9, " +
                  siteValues + " FROM site LIMIT 1");
}

TEST_F(Immutability, PadsOfAnIssuedPlanStay)
{
    expectRefused("UPDATE pad SET width_mm = 60 WHERE site = " + issuedSite);
    expectRefused("DELETE FROM pad WHERE site = " + issuedSite);
    expectRefused("INSERT INTO pad SELECT site, 3, material, shape, width_mm, height_mm, lead "
                  "FROM pad WHERE site = " +
                  issuedSite + " LIMIT 1");
    expectRefused("INSERT OR REPLACE INTO pad SELECT site, ordinal, material, shape, 60, "
                  "height_mm, lead FROM pad WHERE site = " +
                  issuedSite);
}

TEST_F(Immutability, TheCopiedStimulatorStays)
{
    const std::string ofCopy = " WHERE stimulator = " + copiedUnit;
    expectRefused("UPDATE stimulator SET channels = 4 WHERE copy_of IS NOT NULL");
    expectRefused("UPDATE stimulator SET sealed = 0 WHERE copy_of IS NOT NULL");
    expectRefused("DELETE FROM stimulator WHERE copy_of IS NOT NULL");
    expectRefused("INSERT OR REPLACE INTO stimulator SELECT id, copy_of, 0, 'another', channels, "
                  "channels_share_timing, has_work_rest_cycles, ramp_habit, archived, 1, "
                  "cycle_start, usage_counter, memories, most_output_ua FROM stimulator "
                  "WHERE copy_of IS NOT NULL");
    expectRefused("UPDATE OR REPLACE stimulator SET id = " + copiedUnit + " WHERE copy_of IS NULL");
    expectRefused("UPDATE stimulator_range SET most = most + 1" + ofCopy);
    expectRefused("DELETE FROM stimulator_range" + ofCopy);
    expectRefused("INSERT INTO stimulator_range SELECT stimulator, 'interphase_gap', 0, 100, 10, "
                  "0 FROM stimulator_range" +
                  ofCopy + " LIMIT 1");
    expectRefused("UPDATE stimulator_waveform SET waveform = 'direct_current'" + ofCopy);
    expectRefused("DELETE FROM stimulator_waveform" + ofCopy);
    expectRefused("INSERT INTO stimulator_waveform SELECT id, 9, 'direct_current' FROM "
                  "stimulator WHERE copy_of IS NOT NULL");
    expectRefused("INSERT INTO stimulator_asking_order SELECT id, 1, 'on_time' FROM stimulator "
                  "WHERE copy_of IS NOT NULL");
}

TEST_F(Immutability, TheOwnWordsOfACopiedStimulatorStay)
{
    Stimulator unit = tests::aUnit();
    unit.id = ids.stimulator;
    unit.ownWords = {{Field::onTime, "Work"}};
    must(store->write(tests::author(), "issue another plan", [&](Writing& writing) {
        changeStimulator(writing, unit);
        Draft draft = tests::aDraft(ids);
        draft.version = 1;
        issuePlan(writing, draft,
                  {.fromDate = tests::day(2026, 3, 12),
                   .reason = "new words",
                   .issuedBy = ids.practitioner},
                  tests::day(2026, 3, 12));
    }));
    const std::string words = "FROM stimulator_own_word WHERE stimulator IN (SELECT id FROM "
                              "stimulator WHERE copy_of IS NOT NULL)";
    EXPECT_EQ(numberFrom(*raw, "SELECT count(*) " + words), 1);
    expectRefused("UPDATE stimulator_own_word SET word = 'Pull'");
    expectRefused("DELETE " + words);
    expectRefused("INSERT INTO stimulator_own_word SELECT stimulator, 'off_time', 'Rest' " + words);
}

TEST_F(Immutability, TheAskingOrderOfACopiedStimulatorStays)
{
    Stimulator unit = tests::aUnit();
    unit.id = ids.stimulator;
    unit.askingOrder = {Field::onTime, Field::offTime};
    must(store->write(tests::author(), "issue another plan", [&](Writing& writing) {
        changeStimulator(writing, unit);
        Draft draft = tests::aDraft(ids);
        draft.version = 1;
        issuePlan(writing, draft,
                  {.fromDate = tests::day(2026, 3, 12), .reason = "", .issuedBy = ids.practitioner},
                  tests::day(2026, 3, 12));
    }));
    const std::string ofCopies =
        " WHERE stimulator IN (SELECT id FROM stimulator WHERE copy_of IS NOT NULL)";
    expectRefused("UPDATE stimulator_asking_order SET field = 'ramp_up'" + ofCopies);
    expectRefused("DELETE FROM stimulator_asking_order" + ofCopies);
}

TEST_F(Immutability, TheChangeRecordIsOnlyAddedTo)
{
    expectRefused("UPDATE change_record SET what = 'nothing'");
    expectRefused("DELETE FROM change_record");
    expectRefused("INSERT OR REPLACE INTO change_record SELECT id, made_at, practitioner, "
                  "practitioner_name, 'nothing', record_kind, record_id, patient, act, field, "
                  "value_digest, chain FROM change_record");
    expectRefused("INSERT INTO change_record SELECT id + 100, made_at, practitioner, "
                  "practitioner_name, what, record_kind, record_id, patient, act, field, "
                  "value_digest, chain FROM change_record");
    expectRefused("DELETE FROM change_end");
    expectRefused("UPDATE change_end SET last = 1");
    expectRefused("INSERT OR REPLACE INTO change_end SELECT 1, 0, chain FROM change_end");
    Patient agnes = tests::aPatient();
    agnes.id = ids.patient;
    agnes.name = "Agnes Thorley-Rusk";
    must(store->write(tests::author(), "change patient",
                      [&](Writing& writing) { changePatient(writing, agnes); }));
    expectRefused("UPDATE change_value SET from_value = 'another'");
    expectRefused("DELETE FROM change_value");
    expectRefused("INSERT OR REPLACE INTO change_value SELECT change, salt, 'x', 'y' FROM "
                  "change_value");
}

TEST_F(Immutability, HoldsAlsoWhereForeignKeysAreNotEnforced)
{
    run(*raw, "PRAGMA foreign_keys = OFF");
    expectRefused("DELETE FROM plan");
    expectRefused("DELETE FROM block");
    expectRefused("DELETE FROM site");
    expectRefused("DELETE FROM pad");
    expectRefused("DELETE FROM stimulator_range");
}

TEST_F(Immutability, APlanIsARuleOfTheStoreAndComesBackAsRefused)
{
    const auto done = store->write(tests::author(), "cheat", [](Writing& writing) {
        run(writing.connection(), "UPDATE plan SET reason = 'another'");
    });
    ASSERT_EQ(tests::codeOf(done), ErrorCode::refused);
    EXPECT_EQ(done.error().detail, "an issued plan is never changed");
}

TEST_F(Immutability, DraftsAndOwnStimulatorsAreFree)
{
    run(*raw, "UPDATE stimulator SET channels = 4 WHERE copy_of IS NULL");
    run(*raw, "DELETE FROM stimulator_range WHERE stimulator NOT IN " + copiedUnit);
    run(*raw, "DELETE FROM draft");
    EXPECT_EQ(numberFrom(*raw, "SELECT count(*) FROM block WHERE draft IS NOT NULL"), 0);
    EXPECT_EQ(numberFrom(*raw, "SELECT count(*) FROM site"), 1);
    EXPECT_EQ(numberFrom(*raw, "SELECT count(*) FROM pad"), 2);
}

} // namespace
} // namespace quadrille::db
