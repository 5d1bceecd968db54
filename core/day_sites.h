// SPDX-License-Identifier: GPL-3.0-or-later
// Which block of a course what is reported of a day belongs to, and which site an amplitude.
#pragma once

#include "core/diary_columns.h"
#include "core/diary_rows.h"
#include "core/lived_days.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace quadrille
{

/// Keys of the sites of each plan, block by block, in their order.
using SiteKeys = std::vector<std::vector<std::vector<std::int64_t>>>;
/// Those of one block; none where they are not known.
std::span<const std::int64_t> keysOf(const SiteKeys& keys, const BlockInForce& block);

/// How a site is called in headings: "vastus lateralis right".
std::string siteWords(const Site& site);
/// Those of all sites of the plans, each once, in order.
std::vector<std::string> siteWordsOf(const std::vector<Plan>& plans);
/// The highest channel of any site of the plans; 0 without one.
int mostChannel(const std::vector<Plan>& plans);

/// The block in force on a day; after the last week the last block of the plan in force, for the
/// unit still has its settings. Nothing outside the course and before the first plan.
std::optional<BlockInForce> blockReportedOn(const CourseRecords& records, Date day);

/// Which site of a course an amplitude of a day belongs to.
class DaySites
{
public:
    /// Both outlive it; `keys` has an entry for each of the plans of `records`.
    DaySites(const CourseRecords& records, const SiteKeys& keys)
        : m_records(records)
        , m_keys(keys)
    {
    }
    /// The site's key; noSiteOnChannel or severalSites where it is not one site.
    std::variant<std::int64_t, CellProblem> siteOf(Date day, const ColumnMeaning& meaning) const;

private:
    const CourseRecords& m_records;
    const SiteKeys& m_keys;
};

} // namespace quadrille
