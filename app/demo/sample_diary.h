// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/result.h"

#include <QString>

namespace quadrille::app
{

/// Whose diary was written.
struct SampleDiary {
    QString patient; ///< the reference
    int course = 1;
    int rows = 0;
};

/// Writes what a made-up patient of a practice could have noted in the last three weeks before
/// `today`, as a CSV file that can be imported: of the first running course with days that are not
/// on file. Errors: cannotWrite where the file is there already, notFound where no course has such
/// days, and what the store reports.
Result<SampleDiary> writeSampleDiary(const QString& store, const QString& file, Date today);

} // namespace quadrille::app
