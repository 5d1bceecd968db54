// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/finding.h"

#include <QString>

namespace quadrille::app
{

/// A finding in words: what, where it comes from, what can be done.
struct FindingText {
    QString what;   ///< one sentence
    QString source; ///< "Source: …"; empty where the settings speak for themselves
    QString advice; ///< one sentence; empty where there is nothing to do
};

FindingText findingText(const Finding& finding, const QuantityText& text);

} // namespace quadrille::app
