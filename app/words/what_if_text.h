// SPDX-License-Identifier: GPL-3.0-or-later
// Variants beside a block in words: figures and their differences, answers of searches, and why
// there is none.
#pragma once

#include "app/words/quantity_text.h"

#include "core/what_if.h"

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// "A", "B", "C".
QString variantName(std::size_t variant);
/// "Total on time".
QString comparedName(ComparedFigure figure);
/// "5 min 00 s"; a dash where it is not known.
QString comparedText(ComparedFigure figure, const std::optional<Amount>& value,
                     const QuantityText& text);
/// "+25 %", or in the figure's own unit where it is a ratio; "same", or empty where there is no
/// difference to be told.
QString differenceText(const ComparedValue& value, const QuantityText& text);

/// Why the model does not compare a variant with the block; empty where it does.
QString notComparedText(const Judgement& judgement);
/// What is to be read below the model's figures, a line each: which variant it does not compare, or
/// why none.
QStringList modelSentences(const WhatIfFigures& figures);
/// What speaks against the block and its variants, a line each, and why there is no dose.
QStringList limitSentences(const WhatIf& whatIf, const WhatIfFigures& figures,
                           const QString& planName, const QuantityText& text);
/// What was found, "Off time 20 s, session length 15 min, contractions 30.", or why no setting of
/// the unit does what was asked; one sentence.
QString wishAnswerText(const WishAnswer& answer, const Wish& wish, const QuantityText& text);

} // namespace quadrille::app
