// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/demo/demo_records.h"

#include "core/ids.h"
#include "core/screening.h"

#include <vector>

namespace quadrille::app
{

/// The built-in questions, answered as the demo says and no otherwise; the skin of the blocks'
/// sites seen and tested. Ready to be signed; one that the demo leaves unsigned lacks two answers
/// and the look at the skin.
Screening demoScreening(CourseId course, const DemoScreening& demo,
                        const std::vector<Block>& blocks);
/// The next one, not signed: the answers of the last with those of `demo.openChange`, the skin not
/// looked at yet.
Screening demoOpenChange(const Screening& last, const DemoScreening& demo);

} // namespace quadrille::app
