// SPDX-License-Identifier: GPL-3.0-or-later
// The disk fails at each operation of a save in turn: the store stays whole, and what it said was
// saved is there.
#include "tests/crash/faulty_disk.h"
#include "tests/support/records.h"

#include "db/backup.h"
#include "db/verification.h"

#include <QDir>
#include <QFile>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::tests
{
namespace
{

class WriteError : public testing::TestWithParam<bool>
{
protected:
    /// Saves over a disk that fails from its n-th operation on; whether that was said to be saved.
    bool save(int operation)
    {
        const auto store = temp.open(db::Opening::existing);
        disk.failFrom(operation, GetParam());
        const auto saved = store->write(author(), "add patient", [&](db::Writing& writing) {
            Patient patient = aPatient("n" + std::to_string(operation));
            patient.note = std::string(20000, 'n'); // over several pages
            return db::addPatient(writing, patient);
        });
        if (!saved) {
            EXPECT_EQ(saved.error().code, ErrorCode::diskFault);
        }
        return saved.has_value();
    }

    FaultyDisk disk;
    TempStore temp;
};

TEST_P(WriteError, LeavesTheStoreWholeWhereverItStrikes)
{
    aPracticeWithCourse(*temp.open());
    bool struck = true;
    int refusals = 0;
    for (int operation = 0; struck; ++operation) {
        ASSERT_LT(operation, 500);
        const bool saved = save(operation);
        struck = disk.hasFailed();
        refusals += saved ? 0 : 1;
        disk.work();
        const auto store = temp.open(db::Opening::existing);
        must(store->read([&](db::Reading& reading) {
            EXPECT_THAT(db::verify(reading), testing::IsEmpty()) << operation;
            EXPECT_TRUE(db::patientByReference(reading, "1001")) << operation;
            if (saved) {
                EXPECT_TRUE(db::patientByReference(reading, "n" + std::to_string(operation)));
            }
        }));
    }
    EXPECT_GT(refusals, 3) << "the disk never failed inside a save";
}

TEST_P(WriteError, LeavesNoHalfABackup)
{
    aPracticeWithCourse(*temp.open());
    const QString copy = temp.folder() + QStringLiteral("/copy.quadrille");
    int refusals = 0;
    bool hasFailed = true;
    for (int operation = 0; hasFailed; ++operation) {
        disk.failFrom(operation, GetParam());
        const auto written = db::writeBackup(temp.file(), copy, std::nullopt);
        hasFailed = disk.hasFailed();
        disk.work();
        if (hasFailed && !written) {
            ++refusals;
            EXPECT_EQ(codeOf(written), ErrorCode::diskFault);
            const QStringList left = QDir(temp.folder()).entryList({QStringLiteral("copy*")});
            ASSERT_TRUE(left.isEmpty()) << left.join(QLatin1Char(' ')).toStdString();
        } else if (written) {
            QFile::remove(copy); // an operation whose fault the database overcame
        }
    }
    EXPECT_GT(refusals, 3) << "the disk never failed inside a backup";
    must(db::writeBackup(temp.file(), copy, std::nullopt));
}

INSTANTIATE_TEST_SUITE_P(CleanAndTorn, WriteError, testing::Bool());

} // namespace
} // namespace quadrille::tests
