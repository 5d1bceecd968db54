// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/failure.h"
#include "db/file_system.h"
#include "db/opening.h"
#include "db/verification.h"

#include <QFile>
#include <QFileInfo>

#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using tests::codeOf;

constexpr std::uint32_t nfs = 0x6969;       // statfs(2)
constexpr std::uint32_t cifs = 0xFF534D42;  // statfs(2)
constexpr std::uint32_t ext4 = 0xEF53;      // statfs(2)
constexpr std::uint32_t tmpfs = 0x01021994; // statfs(2)

ErrorCode codeOfOpening(const tests::TempStore& temp, Opening opening, std::uint32_t fileSystem)
{
    try {
        openFile(temp.file(), opening, temp.clock, temp.shortPatience, builtInSteps(),
                 [&](const QString&) { return fileSystem; });
    } catch (const Failure& failure) {
        return failure.error().code;
    }
    return ErrorCode::storeFailed;
}

TEST(NetworkShare, IsToldFromALocalDisk)
{
    EXPECT_EQ(networkShareName(nfs), "NFS");
    EXPECT_EQ(networkShareName(cifs), "CIFS");
    EXPECT_FALSE(networkShareName(ext4));
    EXPECT_FALSE(networkShareName(tmpfs));
    EXPECT_FALSE(networkShareName(std::nullopt));
    EXPECT_TRUE(systemFileSystem(QStringLiteral("/")));
    EXPECT_FALSE(systemFileSystem(QStringLiteral("/no/such/folder")));
}

TEST(NetworkShare, IsRefusedForWritingAndNothingIsMadeThere)
{
    const tests::TempStore temp;
    EXPECT_EQ(codeOfOpening(temp, Opening::createIfMissing, nfs), ErrorCode::onNetworkShare);
    EXPECT_FALSE(QFile::exists(temp.file()));
    temp.open();
    EXPECT_EQ(codeOfOpening(temp, Opening::existing, cifs), ErrorCode::onNetworkShare);
    EXPECT_NO_THROW(openFile(temp.file(), Opening::readOnly, temp.clock, temp.shortPatience,
                             builtInSteps(), [](const QString&) { return cifs; }));
}

TEST(PrivateFolder, IsForItsOwnerOnly)
{
    const tests::TempStore temp;
    const QString folder = temp.folder() + QStringLiteral("/a/b");
    EXPECT_TRUE(makePrivateFolder(folder));
    EXPECT_TRUE(makePrivateFolder(folder)); // it is there
    EXPECT_EQ(QFileInfo(folder).permissions() &
                  (QFileDevice::ReadGroup | QFileDevice::ExeGroup | QFileDevice::WriteGroup |
                   QFileDevice::ReadOther | QFileDevice::ExeOther | QFileDevice::WriteOther),
              QFileDevice::Permissions());
    QFile file(temp.folder() + QStringLiteral("/file"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_FALSE(makePrivateFolder(file.fileName()));
    EXPECT_FALSE(makePrivateFolder(file.fileName() + QStringLiteral("/under")));
}

/// Each kind of damage has its own answer, and nothing is made worse by looking.
class Damage : public testing::Test
{
protected:
    Damage()
    {
        const auto store = temp.open();
        tests::anIssuedPlan(*store, tests::aPracticeWithCourse(*store));
    }
    QByteArray bytes() const
    {
        QFile file(temp.file());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    void write(const QByteArray& content) const
    {
        QFile file(temp.file());
        EXPECT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        EXPECT_EQ(file.write(content), content.size());
    }
    tests::TempStore temp;
};

TEST_F(Damage, AMissingLogIsSeenByTheIndexThatStandsAlone)
{
    QByteArray lone;
    {
        const auto store = temp.open(Opening::existing);
        tests::must(store->write(tests::author(), "add", [](Writing& writing) {
            addPatient(writing, tests::aPatient("1002"));
        }));
        QFile index(temp.file() + QStringLiteral("-shm"));
        ASSERT_TRUE(index.open(QIODevice::ReadOnly));
        lone = index.readAll();
    }
    const QByteArray before = bytes();
    QFile index(temp.file() + QStringLiteral("-shm"));
    ASSERT_TRUE(index.open(QIODevice::WriteOnly));
    index.write(lone);
    index.close();
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::existing)), ErrorCode::logMissing);
    EXPECT_EQ(codeOf(temp.tryToOpen(Opening::readOnly)), ErrorCode::logMissing);
    EXPECT_EQ(bytes(), before);
    ASSERT_TRUE(index.remove());
    temp.open(Opening::existing);
}

TEST_F(Damage, FlippedBytesInAPageAreReportedAndLeftAsTheyAre)
{
    const QByteArray whole = bytes();
    int reported = 0;
    constexpr qsizetype page = 4096;
    for (qsizetype start = page; start + page <= whole.size(); start += 7 * page) {
        QByteArray flipped = whole;
        for (qsizetype i = start; i < start + 64; ++i) {
            flipped[i] = static_cast<char>(flipped[i] ^ 0xFF);
        }
        write(flipped);
        const auto store = temp.tryToOpen(Opening::readOnly);
        const auto found =
            store ? (*store)->read(verify) : Result<std::vector<Complaint>>(store.error());
        reported += !found || !found->empty() ? 1 : 0;
        EXPECT_TRUE(!found || !found->empty()) << "page " << start / page;
        EXPECT_EQ(bytes(), flipped);
    }
    EXPECT_GT(reported, 5);
}

} // namespace
} // namespace quadrille::db
