// SPDX-License-Identifier: GPL-3.0-or-later
// The acts that all records of a course share. A kind says once what its table, columns and row
// are:
//
//   template <> struct Kind<Pause> {
//       static constexpr const char* table = "pause";
//       static constexpr const char* columns = "id, course, from_date, …";
//       static constexpr const char* order = "from_date, id";
//       static Pause take(Statement& row);             // the columns, in their order
//       static Columns columnsOf(const Pause& pause);  // what a change may change
//   };
#pragma once

#include "db/codec.h"
#include "db/course_rows.h"
#include "db/failure.h"
#include "db/versions.h"

#include <string>
#include <vector>

namespace quadrille::db
{

template <class Part>
struct Kind;

template <class Part>
Record recordOf(Writing& writing, const Part& part)
{
    if (!part.course) {
        throw Failure({.code = ErrorCode::notFound, .subject = "course", .detail = {}});
    }
    return {.kind = Kind<Part>::table,
            .id = part.id ? part.id->key() : 0,
            .patient = patientOf(writing.connection(), *part.course)};
}

template <class Part>
std::vector<Part> partsWhere(Reading& reading, const std::string& condition, const Value& value)
{
    std::vector<Part> parts;
    Statement rows(reading.connection(), std::string("SELECT ") + Kind<Part>::columns + " FROM " +
                                             Kind<Part>::table + " WHERE " + condition +
                                             " ORDER BY " + Kind<Part>::order);
    rows.bind({value});
    while (rows.next()) {
        parts.push_back(Kind<Part>::take(rows));
    }
    return parts;
}

template <class Part>
std::vector<Part> partsOf(Reading& reading, CourseId course)
{
    return partsWhere<Part>(reading, "course = ?", valueOf(course));
}

/// `more`: columns that are written once and never changed.
template <class Part>
Id<Part> addPart(Writing& writing, const Part& part, const Columns& more = {})
{
    Columns columns = Kind<Part>::columnsOf(part);
    columns.push_back({"course", valueOf(part.course)});
    append(columns, more);
    return Id<Part>(addRecord(writing, recordOf(writing, part), columns));
}

template <class Part>
Part storedPart(Writing& writing, const Part& changed)
{
    auto stored = changed.id ? partsWhere<Part>(writing, "id = ?", valueOf(*changed.id))
                             : std::vector<Part>();
    if (stored.empty()) {
        throw Failure({.code = ErrorCode::notFound, .subject = Kind<Part>::table, .detail = {}});
    }
    if (stored.front().course != changed.course) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = Kind<Part>::table,
                       .detail = "a record keeps its course"});
    }
    return std::move(stored.front());
}

template <class Part>
void changePart(Writing& writing, const Part& changed)
{
    const Part before = storedPart(writing, changed);
    saveOver(writing, recordOf(writing, changed), changed.version, Kind<Part>::columnsOf(before),
             Kind<Part>::columnsOf(changed));
}

/// Who writes, under the names that a table has for it.
inline Columns writerColumns(const Writing& writing, const std::string& by)
{
    return {{by, valueOf(writing.author().practitioner)},
            {by + "_name", valueOf(writing.author().name)}};
}

} // namespace quadrille::db
