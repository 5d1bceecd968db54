// SPDX-License-Identifier: GPL-3.0-or-later
// A visit, what was measured at it, and what was handed out.
#pragma once

#include "core/people.h"
#include "core/placement.h"

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

/// A dated value.
struct Measurement {
    std::optional<MeasurementId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    std::optional<FollowUpId> followUp = std::nullopt;
    Date measuredOn;
    std::string kind; ///< a word of the trade: "isometric_torque"
    Side side = Side::right;
    std::int64_t thousandths = 0; ///< of the unit
    std::string unit;             ///< "N·m"
    std::string method;
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const Measurement&, const Measurement&) = default;
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

/// Pads given to a patient.
struct ElectrodeSet {
    std::optional<ElectrodeSetId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date issuedOn;
    std::string description;
    int pads = 2;                                   ///< 1 … 64
    std::optional<int> lifeSessions = std::nullopt; ///< sessions until the set is worn out
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const ElectrodeSet&, const ElectrodeSet&) = default;
};

} // namespace quadrille
