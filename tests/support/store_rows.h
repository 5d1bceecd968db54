// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/sql.h"

#include <QString>

#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace quadrille::tests
{

/// Every table of a file with all its rows as text, each value as SQL would write it.
inline std::string everyRow(const QString& file)
{
    const db::Connection connection(file, db::Access::readOnly, std::chrono::milliseconds(100));
    std::vector<std::string> queries;
    {
        db::Statement tables(
            connection, "SELECT tables.name, group_concat('quote(\"' || columns.name || '\")', "
                        "' || '','' || ') FROM sqlite_schema tables "
                        "JOIN pragma_table_info(tables.name) columns "
                        "WHERE tables.type = 'table' GROUP BY tables.name");
        while (tables.next()) {
            const std::string table = tables.takeText();
            queries.push_back("SELECT '" + table + ": ' || " + tables.takeText() + " AS row FROM " +
                              table + " ORDER BY row");
        }
    }
    std::string text;
    for (const std::string& query : queries) {
        db::Statement rows(connection, query);
        while (rows.next()) {
            text += rows.takeText() + "\n";
        }
    }
    return text;
}

/// Runs a text dump (sqlite3, ".dump"): each statement ends with a semicolon at the end of a line,
/// a trigger with a line "END;".
inline void runDump(const QString& file, const std::string& dump)
{
    const db::Connection raw(file, db::Access::readWrite, std::chrono::milliseconds(100));
    std::istringstream lines(dump);
    std::string statement;
    for (std::string line; std::getline(lines, line);) {
        const bool comment = statement.empty() && line.starts_with("--");
        if (comment) {
            continue;
        }
        statement += line + "\n";
        const bool trigger = statement.starts_with("CREATE TRIGGER");
        if (trigger ? line == "END;" : line.ends_with(";")) {
            db::run(raw, std::exchange(statement, {}));
        }
    }
}

} // namespace quadrille::tests
