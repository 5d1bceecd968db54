// SPDX-License-Identifier: GPL-3.0-or-later
// The questions of a screening: the built-in ones, which stand in resources/screening, and those
// that the practice adds.
#pragma once

#include "core/result.h"
#include "core/screening.h"

#include <QByteArray>

#include <vector>

namespace quadrille::app
{

struct QuestionSet {
    int version = 1; ///< of the built-in questions
    std::vector<ScreeningQuestion> questions;
};

/// Reads a set from JSON. Error badFormat with what is wrong in `detail`: a key that is missing, a
/// class or part of the body that there is not, a name that stands twice.
Result<QuestionSet> questionSetFrom(const QByteArray& json);
/// The set of this version of the program.
QuestionSet builtInQuestions();
/// The built-in questions in their order, then the practice's own that are not archived.
QuestionSet questionsToAsk(const std::vector<PracticeQuestion>& own);

} // namespace quadrille::app
