// SPDX-License-Identifier: GPL-3.0-or-later
// A made-up caseload, without a store: for pictures and tests.
#pragma once

#include "db/caseload_query.h"

#include <vector>

/// Thursday 12 March 2026.
quadrille::Date inventedToday();

/// 17 patients of an invented practice: every reason for attention, courses that begin, run and
/// have ended, a patient without a course, accents in names.
std::vector<quadrille::db::CaseloadRow> inventedCaseload();

/// `count` patients with running courses, for long lists.
std::vector<quadrille::db::CaseloadRow> inventedCaseload(int count);
