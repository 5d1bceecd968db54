// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include "core/session_timing.h"

#include <optional>

namespace quadrille::app
{

/// One contraction cycle to scale: ramp up, plateau, ramp down, off. The amplitude is in mA where
/// it is known, else in percent of whatever will be set. `before` is drawn dashed for comparison.
struct CycleToShow {
    SessionTiming timing;
    std::optional<Amplitude> amplitude;
    std::optional<SessionTiming> before;
    std::optional<Amplitude> amplitudeBefore;
    QString nameBefore;
};
ChartSpec cycleChart(const CycleToShow& cycle, const QuantityText& text);

} // namespace quadrille::app
