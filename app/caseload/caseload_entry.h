// SPDX-License-Identifier: GPL-3.0-or-later
// One row of the caseload as it is shown.
#pragma once

#include "app/caseload/attention.h"
#include "app/grid/course_grid.h"
#include "app/words/quantity_text.h"

#include "db/caseload_query.h"

#include "core/lived_days.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace quadrille::app
{

/// A cell of two lines.
struct TwoLines {
    QString first;
    QString second;
    friend bool operator==(const TwoLines&, const TwoLines&) = default;
};

/// A patient with the course shown, worded when the row comes into view.
struct CaseloadEntry {
    TwoLines name;        ///< name, age
    TwoLines courseLines; ///< sites, problem
    TwoLines plan;        ///< "Plan 2", "since 9 Feb 2026"
    TwoLines waiting;     ///< the first reason or, lighter, what there is to know
    QStringList otherReasons;
    std::vector<Attention> reasons;          ///< the weightiest first
    std::optional<int> week = std::nullopt;  ///< course week of today, of a running course
    std::optional<int> weeks = std::nullopt; ///< weeks of the plan issued last
    std::optional<CourseGrid> miniature = std::nullopt; ///< nothing without a course
    bool hasEnded = false;

    bool needsAttention() const { return !reasons.empty(); }
};

CaseloadEntry entryOf(const db::CaseloadRow& row, const AdherenceRules& rules, Date today,
                      const QuantityText& text);

/// "3 of 8", "13, plan of 12", "plan of 10": the bold part and the rest.
TwoLines weekWords(const CaseloadEntry& entry, const QuantityText& text);
/// The whole row in a sentence, for a voice.
QString spokenRow(const CaseloadEntry& entry, const QuantityText& text);

} // namespace quadrille::app
