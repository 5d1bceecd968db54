// SPDX-License-Identifier: GPL-3.0-or-later
// What a unit can do instead, and what that does to the figures, as rows to be read.
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"
#include "core/stimulator.h"
#include "core/unit_fit.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace quadrille::app
{

/// Why a setting can’t stay as it is, to follow a colon.
QString fitReasonText(FitReason reason);

/// One value before and after.
struct FitRow {
    QString what;   ///< led by the site where sites differ
    QString before; ///< a dash where it was not to be had
    QString after;
    QString why; ///< of a setting; empty for a figure
};

/// A block that has to change.
struct FitSection {
    QString title; ///< "Block 2, weeks 3–4"
    std::vector<FitRow> settings;
    std::vector<FitRow> figures; ///< those of a session and of the dose that differ
    QStringList left;            ///< what stops the block all the same, a sentence each
};

/// How blocks were meant before they are fitted: with the unit that they come from.
struct FitOrigin {
    RampHabit habit = RampHabit::includedInOnTime;
    CycleStart start = CycleStart::withOn;
};

/// The sections of all blocks that have to change for `unit`.
std::vector<FitSection> fitSections(const std::vector<Block>& blocks, const FitOrigin& origin,
                                    const Stimulator& unit, const QuantityText& text);

} // namespace quadrille::app
