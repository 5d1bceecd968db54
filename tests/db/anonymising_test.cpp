// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/anonymising.h"
#include "db/clinic_sessions.h"
#include "db/course_records.h"
#include "db/diary_mappings.h"
#include "db/electrode_lives.h"
#include "db/history.h"
#include "db/house_settings.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/migrations.h"
#include "db/practice_preferences.h"
#include "db/screening_rows.h"
#include "db/verification.h"

#include <QFile>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

namespace quadrille::db
{
namespace
{

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using tests::codeOf;
using tests::day;
using tests::must;

/// The dump of the newest schema has a row in every table.
class Anonymising : public testing::Test
{
protected:
    Anonymising()
    {
        QFile file(QStringLiteral(QUADRILLE_TEST_STORES "/schema_%1.dump")
                       .arg(newestVersion(builtInSteps())));
        if (!file.open(QIODevice::ReadOnly)) {
            throw std::runtime_error("no dump");
        }
        tests::runDump(temp.file(), file.readAll().toStdString());
        must(temp.open(Opening::existing)->write(tests::author(), "change", [](Writing& writing) {
            Patient agnes = patientByReference(writing, "1001").value();
            agnes.telephone = "01632 960118";
            changePatient(writing, agnes);
            Stimulator unit = stimulators(writing).at(0);
            unit.ownWords = {{quadrille::Field::onTime, "Tensing"}};
            changeStimulator(writing, unit);
            LoanUnit lent;
            lent.stimulator = unit.id;
            lent.inventoryNumber = "Shelf-20418";
            lent.serialNumber = "Serial-20419";
            lent.nextSafetyCheckOn = day(2026, 5, 1);
            lent.note = "Case cracked";
            Loan loan;
            loan.unit = addLoanUnit(writing, lent);
            loan.lentOn = day(2026, 3, 2);
            Course course = coursesOf(writing, *agnes.id).at(0);
            loan.course = course.id;
            lend(writing, loan);
            course.endDate = day(2026, 3, 31);
            changeCourse(writing, course);
            Measurement stairs;
            stairs.course = course.id;
            stairs.measuredOn = day(2026, 3, 2);
            stairs.kind = ownKind;
            stairs.subject = "Steps to the harbour";
            stairs.unit = "{harbour_steps}";
            stairs.thousandths = 23'000;
            stairs.device = "harbour clock";
            addMeasurement(writing, stairs);
            stairs.subject = "Steps to the chapel";
            addMeasurement(writing, stairs);
            addHouseSettings(writing, {.name = "Harbour settings",
                                       .muscle = "Harbour muscle",
                                       .condition = "Harbour knee",
                                       .note = "Harbour note",
                                       .settings = presetSettings(tests::aUnit())});
            setPracticePreference(writing, screeningValidityName, "7", 0);
            setPracticePreference(writing, screeningValidityName, "8", 1);
            setPracticePreference(writing, "pad_life_uses.self_adhesive", "31", 0);
            setPracticePreference(writing, "pad_life_months.self_adhesive", "", 0);
            setPracticePreference(writing, "telephone", "01632", 0);
            setPracticePreference(writing, "notice", "harbour closed", 0);
            saveDiaryMapping(writing,
                             {.name = "Harbour diaries",
                              .columns = {{"Harbour minutes", {.column = DiaryColumn::minutes}}}},
                             0);
        }));
        requireARowInEveryTable();
    }
    /// Or what a table lets through would not be seen.
    void requireARowInEveryTable()
    {
        const auto raw = temp.rawConnection();
        Statement tables(*raw,
                         "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT "
                         "LIKE 'sqlite_%' AND name NOT IN ('erasure', 'plan_segment_length')");
        while (tables.next()) {
            const std::string table = tables.takeText();
            EXPECT_GT(numberFrom(*raw, "SELECT count(*) FROM " + table).value_or(0), 0) << table;
        }
    }
    std::unique_ptr<Store> anonymised(std::chrono::days shift = std::chrono::days(-700))
    {
        must(anonymise(temp.file(), out, shift));
        return must(Store::open(out, Opening::existing, temp.clock));
    }

    tests::TempStore temp;
    const QString out = temp.folder() + QStringLiteral("/for_support.quadrille");
};

TEST_F(Anonymising, LeavesNoNameAndNoFreeText)
{
    const std::string before = tests::everyRow(temp.file());
    anonymised().reset();
    QFile file(out);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray bytes = file.readAll();
    for (const char* text :
         {"Agnes",        "Thorley",         "Ruta",           "Vennel",      "Quay Lane",
          "Marrowick",    "01632 9",         "PT 20417",       "Knee",        "U-07",
          "Hears less",   "vastus",          "ankle strapped", "Tighten",     "1958-06-04",
          "2026-03",      "Everything unit", "Tensing",        "Shelf-20418", "Serial-20419",
          "Case cracked", "harbour",         "Harbour",        "chapel",      "S 20417",
          "case cracked", "with her own",    "strong",         "graze",       "Swims",
          "chilled skin", "Warm the leg",    "strap at",       "Tide Row",    "healing",
          "agnes@",       "Bohdan",          "no pad goes",    "a cold",      "Red for",
          "her brother",  "longer rest",     "Feil 2011"}) {
        EXPECT_THAT(before, HasSubstr(text)) << "the test looks for what is not there";
        EXPECT_FALSE(bytes.contains(text)) << text;
    }
    // A digest may hold such digits too.
    const std::string after = tests::everyRow(out);
    for (const char* text : {"'1001'", "'01632'"}) {
        EXPECT_THAT(before, HasSubstr(text)) << "the test looks for what is not there";
        EXPECT_THAT(after, Not(HasSubstr(text)));
    }
}

TEST_F(Anonymising, KeepsStructureAmountsAndDistancesOfDates)
{
    const auto store = anonymised();
    must(store->read([](Reading& reading) {
        EXPECT_THAT(verify(reading), IsEmpty());
        const Patient somebody = patient(reading, PatientId(1)).value();
        EXPECT_EQ(somebody.name, "Patient 1");
        EXPECT_EQ(somebody.reference, "P1");
        EXPECT_EQ(somebody.birthDate, day(1958, 6, 4) - std::chrono::days(700));
        EXPECT_EQ(somebody.note, "text");
        const Course course = coursesOf(reading, *somebody.id).at(0);
        EXPECT_EQ(course.startDate, day(2026, 2, 9) - std::chrono::days(700));
        const auto plans = plansOf(reading, *course.id);
        ASSERT_THAT(plans, testing::SizeIs(1));
        EXPECT_EQ(plans[0].blocks.at(0).sites.at(0).settings,
                  tests::aFullSite(tests::aFullUnit()).settings);
        EXPECT_EQ(plans[0].stimulator.name, "Unit 2");
        const auto lent = unitsLentTo(reading, *course.id);
        ASSERT_THAT(lent, testing::SizeIs(2));
        EXPECT_EQ(lent[0].unit.inventoryNumber, "U1");
        EXPECT_EQ(lent[1].unit.inventoryNumber, "U2");
        EXPECT_EQ(lent[1].unit.nextSafetyCheckOn, day(2026, 5, 1) - std::chrono::days(700));
        EXPECT_EQ(lent[1].loan->lentOn, day(2026, 3, 2) - std::chrono::days(700));
        const auto sessions = clinicSessionsOf(reading, *course.id);
        ASSERT_THAT(sessions, testing::SizeIs(1));
        EXPECT_EQ(sessions[0].heldOn, day(2026, 2, 9) - std::chrono::days(700));
        EXPECT_EQ(sessions[0].sites.at(0).muscle, "text");
        EXPECT_EQ(sessions[0].sites.at(0).torque, 42'500);
        EXPECT_EQ(sessions[0].sites.at(0).thresholds.at(0).motor, Amplitude::fromCount(14'000));
    }));
}

TEST_F(Anonymising, KeepsTheNumbersThatThePracticeReckonsWith)
{
    const auto store = anonymised();
    must(store->read([](Reading& reading) {
        EXPECT_EQ(screeningValidity(reading), std::chrono::months(8));
        EXPECT_EQ(electrodeLives(reading).selfAdhesive,
                  (ElectrodeLife{.uses = 31, .months = std::nullopt}));
        EXPECT_EQ(adherenceRules(reading).sessionDonePercent, 90);
        EXPECT_EQ(practicePreference(reading, "notice")->value, "text");
        Statement rows(reading.connection(),
                       "SELECT from_value, to_value FROM change_record JOIN change_value ON "
                       "change = change_record.id WHERE field = 'screening_valid_months'");
        ASSERT_TRUE(rows.next());
        EXPECT_EQ(rows.takeText(), "7");
        EXPECT_EQ(rows.takeText(), "8");
    }));
}

TEST_F(Anonymising, LeavesAnEmptyListOfColumnsThatCanBeRead)
{
    EXPECT_THAT(must(temp.open(Opening::existing)->read(diaryMappings)).mappings,
                testing::SizeIs(1));
    EXPECT_THAT(must(anonymised()->read(diaryMappings)).mappings, IsEmpty());
}

TEST_F(Anonymising, SaysWhichFieldsWereChangedButNotWhatTheySaid)
{
    const auto store = anonymised();
    const auto changes =
        must(store->read([](Reading& reading) { return historyOf(reading, PatientId(1), 100); }));
    const auto changeOf = [&](const std::string& field) {
        return std::ranges::find(changes, field, &Change::field);
    };
    ASSERT_NE(changeOf("telephone"), changes.end());
    EXPECT_EQ(changeOf("telephone")->from, "text");
    EXPECT_EQ(changeOf("telephone")->to, "text");
    EXPECT_EQ(changeOf("end_date")->to, isoDate(day(2026, 3, 31) - std::chrono::days(700)));
}

TEST_F(Anonymising, KeepsWhatWasMeasuredAndItsUnitButNotThePracticesOwnWords)
{
    const auto store = anonymised();
    const auto all =
        must(store->read([](Reading& reading) { return measurementsOf(reading, CourseId(1)); }));
    ASSERT_THAT(all, testing::SizeIs(4));
    EXPECT_EQ(all[0].kind, "isometric_torque");
    EXPECT_EQ(all[0].unit, "N.m");
    EXPECT_EQ(all[1].kind, ownKind);
    EXPECT_EQ(all[1].unit, "{unit}");
    EXPECT_EQ(all[1].thousandths, 23'000);
}

TEST_F(Anonymising, KeepsSeriesOfMeasurementsApart)
{
    const auto store = anonymised();
    const auto all =
        must(store->read([](Reading& reading) { return measurementsOf(reading, CourseId(1)); }));
    ASSERT_THAT(all, testing::SizeIs(4));
    EXPECT_EQ(all[1].subject, "text 1"); // of two kinds of the practice's own
    EXPECT_EQ(all[2].subject, "text 2");
    EXPECT_EQ(all[0].method, "text 1"); // one method twice
    EXPECT_EQ(all[3].method, "text 1");
    EXPECT_EQ(all[0].subject, "") << "nothing is no text";
    EXPECT_THAT(must(store->read(ownKinds)), testing::SizeIs(2));
}

TEST_F(Anonymising, LeavesTheStoreAsItWasAndTakesNoTakenName)
{
    const std::string before = tests::everyRow(temp.file());
    anonymised().reset();
    EXPECT_EQ(tests::everyRow(temp.file()), before);
    EXPECT_EQ(codeOf(anonymise(temp.file(), out, std::chrono::days(-7))), ErrorCode::cannotWrite);
}

TEST_F(Anonymising, ShiftsByWholeWeeksAndNeverTheSameTwice)
{
    std::set<std::chrono::days> shifts;
    for (int i = 0; i < 50; ++i) {
        const auto shift = randomShift();
        EXPECT_EQ(shift.count() % 7, 0); // weekdays stay
        EXPECT_LE(shift, std::chrono::days(-364));
        EXPECT_GE(shift, std::chrono::days(-3640));
        shifts.insert(shift);
    }
    EXPECT_GT(shifts.size(), 10U);
}

} // namespace
} // namespace quadrille::db
