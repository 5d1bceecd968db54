// SPDX-License-Identifier: GPL-3.0-or-later
// A made-up caseload, without a store: for pictures and tests.
#pragma once

#include "app/caseload/caseload_source.h"

#include <vector>

/// Thursday 12 March 2026.
quadrille::Date inventedToday();

/// 17 patients of an invented practice: every reason for attention, courses that begin, run and
/// have ended, a patient without a course, accents in names.
std::vector<quadrille::db::CaseloadRow> inventedCaseload();

/// The rows of a caseload held in memory, answered as a store would.
class InventedSource : public quadrille::app::CaseloadSource
{
public:
    explicit InventedSource(std::vector<quadrille::db::CaseloadRow> rows = inventedCaseload());

    quadrille::Date today() const override { return inventedToday(); }
    std::optional<std::vector<quadrille::db::CaseloadFacts>> current() override;
    int countEnded(const std::vector<std::string>& words) override;
    std::vector<quadrille::db::CaseloadFacts>
    ended(const std::vector<std::string>& words,
          const std::optional<quadrille::db::CaseloadFacts>& last, int most) override;
    quadrille::AdherenceRules rules() override { return {}; }
    std::vector<quadrille::db::CaseloadRow>
    rows(const std::vector<quadrille::PatientId>& patients) override;

    std::vector<quadrille::db::CaseloadRow> held;
    bool readable = true; ///< false: as if the file could not be read
    int rowsRead = 0;     ///< how many whole rows were asked for

private:
    std::vector<quadrille::db::CaseloadFacts> facts(bool ended) const;
};

/// `count` patients with running courses, for long lists.
std::vector<quadrille::db::CaseloadRow> inventedCaseload(int count);
