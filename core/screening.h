// SPDX-License-Identifier: GPL-3.0-or-later
// The record of a screening. Which questions there are, and what an answer blocks, stands
// elsewhere.
#pragma once

#include "core/people.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// Not known is an answer and can be signed.
enum class Answer { yes, no, notKnown };

struct ScreeningAnswer {
    std::string question; ///< the question's name, never its wording
    Answer answer = Answer::notKnown;
    std::string note; ///< needed with a yes
    friend bool operator==(const ScreeningAnswer&, const ScreeningAnswer&) = default;
};

/// Dated, signed answers for one course. A change makes a new, unsigned screening; the old one
/// stays.
struct Screening {
    std::optional<ScreeningId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    int number = 1; ///< 1, 2, 3 … within the course
    int questionsVersion = 1;
    std::vector<ScreeningAnswer> answers; ///< by question; each once
    std::optional<Date> signedOn = std::nullopt;
    std::optional<PractitionerId> signedBy = std::nullopt;
    std::string signedByName; ///< as it was on the day
    Version version = 1;
    friend bool operator==(const Screening&, const Screening&) = default;
};

/// Why a named practitioner goes ahead in spite of an answer. Permanent.
struct ScreeningOverride {
    std::optional<ScreeningOverrideId> id = std::nullopt;
    std::optional<ScreeningId> screening = std::nullopt;
    std::string question;
    std::optional<PractitionerId> practitioner = std::nullopt;
    std::string practitionerName;
    std::string reason;
    Moment madeAt;
    friend bool operator==(const ScreeningOverride&, const ScreeningOverride&) = default;
};

} // namespace quadrille
