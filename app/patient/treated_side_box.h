// SPDX-License-Identifier: GPL-3.0-or-later
// The choice of the side that a course treats, alike in each form that has it.
#pragma once

#include "core/course.h"

#include <optional>

class QComboBox;

namespace quadrille::app
{

/// Fills an empty box with "not said", right, left and both.
void fillTreatedSides(QComboBox& box);
void setTreatedSide(QComboBox& box, std::optional<TreatedSide> side);
std::optional<TreatedSide> treatedSideIn(const QComboBox& box);

} // namespace quadrille::app
