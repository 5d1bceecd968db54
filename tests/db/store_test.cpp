// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/failure.h"
#include "db/sql.h"
#include "db/store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <stdexcept>

namespace quadrille::db
{
namespace
{

using tests::aPatient;
using tests::author;
using tests::codeOf;
using tests::must;

class OpenStore : public testing::Test
{
protected:
    Result<PatientId> add(Store& to, const Patient& patient)
    {
        return to.write(author(), "add patient",
                        [&](Writing& writing) { return addPatient(writing, patient); });
    }
    std::int64_t patients(Store& in)
    {
        return *must(in.read([](Reading& reading) {
            return numberFrom(reading.connection(), "SELECT count(*) FROM patient");
        }));
    }
    std::int64_t changes(Store& in)
    {
        return *must(in.read([](Reading& reading) {
            return numberFrom(reading.connection(), "SELECT count(*) FROM change_record");
        }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
};

TEST_F(OpenStore, AFailureUndoesTheWholeActAndComesBack)
{
    const auto done = store->write(author(), "add two", [](Writing& writing) {
        addPatient(writing, aPatient("1001"));
        throw Failure({.code = ErrorCode::refused, .subject = "the second", .detail = "why"});
    });
    ASSERT_EQ(codeOf(done), ErrorCode::refused);
    EXPECT_EQ(done.error().subject, "the second");
    EXPECT_EQ(patients(*store), 0);
    EXPECT_EQ(changes(*store), 0);
}

TEST_F(OpenStore, AnyOtherExceptionUndoesTheActToo)
{
    const auto done = store->write(author(), "add", [](Writing& writing) {
        addPatient(writing, aPatient("1001"));
        throw std::runtime_error("out of luck");
    });
    ASSERT_EQ(codeOf(done), ErrorCode::storeFailed);
    EXPECT_EQ(done.error().detail, "out of luck");
    EXPECT_EQ(patients(*store), 0);
    must(add(*store, aPatient())); // the store goes on
}

TEST_F(OpenStore, TwoOnOneFileSeeEachOthersChanges)
{
    const auto other = temp.open(Opening::existing);
    must(add(*store, aPatient("1001")));
    EXPECT_EQ(patients(*other), 1);
    must(add(*other, aPatient("1002")));
    EXPECT_EQ(patients(*store), 2);
}

TEST_F(OpenStore, AReaderKeepsOneViewWhileAnotherWrites)
{
    const auto other = temp.open(Opening::existing);
    must(store->read([&](Reading& reading) {
        const char* count = "SELECT count(*) FROM patient";
        EXPECT_EQ(numberFrom(reading.connection(), count), 0);
        must(add(*other, aPatient()));
        EXPECT_EQ(numberFrom(reading.connection(), count), 0);
    }));
    EXPECT_EQ(patients(*store), 1);
}

TEST_F(OpenStore, AWriterThatMeetsAnotherIsToldThatTheFileIsLocked)
{
    const auto other = temp.rawConnection();
    const Transaction held(*other, dialect::beginWriting);
    EXPECT_EQ(codeOf(add(*store, aPatient())), ErrorCode::locked);
    EXPECT_EQ(patients(*store), 0); // reading goes on
}

TEST_F(OpenStore, AFullDiskUndoesTheChangeAndSaysSo)
{
    must(add(*store, aPatient()));
    Patient large = aPatient("1002");
    large.note = std::string(1'000'000, 'x');
    const auto done = store->write(author(), "add patient", [&](Writing& writing) {
        run(writing.connection(), "PRAGMA max_page_count = 1"); // as large as it is now
        return addPatient(writing, large);
    });
    EXPECT_EQ(codeOf(done), ErrorCode::diskFull);
    EXPECT_EQ(patients(*store), 1);
    EXPECT_EQ(changes(*store), 1);
}

TEST_F(OpenStore, WhatWasSavedIsThereAfterOpeningAgain)
{
    Patient agnes = aPatient();
    agnes.id = must(add(*store, agnes));
    store.reset();
    const auto again = temp.open(Opening::existing);
    EXPECT_EQ(must(again->read([&](Reading& reading) { return patient(reading, *agnes.id); })),
              agnes);
    EXPECT_EQ(again->file(), temp.file());
    EXPECT_TRUE(again->isWritable());
}

TEST_F(OpenStore, EnforcesForeignKeysAndWaitsForTheDisk)
{
    must(store->read([](Reading& reading) {
        EXPECT_EQ(numberFrom(reading.connection(), "PRAGMA foreign_keys"), 1);
        EXPECT_EQ(numberFrom(reading.connection(), "PRAGMA synchronous"), 2); // FULL
        Statement mode(reading.connection(), "PRAGMA journal_mode");
        ASSERT_TRUE(mode.next());
        EXPECT_EQ(mode.takeText(), "wal");
    }));
}

} // namespace
} // namespace quadrille::db
