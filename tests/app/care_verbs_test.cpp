// SPDX-License-Identifier: GPL-3.0-or-later
// The commands that look after a practice file, run as the program runs them.
#include "app/command_line/care_verbs.h"
#include "app/command_line/demo_verb.h"
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/backup.h"
#include "db/diary.h"
#include "db/loans.h"

#include <QFile>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::HasSubstr;

namespace
{

class CareVerbs : public testing::Test
{
protected:
    CareVerbs()
    {
        const auto store = temp.open();
        ids.emplace(aPracticeWithCourse(*store));
        anIssuedPlan(*store, *ids);
    }
    using Run = int (*)(const QStringList&, const CommandContext&);
    int run(Run verb, const QString& line)
    {
        out.clear();
        err.clear();
        QTextStream outStream(&out);
        QTextStream errStream(&err);
        QString filled = line;
        filled.replace(QStringLiteral("$F"), temp.file());
        filled.replace(QStringLiteral("$D"), temp.folder());
        return verb(filled.split(QLatin1Char(' '), Qt::SkipEmptyParts),
                    CommandContext{temp.clock, outStream, errStream});
    }
    QString at(const char* name) const
    {
        return temp.folder() + QLatin1Char('/') + QLatin1String(name);
    }
    static void write(const QString& path, const QByteArray& bytes)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        EXPECT_EQ(file.write(bytes), bytes.size());
    }

    TempStore temp;
    std::optional<Practiced> ids;
    QString out;
    QString err;
};

TEST_F(CareVerbs, TellWhatTheyDoAndWhatTheyNeed)
{
    for (const Run verb : {verifyVerb, backupVerb, restoreVerb, anonymiseVerb, eraseVerb}) {
        EXPECT_EQ(run(verb, QStringLiteral("--help")), exit_code::done);
        EXPECT_THAT(out.toStdString(), testing::ContainsRegex("^Usage: quadrille [a-z]+ "));
        EXPECT_THAT(out.toStdString(), HasSubstr("--store"));
        EXPECT_EQ(run(verb, QString()), exit_code::usage);
        EXPECT_THAT(err.toStdString(), HasSubstr("--store is needed"));
        EXPECT_EQ(run(verb, QStringLiteral("--nonsense")), exit_code::usage);
        EXPECT_THAT(err.toStdString(), HasSubstr("--nonsense is no option of this command"));
        EXPECT_THAT(err.toStdString(), testing::ContainsRegex("quadrille [a-z]+ --help"));
        EXPECT_EQ(run(verb, QStringLiteral("-q")), exit_code::usage);
        EXPECT_THAT(err.toStdString(), testing::StartsWith("-q is no option"));
        EXPECT_EQ(run(verb, QStringLiteral("--store")), exit_code::usage);
        EXPECT_THAT(err.toStdString(), testing::ContainsRegex("--store.*quadrille [a-z]+ --help"));
    }
}

TEST_F(CareVerbs, VerifyFindsNothingOrSaysWhatAndWhere)
{
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $F")), exit_code::done);
    EXPECT_THAT(out.toStdString(), HasSubstr("Nothing is wrong"));
    {
        const auto raw = temp.rawConnection();
        db::run(*raw, "DROP TRIGGER plan_update");
        db::run(*raw, "UPDATE plan SET reason = 'another'");
    }
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $F")), exit_code::badInput);
    EXPECT_THAT(out.toStdString(), HasSubstr("The structure was changed: trigger plan_update"));
    EXPECT_THAT(out.toStdString(), HasSubstr("An issued plan was changed: plan 1"));
    EXPECT_THAT(err.toStdString(), HasSubstr("restore a backup"));
}

TEST_F(CareVerbs, VerifyNamesTheCopyThatCouldBeRestored)
{
    must(db::copyOnceADay(temp.file(), db::usualCopyFolder(temp.file()), temp.clock));
    QFile file(temp.file());
    ASSERT_TRUE(file.resize(file.size() / 2));
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $F")), exit_code::badInput);
    EXPECT_THAT(err.toStdString(), HasSubstr("damaged"));
    EXPECT_THAT(err.toStdString(), HasSubstr("copy-20260312T104200Z.quadrille"));
    EXPECT_THAT(err.toStdString(), HasSubstr("--force"));
    write(temp.file(), "just a text, longer than nothing");
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $F")), exit_code::badInput);
    EXPECT_THAT(err.toStdString(), HasSubstr("is not a practice file"));
}

TEST_F(CareVerbs, BackupAndRestoreBringEveryTableBack)
{
    const std::string rows = everyRow(temp.file());
    EXPECT_EQ(run(backupVerb, QStringLiteral("--store $F --out $D/b")), exit_code::done)
        << err.toStdString();
    EXPECT_EQ(run(backupVerb, QStringLiteral("--store $F --out $D/b")), exit_code::badInput);
    EXPECT_EQ(run(restoreVerb, QStringLiteral("$D/b --store $D/new.quadrille")), exit_code::done);
    EXPECT_EQ(everyRow(at("new.quadrille")), rows);
    must(temp.open()->write(author(), "add patient", [](db::Writing& writing) {
        return db::addPatient(writing, aPatient("1002"));
    }));
    EXPECT_EQ(run(restoreVerb, QStringLiteral("$D/b --store $F")), exit_code::badInput);
    EXPECT_THAT(err.toStdString(), HasSubstr("--force"));
    EXPECT_EQ(run(restoreVerb, QStringLiteral("$D/b --store $F --force")), exit_code::done);
    EXPECT_THAT(out.toStdString(), HasSubstr("before-restore"));
    EXPECT_EQ(everyRow(temp.file()), rows);
}

TEST_F(CareVerbs, APassphraseIsReadFromTheFirstLineOfAFile)
{
    write(at("words"), "four quiet words\nanother line\n");
    write(at("wrong"), "four loud words\n");
    write(at("none"), "\n");
    EXPECT_EQ(run(backupVerb, QStringLiteral("--store $F --out $D/b --passphrase-file $D/none")),
              exit_code::badInput);
    EXPECT_EQ(run(backupVerb, QStringLiteral("--store $F --out $D/b --passphrase-file $D/words")),
              exit_code::done);
    EXPECT_EQ(run(restoreVerb, QStringLiteral("$D/b --store $D/n --passphrase-file $D/wrong")),
              exit_code::badInput);
    EXPECT_THAT(err.toStdString(), HasSubstr("The passphrase does not open"));
    EXPECT_FALSE(QFile::exists(at("n")));
    EXPECT_EQ(run(restoreVerb, QStringLiteral("$D/b --store $D/n --passphrase-file $D/words")),
              exit_code::done);
    EXPECT_EQ(everyRow(at("n")), everyRow(temp.file()));
}

TEST_F(CareVerbs, EraseAsksForTheReferenceTwiceAndListsCopies)
{
    must(db::copyOnceADay(temp.file(), db::usualCopyFolder(temp.file()), temp.clock));
    const auto erase = [&](const char* confirm, const char* ground, const char* by) {
        out.clear();
        err.clear();
        QTextStream outStream(&out);
        QTextStream errStream(&err);
        return eraseVerb({QStringLiteral("--store"), temp.file(), QStringLiteral("--patient"),
                          QStringLiteral("1001"), QStringLiteral("--confirm"),
                          QLatin1String(confirm), QStringLiteral("--ground"), QLatin1String(ground),
                          QStringLiteral("--by"), QLatin1String(by)},
                         CommandContext{temp.clock, outStream, errStream});
    };
    EXPECT_EQ(erase("1002", "request", "Ruta Vennel"), exit_code::usage);
    EXPECT_EQ(erase("1001", "because", "Ruta Vennel"), exit_code::usage);
    EXPECT_EQ(erase("1001", "request", "Nobody"), exit_code::badInput);
    EXPECT_EQ(err, QStringLiteral("No practitioner is called Nobody in %1.\n").arg(temp.file()));
    EXPECT_THAT(everyRow(temp.file()), HasSubstr("Agnes Thorley"));
    EXPECT_EQ(erase("1001", "request", "Ruta Vennel"), exit_code::done) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("copy-20260312T104200Z.quadrille"));
    EXPECT_THAT(everyRow(temp.file()), testing::Not(HasSubstr("Agnes Thorley")));
    EXPECT_EQ(erase("1001", "request", "Ruta Vennel"), exit_code::badInput);
    EXPECT_EQ(err, QStringLiteral("There is no patient 1001 in %1.\n").arg(temp.file()));
}

TEST_F(CareVerbs, EraseNamesTheUnitsThatHaveToComeBackFirst)
{
    must(temp.open()->write(author(), "lend a unit", [&](db::Writing& writing) {
        LoanUnit unit;
        unit.stimulator = ids->stimulator;
        unit.inventoryNumber = "U-03";
        Loan loan;
        loan.unit = db::addLoanUnit(writing, unit);
        loan.course = ids->course;
        loan.lentOn = day(2026, 2, 9);
        db::lend(writing, loan);
    }));
    out.clear();
    err.clear();
    QTextStream outStream(&out);
    QTextStream errStream(&err);
    EXPECT_EQ(
        eraseVerb({QStringLiteral("--store"), temp.file(), QStringLiteral("--patient"),
                   QStringLiteral("1001"), QStringLiteral("--confirm"), QStringLiteral("1001"),
                   QStringLiteral("--ground"), QStringLiteral("request"), QStringLiteral("--by"),
                   QStringLiteral("Ruta Vennel")},
                  CommandContext{temp.clock, outStream, errStream}),
        exit_code::badInput);
    EXPECT_EQ(err, QStringLiteral("Not erased: what is lent to this person has to be taken back "
                                  "first (U-03).\n"));
    EXPECT_THAT(everyRow(temp.file()), HasSubstr("Agnes Thorley"));
}

TEST_F(CareVerbs, AnonymiseWritesACopyThatVerifies)
{
    EXPECT_EQ(run(anonymiseVerb, QStringLiteral("--store $F --out $D/g")), exit_code::done);
    EXPECT_THAT(everyRow(at("g")), testing::Not(HasSubstr("Agnes")));
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $D/g")), exit_code::done)
        << out.toStdString();
}

TEST_F(CareVerbs, WhatCopiesAPracticeFileNamesTheOneThatIsNotThere)
{
    for (const Run verb : {anonymiseVerb, backupVerb}) {
        EXPECT_EQ(run(verb, QStringLiteral("--store $D/nosuch --out $D/g")), exit_code::badInput);
        EXPECT_THAT(err.toStdString(), HasSubstr(at("nosuch").toStdString()));
    }
}

TEST_F(CareVerbs, DemoSaysThatItsPlaceCannotBeWritten)
{
    EXPECT_EQ(run(demoVerb, QStringLiteral("$D/none/x.quadrille")), exit_code::badInput);
    EXPECT_THAT(err.toStdString(), HasSubstr("none/x.quadrille can’t be written"));
}

TEST_F(CareVerbs, DemoWritesALargePracticeThatVerifies)
{
    QTextStream outStream(&out);
    QTextStream errStream(&err);
    const QString file = at("large.quadrille");
    EXPECT_EQ(demoVerb({file, QStringLiteral("--patients"), QStringLiteral("60")},
                       {temp.clock, outStream, errStream}),
              exit_code::done)
        << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("60 patients and 3000 diary entries"));
    EXPECT_EQ(run(verifyVerb, QStringLiteral("--store $D/large.quadrille")), exit_code::done)
        << out.toStdString();
    const auto store = must(db::Store::open(file, db::Opening::existing, temp.clock));
    must(store->read([](db::Reading& reading) {
        EXPECT_EQ(db::numberFrom(reading.connection(),
                                 "SELECT count(*) FROM course WHERE end_date IS NULL"),
                  2);
        EXPECT_EQ(
            db::diaryEntriesOf(reading, CourseId(1), day(2025, 1, 1), day(2026, 12, 31)).size(),
            50U);
    }));
    for (const char* wrong : {"0", "many", "1000000"}) {
        EXPECT_EQ(demoVerb({at("x"), QStringLiteral("--patients"), QLatin1String(wrong)},
                           {temp.clock, outStream, errStream}),
                  exit_code::usage);
    }
}

} // namespace
