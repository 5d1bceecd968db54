// SPDX-License-Identifier: GPL-3.0-or-later
// The codes are those of sqlite.org, "Result and Error Codes".
#include "db/sql_errors.h"

#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

ErrorCode meaningOf(int code)
{
    return errorOf(SqlError(code, "some text", "SELECT 1")).code;
}

TEST(SqlErrors, EveryPrimaryCodeHasItsMeaning)
{
    EXPECT_EQ(meaningOf(5), ErrorCode::locked);        // SQLITE_BUSY
    EXPECT_EQ(meaningOf(6), ErrorCode::locked);        // SQLITE_LOCKED
    EXPECT_EQ(meaningOf(8), ErrorCode::readOnly);      // SQLITE_READONLY
    EXPECT_EQ(meaningOf(11), ErrorCode::storeDamaged); // SQLITE_CORRUPT
    EXPECT_EQ(meaningOf(13), ErrorCode::diskFull);     // SQLITE_FULL
    EXPECT_EQ(meaningOf(14), ErrorCode::cannotOpen);   // SQLITE_CANTOPEN
    EXPECT_EQ(meaningOf(26), ErrorCode::notAStore);    // SQLITE_NOTADB
    EXPECT_EQ(meaningOf(1), ErrorCode::storeFailed);   // SQLITE_ERROR
    EXPECT_EQ(meaningOf(10), ErrorCode::diskFault);    // SQLITE_IOERR
}

TEST(SqlErrors, ExtendedCodesKeepTheMeaningOfTheirPrimaryCode)
{
    EXPECT_EQ(meaningOf(261), ErrorCode::locked);       // SQLITE_BUSY_RECOVERY
    EXPECT_EQ(meaningOf(517), ErrorCode::locked);       // SQLITE_BUSY_SNAPSHOT
    EXPECT_EQ(meaningOf(776), ErrorCode::readOnly);     // SQLITE_READONLY_ROLLBACK
    EXPECT_EQ(meaningOf(1032), ErrorCode::readOnly);    // SQLITE_READONLY_DBMOVED
    EXPECT_EQ(meaningOf(1544), ErrorCode::readOnly);    // SQLITE_READONLY_DIRECTORY
    EXPECT_EQ(meaningOf(779), ErrorCode::storeDamaged); // SQLITE_CORRUPT_INDEX
}

TEST(SqlErrors, ConstraintsAreToldApart)
{
    EXPECT_EQ(meaningOf(275), ErrorCode::outOfRange);   // SQLITE_CONSTRAINT_CHECK
    EXPECT_EQ(meaningOf(787), ErrorCode::notFound);     // SQLITE_CONSTRAINT_FOREIGNKEY
    EXPECT_EQ(meaningOf(1555), ErrorCode::notUnique);   // SQLITE_CONSTRAINT_PRIMARYKEY
    EXPECT_EQ(meaningOf(1811), ErrorCode::refused);     // SQLITE_CONSTRAINT_TRIGGER
    EXPECT_EQ(meaningOf(2067), ErrorCode::notUnique);   // SQLITE_CONSTRAINT_UNIQUE
    EXPECT_EQ(meaningOf(1299), ErrorCode::storeFailed); // SQLITE_CONSTRAINT_NOTNULL
}

TEST(SqlErrors, ABoundThatIsBrokenNamesItsField)
{
    const Error error =
        errorOf(SqlError(275, "CHECK constraint failed: pulse_frequency", "INSERT"));
    EXPECT_EQ(error.field, Field::pulseFrequency);
    EXPECT_EQ(
        errorOf(SqlError(275, "CHECK constraint failed: of_one_plan_or_draft", "INSERT")).field,
        Field::none);
}

} // namespace
} // namespace quadrille::db
