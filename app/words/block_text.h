// SPDX-License-Identifier: GPL-3.0-or-later
// A block in the short lines of a list: whole, or by what changed against the one before.
#pragma once

#include "app/words/quantity_text.h"

#include "core/block_changes.h"
#include "core/plan.h"

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// "50 Hz · 300 µs", "8 s on, 24 s off", "16 min, once a day, 5 days"; empty without a site.
QStringList blockLines(const Block& block, const QuantityText& text);

/// "On time 8 → 10 s", one for each difference; "as Block 1" where there is none. `numberBefore` is
/// the number of the block before, from 1.
QStringList changeLines(const Block& before, const Block& after, int numberBefore,
                        const QuantityText& text);
/// The same for a voice: "On time from 8 s to 10 s".
QStringList spokenChanges(const Block& before, const Block& after, int numberBefore,
                          const QuantityText& text);

/// "On time +25 %", "Contractions same", a week; one line where both grow alike, none where nothing
/// is known.
QStringList stepLines(const StepSize& step, const QuantityText& text);

} // namespace quadrille::app
