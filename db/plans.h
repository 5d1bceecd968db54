// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of drafts and plans. A plan is issued and read; there is no change and no removal,
// here or in the database (triggers refuse both).
#pragma once

#include "db/store.h"

#include "core/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

/// The draft of a course as it was last saved.
std::optional<Draft> draftOf(Reading& reading, CourseId course);
/// Saves the draft in place of the last one and drops what was kept unsaved; the stored draft has
/// the next version. `draft.course` must be filled. Error `changedElsewhere` when `draft.version`
/// is not the stored one's (0 when there is none). Each of `draft.adoptedReasons` is one line,
/// never empty; so too where a draft is kept unsaved.
DraftId saveDraft(Writing& writing, const Draft& draft);
void discardDraft(Writing& writing, CourseId course);

/// Work that was not saved when the program ended, and when it was kept.
struct UnsavedDraft {
    Draft draft;
    Moment keptAt;
};
/// Keeps the draft as it stands on the screen, beside the saved one; no row in the change record.
void keepUnsavedDraft(Writing& writing, const Draft& draft);
std::optional<UnsavedDraft> unsavedDraftOf(Reading& reading, CourseId course);
void dropUnsavedDraft(Writing& writing, CourseId course);

/// What the act of issuing adds to a draft.
struct Issue {
    Date fromDate;
    std::string reason;
    PractitionerId issuedBy;
};
/// Makes the next plan of the course from `draft` (its stimulator is copied as it is now) and
/// removes the draft. The day of issue is the day of the change. Error `refused` when the from-date
/// lies before the day of issue and the course has a plan already, when the draft has no blocks or
/// no stimulator, or when a finding says stop; `changedElsewhere` as saveDraft. Of the screening
/// gate (core/screening_gate.h), which is judged in here on the day of issue and can't be left out:
/// notScreened, screeningNotSigned, screeningTooOld, screeningBlocks.
PlanId issuePlan(Writing& writing, const Draft& draft, const Issue& issue, Date issuedOn);

/// All plans of a course, the earliest first.
std::vector<Plan> plansOf(Reading& reading, CourseId course);

} // namespace quadrille::db
