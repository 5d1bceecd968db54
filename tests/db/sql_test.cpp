// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/temp_store.h"

#include "db/failure.h"
#include "db/sql.h"

#include <QSqlDatabase>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

namespace quadrille::db
{
namespace
{

using tests::TempStore;

class Sql : public testing::Test
{
protected:
    Sql()
        : connection(temp.rawConnection())
    {
        run(*connection, "CREATE TABLE jar (id INTEGER PRIMARY KEY, label TEXT, weight INTEGER)");
    }
    TempStore temp;
    std::unique_ptr<Connection> connection;
};

TEST_F(Sql, GivesBackWhatWasBound)
{
    const std::int64_t most = std::numeric_limits<std::int64_t>::max();
    Statement(*connection, "INSERT INTO jar (label, weight) VALUES (?, ?)")
        .bind({std::string("größer"), most})
        .run();
    Statement row(*connection, "SELECT label, weight, NULL FROM jar");
    ASSERT_TRUE(row.next());
    EXPECT_EQ(row.takeText(), "größer");
    EXPECT_EQ(row.takeInteger(), most);
    EXPECT_EQ(row.takeOptionalText(), std::nullopt);
    EXPECT_FALSE(row.next());
}

TEST_F(Sql, EmptyTextIsNotAMissingValue)
{
    Statement(*connection, "INSERT INTO jar (label) VALUES (?)").bind({std::string()}).run();
    EXPECT_EQ(numberFrom(*connection, "SELECT count(*) FROM jar WHERE label = ''"), 1);
    Statement row(*connection, "SELECT label, weight FROM jar");
    ASSERT_TRUE(row.next());
    EXPECT_EQ(row.takeOptionalText(), std::string());
    EXPECT_EQ(row.takeOptionalInteger(), std::nullopt);
}

TEST_F(Sql, AMissingValueWhereOneMustBeIsDamage)
{
    run(*connection, "INSERT INTO jar (label) VALUES (NULL)");
    Statement row(*connection, "SELECT label FROM jar");
    ASSERT_TRUE(row.next());
    try {
        row.takeText();
        FAIL() << "a missing text was taken for one";
    } catch (const Failure& failure) {
        EXPECT_EQ(failure.error().code, ErrorCode::storeDamaged);
    }
}

TEST_F(Sql, SeveralStatementsInOneAreRefused)
{
    EXPECT_THROW(run(*connection, "DELETE FROM jar; DROP TABLE jar"), SqlError);
    EXPECT_EQ(numberFrom(*connection, "SELECT count(*) FROM jar"), 0);
}

TEST_F(Sql, AnErrorCarriesTheExtendedCodeAndTheStatementButNoValues)
{
    run(*connection, "CREATE UNIQUE INDEX jar_label ON jar (label)");
    Statement(*connection, "INSERT INTO jar (label) VALUES (?)").bind({std::string("plum")}).run();
    try {
        Statement(*connection, "INSERT INTO jar (label) VALUES (?)")
            .bind({std::string("plum")})
            .run();
        FAIL() << "the same label was taken twice";
    } catch (const SqlError& error) {
        EXPECT_EQ(error.code(), 2067); // SQLITE_CONSTRAINT_UNIQUE, sqlite.org/rescode.html
        EXPECT_EQ(error.statement(), "INSERT INTO jar (label) VALUES (?)");
        EXPECT_THAT(error.what(), testing::Not(testing::HasSubstr("plum")));
    }
}

TEST_F(Sql, ATransactionThatIsNotCommittedLeavesNothing)
{
    {
        Transaction transaction(*connection, dialect::beginWriting);
        run(*connection, "INSERT INTO jar (label) VALUES ('plum')");
        EXPECT_EQ(numberFrom(*connection, "SELECT count(*) FROM jar"), 1);
    }
    EXPECT_EQ(numberFrom(*connection, "SELECT count(*) FROM jar"), 0);
}

TEST_F(Sql, ACommittedTransactionStays)
{
    {
        Transaction transaction(*connection, dialect::beginWriting);
        run(*connection, "INSERT INTO jar (label) VALUES ('plum')");
        transaction.commit();
    }
    EXPECT_EQ(numberFrom(*connection, "SELECT count(*) FROM jar"), 1);
}

TEST_F(Sql, ConnectionsHaveNamesOfTheirOwnAndLeaveNoneBehind)
{
    const auto other = temp.rawConnection();
    EXPECT_NE(other->name(), connection->name());
    const QStringList before = QSqlDatabase::connectionNames();
    {
        const auto third = temp.rawConnection();
        EXPECT_EQ(QSqlDatabase::connectionNames().size(), before.size() + 1);
    }
    EXPECT_EQ(QSqlDatabase::connectionNames().size(), before.size());
}

TEST_F(Sql, AFileThatCannotBeOpenedThrowsAndLeavesNoConnection)
{
    const qsizetype before = QSqlDatabase::connectionNames().size();
    const QString missing = temp.folder() + QStringLiteral("/no/such/folder/file");
    EXPECT_THROW(Connection(missing, Access::readWrite, TempStore::shortPatience), SqlError);
    EXPECT_EQ(QSqlDatabase::connectionNames().size(), before);
}

} // namespace
} // namespace quadrille::db
