// SPDX-License-Identifier: GPL-3.0-or-later
// Names of the things of the trade, as every screen and page calls them.
#pragma once

#include "core/field.h"
#include "core/placement.h"
#include "core/plan.h"
#include "core/stimulator.h"
#include "core/waveform.h"

#include <QString>

namespace quadrille::app
{

class QuantityText;

/// "Pulse frequency". The burst rate of kHz bursts has its own name.
QString fieldName(Field field, Waveform waveform = Waveform::symmetricBiphasic);
QString waveformName(Waveform waveform);
/// "ramps inside the on time" / "ramps added to the on time".
QString rampHabitName(RampHabit habit);
/// "with an on time" / "with an off time".
QString cycleStartName(CycleStart start);
QString usageCounterName(UsageCounter counter);
/// "left"; empty for middle.
QString sideName(Side side);
QString padMaterialName(PadMaterial material);
/// "50 × 90 mm" or "round 50 mm".
QString padSize(const Pad& pad, const QuantityText& text);
/// "Vastus lateralis, right".
QString siteName(const Site& site);
/// "Mon, Tue, Wed" or "5 days a week, any".
QString scheduleName(const Schedule& schedule, const QuantityText& text);
/// "once a day", "twice a day", "3 times a day".
QString timesADay(int sessions);
/// "5 days" of a week.
QString daysOfWeek(int days);
/// "67 years".
QString years(int age);
/// "weeks 5–8", "week 3".
QString weeksName(CourseWeek first, int weeks);

} // namespace quadrille::app
