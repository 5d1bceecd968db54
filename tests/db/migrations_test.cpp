// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/caseload_query.h"
#include "db/failure.h"
#include "db/migrations.h"
#include "db/opening.h"
#include "db/verification.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::must;

std::vector<MigrationStep> stepsWith(const std::vector<MigrationStep>& more)
{
    std::vector<MigrationStep> steps = builtInSteps();
    steps.insert(steps.end(), more.begin(), more.end());
    return steps;
}

MigrationStep stepAfter(int versions, const std::string& text)
{
    const int version = newestVersion(builtInSteps()) + versions;
    return {version, "a_later_step_" + std::to_string(versions), text};
}

/// What each table, index and trigger of a file says.
std::map<std::string, std::string> schemaOf(const Connection& connection)
{
    std::map<std::string, std::string> schema;
    Statement rows(connection, "SELECT type || ' ' || name, sql FROM sqlite_schema "
                               "WHERE sql IS NOT NULL");
    while (rows.next()) {
        const std::string name = rows.takeText();
        schema[name] = rows.takeText();
    }
    return schema;
}

TEST(MigrationSteps, AreNumberedWithoutAGapAndBeginWithASentence)
{
    const auto steps = builtInSteps();
    ASSERT_THAT(steps, testing::Not(testing::IsEmpty()));
    for (std::size_t i = 0; i < steps.size(); ++i) {
        EXPECT_EQ(steps[i].version, static_cast<int>(i) + 1);
        const auto sentence = steps[i].text.find('\n') + 1; // after the licence
        const std::string line =
            steps[i].text.substr(sentence, steps[i].text.find('\n', sentence) - sentence);
        EXPECT_THAT(line, testing::StartsWith("-- ")) << steps[i].name;
        EXPECT_THAT(line, testing::EndsWith(".")) << steps[i].name;
    }
}

TEST(MigrationSteps, ArePartedAtTheMarkerAndNotAtSemicolons)
{
    const MigrationStep step{1, "", "CREATE a; END\n-- next statement\nSELECT 2\n"};
    EXPECT_THAT(statementsOf(step), testing::ElementsAre("CREATE a; END\n", "SELECT 2\n"));
}

class Migration : public testing::Test
{
protected:
    Migration()
    {
        const auto store = temp.open();
        const tests::Practiced ids = tests::aPracticeWithCourse(*store);
        tests::anIssuedPlan(*store, ids);
    }
    QByteArray bytes() const
    {
        QFile file(temp.file());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    OpenedFile open(const std::vector<MigrationStep>& more,
                    Opening opening = Opening::existing) const
    {
        return openFile(temp.file(), opening, temp.clock, temp.shortPatience, stepsWith(more));
    }
    Error errorOf(const std::vector<MigrationStep>& more, Opening opening = Opening::existing) const
    {
        try {
            open(more, opening);
        } catch (const Failure& failure) {
            return failure.error();
        }
        ADD_FAILURE() << "the file was opened";
        return {};
    }
    QStringList copies() const
    {
        return QDir(temp.folder()).entryList({QStringLiteral("*.schema-*")}, QDir::Files);
    }
    /// What the name of a copy says of the schema in it.
    static std::string copyMark()
    {
        return ".schema-" + std::to_string(newestVersion(builtInSteps())) + ".";
    }
    void expectUntouchedBy(const std::vector<MigrationStep>& more) const
    {
        const QByteArray before = bytes();
        const Error error = errorOf(more);
        EXPECT_EQ(error.code, ErrorCode::migrationFailed);
        EXPECT_THAT(error.detail, testing::HasSubstr(more.back().name));
        EXPECT_THAT(error.detail, testing::HasSubstr(copyMark()));
        EXPECT_EQ(bytes(), before);
        const auto raw = temp.rawConnection();
        EXPECT_EQ(schemaVersion(*raw), newestVersion(builtInSteps()));
        EXPECT_EQ(numberFrom(*raw, "SELECT count(*) FROM patient"), 1);
    }

    tests::TempStore temp;
};

TEST_F(Migration, AFreshFileHasEveryStepAndOurMark)
{
    const auto raw = temp.rawConnection();
    EXPECT_EQ(schemaVersion(*raw), newestVersion(builtInSteps()));
    EXPECT_EQ(numberFrom(*raw, "PRAGMA application_id"), dialect::applicationId);
    EXPECT_THAT(copies(), testing::IsEmpty());
}

TEST_F(Migration, BringsAnOlderFileForwardAndKeepsItsRows)
{
    const auto opened = open({stepAfter(1, "CREATE TABLE exercise (id INTEGER)"),
                              stepAfter(2, "INSERT INTO exercise VALUES (7)")});
    EXPECT_TRUE(opened.writable);
    EXPECT_EQ(schemaVersion(*opened.connection), newestVersion(builtInSteps()) + 2);
    EXPECT_EQ(numberFrom(*opened.connection, "SELECT id FROM exercise"), 7);
    EXPECT_EQ(numberFrom(*opened.connection, "SELECT count(*) FROM plan"), 1);
    EXPECT_EQ(numberFrom(*opened.connection, "PRAGMA foreign_keys"), 1);
}

TEST_F(Migration, CopiesTheFileAsideFirst)
{
    open({stepAfter(1, "DROP TABLE kept_form")});
    ASSERT_THAT(copies(), testing::ElementsAre(QStringLiteral("practice.quadrille") +
                                               QString::fromStdString(copyMark()) +
                                               QStringLiteral("20260312T104200Z")));
    const QString copy = QDir(temp.folder()).filePath(copies().front());
    const auto rights = QFile::permissions(copy);
    EXPECT_FALSE(rights & (QFileDevice::ReadGroup | QFileDevice::ReadOther));
    const auto store = must(Store::open(copy, Opening::existing, temp.clock));
    EXPECT_TRUE(must(store->read(
        [](Reading& reading) { return patientByReference(reading, "1001").has_value(); })));
}

TEST_F(Migration, ASecondCopyInTheSameSecondHasANameOfItsOwn)
{
    errorOf({stepAfter(1, "NONSENSE")});
    open({stepAfter(1, "DROP TABLE kept_form")});
    EXPECT_THAT(copies(), testing::SizeIs(2));
}

TEST_F(Migration, AStepThatFailsLeavesTheFileAsItWas)
{
    expectUntouchedBy({stepAfter(1, "DROP TABLE kept_form\n-- next statement\nNONSENSE")});
}

TEST_F(Migration, AFailingStepTakesTheOnesBeforeItAlong)
{
    expectUntouchedBy({stepAfter(1, "DROP TABLE kept_form"), stepAfter(2, "NONSENSE")});
}

TEST_F(Migration, AStepThatBreaksAReferenceFails)
{
    expectUntouchedBy({stepAfter(1, "INSERT INTO pause (course, from_date, reason) "
                                    "VALUES (99, '2026-03-12', 'a cold')")});
}

TEST_F(Migration, AStepMayRebuildATableThatOthersPointTo)
{
    const auto opened = open({stepAfter(
        1, "CREATE TABLE practitioner_new (id INTEGER PRIMARY KEY, name TEXT)\n"
           "-- next statement\nINSERT INTO practitioner_new SELECT id, name FROM practitioner\n"
           "-- next statement\nDROP TABLE practitioner\n"
           "-- next statement\nALTER TABLE practitioner_new RENAME TO practitioner\n")});
    EXPECT_EQ(numberFrom(*opened.connection, "SELECT count(*) FROM plan JOIN practitioner ON "
                                             "practitioner.id = plan.issued_by"),
              1);
}

TEST_F(Migration, AFileThatNeedsAStepIsNotOpenedToRead)
{
    const QByteArray before = bytes();
    EXPECT_EQ(errorOf({stepAfter(1, "DROP TABLE kept_form")}, Opening::readOnly).code,
              ErrorCode::readOnly);
    EXPECT_EQ(bytes(), before);
    EXPECT_THAT(copies(), testing::IsEmpty());
}

TEST(EmptyFile, IsTakenAwayAgainWhenItsSchemaCannotBeMade)
{
    const tests::TempStore temp;
    EXPECT_THROW(openFile(temp.file(), Opening::createIfMissing, temp.clock, temp.shortPatience,
                          stepsWith({stepAfter(1, "NONSENSE")})),
                 Failure);
    EXPECT_FALSE(QFile::exists(temp.file()));
}

/// Every earlier schema, with rows in each table.
class OlderStore : public testing::TestWithParam<int>
{
protected:
    OlderStore()
    {
        QFile dump(QStringLiteral(QUADRILLE_TEST_STORES "/schema_%1.dump").arg(GetParam()));
        if (!dump.open(QIODevice::ReadOnly)) {
            throw std::runtime_error("no dump");
        }
        tests::runDump(temp.file(), dump.readAll().toStdString());
    }
    /// What the block of the saved draft started from; step 10 added it.
    static std::optional<BlockOrigin> originInTheDump()
    {
        return GetParam() < 10 ? std::nullopt : std::optional(BlockOrigin{"Feil 2011", true});
    }
    /// Agnes Thorley, with this course, where the caseload looks for it.
    static void expectInTheCaseload(Reading& reading, const Course& course)
    {
        const Date today = tests::day(2026, 3, 12);
        const bool hasEnded = course.endDate && *course.endDate < today;
        const auto shown =
            hasEnded ? endedCaseload(reading, {.today = today, .words = {}}, std::nullopt, 10)
                     : currentCaseload(reading, today);
        ASSERT_THAT(shown, testing::SizeIs(1));
        EXPECT_EQ(shown[0].name, "Agnes Thorley");
        ASSERT_TRUE(shown[0].course);
        EXPECT_EQ(shown[0].course->id, course.id);
    }
    tests::TempStore temp;
};

TEST_P(OlderStore, HasTheSchemaThatItsStepsMake)
{
    const tests::TempStore fresh;
    std::vector<MigrationStep> steps = builtInSteps();
    steps.resize(static_cast<std::size_t>(GetParam()));
    const auto made =
        openFile(fresh.file(), Opening::createIfMissing, fresh.clock, fresh.shortPatience, steps);
    EXPECT_EQ(schemaOf(*temp.rawConnection()), schemaOf(*made.connection))
        << "a released step is never edited: write the next one";
}

TEST_P(OlderStore, IsBroughtForwardWithEveryRow)
{
    const auto store = temp.open(Opening::existing);
    must(store->read([](Reading& reading) {
        EXPECT_EQ(schemaVersion(reading.connection()), newestVersion(builtInSteps()));
        EXPECT_FALSE(Statement(reading.connection(), dialect::findBrokenReferences).next());
        EXPECT_EQ(practice(reading)->name, "Quay Lane Physiotherapy");
        EXPECT_EQ(practitioners(reading).at(0).name, "Ruta Vennel");
        const auto agnes = patientByReference(reading, "1001");
        ASSERT_TRUE(agnes);
        EXPECT_EQ(agnes->name, "Agnes Thorley");
        EXPECT_EQ(agnes->note, "Hears less on the left.\nPrefers the morning.");
        const auto courses = coursesOf(reading, *agnes->id);
        ASSERT_THAT(courses, testing::SizeIs(1));
        const auto plans = plansOf(reading, *courses[0].id);
        ASSERT_THAT(plans, testing::SizeIs(1));
        EXPECT_EQ(plans[0].issuedByName, "Ruta Vennel");
        Stimulator unit = tests::aFullUnit();
        unit.id = plans[0].stimulator.id;
        // Each dump carries the plan on: it was issued before step 6 added these.
        const Stimulator plain;
        unit.cycleStart = plain.cycleStart;
        unit.usageCounter = plain.usageCounter;
        unit.memories = plain.memories;
        unit.mostOutput = plain.mostOutput;
        unit.ownWords = plain.ownWords;
        EXPECT_EQ(plans[0].stimulator, unit);
        ASSERT_THAT(plans[0].blocks, testing::SizeIs(1));
        EXPECT_THAT(plans[0].blocks[0].sites, testing::ElementsAre(tests::aFullSite(unit)));
        const auto draft = draftOf(reading, *courses[0].id);
        ASSERT_TRUE(draft);
        ASSERT_THAT(draft->blocks, testing::SizeIs(1));
        EXPECT_EQ(draft->blocks[0].origin, originInTheDump());
        EXPECT_TRUE(unsavedDraftOf(reading, *courses[0].id));
        expectInTheCaseload(reading, courses[0]);
        EXPECT_EQ(numberFrom(reading.connection(), "SELECT count(*) FROM kept_form"), 1);
        // Seven as they were, and the seal of the plan.
        EXPECT_EQ(numberFrom(reading.connection(), "SELECT count(*) FROM change_record"), 8);
        EXPECT_THAT(verify(reading), testing::IsEmpty());
    }));
}

TEST_P(OlderStore, KeepsTheRowsOfEveryTableThatItHad)
{
    std::map<std::string, std::int64_t> before;
    {
        const auto raw = temp.rawConnection();
        Statement tables(*raw, "SELECT name FROM sqlite_schema WHERE type = 'table' "
                               "AND name NOT LIKE 'sqlite_%'");
        while (tables.next()) {
            const std::string table = tables.takeText();
            before[table] = *numberFrom(*raw, "SELECT count(*) FROM " + table);
            // A plan's lengths are copied when it is issued; this one was issued under schema 1.
            EXPECT_TRUE(before[table] > 0 || table == "plan_segment_length")
                << table << " has no row in this dump";
        }
    }
    before.erase("change_record"); // grows by the seals of plans
    const auto store = temp.open(Opening::existing);
    must(store->read([&](Reading& reading) {
        for (const auto& [table, rows] : before) {
            EXPECT_EQ(numberFrom(reading.connection(), "SELECT count(*) FROM " + table), rows)
                << table;
        }
    }));
}

INSTANTIATE_TEST_SUITE_P(EverySchema, OlderStore,
                         testing::Range(1, newestVersion(builtInSteps()) + 1));

} // namespace
} // namespace quadrille::db
