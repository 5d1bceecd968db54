// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/result.h"

#include <QString>

namespace quadrille::app
{

/// Writes the demo practice: Quay Lane Physiotherapy in Marrowick, a town that does not exist, with
/// two practitioners, seven stimulators, eleven units of them, 31 patients and six months of
/// history up to the day before `today`. The same day gives the same rows. Error cannotWrite when
/// the file is there already, else what the store reports; nothing is left behind then.
Result<void> writeDemoPractice(const QString& file, Date today);

} // namespace quadrille::app
