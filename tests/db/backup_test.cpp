// SPDX-License-Identifier: GPL-3.0-or-later
// Copies, the way back, and what must never be lost on it.
#include "tests/db/second_names.h"
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/backup.h"
#include "db/migrations.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include <csignal>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

namespace quadrille::db
{
namespace
{

using testing::IsEmpty;
using testing::SizeIs;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::everyRow;
using tests::must;

/// A disk on which no file grows beyond so many bytes.
class MostFileSize
{
public:
    explicit MostFileSize(rlim_t bytes)
        : m_handler(std::signal(SIGXFSZ, SIG_IGN))
    {
        EXPECT_EQ(::getrlimit(RLIMIT_FSIZE, &m_usual), 0);
        rlimit less = m_usual;
        less.rlim_cur = bytes;
        EXPECT_EQ(::setrlimit(RLIMIT_FSIZE, &less), 0);
    }
    ~MostFileSize()
    {
        EXPECT_EQ(::setrlimit(RLIMIT_FSIZE, &m_usual), 0);
        std::signal(SIGXFSZ, m_handler);
    }
    MostFileSize(const MostFileSize&) = delete;
    MostFileSize& operator=(const MostFileSize&) = delete;

private:
    void (*m_handler)(int);
    rlimit m_usual = {};
};

class Backup : public testing::Test
{
protected:
    Backup() { tests::anIssuedPlan(*store, ids); }
    QString at(const char* name) const { return QDir(temp.folder()).filePath(QLatin1String(name)); }
    void addPatientCalled(const std::string& reference)
    {
        must(store->write(author(), "add patient", [&](Writing& writing) {
            return addPatient(writing, tests::aPatient(reference));
        }));
    }
    static QByteArray bytesOf(const QString& path)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
        return file.readAll();
    }
    static void write(const QString& path, const QByteArray& bytes)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        EXPECT_EQ(file.write(bytes), bytes.size());
    }
    /// Everything in the folder, to see that a refusal leaves no trace.
    QStringList files() const { return QDir(temp.folder()).entryList(QDir::Files, QDir::Name); }
    Result<Restored> restore(const QString& from, bool force = false,
                             const std::optional<Passphrase>& passphrase = std::nullopt)
    {
        return restoreBackup(from, temp.file(), passphrase, force, temp.clock);
    }
    static Passphrase words(const std::string& text) { return {text, leastSealCost()}; }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    const QString copy = at("copy.quadrille");
};

TEST_F(Backup, HoldsEveryRowOfEveryTableWhileTheStoreIsInUse)
{
    must(store->read([&](Reading&) { // a reader in the middle of its work
        must(writeBackup(temp.file(), copy, std::nullopt));
    }));
    const std::string rows = everyRow(temp.file());
    EXPECT_THAT(rows, testing::HasSubstr("Agnes Thorley"));
    EXPECT_EQ(everyRow(copy), rows);
    EXPECT_EQ(QFile::permissions(copy) & (QFileDevice::ReadGroup | QFileDevice::ReadOther),
              QFileDevice::Permissions());
    EXPECT_FALSE(QFile::exists(copy + QStringLiteral("-wal"))); // one file, whole in itself
    EXPECT_THAT(files().filter(QStringLiteral(".part-")), IsEmpty());
}

TEST_F(Backup, NeverTakesANameThatIsTaken)
{
    write(copy, "mine");
    EXPECT_EQ(codeOf(writeBackup(temp.file(), copy, std::nullopt)), ErrorCode::cannotWrite);
    EXPECT_EQ(bytesOf(copy), QByteArray("mine"));
}

TEST_F(Backup, RestoredIntoAnEmptyPlaceIsTheStoreAgain)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    const QString place = at("again.quadrille");
    const auto restored = must(restoreBackup(copy, place, std::nullopt, false, temp.clock));
    EXPECT_TRUE(restored.copyAside.isEmpty());
    EXPECT_EQ(everyRow(place), rows);
    EXPECT_TRUE(must(Store::open(place, Opening::existing, temp.clock))->isWritable());
}

TEST_F(Backup, OverAStoreWithoutNewerChangesPutsThatAside)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    store.reset();
    const auto restored = must(restore(copy));
    EXPECT_EQ(everyRow(temp.file()), rows);
    EXPECT_EQ(everyRow(restored.copyAside), rows);
}

TEST_F(Backup, NeverGoesOverNewerChangesUnlessForced)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string older = everyRow(temp.file());
    addPatientCalled("1002");
    const std::string newer = everyRow(temp.file());
    store.reset();
    const QStringList before = files();
    EXPECT_EQ(codeOf(restore(copy)), ErrorCode::newerThanBackup);
    EXPECT_EQ(files(), before);
    EXPECT_EQ(everyRow(temp.file()), newer);
    const auto forced = must(restore(copy, true));
    EXPECT_EQ(everyRow(temp.file()), older);
    EXPECT_EQ(everyRow(forced.copyAside), newer);
}

TEST_F(Backup, AnotherPracticesStoreIsNotContainedEither)
{
    const tests::TempStore other;
    const auto their = other.open();
    for (int i = 0; i < 20; ++i) { // more changes than ours, but not these
        must(their->write(author(), "add patient", [&](Writing& writing) {
            return addPatient(writing, tests::aPatient(std::to_string(i)));
        }));
    }
    must(writeBackup(other.file(), copy, std::nullopt));
    store.reset();
    EXPECT_EQ(codeOf(restore(copy)), ErrorCode::newerThanBackup);
}

TEST_F(Backup, WaitsForNobodyWhoHasTheStoreOpen)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    must(store->read([&](Reading& reading) {
        EXPECT_TRUE(numberFrom(reading.connection(), "SELECT count(*) FROM patient"));
    }));
    const std::string rows = everyRow(temp.file());
    EXPECT_EQ(codeOf(restore(copy, true)), ErrorCode::locked);
    EXPECT_EQ(everyRow(temp.file()), rows);
}

TEST_F(Backup, RestoresOverADamagedStoreWhenForced)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    store.reset();
    const QByteArray whole = bytesOf(temp.file());
    write(temp.file(), whole.left(whole.size() / 3));
    EXPECT_EQ(codeOf(restore(copy)), ErrorCode::newerThanBackup); // can't be told
    const auto forced = must(restore(copy, true));
    EXPECT_EQ(everyRow(temp.file()), rows);
    EXPECT_EQ(bytesOf(forced.copyAside).size(), whole.size() / 3);
}

// Two names for one store would let two programs write it, each beside a log of its own.
TEST_F(Backup, ThatDoesNotGetIntoPlaceLeavesTheStoreOneNameOnly)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    store.reset();
    run(Connection(temp.file(), Access::readWrite, temp.shortPatience), dialect::keepNoLog);
    const QByteArray before = bytesOf(temp.file());
    // What belongs to the log can't be moved aside: the name there is taken.
    write(temp.file() + QStringLiteral("-shm"), "index");
    const QString taken =
        temp.file() + QStringLiteral(".before-restore.20260312T104200Z") + QStringLiteral("-shm");
    write(taken, "another's");
    const QStringList there = files();
    EXPECT_EQ(codeOf(restore(copy, true)), ErrorCode::cannotWrite);
    EXPECT_EQ(files(), there);
    EXPECT_EQ(bytesOf(temp.file()), before);
    ASSERT_TRUE(QFile::remove(taken));
    const Restored restored = must(restore(copy, true));
    EXPECT_EQ(bytesOf(restored.copyAside), before);
}

TEST_F(Backup, PutsACopyAsideWhereAFileHasOneNameOnly)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    store.reset();
    const tests::NoSecondNames stick;
    const Restored restored = must(restore(copy));
    EXPECT_EQ(everyRow(temp.file()), rows);
    EXPECT_EQ(everyRow(restored.copyAside), rows);
    EXPECT_EQ(QFile::permissions(restored.copyAside) &
                  (QFileDevice::ReadGroup | QFileDevice::ReadOther),
              QFileDevice::Permissions());
    EXPECT_THAT(files().filter(QStringLiteral(".part-")), IsEmpty());
}

TEST_F(Backup, LeavesNoTornCopyAsideWhenTheDiskIsFull)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    must(store->write(author(), "add patients", [](Writing& writing) {
        for (int i = 0; i < 30; ++i) {
            Patient patient = tests::aPatient("R-" + std::to_string(i));
            patient.note = std::string(100'000, 'x');
            addPatient(writing, patient);
        }
    }));
    store.reset();
    const QByteArray before = bytesOf(temp.file());
    const QStringList there = files();
    const tests::NoSecondNames stick;
    {
        const MostFileSize full(2'000'000); // room for the backup, not for the store once more
        EXPECT_THAT(codeOf(restore(copy, true)),
                    testing::AnyOf(ErrorCode::cannotWrite, ErrorCode::diskFull));
    }
    EXPECT_EQ(files(), there);
    EXPECT_EQ(bytesOf(temp.file()).size(), before.size());
    must(restore(copy, true));
}

TEST_F(Backup, ThatIsDamagedIsRefusedAndNothingIsTouched)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    store.reset();
    const QByteArray whole = bytesOf(copy);
    const QByteArray store_ = bytesOf(temp.file());
    QByteArray flipped = whole;
    const auto name = flipped.indexOf("Agnes Thorley");
    ASSERT_GE(name, 0);
    for (qsizetype i = whole.size() / 2; i < whole.size() / 2 + 4096; ++i) {
        flipped[i] = static_cast<char>(flipped[i] ^ 0x55);
    }
    for (const QByteArray& bad : {whole.left(whole.size() - 4096), whole.left(100),
                                  QByteArray("no store at all"), flipped, QByteArray()}) {
        write(copy, bad);
        EXPECT_EQ(codeOf(restore(copy, true)), ErrorCode::backupDamaged) << bad.size();
        EXPECT_EQ(bytesOf(temp.file()), store_);
    }
    EXPECT_THAT(files().filter(QStringLiteral(".part-")), IsEmpty());
    EXPECT_EQ(codeOf(restore(at("nowhere"), true)), ErrorCode::cannotRead);
}

TEST_F(Backup, UnderAPassphraseSaysNothingAndComesBackWithIt)
{
    must(writeBackup(temp.file(), copy, words("four quiet words")));
    EXPECT_TRUE(isSealed(copy));
    const QByteArray sealed = bytesOf(copy);
    EXPECT_FALSE(sealed.contains("Agnes"));
    EXPECT_FALSE(sealed.contains("SQLite format"));
    const std::string rows = everyRow(temp.file());
    store.reset();
    EXPECT_EQ(codeOf(restore(copy, true, words("five quiet words"))), ErrorCode::wrongPassphrase);
    EXPECT_EQ(codeOf(restore(copy, true)), ErrorCode::passphraseNeeded);
    EXPECT_EQ(everyRow(temp.file()), rows);
    must(restore(copy, false, words("four quiet words")));
    EXPECT_EQ(everyRow(temp.file()), rows);
}

TEST_F(Backup, FromANewerProgramIsRefused)
{
    must(writeBackup(temp.file(), copy, std::nullopt));
    {
        const Connection raw(copy, Access::readWrite, temp.shortPatience);
        run(raw, dialect::setSchemaVersion(newestVersion(builtInSteps()) + 1));
    }
    store.reset();
    EXPECT_EQ(codeOf(restore(copy, true)), ErrorCode::newerStore);
}

TEST_F(Backup, WithDatesThatContradictEachOtherIsRestoredAndSaysSo)
{
    // Entered so, and saved so: a course that starts before its patient is born.
    must(store->write(author(), "change course", [&](Writing& writing) {
        Course changed = course(writing, ids.course).value();
        changed.startDate = day(1926, 2, 9);
        changeCourse(writing, changed);
    }));
    must(writeBackup(temp.file(), copy, std::nullopt));
    const std::string rows = everyRow(temp.file());
    store.reset();
    const Restored restored = must(restore(copy));
    ASSERT_THAT(restored.remarks, SizeIs(1));
    EXPECT_EQ(restored.remarks[0].fault, Fault::date);
    EXPECT_EQ(everyRow(temp.file()), rows);
}

TEST_F(Backup, UnderAPassphraseLeavesNothingReadableInItsFolder)
{
    const QTemporaryDir stick;
    const QString sealed = stick.filePath(QStringLiteral("sealed"));
    must(writeBackup(temp.file(), sealed, words("four quiet words")));
    EXPECT_EQ(QDir(stick.path()).entryList(QDir::Files), QStringList{QStringLiteral("sealed")});
    EXPECT_FALSE(bytesOf(sealed).contains("Agnes"));
    EXPECT_THAT(files().filter(QStringLiteral(".part-")), IsEmpty());
}

class DailyCopies : public Backup
{
protected:
    std::optional<QString> copyOn(Date date)
    {
        temp.clock.set(Moment(date) + std::chrono::hours(9));
        return must(copyOnceADay(temp.file(), folder, temp.clock));
    }
    const QString folder = usualCopyFolder(temp.file());
};

TEST_F(DailyCopies, AreMadeOnceADayInAFolderForTheOwnerOnly)
{
    const auto first = copyOn(day(2026, 3, 12));
    ASSERT_TRUE(first);
    EXPECT_THAT(first->toStdString(),
                testing::EndsWith("practice.copy-20260312T090000Z.quadrille"));
    EXPECT_EQ(everyRow(*first), everyRow(temp.file()));
    EXPECT_EQ(QFileInfo(folder).permissions() & (QFileDevice::ReadGroup | QFileDevice::ExeGroup |
                                                 QFileDevice::ReadOther | QFileDevice::ExeOther),
              QFileDevice::Permissions());
    EXPECT_FALSE(copyOn(day(2026, 3, 12)));
    EXPECT_TRUE(copyOn(day(2026, 3, 13)));
    EXPECT_THAT(dailyCopiesOf(temp.file(), folder), SizeIs(2));
}

TEST_F(DailyCopies, LeaveOtherFilesInTheFolderAlone)
{
    ASSERT_TRUE(QDir().mkpath(folder));
    const QString other =
        QDir(folder).filePath(QStringLiteral("other.copy-20200101T000000Z.quadrille"));
    write(other, "theirs");
    for (int i = 0; i < 12; ++i) {
        copyOn(day(2026, 3, 2) + std::chrono::days(i)); // Monday of one week to Friday of the next
    }
    // Seven days; the end of the week before is one of them or its Sunday, 8 March.
    EXPECT_THAT(dailyCopiesOf(temp.file(), folder), SizeIs(7));
    EXPECT_TRUE(QFile::exists(other));
}

TEST_F(DailyCopies, AreKnownWhateverTheFileIsCalled)
{
    store.reset();
    const QString odd = at("practice [1] *.quadrille");
    ASSERT_TRUE(QFile::rename(temp.file(), odd));
    const auto copyAt = [&](Date date) {
        temp.clock.set(Moment(date) + std::chrono::hours(9));
        return must(copyOnceADay(odd, folder, temp.clock)).has_value();
    };
    EXPECT_TRUE(copyAt(day(2026, 3, 12)));
    EXPECT_FALSE(copyAt(day(2026, 3, 12)));
    EXPECT_TRUE(copyAt(day(2026, 3, 13)));
    EXPECT_THAT(dailyCopiesOf(odd, folder), SizeIs(2));
}

TEST_F(DailyCopies, SayWhyTheyCouldNotBeMade)
{
    write(folder, "a file where the folder should be");
    EXPECT_EQ(codeOf(copyOnceADay(temp.file(), folder, temp.clock)), ErrorCode::cannotWrite);
}

} // namespace
} // namespace quadrille::db
