// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/kept_forms.h"
#include "db/people.h"
#include "db/sql.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using namespace literals;
using testing::ElementsAre;
using tests::author;
using tests::day;
using tests::must;

/// One row as text: "act kind field: from -> to".
using Lines = std::vector<std::string>;

class ChangeRecord : public testing::Test
{
protected:
    Lines linesOf(const std::string& kind)
    {
        return must(store->read([&](Reading& reading) {
            Lines lines;
            Statement rows(reading.connection(),
                           "SELECT act, field, from_value, to_value FROM change_record "
                           "LEFT JOIN change_value ON change_value.change = change_record.id "
                           "WHERE record_kind = ? ORDER BY id");
            rows.bind({kind});
            while (rows.next()) {
                std::string line = rows.takeText();
                if (const auto field = rows.takeOptionalText()) {
                    line += " " + *field;
                    line += ": " + rows.takeOptionalText().value_or("nothing");
                    line += " -> " + rows.takeOptionalText().value_or("nothing");
                }
                lines.push_back(line);
            }
            return lines;
        }));
    }
    std::int64_t count()
    {
        return *must(store->read([](Reading& reading) {
            return numberFrom(reading.connection(), "SELECT count(*) FROM change_record");
        }));
    }
    /// Saves a draft; it goes on from what is stored.
    void save(Draft& draft)
    {
        must(store->write(author(), "save draft",
                          [&](Writing& writing) { return saveDraft(writing, draft); }));
        ++draft.version;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
};

TEST_F(ChangeRecord, SaysWhoWhenWhatAndWhoseRecord)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    temp.clock.set(Moment(day(2026, 4, 1)) + std::chrono::hours(8));
    const Author ruta{.practitioner = ids.practitioner, .name = "Ruta Vennel"};
    must(store->write(ruta, "add patient", [](Writing& writing) {
        return addPatient(writing, tests::aPatient("1002", "Bohdan Kressel"));
    }));
    must(store->read([&](Reading& reading) {
        Statement row(reading.connection(),
                      "SELECT made_at, practitioner, practitioner_name, what, record_kind, "
                      "record_id, patient FROM change_record ORDER BY id DESC LIMIT 1");
        ASSERT_TRUE(row.next());
        EXPECT_EQ(row.takeText(), "2026-04-01T08:00:00Z");
        EXPECT_EQ(row.takeInteger(), ids.practitioner.key());
        EXPECT_EQ(row.takeText(), "Ruta Vennel");
        EXPECT_EQ(row.takeText(), "add patient");
        EXPECT_EQ(row.takeText(), "patient");
        EXPECT_EQ(row.takeInteger(), 2);
        EXPECT_EQ(row.takeInteger(), 2);
    }));
}

TEST_F(ChangeRecord, TheProgramItselfIsNoPractitioner)
{
    tests::aPracticeWithCourse(*store, tests::Screened::no);
    must(store->read([](Reading& reading) {
        EXPECT_EQ(numberFrom(reading.connection(),
                             "SELECT count(*) FROM change_record WHERE practitioner IS NULL "
                             "AND practitioner_name = 'Set-up'"),
                  4);
    }));
}

TEST_F(ChangeRecord, HasOneRowForANewRecordAndOneForEachChangedField)
{
    Patient agnes = tests::aPatient();
    agnes.id = must(store->write(author(), "add patient",
                                 [&](Writing& writing) { return addPatient(writing, agnes); }));
    agnes.name = "Agnes Thorley-Rusk";
    agnes.archived = true;
    must(store->write(author(), "change patient",
                      [&](Writing& writing) { changePatient(writing, agnes); }));
    must(store->write(author(), "change patient",
                      [&](Writing& writing) { changePatient(writing, agnes); }));
    EXPECT_THAT(linesOf("patient"),
                ElementsAre("created", "changed name: Agnes Thorley -> Agnes Thorley-Rusk",
                            "changed archived: 0 -> 1"));
}

TEST_F(ChangeRecord, FollowsThePracticeAPractitionerACourseAndAStimulator)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    Course course = tests::aCourse(ids.patient);
    course.id = ids.course;
    course.endDate = day(2026, 3, 31);
    Stimulator unit = tests::aUnit();
    unit.id = ids.stimulator;
    unit.phaseDuration.most = 500_us;
    unit.interphaseGap = {0_us, 100_us, 100_us, 0_us};
    Practitioner ruta = tests::aPractitioner();
    ruta.id = ids.practitioner;
    ruta.initials = "R";
    Practice lane{.name = "Quay Lane", .address = "", .telephone = "", .emergencyNumber = ""};
    must(store->write(author(), "change all", [&](Writing& writing) {
        savePractice(writing, lane);
        lane.telephone = "01632 960100";
        savePractice(writing, lane);
        changePractitioner(writing, ruta);
        changeCourse(writing, course);
        changeStimulator(writing, unit);
    }));
    EXPECT_THAT(linesOf("practice"), ElementsAre("created", "changed telephone:  -> 01632 960100"));
    EXPECT_THAT(linesOf("practitioner"), ElementsAre("created", "changed initials: RV -> R"));
    EXPECT_THAT(linesOf("course"),
                ElementsAre("created", "changed end_date: nothing -> 2026-03-31"));
    EXPECT_THAT(linesOf("stimulator"),
                ElementsAre("created", "changed ranges.phase_duration.most: 400 -> 500",
                            "changed ranges.interphase_gap.least: nothing -> 0",
                            "changed ranges.interphase_gap.most: nothing -> 100",
                            "changed ranges.interphase_gap.step: nothing -> 100",
                            "changed ranges.interphase_gap.preset: nothing -> 0"));
}

TEST_F(ChangeRecord, FollowsASavedDraftIntoItsPlan)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    Draft draft = tests::aDraft(ids);
    save(draft);
    draft.blocks[0].weeks = 6;
    draft.blocks[0].sites[0].settings.onTime = std::chrono::seconds(6);
    save(draft);
    draft.blocks[0].sites[0].settings.offTime = std::chrono::seconds(18);
    must(store->write(author(), "issue plan", [&](Writing& writing) {
        return issuePlan(
            writing, draft,
            {.fromDate = day(2026, 3, 12), .reason = "first plan", .issuedBy = ids.practitioner},
            day(2026, 3, 12));
    }));
    EXPECT_THAT(linesOf("draft"),
                ElementsAre("created", "changed blocks.1.weeks: 4 -> 6",
                            "changed blocks.1.sites.1.on_time_ms: 4000 -> 6000",
                            "changed blocks.1.sites.1.off_time_ms: 12000 -> 18000", "removed"));
    EXPECT_THAT(linesOf("plan"),
                ElementsAre("created", testing::StartsWith("changed content_digest: nothing -> ")));
    must(store->read([&](Reading& reading) {
        EXPECT_EQ(numberFrom(reading.connection(),
                             "SELECT count(*) FROM change_record WHERE record_kind IN "
                             "('draft', 'plan') AND patient = ?",
                             {ids.patient.key()}),
                  7);
    }));
}

TEST_F(ChangeRecord, KeepsWhyAVariantWasAdopted)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    Draft draft = tests::aDraft(ids);
    save(draft);
    draft.adoptedReasons = {"tires less"};
    save(draft);
    EXPECT_THAT(linesOf("draft"),
                ElementsAre("created", "changed adopted_reasons: nothing -> tires less"));
}

TEST_F(ChangeRecord, KeepsWhatADiscardedDraftHeld)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, tests::aDraft(ids)); }));
    must(store->write(author(), "discard draft",
                      [&](Writing& writing) { discardDraft(writing, ids.course); }));
    const Lines lines = linesOf("draft");
    EXPECT_EQ(lines.front(), "created");
    EXPECT_EQ(lines.back(), "removed");
    EXPECT_THAT(lines, testing::IsSupersetOf({"changed blocks.1.weeks: 4 -> nothing",
                                              "changed blocks.1.sites.1.muscle: vastus lateralis "
                                              "-> nothing",
                                              "changed blocks.1.sites.1.pads.2.height_mm: 90 -> "
                                              "nothing"}));
}

TEST_F(ChangeRecord, UnsavedWorkAndKeptFormsLeaveNoRows)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    const std::int64_t before = count();
    must(store->write(author(), "keep", [&](Writing& writing) {
        keepUnsavedDraft(writing, tests::aDraft(ids));
        keepForm(writing, QStringLiteral("patient/new"), {});
    }));
    must(store->write(author(), "drop", [&](Writing& writing) {
        dropUnsavedDraft(writing, ids.course);
        dropForm(writing, QStringLiteral("patient/new"));
        discardDraft(writing, ids.course); // there is none
    }));
    EXPECT_EQ(count(), before);
}

} // namespace
} // namespace quadrille::db
