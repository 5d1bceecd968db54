// SPDX-License-Identifier: GPL-3.0-or-later
// A starting point in words: each figure with its standing, what a unit makes of it, and what is to
// be said before and after it is applied.
#pragma once

#include "app/words/quantity_text.h"

#include "core/starting_point.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace quadrille::app
{

/// The name of a figure; "Days a week" for weekdays.
QString pointFieldName(Field field);
/// A value with its unit; a dash for none.
QString pointValueText(Field field, const FitValue& value, const QuantityText& text);
/// "not confirmed against the paper".
QString standingText(Standing standing);
/// "home", "clinic", "intensive care"; empty where it is not said.
QString carePlaceText(CarePlace place);
/// The citation; with a word on volume and page where they were not seen.
QString citationText(const StartingPoint& point);
/// Why there is nothing to apply, and what can be done.
QString cannotApplyText(CannotApply why);

/// One figure of a starting point.
struct PointRow {
    QString what;
    QString cited; ///< a dash where nothing is offered
    QString standing;
    QString withUnit;     ///< empty while nothing can be applied
    bool differs = false; ///< the unit gives another value
    bool unsure = false;  ///< to be confirmed, or left empty
};
/// `applied`: what the unit makes of it; nothing while it can't be applied.
std::vector<PointRow> pointRows(const StartingPoint& point, const AppliedPoint* applied,
                                const QuantityText& text);
/// "15 contractions a session, 52 min 30 s on time a week"; with a word on the ramps where the
/// source does not say. Empty where nothing can be computed.
QString pointDoseText(const StartingPoint& point, const QuantityText& text);
/// What has to be said before: figures not confirmed, empty ones, ranges. Empty where all was read.
QString beforeApplyingText(const StartingPoint& point, const AppliedPoint& applied);
/// What was applied, what was left, what the unit changed.
QString appliedText(const StartingPoint& point, const AppliedPoint& applied,
                    const QuantityText& text);
/// "Started from Feil 2011, single pads, changed since".
QString originText(const BlockOrigin& origin);

} // namespace quadrille::app
