// SPDX-License-Identifier: GPL-3.0-or-later
// A visit, and what was handed out.
#pragma once

#include "core/people.h"

#include <optional>
#include <string>

namespace quadrille
{

enum class Decision { stepUp, keep, stepBack, pause, end };

struct FollowUp {
    std::optional<FollowUpId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date heldOn;
    std::optional<PractitionerId> practitioner = std::nullopt;
    std::string practitionerName; ///< as it was on the day; filled in by the store
    std::string review;
    std::optional<Decision> decision = std::nullopt; ///< none yet
    std::string reason;
    std::optional<Date> nextVisitOn = std::nullopt;
    std::optional<PlanId> plan = std::nullopt; ///< the plan that came of it
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const FollowUp&, const FollowUp&) = default;
};

enum class DocumentKind { handout, diaryPage, letter, record };
enum class Medium { paper, pdf };

/// Something that was printed or saved, and the plan that it shows.
struct PrintedDocument {
    std::optional<PrintedDocumentId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    std::optional<PlanId> plan = std::nullopt;
    DocumentKind kind = DocumentKind::handout;
    Medium medium = Medium::paper;
    Moment printedAt{};             ///< filled in by the store
    std::string printedByName = {}; ///< likewise
    friend bool operator==(const PrintedDocument&, const PrintedDocument&) = default;
};

} // namespace quadrille
