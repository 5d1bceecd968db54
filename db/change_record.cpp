// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/change_record.h"

#include "db/change_chain.h"
#include "db/codec.h"

#include <algorithm>

namespace quadrille::db
{

namespace
{

Value textOf(const Value& value)
{
    const auto* number = std::get_if<std::int64_t>(&value);
    return number ? Value(std::to_string(*number)) : value;
}

Value valueIn(const Columns& columns, const std::string& name)
{
    const auto found = std::ranges::find(columns, name, &Column::name);
    return found == columns.end() ? Value() : textOf(found->value);
}

void addRow(Writing& writing, const Record& record, std::string_view act,
            const std::optional<ChangedValue>& change = std::nullopt)
{
    const Connection& connection = writing.connection();
    if (!writing.chainEnd()) {
        writing.chainEnd() = chainEnd(connection);
    }
    ChainEnd& end = *writing.chainEnd();
    Columns row{
        {"id", valueOf(end.last + 1)},
        {"made_at", valueOf(writing.moment())},
        {"practitioner", valueOf(writing.author().practitioner)},
        {"practitioner_name", valueOf(writing.author().name)},
        {"what", valueOf(writing.what())},
        {"record_kind", std::string(record.kind)},
        {"record_id", valueOf(record.id)},
        {"patient", valueOf(record.patient)},
        {"act", std::string(act)},
        {"field", change ? Value(change->field) : Value()},
        {"value_digest", change ? Value(digestOf(*change)) : Value()},
    };
    const std::string chain = chainAfter(end.chain, row);
    row.push_back({"chain", chain});
    insertPart(connection, "change_record", row);
    end = {end.last + 1, chain};
    if (change) {
        insertPart(connection, "change_value",
                   {{"change", valueOf(end.last)},
                    {"salt", change->salt},
                    {"from_value", change->from},
                    {"to_value", change->to}});
    }
}

void addChange(Writing& writing, const Record& record, const std::string& name, const Value& from,
               const Value& to)
{
    if (from != to) {
        addRow(writing, record, "changed",
               ChangedValue{.field = name, .salt = freshSalt(), .from = from, .to = to});
    }
}

} // namespace

void recordCreated(Writing& writing, const Record& record)
{
    addRow(writing, record, "created");
}

void recordChanged(Writing& writing, const Record& record, const Columns& before,
                   const Columns& after)
{
    for (const Column& column : before) {
        addChange(writing, record, column.name, textOf(column.value), valueIn(after, column.name));
    }
    for (const Column& column : after) {
        if (std::ranges::find(before, column.name, &Column::name) == before.end()) {
            addChange(writing, record, column.name, Value(), textOf(column.value));
        }
    }
}

void recordRemoved(Writing& writing, const Record& record)
{
    addRow(writing, record, "removed");
}

} // namespace quadrille::db
