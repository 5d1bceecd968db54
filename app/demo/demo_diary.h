// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/store.h"

#include "core/calendar.h"
#include "core/ids.h"

#include <cstddef>

namespace quadrille::app
{

/// Whether the patient at this place of the list brings the diary back at all.
bool demoDiaryComesBack(std::size_t place);

/// Enters what the patient at this place of the list wrote from a day to a day, both included, and
/// that the diary is known through the second. Invented: some are keen, some are not, a few do more
/// than they should; the same place and days give the same entries.
void enterDemoDiary(db::Writing& writing, CourseId course, std::size_t place, Date from,
                    Date through);

} // namespace quadrille::app
