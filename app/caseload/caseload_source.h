// SPDX-License-Identifier: GPL-3.0-or-later
// Where the caseload comes from; the pages of it know no store.
#pragma once

#include "db/caseload_query.h"

#include "core/calendar.h"
#include "core/lived_days.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// Every answer is as of now. What can't be read has been told to the person by the source itself;
/// the answer is then empty.
class CaseloadSource
{
public:
    CaseloadSource() = default;
    virtual ~CaseloadSource() = default;
    CaseloadSource(const CaseloadSource&) = delete;
    CaseloadSource& operator=(const CaseloadSource&) = delete;

    virtual Date today() const = 0;
    /// Patients with a course that has not ended, or without one, by folded name; nothing when they
    /// can't be read.
    virtual std::optional<std::vector<db::CaseloadFacts>> current() = 0;
    /// Ended courses; each of the folded words stands somewhere in the line. With words at most
    /// db::mostCounted.
    virtual int countEnded(const std::vector<std::string>& words) = 0;
    /// The next `most` of them by folded name.
    virtual std::vector<db::CaseloadFacts> ended(const std::vector<std::string>& words,
                                                 const std::optional<db::CaseloadFacts>& last,
                                                 int most) = 0;
    /// From when on a session counts as done.
    virtual AdherenceRules rules() = 0;
    /// Whole rows with the diary of the last weeks, for what is in view.
    virtual std::vector<db::CaseloadRow> rows(const std::vector<PatientId>& patients) = 0;
};

} // namespace quadrille::app
