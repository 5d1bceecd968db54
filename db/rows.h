// SPDX-License-Identifier: GPL-3.0-or-later
// A record as a list of named columns: what is written and what the change record compares.
#pragma once

#include "db/sql.h"

#include "core/field.h"

#include <string>
#include <string_view>
#include <vector>

namespace quadrille::db
{

struct Column {
    std::string name;
    Value value;
    friend bool operator==(const Column&, const Column&) = default;
};
using Columns = std::vector<Column>;

/// Adds a row to a table with an id and gives that id.
std::int64_t insertRow(const Connection& connection, std::string_view table,
                       const Columns& columns);
/// Adds a row to a table that needs no id of its own.
void insertPart(const Connection& connection, std::string_view table, const Columns& columns);
void updateRow(const Connection& connection, std::string_view table, std::int64_t id,
               const Columns& columns);

/// The same columns, each name led by `path` and a dot.
Columns under(const std::string& path, Columns columns);
void append(Columns& columns, Columns more);

/// Failure notFilled when the text holds nothing but blanks.
void requireFilled(const std::string& text, Field field);

} // namespace quadrille::db
