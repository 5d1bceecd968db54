// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the schema back: the bounds against core's, the columns of each index, the tables' kind.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/codec.h"
#include "db/sql.h"

#include "core/settings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using tests::must;

constexpr int checkFailed = 275; // SQLITE_CONSTRAINT_CHECK, sqlite.org/rescode.html

class Schema : public testing::Test
{
protected:
    Schema()
    {
        const tests::Practiced ids = tests::aPracticeWithCourse(*store);
        must(store->write(tests::author(), "save draft", [&](Writing& writing) {
            return saveDraft(writing, tests::aDraft(ids));
        }));
    }
    /// Copies a row with other values in some columns; 0 when the database takes it.
    int codeOfCopy(const std::string& table, const std::map<std::string, std::string>& others,
                   const std::string& condition = "1 = 1")
    {
        std::string names;
        std::string values;
        Statement columns(*raw, "SELECT name FROM pragma_table_info(?) WHERE name <> 'id'");
        columns.bind({table});
        while (columns.next()) {
            const std::string name = columns.takeText();
            const auto other = others.find(name);
            names += (names.empty() ? "" : ", ") + name;
            values += (values.empty() ? "" : ", ") + (other == others.end() ? name : other->second);
        }
        const Transaction undone(*raw, dialect::beginWriting);
        try {
            run(*raw, "INSERT INTO " + table + " (" + names + ") SELECT " + values + " FROM " +
                          table + " WHERE " + condition + " LIMIT 1");
        } catch (const SqlError& error) {
            return error.code();
        }
        return 0;
    }
    void expectBounds(const std::string& column, std::int64_t least, std::int64_t most)
    {
        const auto codeOf = [&](std::int64_t value) {
            return codeOfCopy("site", {{column, std::to_string(value)}, {"ordinal", "9"}});
        };
        EXPECT_EQ(codeOf(least), 0) << column;
        EXPECT_EQ(codeOf(most), 0) << column;
        EXPECT_EQ(codeOf(least - 1), checkFailed) << column;
        EXPECT_EQ(codeOf(most + 1), checkFailed) << column;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    std::unique_ptr<Connection> raw = temp.rawConnection();
};

TEST_F(Schema, BoundsSettingsAsCoreDoes)
{
    const std::map<Field, std::string> columns{
        {Field::pulseFrequency, "pulse_frequency_mhz"},
        {Field::phaseDuration, "phase_duration_us"},
        {Field::interphaseGap, "interphase_gap_us"},
        {Field::secondPhaseDuration, "second_phase_duration_us"},
        {Field::carrierFrequency, "carrier_frequency_mhz"},
        {Field::burstDuty, "burst_duty_permille"},
        {Field::onTime, "on_time_ms"},
        {Field::offTime, "off_time_ms"},
        {Field::rampUp, "ramp_up_ms"},
        {Field::rampDown, "ramp_down_ms"},
        {Field::sessionLength, "session_length_ms"},
        {Field::lastToleratedAmplitude, "last_tolerated_amplitude_ua"},
        {Field::amplitudeCeiling, "amplitude_ceiling_ua"},
    };
    for (const Field field : standardAskingOrder()) {
        const CountRange bounds = arithmeticBounds(field);
        expectBounds(columns.at(field), bounds.least, bounds.most);
    }
}

TEST_F(Schema, BoundsRangesOfStimulatorsAsCoreDoes)
{
    for (const Field field : standardAskingOrder()) {
        const bool amplitude =
            field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
        const std::string name = amplitude ? "amplitude" : std::string(wordOf(field));
        const CountRange bounds = arithmeticBounds(field);
        const auto codeOf = [&](std::int64_t least, std::int64_t most) {
            return codeOfCopy("stimulator_range", {{"field", "'" + name + "'"},
                                                   {"stimulator", "2"},
                                                   {"least", std::to_string(least)},
                                                   {"preset", std::to_string(least)},
                                                   {"most", std::to_string(most)}});
        };
        run(*raw, "INSERT INTO stimulator VALUES (2, NULL, 0, 'Other', 2, 1, 1, "
                  "'added_to_on_time', 0, 1, 'with_on', 'none', 0, NULL)");
        EXPECT_EQ(codeOf(bounds.least, bounds.most), 0) << name;
        EXPECT_EQ(codeOf(bounds.least - 1, bounds.most), checkFailed) << name;
        EXPECT_EQ(codeOf(bounds.least, bounds.most + 1), checkFailed) << name;
        run(*raw, "DELETE FROM stimulator WHERE id = 2");
    }
    EXPECT_EQ(codeOfCopy("stimulator_range", {{"field", "'no_such_setting'"}}), checkFailed);
    EXPECT_EQ(codeOfCopy("stimulator_range", {{"field", "'burst_duty'"}, {"step", "0"}}),
              checkFailed);
    EXPECT_EQ(codeOfCopy("stimulator_range",
                         {{"field", "'burst_duty'"}, {"least", "9"}, {"preset", "5"}}),
              checkFailed);
}

TEST_F(Schema, BoundsWhatAStimulatorIs)
{
    const auto unit = [&](const std::string& column, const std::string& value) {
        return codeOfCopy("stimulator", {{"name", "'Other'"}, {column, value}});
    };
    EXPECT_EQ(unit("memories", "0"), 0);
    EXPECT_EQ(unit("memories", std::to_string(mostMemories)), 0);
    EXPECT_EQ(unit("memories", "-1"), checkFailed);
    EXPECT_EQ(unit("memories", std::to_string(mostMemories + 1)), checkFailed);
    EXPECT_EQ(unit("most_output_ua", "NULL"), 0);
    EXPECT_EQ(unit("most_output_ua", "0"), checkFailed);
    const std::int64_t mostOutput = arithmeticBounds(Field::amplitudeCeiling).most;
    EXPECT_EQ(unit("most_output_ua", std::to_string(mostOutput)), 0);
    EXPECT_EQ(unit("most_output_ua", std::to_string(mostOutput + 1)), checkFailed);
    for (const CycleStart start : {CycleStart::withOn, CycleStart::withOff}) {
        EXPECT_EQ(unit("cycle_start", "'" + std::string(wordOf(start)) + "'"), 0);
    }
    for (const UsageCounter counter :
         {UsageCounter::none, UsageCounter::uses, UsageCounter::time, UsageCounter::usesAndTime}) {
        EXPECT_EQ(unit("usage_counter", "'" + std::string(wordOf(counter)) + "'"), 0);
    }
    EXPECT_EQ(unit("cycle_start", "'with_a_pause'"), checkFailed);
    EXPECT_EQ(unit("usage_counter", "'steps'"), checkFailed);
    const auto word = [&](std::size_t length) {
        const Transaction undone(*raw, dialect::beginWriting);
        try {
            run(*raw, "INSERT INTO stimulator_own_word VALUES (1, 'on_time', '" +
                          std::string(length, 'W') + "')");
        } catch (const SqlError& error) {
            return error.code();
        }
        return 0;
    };
    EXPECT_EQ(word(longestOwnWord), 0);
    EXPECT_EQ(word(longestOwnWord + 1), checkFailed);
    EXPECT_EQ(word(0), checkFailed);
}

TEST_F(Schema, BoundsBlocksSitesAndPads)
{
    const auto block = [&](const std::string& column, const std::string& value) {
        return codeOfCopy("block", {{column, value}, {"ordinal", "9"}});
    };
    for (const std::string good : {"1", "52"}) {
        EXPECT_EQ(block("weeks", good), 0);
    }
    for (const std::string bad : {"0", "53", "NULL + 1.5"}) {
        EXPECT_NE(block("weeks", bad), 0);
    }
    EXPECT_EQ(block("sessions_per_day", "6"), 0);
    EXPECT_EQ(block("sessions_per_day", "7"), checkFailed);
    EXPECT_EQ(block("sessions_per_day", "0"), checkFailed);
    EXPECT_EQ(block("weekdays", "128"), checkFailed);
    EXPECT_EQ(block("weekdays", "NULL"), checkFailed);   // no schedule at all
    EXPECT_EQ(block("days_per_week", "3"), checkFailed); // two kinds of schedule
    EXPECT_EQ(codeOfCopy("block", {{"weekdays", "NULL"}, {"days_per_week", "7"}, {"ordinal", "9"}}),
              0);
    EXPECT_EQ(codeOfCopy("block", {{"weekdays", "NULL"}, {"days_per_week", "8"}, {"ordinal", "9"}}),
              checkFailed);
    EXPECT_EQ(block("draft", "NULL"), checkFailed); // belongs to nothing
    EXPECT_EQ(codeOfCopy("site", {{"channel", "9"}, {"ordinal", "9"}}), checkFailed);
    EXPECT_EQ(codeOfCopy("site", {{"side", "'both'"}, {"ordinal", "9"}}), checkFailed);
    const auto pad = [&](const std::string& column, const std::string& value) {
        return codeOfCopy("pad", {{column, value}, {"ordinal", "9"}});
    };
    EXPECT_EQ(pad("width_mm", "5"), 0);
    EXPECT_EQ(pad("height_mm", "400"), 0);
    EXPECT_EQ(pad("width_mm", "4"), checkFailed);
    EXPECT_EQ(pad("height_mm", "401"), checkFailed);
    EXPECT_EQ(pad("shape", "'round'"), checkFailed); // 50 × 90 mm
}

TEST_F(Schema, TakesDatesThatExistAndNoOthers)
{
    const auto birth = [&](const std::string& date) {
        return codeOfCopy("patient", {{"reference", "'x'"}, {"birth_date", "'" + date + "'"}});
    };
    EXPECT_EQ(birth("2024-02-29"), 0);
    for (const std::string bad :
         {"2023-02-29", "2023-2-1", "29.02.2024", "", "2024-02-29 10:00", "20240229"}) {
        EXPECT_EQ(birth(bad), checkFailed) << bad;
    }
    EXPECT_NE(birth("now"), 0);
    const auto moment = [&](const std::string& text) {
        return codeOfCopy("draft", {{"state", "'unsaved'"}, {"kept_at", "'" + text + "'"}});
    };
    EXPECT_EQ(moment("2026-03-12T10:42:00Z"), 0);
    EXPECT_EQ(moment("2026-03-12T10:42:00"), checkFailed);
    EXPECT_EQ(moment("2026-03-12 10:42:00Z"), checkFailed);
}

TEST_F(Schema, ADraftHasReasonsOrNone)
{
    const auto reasons = [&](const std::string& text) {
        return codeOfCopy("draft", {{"state", "'unsaved'"}, {"adopted_reasons", text}});
    };
    EXPECT_EQ(reasons("'tires less'"), 0);
    EXPECT_EQ(reasons("''"), checkFailed);
}

TEST_F(Schema, OnlyAFirstPlanBeginsBeforeItsIssue)
{
    run(*raw, "INSERT INTO plan VALUES (1, 1, 1, '2026-03-12', 1, 'Ruta Vennel', '2026-02-09', "
              "'', 1, 1, 0, 0)");
    EXPECT_EQ(codeOfCopy("plan", {{"number", "2"}}), checkFailed);
    EXPECT_EQ(codeOfCopy("plan", {{"number", "2"}, {"from_date", "'2026-03-12'"}}), 0);
}

TEST_F(Schema, EveryTableIsStrict)
{
    Statement rows(*raw, "SELECT name, strict FROM pragma_table_list "
                         "WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'");
    int tables = 0;
    while (rows.next()) {
        const std::string name = rows.takeText();
        EXPECT_EQ(rows.takeInteger(), 1) << name;
        ++tables;
    }
    EXPECT_EQ(tables, 47);
}

TEST_F(Schema, IndexesLieOnTheColumnsTheyAreMeantFor)
{
    std::map<std::string, std::string> columns;
    std::map<std::string, bool> unique;
    Statement rows(*raw, "SELECT list.name, list.\"unique\", info.name FROM sqlite_schema tables "
                         "JOIN pragma_index_list(tables.name) list "
                         "JOIN pragma_index_info(list.name) info "
                         "WHERE tables.type = 'table' AND list.origin = 'c' "
                         "ORDER BY list.name, info.seqno");
    while (rows.next()) {
        const std::string name = rows.takeText();
        unique[name] = rows.takeInteger() != 0;
        std::string& list = columns[name];
        list += (list.empty() ? "" : ", ") + rows.takeText();
    }
    const std::map<std::string, std::string> expected{
        {"patient_reference", "reference"},
        {"course_number", "patient, number"},
        {"stimulator_name", "name"},
        {"stimulator_copies", "copy_of"},
        {"plan_number", "course, number"},
        {"draft_of_course", "course, state"},
        {"block_of_plan", "plan, ordinal"},
        {"block_of_draft", "draft, ordinal"},
        {"site_of_block", "block, ordinal"},
        {"clinic_session_of_course", "course, held_on"},
        {"clinic_site_of_session", "clinic_session, ordinal"},
        {"caseload_key_of_course", "course"},
        {"caseload_key_by_end", "ends_on"},
        {"caseload_key_by_name", "name, patient, ends_on, words"},
        {"change_record_of_record", "record_kind, record_id, id"},
        {"change_record_of_patient", "patient, id"},
        {"pause_of_course", "course, from_date"},
        {"screening_number", "course, number"},
        {"screening_question_order", "screening, ordinal"},
        {"screening_override_of_screening", "screening, question"},
        {"diary_entry_of_session", "course, day, session_number"},
        {"diary_amplitude_of_site", "site"},
        {"diary_day_of_course", "course, day"},
        {"diary_received_of_course", "course, through_date"},
        {"counter_reading_of_course", "course, read_on"},
        {"follow_up_of_course", "course, held_on"},
        {"follow_up_of_plan", "plan"},
        {"measurement_of_course", "course, measured_on"},
        {"measurement_of_follow_up", "follow_up"},
        {"printed_document_of_course", "course, printed_at"},
        {"printed_document_of_plan", "plan"},
        {"electrode_set_of_course", "course, issued_on"},
        {"preference_name", "name"},
        {"erasure_of_patient", "patient"},
        {"house_settings_name", "name"},
        {"loan_unit_number", "inventory_number"},
        {"loan_unit_of_stimulator", "stimulator"},
        {"loan_that_is_open", "unit"},
        {"loan_of_unit", "unit, lent_on"},
        {"loan_of_course", "course, lent_on"},
    };
    EXPECT_EQ(columns, expected);
    for (const char* name :
         {"patient_reference", "course_number", "stimulator_name", "plan_number", "draft_of_course",
          "block_of_plan", "block_of_draft", "site_of_block", "screening_number",
          "screening_question_order", "diary_entry_of_session", "diary_day_of_course",
          "preference_name", "erasure_of_patient", "loan_unit_number", "loan_that_is_open",
          "house_settings_name"}) {
        EXPECT_TRUE(unique[name]) << name;
    }
}

TEST_F(Schema, ForeignKeysLeadSomewhere)
{
    constexpr int foreignKeyFailed = 787; // SQLITE_CONSTRAINT_FOREIGNKEY
    EXPECT_EQ(codeOfCopy("course", {{"patient", "99"}}), foreignKeyFailed);
    EXPECT_EQ(codeOfCopy("draft", {{"course", "99"}}), foreignKeyFailed);
    EXPECT_EQ(codeOfCopy("draft", {{"stimulator", "99"}, {"state", "'unsaved'"}}),
              foreignKeyFailed);
    EXPECT_EQ(codeOfCopy("site", {{"block", "99"}}), foreignKeyFailed);
    EXPECT_FALSE(Statement(*raw, dialect::findBrokenReferences).next());
}

} // namespace
} // namespace quadrille::db
