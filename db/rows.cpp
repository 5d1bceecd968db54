// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/rows.h"

#include "db/failure.h"

#include <algorithm>
#include <iterator>

namespace quadrille::db
{

namespace
{

std::vector<Value> valuesOf(const Columns& columns)
{
    std::vector<Value> values;
    std::ranges::transform(columns, std::back_inserter(values), &Column::value);
    return values;
}

std::string insertText(std::string_view table, const Columns& columns)
{
    std::string names;
    std::string marks;
    for (const Column& column : columns) {
        const std::string_view separator = names.empty() ? "" : ", ";
        names.append(separator).append(column.name);
        marks.append(separator).append("?");
    }
    return "INSERT INTO " + std::string(table) + " (" + names + ") VALUES (" + marks + ")";
}

} // namespace

std::int64_t insertRow(const Connection& connection, std::string_view table, const Columns& columns)
{
    Statement insert(connection, insertText(table, columns));
    insert.bind(valuesOf(columns)).run();
    return insert.insertedKey();
}

void insertPart(const Connection& connection, std::string_view table, const Columns& columns)
{
    Statement(connection, insertText(table, columns)).bind(valuesOf(columns)).run();
}

void updateRow(const Connection& connection, std::string_view table, std::int64_t id,
               const Columns& columns)
{
    std::string assignments;
    for (const Column& column : columns) {
        assignments += (assignments.empty() ? "" : ", ") + column.name + " = ?";
    }
    std::vector<Value> values = valuesOf(columns);
    values.emplace_back(id);
    Statement(connection, "UPDATE " + std::string(table) + " SET " + assignments + " WHERE id = ?")
        .bind(values)
        .run();
}

Columns under(const std::string& path, Columns columns)
{
    for (Column& column : columns) {
        column.name.insert(0, path + ".");
    }
    return columns;
}

void append(Columns& columns, Columns more)
{
    std::ranges::move(more, std::back_inserter(columns));
}

void requireFilled(const std::string& text, Field field)
{
    if (text.find_first_not_of(" \t\r\n") == std::string::npos) {
        throw Failure({.code = ErrorCode::notFilled, .subject = {}, .detail = {}, .field = field});
    }
}

} // namespace quadrille::db
