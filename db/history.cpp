// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/history.h"

#include "db/codec.h"

#include <limits>

namespace quadrille::db
{

namespace
{

constexpr const char* selectChanges =
    "SELECT change_record.id, made_at, practitioner_name, what, record_kind, record_id, act, "
    "ifnull(field, ''), from_value, to_value FROM change_record "
    "LEFT JOIN change_value ON change_value.change = change_record.id WHERE ";

ChangeAct actOf(const std::string& word)
{
    if (word == "created") {
        return ChangeAct::created;
    }
    return word == "changed" ? ChangeAct::changed : ChangeAct::removed;
}

std::vector<Change> take(Statement& rows)
{
    std::vector<Change> changes;
    while (rows.next()) {
        Change& change = changes.emplace_back();
        change.key = rows.takeInteger();
        change.madeAt = takeMoment(rows);
        change.practitionerName = rows.takeText();
        change.what = rows.takeText();
        change.recordKind = rows.takeText();
        change.recordId = rows.takeInteger();
        change.act = actOf(rows.takeText());
        change.field = rows.takeText();
        change.from = rows.takeOptionalText();
        change.to = rows.takeOptionalText();
    }
    return changes;
}

} // namespace

std::vector<Change> historyOf(Reading& reading, PatientId patient, int most,
                              std::optional<std::int64_t> before)
{
    Statement rows(reading.connection(),
                   std::string(selectChanges) +
                       "patient = ? AND change_record.id < ? AND field IS NOT 'content_digest' "
                       "ORDER BY change_record.id DESC LIMIT ?");
    rows.bind({valueOf(patient), before.value_or(std::numeric_limits<std::int64_t>::max()),
               valueOf(most)});
    return take(rows);
}

std::vector<Change> historyOfRecord(Reading& reading, const std::string& kind, std::int64_t id)
{
    Statement rows(reading.connection(),
                   std::string(selectChanges) +
                       "record_kind = ? AND record_id = ? ORDER BY change_record.id");
    rows.bind({kind, id});
    return take(rows);
}

} // namespace quadrille::db
