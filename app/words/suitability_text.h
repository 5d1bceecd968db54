// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/stimulator.h"

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// Whether a unit will do for muscle exercise, in words.
struct SuitabilityText {
    bool willDo = true;
    QString verdict;     ///< "Will do for muscle exercise", "Will do, with care", "Will not do"
    QStringList reasons; ///< a sentence each, the gravest first; empty where all is well
    QStringList sources; ///< where the figures of the reasons come from, each once
    /// Verdict and reasons as one text.
    QString whole() const;
};

SuitabilityText suitabilityText(const Stimulator& stimulator, const QuantityText& text);

} // namespace quadrille::app
