// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/ids.h"

#include <optional>

class QComboBox;

namespace quadrille::app
{

/// Fills a list with who works here; who is working now is chosen.
void fillPractitioners(QComboBox& list, const Services& services);
std::optional<PractitionerId> chosenPractitioner(const QComboBox& list);

} // namespace quadrille::app
