// SPDX-License-Identifier: GPL-3.0-or-later
// The few signs of Qt's own windows that are shown at all, in our hand.
#pragma once

#include "app/look/tokens.h"

#include <QIcon>
#include <QStyle>

#include <optional>

namespace quadrille::app
{

/// Chevrons for months, the open triangle for warnings, no picture for questions and news; nothing
/// where Qt's own picture stays.
std::optional<QIcon> iconOf(QStyle::StandardPixmap sign, const Tokens& tokens);

} // namespace quadrille::app
