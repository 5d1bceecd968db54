// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include "core/clinic_session.h"

#include <QStringList>

namespace quadrille::app
{

/// Thresholds over phase duration with the curve that was laid through them (Weiss' law), one line
/// for the sensory and one for the motor ones. Empty axes where nothing is known.
ChartSpec thresholdChart(const ClinicSite& site, const QuantityText& text);

/// What the fit says, a sentence for each kind of threshold, and what is to be remarked on it. Too
/// few phase durations are said once.
QStringList thresholdSentences(const ClinicSite& site, const QuantityText& text);

} // namespace quadrille::app
