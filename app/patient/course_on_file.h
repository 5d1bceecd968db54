// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/course.h"
#include "core/result.h"

namespace quadrille::app
{

/// The course as it is on file now. Error: notFound when it is there no more, those of the store.
Result<Course> courseOnFile(const Services& services, const Course& course);

} // namespace quadrille::app
