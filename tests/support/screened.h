// SPDX-License-Identifier: GPL-3.0-or-later
// Screenings to write down in tests, and the gate that they open.
#pragma once

#include "core/screening.h"
#include "core/screening_gate.h"

#include <optional>
#include <string>

namespace quadrille::tests
{

/// One question of each class; the wording is invented.
inline std::vector<ScreeningQuestion> threeQuestions()
{
    return {{.name = "active_implant",
             .wording = "An implant with a battery?",
             .questionClass = QuestionClass::contraindication},
            {.name = "broken_skin",
             .wording = "Broken skin where pads may lie?",
             .questionClass = QuestionClass::localContraindication},
            {.name = "heart_disease",
             .wording = "Heart disease, stable?",
             .questionClass = QuestionClass::precaution,
             .advice = "Breathe on quietly.",
             .adviceAt = AdvicePlace::during}};
}

/// All answered no, the skin seen; ready to be signed.
inline Screening allClear(CourseId course)
{
    Screening screening = newScreening(course, threeQuestions(), 1);
    for (const ScreeningQuestion& question : threeQuestions()) {
        giveAnswer(screening, question.name, Answer::no);
    }
    screening.skinSeen = true;
    return screening;
}

/// The verdict on a person whom nothing speaks against, with these blocks, on the day of signing.
inline ScreeningGate openGate(Date day, const std::vector<Block>& blocks = {})
{
    Screening screening = allClear(CourseId(1));
    screening.id = ScreeningId(1);
    screening.signedOn = day;
    return screeningGate({.latest = screening,
                          .overrides = {},
                          .sites = gateSites(blocks, screening),
                          .today = day});
}

} // namespace quadrille::tests
