// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/course_events.h"

#include "db/course_parts.h"

namespace quadrille::db
{

template <>
struct Kind<Pause> {
    static constexpr const char* table = "pause";
    static constexpr const char* columns =
        "id, course, from_date, to_date, reason, withdrawn, version";
    static constexpr const char* order = "from_date, id";
    static Pause take(Statement& row)
    {
        Pause pause;
        pause.id = takeId<Pause>(row);
        pause.course = takeId<Course>(row);
        pause.fromDate = takeDate(row);
        pause.toDate = takeOptionalDate(row);
        pause.reason = row.takeText();
        pause.withdrawn = takeFlag(row);
        pause.version = takeInt(row);
        return pause;
    }
    static Columns columnsOf(const Pause& pause)
    {
        return {{"from_date", valueOf(pause.fromDate)},
                {"to_date", valueOf(pause.toDate)},
                {"reason", valueOf(pause.reason)},
                {"withdrawn", valueOf(pause.withdrawn)}};
    }
};

template <>
struct Kind<FollowUp> {
    static constexpr const char* table = "follow_up";
    static constexpr const char* columns =
        "id, course, held_on, practitioner, practitioner_name, review, decision, reason, "
        "next_visit_on, plan, withdrawn, version";
    static constexpr const char* order = "held_on, id";
    static FollowUp take(Statement& row)
    {
        FollowUp followUp;
        followUp.id = takeId<FollowUp>(row);
        followUp.course = takeId<Course>(row);
        followUp.heldOn = takeDate(row);
        followUp.practitioner = takeId<Practitioner>(row);
        followUp.practitionerName = row.takeText();
        followUp.review = row.takeText();
        followUp.decision = takeOptionalChoice<Decision>(row);
        followUp.reason = row.takeText();
        followUp.nextVisitOn = takeOptionalDate(row);
        followUp.plan = takeOptionalId<Plan>(row);
        followUp.withdrawn = takeFlag(row);
        followUp.version = takeInt(row);
        return followUp;
    }
    static Columns columnsOf(const FollowUp& followUp)
    {
        return {{"held_on", valueOf(followUp.heldOn)},
                {"practitioner", valueOf(followUp.practitioner)},
                {"practitioner_name", valueOf(followUp.practitionerName)},
                {"review", valueOf(followUp.review)},
                {"decision", valueOf(followUp.decision)},
                {"reason", valueOf(followUp.reason)},
                {"next_visit_on", valueOf(followUp.nextVisitOn)},
                {"plan", valueOf(followUp.plan)},
                {"withdrawn", valueOf(followUp.withdrawn)}};
    }
};

template <>
struct Kind<CounterReading> {
    static constexpr const char* table = "counter_reading";
    static constexpr const char* columns =
        "id, course, read_on, total_uses, total_time_ms, explanation, explanation_words, "
        "withdrawn, version";
    static constexpr const char* order = "read_on, id";
    static CounterReading take(Statement& row)
    {
        CounterReading counter;
        counter.id = takeId<CounterReading>(row);
        counter.course = takeId<Course>(row);
        counter.readOn = takeDate(row);
        counter.totalUses = takeOptionalInt(row);
        if (const auto time = row.takeOptionalInteger()) {
            counter.totalTime = Milliseconds(*time);
        }
        counter.explanation = takeOptionalChoice<CounterExplanation>(row);
        counter.explanationWords = row.takeText();
        counter.withdrawn = takeFlag(row);
        counter.version = takeInt(row);
        return counter;
    }
    static Columns columnsOf(const CounterReading& counter)
    {
        return {{"read_on", valueOf(counter.readOn)},
                {"total_uses", valueOf(counter.totalUses)},
                {"total_time_ms", valueOf(counter.totalTime)},
                {"explanation", valueOf(counter.explanation)},
                {"explanation_words", valueOf(counter.explanationWords)},
                {"withdrawn", valueOf(counter.withdrawn)}};
    }
};

template <>
struct Kind<DiaryReceived> {
    static constexpr const char* table = "diary_received";
    static constexpr const char* columns =
        "id, course, through_date, received_on, withdrawn, version";
    static constexpr const char* order = "through_date, id";
    static DiaryReceived take(Statement& row)
    {
        DiaryReceived receipt;
        receipt.id = takeId<DiaryReceived>(row);
        receipt.course = takeId<Course>(row);
        receipt.throughDate = takeDate(row);
        receipt.receivedOn = takeDate(row);
        receipt.withdrawn = takeFlag(row);
        receipt.version = takeInt(row);
        return receipt;
    }
    static Columns columnsOf(const DiaryReceived& receipt)
    {
        return {{"through_date", valueOf(receipt.throughDate)},
                {"received_on", valueOf(receipt.receivedOn)},
                {"withdrawn", valueOf(receipt.withdrawn)}};
    }
};

template <>
struct Kind<PrintedDocument> {
    static constexpr const char* table = "printed_document";
    static constexpr const char* columns =
        "id, course, plan, kind, medium, printed_at, printed_by_name";
    static constexpr const char* order = "printed_at, id";
    static PrintedDocument take(Statement& row)
    {
        PrintedDocument document;
        document.id = takeId<PrintedDocument>(row);
        document.course = takeId<Course>(row);
        document.plan = takeOptionalId<Plan>(row);
        document.kind = takeChoice<DocumentKind>(row);
        document.medium = takeChoice<Medium>(row);
        document.printedAt = takeMoment(row);
        document.printedByName = row.takeText();
        return document;
    }
    static Columns columnsOf(const PrintedDocument& document)
    {
        return {{"plan", valueOf(document.plan)},
                {"kind", valueOf(document.kind)},
                {"medium", valueOf(document.medium)}};
    }
};

namespace
{

/// Under the practitioner's name as it is in the store; one who signed before keeps the name of
/// that day.
FollowUp signedByName(Writing& writing, const FollowUp& followUp)
{
    FollowUp named = followUp;
    if (!followUp.practitioner) {
        throw Failure({.code = ErrorCode::notFilled,
                       .subject = {},
                       .detail = {},
                       .field = Field::practitioner});
    }
    const Connection& connection = writing.connection();
    named.practitionerName = nameOfPractitioner(connection, *followUp.practitioner);
    if (followUp.id) {
        Statement before(
            connection,
            "SELECT practitioner_name FROM follow_up WHERE id = ? AND practitioner = ?");
        before.bind({valueOf(*followUp.id), valueOf(*followUp.practitioner)});
        if (before.next()) {
            named.practitionerName = before.takeText();
        }
    }
    return named;
}

void requireExplained(const CounterReading& counter)
{
    if (counter.explanation == CounterExplanation::other) {
        requireFilled(counter.explanationWords, Field::reason);
    }
}

} // namespace

std::vector<Pause> pausesOf(Reading& reading, CourseId course)
{
    return partsOf<Pause>(reading, course);
}

PauseId addPause(Writing& writing, const Pause& pause)
{
    requireFilled(pause.reason, Field::reason);
    return addPart(writing, pause);
}

void changePause(Writing& writing, const Pause& pause)
{
    requireFilled(pause.reason, Field::reason);
    changePart(writing, pause);
}

std::vector<FollowUp> followUpsOf(Reading& reading, CourseId course)
{
    return partsOf<FollowUp>(reading, course);
}

FollowUpId addFollowUp(Writing& writing, const FollowUp& followUp)
{
    return addPart(writing, signedByName(writing, followUp));
}

void changeFollowUp(Writing& writing, const FollowUp& followUp)
{
    changePart(writing, signedByName(writing, followUp));
}

std::vector<CounterReading> counterReadingsOf(Reading& reading, CourseId course)
{
    return partsOf<CounterReading>(reading, course);
}

CounterReadingId addCounterReading(Writing& writing, const CounterReading& counter)
{
    requireExplained(counter);
    return addPart(writing, counter, writerColumns(writing, "recorded_by"));
}

void changeCounterReading(Writing& writing, const CounterReading& counter)
{
    requireExplained(counter);
    changePart(writing, counter);
}

std::vector<DiaryReceived> receiptsOf(Reading& reading, CourseId course)
{
    return partsOf<DiaryReceived>(reading, course);
}

DiaryReceivedId addReceipt(Writing& writing, const DiaryReceived& receipt)
{
    return addPart(writing, receipt, writerColumns(writing, "recorded_by"));
}

void changeReceipt(Writing& writing, const DiaryReceived& receipt)
{
    changePart(writing, receipt);
}

std::optional<Date> diaryReceivedThrough(Reading& reading, CourseId course)
{
    Statement row(reading.connection(), "SELECT max(through_date) FROM diary_received "
                                        "WHERE course = ? AND withdrawn = 0");
    row.bind({valueOf(course)});
    return row.next() ? takeOptionalDate(row) : std::nullopt;
}

std::vector<PrintedDocument> printedDocumentsOf(Reading& reading, CourseId course)
{
    return partsOf<PrintedDocument>(reading, course);
}

PrintedDocumentId addPrintedDocument(Writing& writing, const PrintedDocument& document)
{
    Columns more = writerColumns(writing, "printed_by");
    more.push_back({"printed_at", valueOf(writing.moment())});
    return addPart(writing, document, more);
}

} // namespace quadrille::db
