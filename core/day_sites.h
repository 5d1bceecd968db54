// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/diary_import.h"

#include <cstdint>
#include <map>
#include <variant>
#include <vector>

namespace quadrille
{

/// Which site of a course an amplitude of a day belongs to.
class DaySites
{
public:
    /// Both outlive it.
    DaySites(const CourseRecords& records, const std::vector<PlanSiteKey>& keys);
    /// The site's key; noSiteOnChannel or severalSites where it is not one site.
    std::variant<std::int64_t, CellProblem> siteOf(Date day, const ColumnMeaning& meaning) const;

private:
    std::optional<BlockInForce> blockOn(Date day) const;

    const CourseRecords& m_records;
    std::map<Date, BlockInForce> m_blocks;
    std::map<BlockInForce, std::map<std::size_t, std::int64_t>> m_keys;
};

} // namespace quadrille
