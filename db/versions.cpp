// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/versions.h"

#include "db/codec.h"
#include "db/failure.h"

#include <string>

namespace quadrille::db
{

namespace
{

/// Who saved a record last, as the change record tells.
std::string lastAuthorOf(const Connection& connection, const Record& record)
{
    Statement row(connection, "SELECT practitioner_name FROM change_record "
                              "WHERE record_kind = ? AND record_id = ? ORDER BY id DESC LIMIT 1");
    row.bind({std::string(record.kind), record.id});
    return row.next() ? row.takeText() : std::string();
}

} // namespace

std::int64_t addRecord(Writing& writing, Record record, const Columns& columns)
{
    record.id = insertRow(writing.connection(), record.kind, columns);
    recordCreated(writing, record);
    return record.id;
}

void raiseVersion(Writing& writing, const Record& record, Version read)
{
    const std::string table(record.kind);
    const auto stored = numberFrom(writing.connection(),
                                   "SELECT version FROM " + table + " WHERE id = ?", {record.id});
    if (!stored) {
        throw Failure({.code = ErrorCode::notFound, .subject = table, .detail = {}});
    }
    if (*stored != read) {
        throw Failure({.code = ErrorCode::changedElsewhere,
                       .subject = table,
                       .detail = lastAuthorOf(writing.connection(), record)});
    }
    updateRow(writing.connection(), table, record.id, {{"version", valueOf(read + 1)}});
}

void saveOver(Writing& writing, const Record& record, Version read, const Columns& before,
              const Columns& after)
{
    if (before == after) {
        return;
    }
    raiseVersion(writing, record, read);
    updateRow(writing.connection(), record.kind, record.id, after);
    recordChanged(writing, record, before, after);
}

} // namespace quadrille::db
