// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/result.h"

#include <QString>

namespace quadrille::app
{

/// An error as one or two plain sentences: what, where, what to do.
QString errorText(const Error& error, const QuantityText& text);

} // namespace quadrille::app
