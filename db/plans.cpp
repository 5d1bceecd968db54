// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/plans.h"

#include "db/block_rows.h"
#include "db/caseload_key.h"
#include "db/change_record.h"
#include "db/codec.h"
#include "db/course_rows.h"
#include "db/failure.h"
#include "db/patient_rows.h"
#include "db/plan_rows.h"
#include "db/plan_seal.h"
#include "db/screening_rows.h"
#include "db/stimulator_rows.h"

#include "core/limits.h"
#include "core/plan_figures.h"

#include <algorithm>
#include <cassert>
#include <sstream>

namespace quadrille::db
{

namespace
{

constexpr const char* saved = "saved";
constexpr const char* unsaved = "unsaved";

/// One line each; nothing while nothing was adopted. An empty reason, or one of two lines, would
/// not come back as it was.
std::optional<std::string> linesOf(const std::vector<std::string>& reasons)
{
    std::string lines;
    for (const std::string& reason : reasons) {
        assert(!reason.empty() && reason.find('\n') == std::string::npos);
        lines += (lines.empty() ? "" : "\n") + reason;
    }
    return lines.empty() ? std::nullopt : std::optional(lines);
}

std::vector<std::string> reasonsIn(const std::string& lines)
{
    std::vector<std::string> reasons;
    std::istringstream text(lines);
    for (std::string reason; std::getline(text, reason);) {
        reasons.push_back(reason);
    }
    return reasons;
}

Columns draftColumns(const Draft& draft)
{
    Columns columns{{"stimulator", valueOf(draft.stimulator)},
                    {"adopted_reasons", valueOf(linesOf(draft.adoptedReasons))}};
    append(columns, columnsOf(draft.blocks));
    return columns;
}

CourseId courseOf(const Draft& draft)
{
    if (!draft.course) {
        throw Failure({.code = ErrorCode::notFound, .subject = "course", .detail = {}});
    }
    return *draft.course;
}

Record recordOf(Writing& writing, std::int64_t draft, CourseId course)
{
    return {.kind = "draft", .id = draft, .patient = patientOf(writing.connection(), course)};
}

struct KeptDraft {
    Draft draft;
    Moment keptAt;
};

std::optional<KeptDraft> readDraft(Reading& reading, CourseId course, const char* state)
{
    KeptDraft kept;
    {
        Statement row(reading.connection(),
                      "SELECT id, stimulator, kept_at, version, "
                      "adopted_reasons FROM draft WHERE course = ? AND state = ?");
        row.bind({valueOf(course), std::string(state)});
        if (!row.next()) {
            return std::nullopt;
        }
        kept.draft.id = takeId<Draft>(row);
        kept.draft.course = course;
        kept.draft.stimulator = takeOptionalId<Stimulator>(row);
        kept.keptAt = takeMoment(row);
        kept.draft.version = takeInt(row);
        kept.draft.adoptedReasons = reasonsIn(row.takeOptionalText().value_or(std::string()));
    }
    kept.draft.blocks = blocksOf(reading.connection(), BlockOwner::draft, kept.draft.id->key());
    return kept;
}

void removeDraft(Writing& writing, CourseId course, const char* state)
{
    Statement(writing.connection(), "DELETE FROM draft WHERE course = ? AND state = ?")
        .bind({valueOf(course), std::string(state)})
        .run();
}

/// Writes a draft in place of the one in this state; `id` keeps a draft's key.
DraftId writeDraft(Writing& writing, const Draft& draft, const char* state,
                   const std::optional<DraftId>& id)
{
    const CourseId course = courseOf(draft);
    removeDraft(writing, course, state);
    Columns columns{{"course", valueOf(course)},
                    {"state", std::string(state)},
                    {"stimulator", valueOf(draft.stimulator)},
                    {"kept_at", valueOf(writing.moment())},
                    {"version", valueOf(draft.version)},
                    {"adopted_reasons", valueOf(linesOf(draft.adoptedReasons))}};
    if (id) {
        columns.push_back({"id", valueOf(*id)});
    }
    const DraftId written(insertRow(writing.connection(), "draft", columns));
    addBlocks(writing.connection(), BlockOwner::draft, written.key(), draft.blocks);
    return written;
}

/// Failure changedElsewhere unless `draft` was made from `stored`, or from nothing as nothing is
/// stored.
void requireUnchanged(Writing& writing, const Draft& draft, const std::optional<Draft>& stored)
{
    const bool same = stored ? draft.version == stored->version : draft.version == 0;
    if (same) {
        return;
    }
    Statement row(writing.connection(),
                  "SELECT practitioner_name FROM change_record WHERE record_kind = 'draft' "
                  "AND patient = ? ORDER BY id DESC LIMIT 1");
    row.bind({valueOf(patientOf(writing.connection(), *draft.course))});
    throw Failure({.code = ErrorCode::changedElsewhere,
                   .subject = "draft",
                   .detail = row.next() ? row.takeText() : std::string()});
}

[[noreturn]] void refuse(const std::string& rule, Field field)
{
    throw Failure({.code = ErrorCode::refused, .subject = {}, .detail = rule, .field = field});
}

void requireIssuable(const Draft& draft, const Stimulator& unit, const Issue& issue, Date issuedOn,
                     bool isFirst)
{
    if (draft.blocks.empty()) {
        refuse("a plan has at least one block", Field::weeks);
    }
    if (!isFirst && issue.fromDate < issuedOn) {
        refuse("a plan never begins before the day of its issue", Field::fromDate);
    }
    for (const Block& block : draft.blocks) {
        if (blockFigures(block, unit).hasStop()) {
            refuse("settings that can't be run are never issued", Field::none);
        }
    }
}

Stimulator unitOf(Reading& reading, const Draft& draft)
{
    if (!draft.stimulator) {
        refuse("a plan names its stimulator", Field::stimulator);
    }
    auto units =
        stimulatorsWhere(reading.connection(), "stimulator.copy_of IS NULL AND stimulator.id = ?",
                         {valueOf(draft.stimulator)});
    if (units.empty()) {
        throw Failure({.code = ErrorCode::notFound, .subject = "stimulator", .detail = {}});
    }
    return std::move(units.front().stimulator);
}

/// A saved draft that was issued lives on in its plan: what was changed since it was saved is
/// recorded, then its end.
void endDraft(Writing& writing, const Draft& issued, CourseId course)
{
    if (const auto before = draftOf(writing, course)) {
        const Record record = recordOf(writing, before->id->key(), course);
        recordChanged(writing, record, draftColumns(*before), draftColumns(issued));
        recordRemoved(writing, record);
    }
    removeDraft(writing, course, saved);
    removeDraft(writing, course, unsaved);
}

} // namespace

std::optional<Draft> draftOf(Reading& reading, CourseId course)
{
    auto kept = readDraft(reading, course, saved);
    return kept ? std::optional(std::move(kept->draft)) : std::nullopt;
}

DraftId saveDraft(Writing& writing, const Draft& draft)
{
    const CourseId course = courseOf(draft);
    const auto before = draftOf(writing, course);
    requireUnchanged(writing, draft, before);
    Draft next = draft;
    next.version = draft.version + 1;
    const DraftId id = writeDraft(writing, next, saved, before ? before->id : std::nullopt);
    const Record record = recordOf(writing, id.key(), course);
    if (before) {
        recordChanged(writing, record, draftColumns(*before), draftColumns(draft));
    } else {
        recordCreated(writing, record);
    }
    removeDraft(writing, course, unsaved);
    return id;
}

void discardDraft(Writing& writing, CourseId course)
{
    if (const auto before = draftOf(writing, course)) {
        const Record record = recordOf(writing, before->id->key(), course);
        recordChanged(writing, record, draftColumns(*before), {});
        recordRemoved(writing, record);
    }
    removeDraft(writing, course, saved);
    removeDraft(writing, course, unsaved);
}

void keepUnsavedDraft(Writing& writing, const Draft& draft)
{
    writeDraft(writing, draft, unsaved, std::nullopt);
}

std::optional<UnsavedDraft> unsavedDraftOf(Reading& reading, CourseId course)
{
    auto kept = readDraft(reading, course, unsaved);
    if (!kept) {
        return std::nullopt;
    }
    const auto stored = draftOf(reading, course);
    kept->draft.id = stored ? stored->id : std::nullopt; // the draft it will be saved as
    return UnsavedDraft{std::move(kept->draft), kept->keptAt};
}

void dropUnsavedDraft(Writing& writing, CourseId course)
{
    removeDraft(writing, course, unsaved);
}

PlanId issuePlan(Writing& writing, const Draft& draft, const Issue& issue, Date issuedOn)
{
    const CourseId course = courseOf(draft);
    const PatientId patient = patientOf(writing.connection(), course);
    requireUnchanged(writing, draft, draftOf(writing, course));
    const Stimulator unit = unitOf(writing, draft);
    const auto last = numberFrom(
        writing.connection(), "SELECT max(number) FROM plan WHERE course = ?", {valueOf(course)});
    requireIssuable(draft, unit, issue, issuedOn, !last);
    requireOpenGate(writing, course, draft.blocks, issuedOn);
    const Columns columns{
        {"course", valueOf(course)},
        {"number", valueOf(last.value_or(0) + 1)},
        {"issued_on", valueOf(issuedOn)},
        {"issued_by", valueOf(issue.issuedBy)},
        {"issued_by_name", valueOf(nameOfPractitioner(writing.connection(), issue.issuedBy))},
        {"from_date", valueOf(issue.fromDate)},
        {"reason", valueOf(issue.reason)},
        {"stimulator", valueOf(sealedCopyOf(writing.connection(), unit))},
        {"limits_version", valueOf(limitsVersion)},
        {"issued", valueOf(false)}};
    const std::int64_t plan = insertRow(writing.connection(), "plan", columns);
    addBlocks(writing.connection(), BlockOwner::plan, plan, draft.blocks);
    addSegmentLengths(
        writing.connection(), "plan_segment_length", "plan", plan,
        takeSegmentLengths(writing.connection(), "segment_length", "patient", patient.key()));
    // From here on the database itself refuses every change.
    updateRow(writing.connection(), "plan", plan, {{"issued", valueOf(true)}});
    const Record record{.kind = "plan", .id = plan, .patient = patient};
    recordCreated(writing, record);
    recordChanged(writing, record, {}, {{"content_digest", planSeal(writing.connection(), plan)}});
    endDraft(writing, draft, course);
    refreshCaseloadKey(writing.connection(), patient);
    return PlanId(plan);
}

std::vector<Plan> plansOf(Reading& reading, CourseId course)
{
    const Connection& connection = reading.connection();
    std::vector<Plan> plans;
    std::vector<std::int64_t> copies;
    {
        Statement rows(connection, std::string("SELECT ") + planColumns +
                                       ", plan.stimulator FROM plan WHERE course = ? "
                                       "ORDER BY number");
        rows.bind({valueOf(course)});
        while (rows.next()) {
            plans.push_back(takePlan(rows));
            copies.push_back(rows.takeInteger());
        }
    }
    for (std::size_t i = 0; i < plans.size(); ++i) {
        plans[i].blocks = blocksOf(connection, BlockOwner::plan, plans[i].id->key());
        auto copy = stimulatorsWhere(connection, "stimulator.id = ?", {copies[i]});
        plans[i].stimulator = std::move(copy.at(0).stimulator);
        plans[i].segmentLengths =
            takeSegmentLengths(connection, "plan_segment_length", "plan", plans[i].id->key());
    }
    return plans;
}

} // namespace quadrille::db
