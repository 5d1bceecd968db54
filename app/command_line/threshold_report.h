// SPDX-License-Identifier: GPL-3.0-or-later
// What `quadrille fit-threshold` answers, for people and for programs.
#pragma once

#include "app/command_line/threshold_table.h"
#include "app/words/quantity_text.h"

#include "core/result.h"
#include "core/strength_duration.h"

#include <QByteArray>
#include <QString>

#include <vector>

namespace quadrille::app
{

/// One law laid through the thresholds of a site, or why it can't be.
struct LawFit {
    StrengthDurationLaw law = StrengthDurationLaw::weiss;
    Result<StrengthDurationFit> fit;
};

struct SiteFits {
    ThresholdSeries series;
    std::vector<LawFit> laws; ///< all laws, in the order of StrengthDurationLaw
};

/// Fits every law to every site. Error `badFormat`: a site with fewer than two different phase
/// durations, or one whose thresholds follow no law. `name` is what errors call the table.
Result<std::vector<SiteFits>> fitsOf(const std::vector<ThresholdSeries>& series,
                                     const QString& name);

/// For people: figures rounded to what can be measured.
QString fitsAsText(const std::vector<SiteFits>& fits, const QuantityText& text);

/// For programs, UTF-8: {"fits": [...]}, one object a site, eight significant digits, null where a
/// law does not fit.
QByteArray fitsAsJson(const std::vector<SiteFits>& fits);
/// Names and units of the figures in that, for --help.
QString jsonFiguresHelp();

} // namespace quadrille::app
