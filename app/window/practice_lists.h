// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/ids.h"

#include <optional>

class QWidget;

namespace quadrille::app
{

/// Shows who works here; new ones and changes are saved at once. Returns when the window is closed.
void showPractitioners(const Services& services, QWidget* parent);
/// Shows the questions that the practice adds to the built-in ones of a screening.
void showPracticeQuestions(const Services& services, QWidget* parent);
/// Shows the practice's units with their loans, and what the stimulators can do. `preferred`: the
/// course that lending begins with.
void showStimulators(const Services& services, std::optional<CourseId> preferred, QWidget* parent);
/// The keys of the program, by page.
void showKeys(QWidget* parent);
/// Version, licence, and who decides.
void showAbout(QWidget* parent);

} // namespace quadrille::app
