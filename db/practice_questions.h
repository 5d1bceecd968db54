// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the questions that the practice adds to the built-in ones of a screening. Nothing
// is deleted: a question no longer asked is archived, and signed screenings keep it as it was
// asked.
#pragma once

#include "db/store.h"

#include "core/screening.h"

#include <vector>

namespace quadrille::db
{

/// All, archived ones last, in the order in which they were added.
std::vector<PracticeQuestion> practiceQuestions(Reading& reading);
/// Error notFilled without a wording.
PracticeQuestionId addPracticeQuestion(Writing& writing, const PracticeQuestion& question);
/// Errors: notFilled, changedElsewhere, notFound. Screenings begun earlier keep the old wording.
void changePracticeQuestion(Writing& writing, const PracticeQuestion& question);

} // namespace quadrille::db
