// SPDX-License-Identifier: GPL-3.0-or-later
// Sets of pads in words.
#pragma once

#include "app/words/quantity_text.h"

#include "core/electrode_set.h"

#include <QString>

namespace quadrille::app
{

/// "carbon rubber, wetted sponge and straps".
QString electrodeTypeName(ElectrodeType type);
/// "4 pads, self-adhesive, 50 × 90 mm"; what is not known is left out.
QString electrodeSetName(const ElectrodeSet& set, const QuantityText& text);
/// "7 of 20" uses, or "7".
QString usesText(const ElectrodeSet& set, const ElectrodeWear& wear, const QuantityText& text);
/// "20 uses or 1 month"; a dash where no life was given.
QString lifeText(const ElectrodeLife& life);
/// "in use", "not yet in use", "replace: 20 of 20 uses", "replace: too old since 6 Mar 2026", "out
/// of use since …", "withdrawn".
QString electrodeStateText(const ElectrodeSet& set, const ElectrodeWear& wear,
                           const QuantityText& text);

} // namespace quadrille::app
