// SPDX-License-Identifier: GPL-3.0-or-later
// Erasure on legal request: nothing of the person in any byte, everything of the others, the act on
// record.
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/backup.h"
#include "db/clinic_sessions.h"
#include "db/course_events.h"
#include "db/diary.h"
#include "db/electrode_sets.h"
#include "db/history.h"
#include "db/kept_forms.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/screenings.h"

#include <QDir>
#include <QFile>
#include <QJsonObject>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

/// In every text of the person, so that one search finds any byte that was left.
const std::string mark = "Zwyxopel";

class Erasing : public testing::Test
{
protected:
    Erasing()
    {
        Patient marked = tests::aPatient("Z-" + mark, "Aud " + mark);
        marked.note = mark + " note";
        marked.email = mark + "@example.org";
        marked.address = mark + " Row";
        marked.segmentLengths = {
            {.segment = Segment::thigh, .side = BodySide::left, .length = Length::fromCount(410)}};
        must(store->write(author(), "add patient", [&](Writing& writing) {
            marked.id = addPatient(writing, marked);
            Course course = tests::aCourse(*marked.id);
            course.problem = mark + " knee";
            their = {.practitioner = ids.practitioner,
                     .stimulator = ids.stimulator,
                     .patient = *marked.id,
                     .course = addCourse(writing, course)};
        }));
        marked.note = "another " + mark;
        must(store->write(author(), "change patient",
                          [&](Writing& writing) { changePatient(writing, marked); }));
        Draft draft = tests::aDraft(their);
        draft.blocks[0].sites[0].instruction = mark + " instruction";
        draft.adoptedReasons = {mark + " adopted"};
        must(store->write(author(), "screen", [&](Writing& writing) { addScreened(writing); }));
        must(store->write(author(), "issue plan", [&](Writing& writing) {
            issuePlan(writing, draft,
                      {.fromDate = day(2026, 2, 9),
                       .reason = mark + " reason",
                       .issuedBy = ids.practitioner},
                      day(2026, 3, 12));
            saveDraft(writing, draft);
            keepUnsavedDraft(writing, draft);
        }));
        must(store->write(author(), "enter", [&](Writing& writing) {
            addEvents(writing);
            takeBack(writing, lent(writing, "U-01"), day(2026, 3, 9));
        }));
        tests::anIssuedPlan(*store, ids);
    }
    Loan lent(Writing& writing, const std::string& number) const
    {
        LoanUnit unit;
        unit.stimulator = their.stimulator;
        unit.inventoryNumber = number;
        Loan loan;
        loan.unit = addLoanUnit(writing, unit);
        loan.course = their.course;
        loan.lentOn = day(2026, 2, 9);
        loan.id = lend(writing, loan);
        return loan;
    }
    MeasurementId addTorque(Writing& writing, FollowUpId visit) const
    {
        Measurement torque;
        torque.course = their.course;
        torque.followUp = visit;
        torque.measuredOn = day(2026, 3, 2);
        torque.kind = "isometric_torque";
        torque.unit = "N.m";
        torque.method = torque.subject = torque.device = mark + " method";
        torque.counted = Counted::mean;
        torque.trials = {1'000, 2'000};
        torque.thousandths = 1'500;
        return addMeasurement(writing, torque);
    }
    ElectrodeSetId addPads(Writing& writing) const
    {
        ElectrodeSet set;
        set.course = their.course;
        set.issuedOn = day(2026, 2, 6);
        set.description = mark + " pads";
        return addElectrodeSet(writing, set);
    }
    void addScreened(Writing& writing)
    {
        Screening screening = tests::allClear(their.course);
        giveAnswer(screening, "broken_skin", Answer::yes);
        screening.answers[1].note = mark + " shin";
        screening.answers[1].places = {{BodyRegion::thigh, PlaceSide::both}};
        screening.questions[2].wording = mark + " asked";
        screening.skin = {{.muscle = mark + " muscle",
                           .sharpBlunt = Sensation::intact,
                           .warmCold = Sensation::intact}};
        const ScreeningId screened = addScreening(writing, screening);
        signScreening(writing, screened, 1, ids.practitioner, day(2026, 3, 12));
        ScreeningOverride reason;
        reason.screening = screened;
        reason.question = "broken_skin";
        reason.practitioner = ids.practitioner;
        reason.reason = mark + " goes ahead";
        addOverride(writing, reason);
    }
    void addEvents(Writing& writing)
    {
        DiaryEntry entry;
        entry.course = their.course;
        entry.day = day(2026, 2, 9);
        entry.amplitudes = {{.site = 1, .amplitude = Amplitude::fromCount(42'000)}};
        addDiaryEntry(writing, entry);
        DiaryDay monday;
        monday.course = their.course;
        monday.day = day(2026, 2, 9);
        monday.remark = mark + " remark";
        saveDiaryDay(writing, monday);
        FollowUp visit;
        visit.course = their.course;
        visit.heldOn = day(2026, 3, 2);
        visit.practitioner = ids.practitioner;
        visit.review = mark + " review";
        const MeasurementId measured = addTorque(writing, addFollowUp(writing, visit));
        CounterReading counter;
        counter.course = their.course;
        counter.readOn = day(2026, 3, 2);
        counter.totalUses = 15;
        counter.explanation = CounterExplanation::other;
        counter.explanationWords = mark + " cousin";
        addCounterReading(writing, counter);
        DiaryReceived receipt;
        receipt.course = their.course;
        receipt.receivedOn = day(2026, 3, 2);
        receipt.throughDate = day(2026, 3, 1);
        addReceipt(writing, receipt);
        const ElectrodeSetId pads = addPads(writing);
        ClinicSession tried;
        tried.course = their.course;
        tried.heldOn = day(2026, 2, 9);
        tried.practitioner = ids.practitioner;
        tried.note = mark + " session";
        ClinicSite& site = tried.sites.emplace_back();
        site.muscle = mark + " muscle";
        site.note = mark + " twitch";
        site.thresholds = {{.phaseDuration = PhaseDuration::fromCount(300),
                            .tolerated = Amplitude::fromCount(40'000)}};
        addClinicSession(writing, tried, day(2026, 3, 12));
        Pause pause;
        pause.course = their.course;
        pause.fromDate = day(2026, 2, 23);
        pause.reason = mark + " cold";
        addPause(writing, pause);
        PrintedDocument handout;
        handout.course = their.course;
        addPrintedDocument(writing, handout);
        for (const QString& form :
             {QStringLiteral("patient/new"), QStringLiteral("patient/%1").arg(their.patient.key()),
              QStringLiteral("course/%1").arg(their.course.key()),
              QStringLiteral("course/new/%1").arg(their.patient.key()),
              QStringLiteral("measurements/%1").arg(their.course.key()),
              QStringLiteral("measurement/%1").arg(measured.key()),
              QStringLiteral("pads/new/%1").arg(their.course.key()),
              QStringLiteral("pads/%1").arg(pads.key()),
              QStringLiteral("clinic/%1").arg(their.course.key()),
              QStringLiteral("diary/%1").arg(their.course.key()),
              QStringLiteral("counter/%1/new").arg(their.course.key()),
              QStringLiteral("clinic/%1/00ff00ff00ff00ff").arg(their.course.key())}) {
            keepForm(writing, form, {{QStringLiteral("name"), QString::fromStdString(mark)}});
        }
    }
    /// The names of files in the folder that hold the mark in any byte.
    QStringList filesThatHold(const std::string& text) const
    {
        QStringList holding;
        const QDir folder(temp.folder());
        for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
            QFile file(folder.filePath(name));
            if (file.open(QIODevice::ReadOnly) &&
                file.readAll().contains(QByteArray::fromStdString(text))) {
                holding.append(name);
            }
        }
        return holding;
    }
    auto erase() { return store->erase(ruta, their.patient, ErasureGround::request); }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    tests::Practiced their = ids;
    const Author ruta{.practitioner = ids.practitioner, .name = "Ruta Vennel"};
};

TEST_F(Erasing, LeavesNoByteOfThePerson)
{
    ASSERT_THAT(filesThatHold(mark), Not(IsEmpty()));
    must(erase());
    EXPECT_THAT(filesThatHold(mark), IsEmpty()); // also with the program still running
    store.reset();
    EXPECT_THAT(filesThatHold(mark), IsEmpty());
    EXPECT_THAT(filesThatHold("Agnes Thorley"), Not(IsEmpty())); // the search does find
}

TEST_F(Erasing, LeavesEverythingOfOthersAndAStoreThatVerifies)
{
    must(erase());
    must(store->read([&](Reading& reading) {
        EXPECT_TRUE(patient(reading, ids.patient));
        EXPECT_EQ(plansOf(reading, ids.course).size(), 1U);
        EXPECT_FALSE(patient(reading, their.patient));
        EXPECT_THAT(verify(reading), IsEmpty());
        // The unit is the practice's own.
        ASSERT_EQ(inventory(reading).size(), 1U);
        EXPECT_FALSE(inventory(reading).front().loan);
        EXPECT_EQ(numberFrom(reading.connection(), "SELECT count(*) FROM loan"), 0);
    }));
}

TEST_F(Erasing, WaitsUntilEveryUnitIsBack)
{
    std::vector<Loan> out;
    must(store->write(author(), "lend", [&](Writing& writing) {
        out = {lent(writing, "U-12"), lent(writing, "U-07")};
    }));
    const auto refused = erase();
    ASSERT_EQ(codeOf(refused), ErrorCode::refused);
    EXPECT_EQ(refused.error().field, quadrille::Field::inventoryNumber);
    EXPECT_EQ(refused.error().detail, "U-07, U-12");
    must(store->read([&](Reading& reading) {
        EXPECT_TRUE(patient(reading, their.patient));
        EXPECT_EQ(unitsLentTo(reading, their.course).size(), 2U);
    }));
    must(store->write(author(), "take back", [&](Writing& writing) {
        for (const Loan& loan : out) {
            takeBack(writing, loan, day(2026, 3, 12));
        }
    }));
    must(erase());
}

TEST_F(Erasing, StaysOnRecordWithoutTheValues)
{
    const auto before = must(
        store->read([&](Reading& reading) { return historyOf(reading, their.patient, 1000); }));
    must(erase());
    const auto after = must(
        store->read([&](Reading& reading) { return historyOf(reading, their.patient, 1000); }));
    ASSERT_EQ(after.size(), before.size() + 1);
    EXPECT_EQ(after.front().act, ChangeAct::removed);
    EXPECT_EQ(after.front().practitionerName, "Ruta Vennel");
    EXPECT_EQ(after.front().what, "erase patient");
    for (const Change& change : after) {
        EXPECT_FALSE(change.from || change.to);
    }
    must(store->read([&](Reading& reading) {
        Statement row(reading.connection(),
                      "SELECT patient, ground, practitioner_name, under_way FROM erasure");
        ASSERT_TRUE(row.next());
        EXPECT_EQ(row.takeInteger(), their.patient.key());
        EXPECT_EQ(row.takeText(), "request");
        EXPECT_EQ(row.takeText(), "Ruta Vennel");
        EXPECT_EQ(row.takeInteger(), 0);
    }));
}

TEST_F(Erasing, AKeyIsNeverGivenAgain)
{
    must(erase());
    const auto next = must(store->write(author(), "add patient", [](Writing& writing) {
        return addPatient(writing, tests::aPatient("1002"));
    }));
    EXPECT_GT(next.key(), their.patient.key());
    EXPECT_THROW(run(*temp.rawConnection(),
                     "INSERT INTO patient SELECT 2, 'x', name, birth_date, telephone, note, "
                     "archived, email, address, contact_person, height_mm, language, version FROM "
                     "patient WHERE id = 1"),
                 SqlError);
}

TEST_F(Erasing, IsTheOnlyWayPastTheGuards)
{
    const auto raw = temp.rawConnection();
    run(*raw, dialect::suspendForeignKeys); // the guards stand by themselves
    const auto refused = [&](const std::string& sql) {
        try {
            run(*raw, sql);
            ADD_FAILURE() << "not refused: " << sql;
        } catch (const SqlError& error) {
            EXPECT_EQ(dialect::troubleOf(error.code()), dialect::Trouble::rule)
                << sql << ": " << error.what();
        }
    };
    refused("DELETE FROM patient");
    refused("DELETE FROM course");
    refused("DELETE FROM change_value");
    refused("DELETE FROM plan");
    refused("DELETE FROM loan");
    refused(
        "INSERT INTO erasure VALUES (1, 99, 'request', '2026-03-12T10:42:00Z', 1, 'Nobody', 1)");
    refused("INSERT INTO erasure VALUES (1, 1, 'request', '2026-03-12T10:42:00Z', 1, 'Nobody', 0)");
    {
        const Transaction undone(*raw, dialect::beginWriting);
        run(*raw,
            "INSERT INTO erasure VALUES (1, 2, 'request', '2026-03-12T10:42:00Z', 1, 'N', 1)");
        refused("DELETE FROM patient WHERE id = 1"); // another one than under way
        refused("DELETE FROM pad WHERE site IN (SELECT site.id FROM site JOIN block ON block.id = "
                "site.block JOIN plan ON plan.id = block.plan JOIN course ON course.id = "
                "plan.course WHERE course.patient = 1)");
        refused("UPDATE erasure SET under_way = 0"); // the person is still there
    }
    must(erase());
    refused("DELETE FROM erasure");
    refused("UPDATE erasure SET practitioner_name = 'another'");
    refused("UPDATE erasure SET under_way = 1");
}

TEST_F(Erasing, NeedsSomebodyWhoAnswersForItAndAPatient)
{
    EXPECT_EQ(codeOf(store->erase({}, their.patient, ErasureGround::request)), ErrorCode::refused);
    EXPECT_EQ(codeOf(store->erase(ruta, PatientId(99), ErasureGround::request)),
              ErrorCode::notFound);
    EXPECT_THAT(filesThatHold(mark), Not(IsEmpty()));
}

TEST_F(Erasing, SaysThatAnotherProgramStillReadsAndEndsWhenItIsGone)
{
    {
        const auto reader = temp.rawConnection();
        const Transaction view(*reader, dialect::beginReading);
        ASSERT_TRUE(numberFrom(*reader, "SELECT count(*) FROM patient"));
        EXPECT_EQ(codeOf(erase()), ErrorCode::erasedNotScrubbed);
        EXPECT_FALSE(
            must(store->read([&](Reading& reading) { return patient(reading, their.patient); })));
    }
    EXPECT_TRUE(must(store->scrubErased()));
    EXPECT_THAT(filesThatHold(mark), IsEmpty());
}

TEST_F(Erasing, TellsWhichCopiesStillHoldThePerson)
{
    const QString copies = usualCopyFolder(temp.file());
    const auto daily = must(copyOnceADay(temp.file(), copies, temp.clock));
    const QString sealed = temp.folder() + QStringLiteral("/sealed.quadrille");
    must(writeBackup(temp.file(), sealed, Passphrase{"four quiet words", leastSealCost()}));
    Patient person = must(store->read([&](Reading& reading) {
                         return patient(reading, their.patient);
                     })).value();
    person.reference = "renumbered since"; // the copies know the old one
    const QString damaged = temp.file() + QStringLiteral(".before-restore.20260301T080000Z");
    QFile file(damaged);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("not whole any more");
    file.close();
    must(erase());
    const QString later = temp.folder() + QStringLiteral("/later.quadrille");
    must(writeBackup(temp.file(), later, std::nullopt));
    EXPECT_THAT(copiesHolding(person, temp.file(), {temp.folder(), copies, temp.folder()}),
                testing::UnorderedElementsAre(*daily, sealed, damaged));
}

} // namespace
} // namespace quadrille::db
