// SPDX-License-Identifier: GPL-3.0-or-later
// Words of the session in the clinic.
#pragma once

#include "app/words/quantity_text.h"

#include "core/clinic_session.h"
#include "core/work_rest_cue.h"

#include <QString>

namespace quadrille::app
{

/// "Ramp up", "Hold" … in the size of a wall.
QString cuePhaseName(CuePhase phase);
QString skinLookName(SkinLook look);
/// "42.5 N·m" from thousandths.
QString torqueText(std::int64_t thousandths, const QuantityText& text);
/// Thousandths of N·m as typed, the unit may follow; nothing when it is no such number.
std::optional<std::int64_t> torqueFrom(const QString& typed, const QuantityText& text);
/// One site in a sentence: "Quadriceps left: pads as planned; at 100 µs felt from 12 mA, twitch
/// from 20.5 mA, tolerated up to 46 mA; contraction seen."
QString clinicSiteText(const ClinicSite& site, const QuantityText& text);

} // namespace quadrille::app
