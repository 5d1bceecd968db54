// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/ordinary_user.h"
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/migrations.h"
#include "db/people.h"
#include "db/sql.h"
#include "db/store.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <cstdio>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::becomeAnOrdinaryUser;
using tests::codeOf;
using tests::must;

class OpeningAStore : public testing::Test
{
protected:
    QByteArray bytes() const
    {
        QFile file(temp.file());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    void writeBytes(const QByteArray& content) const
    {
        QFile file(temp.file());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(content), content.size());
    }
    QStringList filesInFolder() const
    {
        return QDir(temp.folder()).entryList(QDir::Files | QDir::Hidden);
    }
    void makeStoreWithPatients(int count) const
    {
        const auto store = temp.open();
        must(store->write(author(), "add patients", [&](Writing& writing) {
            for (int number = 0; number < count; ++number) {
                addPatient(writing, tests::aPatient(std::to_string(1001 + number)));
            }
        }));
    }
    /// Refused for this reason by every way of opening, with the file as it was and nothing new
    /// beside it.
    void expectRefused(ErrorCode code) const
    {
        const QByteArray before = bytes();
        const QStringList files = filesInFolder();
        for (const Opening opening :
             {Opening::existing, Opening::createIfMissing, Opening::readOnly}) {
            const auto opened = temp.tryToOpen(opening);
            ASSERT_EQ(codeOf(opened), code);
            EXPECT_EQ(opened.error().subject, temp.file().toStdString());
            EXPECT_EQ(bytes(), before);
            EXPECT_EQ(filesInFolder(), files);
        }
    }

    tests::TempStore temp;
};

TEST_F(OpeningAStore, AMissingFileIsMadeOnlyWhereThatIsWanted)
{
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::existing)), ErrorCode::cannotOpen);
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::readOnly)), ErrorCode::cannotOpen);
    EXPECT_THAT(filesInFolder(), testing::IsEmpty());
    EXPECT_TRUE(temp.open()->isWritable());
    EXPECT_TRUE(QFile::exists(temp.file()));
    EXPECT_TRUE(temp.open(Opening::existing)->isWritable());
}

TEST_F(OpeningAStore, ANewFileIsForItsOwnerOnlyWhateverTheUmask)
{
    const mode_t before = umask(0);
    const auto store = temp.open();
    must(store->write(author(), "add patient",
                      [](Writing& writing) { return addPatient(writing, tests::aPatient()); }));
    umask(before);
    ASSERT_THAT(filesInFolder(), testing::Contains(QStringLiteral("practice.quadrille")));
    for (const QString& name : filesInFolder()) {
        struct stat status {
        };
        const QByteArray path = QDir(temp.folder()).filePath(name).toLocal8Bit();
        ASSERT_EQ(stat(path.constData(), &status), 0);
        EXPECT_EQ(status.st_mode & 0777U, 0600U) << name.toStdString();
    }
}

TEST_F(OpeningAStore, AFileInNoFolderCannotBeMade)
{
    const auto opened = Store::open(temp.folder() + QStringLiteral("/none/here.quadrille"),
                                    Opening::createIfMissing, temp.clock);
    EXPECT_EQ(codeOf(opened), ErrorCode::cannotWrite);
}

TEST_F(OpeningAStore, AFolderIsNoFile)
{
    const auto opened = Store::open(temp.folder(), Opening::createIfMissing, temp.clock);
    EXPECT_EQ(codeOf(opened), ErrorCode::cannotOpen);
}

TEST_F(OpeningAStore, AnEmptyFileIsMadeAStoreOnlyWhereThatIsWanted)
{
    writeBytes({});
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::existing)), ErrorCode::notAStore);
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::readOnly)), ErrorCode::notAStore);
    EXPECT_EQ(QFileInfo(temp.file()).size(), 0);
    temp.open();
    EXPECT_TRUE(temp.open(Opening::existing)->isWritable());
}

TEST_F(OpeningAStore, GarbageIsNoStore)
{
    writeBytes(QByteArray("Dear diary, today the left knee ").repeated(500));
    expectRefused(ErrorCode::notAStore);
    writeBytes("x");
    expectRefused(ErrorCode::notAStore);
}

TEST_F(OpeningAStore, ATruncatedFileIsDamagedAndWithoutItsHeadNoStoreAnyMore)
{
    makeStoreWithPatients(200);
    writeBytes(bytes().left(bytes().size() / 2));
    expectRefused(ErrorCode::storeDamaged);
    writeBytes(bytes().left(60)); // inside the header
    expectRefused(ErrorCode::notAStore);
}

TEST_F(OpeningAStore, SomebodyElsesDatabaseIsNoStore)
{
    {
        const Connection foreign(temp.file(), Access::readWrite, temp.shortPatience);
        run(foreign, "CREATE TABLE recipe (name TEXT)");
        run(foreign, "PRAGMA user_version = 1");
    }
    expectRefused(ErrorCode::notAStore);
}

TEST_F(OpeningAStore, AFileFromANewerProgramIsRefusedUntouched)
{
    makeStoreWithPatients(3);
    const int newest = newestVersion(builtInSteps());
    {
        const auto raw = temp.rawConnection();
        run(*raw, dialect::setSchemaVersion(newest + 1));
    }
    expectRefused(ErrorCode::newerStore);
    const auto opened = temp.tryToOpen(Opening::existing);
    EXPECT_THAT(opened.error().figures, testing::ElementsAre(countOf(newest + 1), countOf(newest)));
}

TEST_F(OpeningAStore, AFileFromANewerProgramThatIsRunningIsRefusedToo)
{
    makeStoreWithPatients(3);
    const auto raw = temp.rawConnection();
    run(*raw, dialect::setSchemaVersion(newestVersion(builtInSteps()) + 1)); // in the log only
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::existing)), ErrorCode::newerStore);
}

TEST_F(OpeningAStore, OpeningToReadWritesNothing)
{
    makeStoreWithPatients(1);
    const QByteArray before = bytes();
    {
        const auto store = temp.open(Opening::readOnly);
        EXPECT_FALSE(store->isWritable());
        EXPECT_TRUE(must(store->read(
            [](Reading& reading) { return patientByReference(reading, "1001").has_value(); })));
        const auto done = store->write(author(), "add patient", [](Writing& writing) {
            return addPatient(writing, tests::aPatient("1002"));
        });
        ASSERT_EQ(codeOf(done), ErrorCode::readOnly);
        EXPECT_EQ(done.error().subject, temp.file().toStdString());
    }
    EXPECT_EQ(bytes(), before);
}

TEST_F(OpeningAStore, AReaderBesideAWriterSeesWhatWasSaved)
{
    const auto writer = temp.open();
    const auto reader = temp.open(Opening::readOnly);
    must(writer->write(author(), "add patient",
                       [](Writing& writing) { return addPatient(writing, tests::aPatient()); }));
    EXPECT_TRUE(must(reader->read(
        [](Reading& reading) { return patientByReference(reading, "1001").has_value(); })));
}

TEST_F(OpeningAStore, AFileThatAnotherProgramHoldsIsLocked)
{
    makeStoreWithPatients(1);
    const auto holder = temp.rawConnection();
    run(*holder, "PRAGMA locking_mode = EXCLUSIVE");
    const Transaction held(*holder, dialect::beginWriting);
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::existing)), ErrorCode::locked);
}

enum Outcome { asExpected = 0, notAsExpected = 1, noOrdinaryUser = 2 };

/// Opens a store as an ordinary user and tells whether it can be read and not written.
[[noreturn]] void openWithoutRights(const QString& file, const Clock& clock)
{
    if (!becomeAnOrdinaryUser()) {
        std::_Exit(noOrdinaryUser);
    }
    const auto opened = Store::open(file, Opening::existing, clock);
    if (!opened) {
        std::fprintf(stderr, "not opened: %d %s\n", static_cast<int>(opened.error().code),
                     opened.error().detail.c_str());
        std::_Exit(notAsExpected);
    }
    const auto found = (*opened)->read(
        [](Reading& reading) { return patientByReference(reading, "1001").has_value(); });
    const bool readable = found && *found;
    std::_Exit(readable && !(*opened)->isWritable() ? asExpected : notAsExpected);
}

TEST_F(OpeningAStore, AFileThatCannotBeWrittenIsOpenedToRead)
{
    makeStoreWithPatients(1);
    ASSERT_EQ(chmod(temp.folder().toLocal8Bit().constData(), 0777), 0);
    ASSERT_EQ(chmod(temp.file().toLocal8Bit().constData(), 0444), 0);
    EXPECT_EXIT(openWithoutRights(temp.file(), temp.clock), testing::ExitedWithCode(asExpected),
                "");
}

TEST_F(OpeningAStore, AFileInAFolderThatTakesNoFilesIsOpenedToRead)
{
    makeStoreWithPatients(1);
    ASSERT_EQ(chmod(temp.file().toLocal8Bit().constData(), 0666), 0);
    ASSERT_EQ(chmod(temp.folder().toLocal8Bit().constData(), 0555), 0);
    EXPECT_EXIT(openWithoutRights(temp.file(), temp.clock), testing::ExitedWithCode(asExpected),
                "");
    ASSERT_EQ(chmod(temp.folder().toLocal8Bit().constData(), 0700), 0);
}

} // namespace
} // namespace quadrille::db
