// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/electrode_sets.h"

#include "db/course_parts.h"

namespace quadrille::db
{

template <>
struct Kind<ElectrodeSet> {
    static constexpr const char* table = "electrode_set";
    static constexpr const char* columns =
        "id, course, issued_on, description, pads, type, shape, width_mm, height_mm, "
        "life_sessions, life_months, out_of_use_on, withdrawn, version";
    static constexpr const char* order = "issued_on, id";
    static ElectrodeSet take(Statement& row)
    {
        ElectrodeSet set;
        set.id = takeId<ElectrodeSet>(row);
        set.course = takeId<Course>(row);
        set.issuedOn = takeDate(row);
        set.description = row.takeText();
        set.pads = takeInt(row);
        set.type = takeOptionalChoice<ElectrodeType>(row);
        set.shape = takeOptionalChoice<PadShape>(row);
        set.width = takeOptionalQuantity<Length>(row).value_or(Length());
        set.height = takeOptionalQuantity<Length>(row).value_or(Length());
        set.life.uses = takeOptionalInt(row);
        set.life.months = takeOptionalInt(row);
        set.outOfUseOn = takeOptionalDate(row);
        set.withdrawn = takeFlag(row);
        set.version = takeInt(row);
        return set;
    }
    static Columns columnsOf(const ElectrodeSet& set)
    {
        const auto side = [&](Length length) { return set.shape ? valueOf(length) : Value(); };
        return {{"issued_on", valueOf(set.issuedOn)},
                {"description", valueOf(set.description)},
                {"pads", valueOf(set.pads)},
                {"type", valueOf(set.type)},
                {"shape", valueOf(set.shape)},
                {"width_mm", side(set.width)},
                {"height_mm", side(set.height)},
                {"life_sessions", valueOf(set.life.uses)},
                {"life_months", valueOf(set.life.months)},
                {"out_of_use_on", valueOf(set.outOfUseOn)},
                {"withdrawn", valueOf(set.withdrawn)}};
    }
};

std::vector<ElectrodeSet> electrodeSetsOf(Reading& reading, CourseId course)
{
    return partsOf<ElectrodeSet>(reading, course);
}

ElectrodeSetId addElectrodeSet(Writing& writing, const ElectrodeSet& set)
{
    return addPart(writing, set, writerColumns(writing, "recorded_by"));
}

void changeElectrodeSet(Writing& writing, const ElectrodeSet& set)
{
    changePart(writing, set);
}

} // namespace quadrille::db
