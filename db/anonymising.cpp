// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/anonymising.h"

#include "db/backup.h"
#include "db/caseload_key.h"
#include "db/caught.h"
#include "db/change_chain.h"
#include "db/codec.h"
#include "db/passing_file.h"
#include "db/plan_seal.h"
#include "db/store.h"

#include <QRandomGenerator>

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quadrille::db
{

namespace
{

/// Texts that are words of the program, whatever a person enters. Every other text is replaced, so
/// that a column of a later schema is never let through by mistake.
constexpr auto keptTexts = std::to_array<std::string_view>({
    "stimulator.ramp_habit",
    "stimulator.cycle_start",
    "stimulator.usage_counter",
    "stimulator_own_word.field",
    "stimulator_waveform.waveform",
    "stimulator_range.field",
    "stimulator_asking_order.field",
    "draft.state",
    "block.site_order",
    "site.side",
    "site.waveform",
    "pad.material",
    "pad.shape",
    "pad.lead",
    "segment_length.segment",
    "segment_length.side",
    "plan_segment_length.segment",
    "plan_segment_length.side",
    "screening_answer.question",
    "screening_answer.answer",
    "screening_override.question",
    "screening_question.question",
    "screening_question.class",
    "screening_question.reach",
    "screening_question.regions",
    "screening_question.advice_place",
    "screening_place.question",
    "screening_place.region",
    "screening_place.side",
    "skin_test.side",
    "skin_test.region",
    "skin_test.sharp_blunt",
    "skin_test.warm_cold",
    "practice_question.class",
    "practice_question.reach",
    "practice_question.advice_place",
    "house_settings.ramp_habit",
    "house_settings.waveform",
    "diary_entry.source",
    "counter_reading.explanation",
    "follow_up.decision",
    "measurement.kind",
    "measurement.side",
    "measurement.counted",
    "electrode_set.type",
    "electrode_set.shape",
    "course.treated_side",
    "printed_document.kind",
    "printed_document.medium",
    "clinic_site.side",
    "clinic_site.skin_before",
    "clinic_site.skin_after",
    "preference.name",
    "erasure.ground",
    "change_record.what",
    "change_record.record_kind",
    "change_record.act",
    "change_record.field",
    "change_record.value_digest",
    "change_record.chain",
    "change_value.salt",
    "change_end.chain",
});

/// Texts that tell series apart: each different one gets a number.
constexpr auto numberedTexts = std::to_array<std::pair<const char*, const char*>>({
    {"measurement", "subject"},
    {"measurement", "method"},
});

/// The condition under which a preference is a number that the program reckons with.
std::string isAmountNamed(const std::string& column)
{
    return "(" + column + " GLOB 'pad_life_*' OR " + column + " GLOB '*_percent' OR " + column +
           " GLOB '*_months')";
}

/// Stand-ins that must differ from row to row, or say what they stand for.
const std::map<std::string, std::string>& standIns()
{
    static const std::map<std::string, std::string> texts{
        {"patient.reference", "'P' || id"},
        {"patient.name", "'Patient ' || id"},
        {"patient.language", "''"},
        {"practitioner.name", "'Practitioner ' || id"},
        {"stimulator.name", "'Unit ' || id"},
        {"house_settings.name", "'Settings ' || id"},
        {"loan_unit.inventory_number", "'U' || id"},
        // Headings of files are the practice's words; an empty list can still be read.
        {"preference.value", "CASE WHEN name = 'diary_import_mappings' THEN '[]' WHEN value = '' "
                             "OR (" +
                                 isAmountNamed("name") + " AND " + dialect::isWholeNumber("value") +
                                 ") THEN value ELSE 'text' END"},
        // A word that the practice has made a unit of, and no code.
        {"measurement.unit", "CASE WHEN unit GLOB '*{*' THEN '{unit}' ELSE unit END"},
    };
    return texts;
}

bool endsWith(const std::string& text, std::string_view ending)
{
    return std::string_view(text).ends_with(ending);
}

/// What an UPDATE sets a text column to; empty: it stays.
std::string replacementFor(const std::string& table, const std::string& column,
                           const std::string& shift)
{
    const std::string name = table + "." + column;
    if (std::ranges::find(keptTexts, name) != keptTexts.end()) {
        return {};
    }
    if (const auto standIn = standIns().find(name); standIn != standIns().end()) {
        return standIn->second;
    }
    if (std::ranges::any_of(numberedTexts, [&](const auto& numbered) {
            return table == numbered.first && column == numbered.second;
        })) {
        return {};
    }
    if (endsWith(column, "_date") || endsWith(column, "_on") || column == "day") {
        return "date(" + column + ", " + shift + ")";
    }
    if (endsWith(column, "_at")) {
        return "strftime('%Y-%m-%dT%H:%M:%SZ', " + column + ", " + shift + ")";
    }
    return "CASE WHEN " + column + " IS NULL OR " + column + " = '' THEN " + column +
           " ELSE 'text' END";
}

std::vector<std::string> textsFrom(const Connection& connection, const std::string& sql)
{
    std::vector<std::string> texts;
    Statement rows(connection, sql);
    while (rows.next()) {
        texts.push_back(rows.takeText());
    }
    return texts;
}

void replaceTexts(const Connection& connection, const std::string& table, const std::string& shift)
{
    std::string assignments;
    Statement columns(connection, "SELECT name FROM pragma_table_info(?) WHERE type = 'TEXT'");
    columns.bind({table});
    while (columns.next()) {
        const std::string column = columns.takeText();
        const std::string replacement = replacementFor(table, column, shift);
        if (!replacement.empty()) {
            assignments += assignments.empty() ? "" : ", ";
            assignments += column;
            assignments += " = ";
            assignments += replacement;
        }
    }
    if (!assignments.empty()) {
        run(connection, "UPDATE " + table + " SET " + assignments);
    }
}

void numberTexts(const Connection& connection, const std::string& table, const std::string& column)
{
    run(connection, "UPDATE " + table + " SET " + column + " = 'text ' || number FROM (SELECT " +
                        column +
                        " AS earlier, row_number() OVER (ORDER BY min(id)) AS number FROM " +
                        table + " WHERE " + column + " <> '' GROUP BY " + column +
                        ") AS texts WHERE " + column + " = earlier");
}

/// Amounts and dates of a change stay readable; of the rest only that something changed.
void replaceChangedValues(const Connection& connection, const std::string& shift)
{
    const auto replaced = [&](const std::string& column) {
        return column + " = CASE WHEN " + column + " IS NULL OR " + column + " = '' THEN " +
               column + " WHEN date(" + column + ", '+0 days') IS " + column + " THEN date(" +
               column + ", " + shift + ") WHEN isAmount THEN " + column + " ELSE 'text' END";
    };
    // The unit at the end of a column's name tells an amount from a telephone number.
    run(connection,
        "UPDATE change_value SET " + replaced("from_value") + ", " + replaced("to_value") +
            " FROM (SELECT id, (field GLOB '*_ms' OR field GLOB '*_us' OR field GLOB '*_mhz' OR "
            "field GLOB '*_ua' OR field GLOB '*_mm' OR field GLOB '*_permille' OR "
            "field GLOB '*_thousandths' OR field GLOB 'trials.*' OR field GLOB 'life_*' OR "
            "field GLOB '*weeks' OR field GLOB '*.least' OR field GLOB '*.most' OR " +
            isAmountNamed("field") +
            ") AS isAmount "
            "FROM change_record) AS changes WHERE changes.id = change_value.change");
    std::vector<std::int64_t> plans;
    {
        Statement rows(connection, "SELECT id FROM plan");
        while (rows.next()) {
            plans.push_back(rows.takeInteger());
        }
    }
    for (const std::int64_t plan : plans) {
        Statement(connection,
                  "UPDATE change_value SET to_value = ? WHERE change IN (SELECT id FROM "
                  "change_record WHERE record_kind = 'plan' AND record_id = ? AND field = "
                  "'content_digest')")
            .bind({planSeal(connection, plan), plan})
            .run();
    }
}

/// Seals the change record anew, over what it says now and with other salts.
void sealAnew(const Connection& connection)
{
    std::string chain(64, '0');
    Statement update(connection,
                     "UPDATE change_record SET value_digest = ?, chain = ? WHERE id = ?");
    Statement salts(connection, "UPDATE change_value SET salt = ? WHERE change = ?");
    Statement rows(connection, std::string("SELECT ") + chainedColumns +
                                   ", change_value.salt, from_value, to_value FROM change_record "
                                   "LEFT JOIN change_value ON change_value.change = "
                                   "change_record.id ORDER BY change_record.id");
    while (rows.next()) {
        Columns row;
        for (int i = 0; i < chainedColumnCount; ++i) {
            row.push_back({{}, rows.takeValue()});
        }
        if (rows.takeOptionalText()) {
            const Value from = rows.takeValue();
            const ChangedValue change{
                .field = {}, .salt = freshSalt(), .from = from, .to = rows.takeValue()};
            row.back().value = digestOf(change);
            salts.bind({change.salt, row.front().value}).run();
        }
        chain = chainAfter(chain, row);
        update.bind({row.back().value, chain, row.front().value}).run();
    }
    Statement(connection, "UPDATE change_end SET chain = ?").bind({chain}).run();
}

void replaceEverything(const Connection& connection, std::chrono::days days)
{
    std::string shift = "'";
    shift.append(days.count() < 0 ? "" : "+").append(std::to_string(days.count())).append(" days'");
    run(connection, dialect::suspendForeignKeys);
    Transaction transaction(connection, dialect::beginWriting);
    const std::string guards = "FROM sqlite_schema WHERE type IN ('trigger', 'index') AND sql IS "
                               "NOT NULL";
    // Guards would refuse, and unique days collide while some are shifted and others not yet.
    const auto made = textsFrom(connection, "SELECT sql " + guards);
    for (const std::string& drop :
         textsFrom(connection, "SELECT 'DROP ' || type || ' ' || name " + guards)) {
        run(connection, drop);
    }
    for (const std::string& table :
         textsFrom(connection, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT "
                               "LIKE 'sqlite_%' AND name NOT IN ('change_value', 'kept_form')")) {
        replaceTexts(connection, table, shift);
    }
    for (const auto& [table, column] : numberedTexts) {
        numberTexts(connection, table, column);
    }
    run(connection, "DELETE FROM kept_form");
    refreshCaseloadKeys(connection);
    replaceChangedValues(connection, shift);
    sealAnew(connection);
    for (const std::string& make : made) {
        run(connection, make);
    }
    transaction.commit();
    run(connection, dialect::writeAnew);
}

} // namespace

std::chrono::days randomShift()
{
    constexpr int leastWeeks = 52;
    constexpr int mostWeeks = 520;
    return std::chrono::days(-7 * QRandomGenerator::system()->bounded(leastWeeks, mostWeeks + 1));
}

Result<void> anonymise(const QString& store, const QString& out, std::chrono::days shift)
{
    return caught([&] {
        requireFree(out);
        PassingFile copy(out);
        copyStore(store, copy.path());
        {
            const Connection connection(copy.path(), Access::readWrite, usualPatience);
            replaceEverything(connection, shift);
        }
        copy.takePlace(out);
    });
}

} // namespace quadrille::db
