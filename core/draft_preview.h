// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/course.h"
#include "core/plan.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// The issued plans of a course and, where the draft says something else than the last of them, the
/// plan that it would become if it were issued today: so its weeks can be shown and counted.
std::vector<Plan> plansWithDraft(std::vector<Plan> plans, const Course& course, const Draft& draft,
                                 const std::optional<Stimulator>& unit, Date today);

} // namespace quadrille
