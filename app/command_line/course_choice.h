// SPDX-License-Identifier: GPL-3.0-or-later
// Which course of a patient a command is about.
#pragma once

#include "app/words/quantity_text.h"

#include "core/course.h"

#include <QString>

#include <optional>
#include <variant>
#include <vector>

namespace quadrille::app
{

/// The course of that number, or, where none is given, the only one that is running; else why not,
/// in one sentence. `patient` is the reference.
std::variant<Course, QString> chooseCourse(const std::vector<Course>& courses,
                                           const QString& patient, std::optional<int> number,
                                           Date today, const QuantityText& text);

} // namespace quadrille::app
