// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/patient_rows.h"

#include "db/codec.h"
#include "db/rows.h"

#include <algorithm>
#include <string>

namespace quadrille::db
{

Patient takePatient(Statement& row)
{
    Patient patient;
    patient.id = takeId<Patient>(row);
    patient.reference = row.takeText();
    patient.name = row.takeText();
    patient.birthDate = takeDate(row);
    patient.telephone = row.takeText();
    patient.note = row.takeText();
    patient.archived = takeFlag(row);
    patient.email = row.takeText();
    patient.address = row.takeText();
    patient.contactPerson = row.takeText();
    patient.height = takeOptionalQuantity<Length>(row);
    patient.language = row.takeText();
    patient.version = takeInt(row);
    return patient;
}

std::vector<SegmentLength> takeSegmentLengths(const Connection& connection, std::string_view table,
                                              std::string_view owner, std::int64_t key)
{
    std::vector<SegmentLength> lengths;
    Statement rows(connection, "SELECT segment, side, length_mm FROM " + std::string(table) +
                                   " WHERE " + std::string(owner) + " = ?");
    rows.bind({key});
    while (rows.next()) {
        SegmentLength length;
        length.segment = takeChoice<Segment>(rows);
        length.side = takeChoice<BodySide>(rows);
        length.length = takeQuantity<Length>(rows);
        lengths.push_back(length);
    }
    std::ranges::sort(lengths);
    return lengths;
}

void addSegmentLengths(const Connection& connection, std::string_view table, std::string_view owner,
                       std::int64_t key, const std::vector<SegmentLength>& lengths)
{
    for (const SegmentLength& length : lengths) {
        insertPart(connection, table,
                   {{std::string(owner), key},
                    {"segment", valueOf(length.segment)},
                    {"side", valueOf(length.side)},
                    {"length_mm", valueOf(length.length)}});
    }
}

} // namespace quadrille::db
