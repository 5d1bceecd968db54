// SPDX-License-Identifier: GPL-3.0-or-later
// The inventory and its loans, through the repository and by plain SQL past it.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/history.h"
#include "db/loans.h"
#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

// sqlite.org/rescode.html
constexpr int checkFailed = 275;
constexpr int foreignKeyFailed = 787;
constexpr int raisedByTrigger = 1811;
constexpr int notUnique = 2067;

class Loans : public testing::Test
{
protected:
    Loans()
    {
        unit = {.stimulator = ids.stimulator,
                .inventoryNumber = "U-03",
                .serialNumber = "20417-B",
                .nextSafetyCheckOn = day(2026, 9, 1),
                .note = "The case has a crack."};
        unit.id = must(add(unit));
    }
    Result<LoanUnitId> add(const LoanUnit& added)
    {
        return store->write(author(), "add unit",
                            [&](Writing& writing) { return addLoanUnit(writing, added); });
    }
    Result<void> change(const LoanUnit& changed)
    {
        return store->write(author(), "change unit",
                            [&](Writing& writing) { changeLoanUnit(writing, changed); });
    }
    Loan loanOn(Date lentOn, std::optional<Date> dueOn = std::nullopt) const
    {
        Loan loan;
        loan.unit = unit.id;
        loan.course = ids.course;
        loan.lentOn = lentOn;
        loan.dueOn = dueOn;
        return loan;
    }
    Result<LoanId> lendIt(const Loan& loan)
    {
        return store->write(ruta, "lend a unit",
                            [&](Writing& writing) { return lend(writing, loan); });
    }
    Result<void> takeItBack(const Loan& loan, Date on)
    {
        return store->write(ruta, "take a unit back",
                            [&](Writing& writing) { takeBack(writing, loan, on); });
    }
    std::vector<InventoryRow> all()
    {
        return must(store->read([](Reading& reading) { return inventory(reading); }));
    }
    std::vector<InventoryRow> lent()
    {
        return must(
            store->read([&](Reading& reading) { return unitsLentTo(reading, ids.course); }));
    }
    std::vector<InventoryRow> loansOfIt()
    {
        return must(store->read([&](Reading& reading) { return loansOf(reading, *unit.id); }));
    }
    /// 0 when the database takes it.
    int codeOfSql(const std::string& sql)
    {
        const auto raw = temp.rawConnection();
        run(*raw, "PRAGMA foreign_keys = ON");
        const Transaction undone(*raw, dialect::beginWriting);
        try {
            run(*raw, sql);
        } catch (const SqlError& error) {
            return error.code();
        }
        return 0;
    }
    static std::string insertLoan(const std::string& values)
    {
        return "INSERT INTO loan (unit, course, lent_on, due_on, given_back_on, lent_by_name) "
               "VALUES (" +
               values + ", 'Ruta Vennel')";
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    const Author ruta{.practitioner = ids.practitioner, .name = "Ruta Vennel"};
    LoanUnit unit;
};

TEST_F(Loans, AUnitComesBackAsDescribed)
{
    ASSERT_THAT(all(), SizeIs(1));
    EXPECT_EQ(all().front().unit, unit);
    EXPECT_EQ(all().front().stimulatorName, "Two-channel unit A");
    EXPECT_FALSE(all().front().loan);
    unit.note = {};
    unit.nextSafetyCheckOn.reset();
    unit.serialNumber = {};
    must(change(unit));
    unit.version = 2;
    EXPECT_EQ(all().front().unit, unit);
    unit.version = 1;
    unit.note = "typed over an old version";
    EXPECT_EQ(codeOf(change(unit)), ErrorCode::changedElsewhere);
}

TEST_F(Loans, AnInventoryNumberIsGivenOnce)
{
    LoanUnit other = unit;
    const auto twice = add(other);
    ASSERT_EQ(codeOf(twice), ErrorCode::notUnique);
    EXPECT_EQ(twice.error().subject, "U-03");
    EXPECT_EQ(twice.error().field, quadrille::Field::inventoryNumber);
    for (const char* blank : {"", " ", "\t"}) {
        other.inventoryNumber = blank;
        EXPECT_EQ(codeOf(add(other)), ErrorCode::notFilled);
    }
    other.inventoryNumber = "U-04";
    other.stimulator.reset();
    EXPECT_EQ(codeOf(add(other)), ErrorCode::notFilled);
}

TEST_F(Loans, ALentUnitSaysWhoHasItSinceWhenAndUntilWhen)
{
    must(lendIt(loanOn(day(2026, 2, 9), day(2026, 4, 6))));
    for (const auto& rows : {all(), lent()}) {
        ASSERT_THAT(rows, SizeIs(1));
        const InventoryRow& row = rows.front();
        ASSERT_TRUE(row.loan);
        EXPECT_EQ(row.loan->lentOn, day(2026, 2, 9));
        EXPECT_EQ(row.loan->dueOn, day(2026, 4, 6));
        EXPECT_EQ(row.loan->lentByName, "Ruta Vennel");
        EXPECT_EQ(row.loan->givenBackOn, std::nullopt);
        EXPECT_EQ(row.patient, ids.patient);
        EXPECT_EQ(row.patientName, "Agnes Thorley");
        EXPECT_EQ(row.patientReference, "1001");
        EXPECT_EQ(row.problem, "Knee replacement");
        EXPECT_EQ(row.unit.inventoryNumber, "U-03");
    }
}

TEST_F(Loans, AUnitIsNeverLentTwice)
{
    must(lendIt(loanOn(day(2026, 2, 9))));
    const auto twice = lendIt(loanOn(day(2026, 3, 9)));
    ASSERT_EQ(codeOf(twice), ErrorCode::notUnique);
    EXPECT_EQ(twice.error().subject, "U-03");
    const std::string again = insertLoan("1, 1, '2026-03-09', NULL, NULL");
    EXPECT_EQ(codeOfSql(again), raisedByTrigger);
    const auto raw = temp.rawConnection();
    run(*raw, "DROP TRIGGER loan_insert"); // the index stands by itself
    try {
        run(*raw, again);
        ADD_FAILURE() << "lent twice";
    } catch (const SqlError& error) {
        EXPECT_EQ(error.code(), notUnique);
    }
}

TEST_F(Loans, AUnitThatCameBackIsLentAgainFromThatDayOn)
{
    Loan first = loanOn(day(2026, 2, 9));
    first.id = must(lendIt(first));
    must(takeItBack(first, day(2026, 3, 2)));
    EXPECT_THAT(lent(), IsEmpty());
    EXPECT_FALSE(all().front().loan);
    EXPECT_EQ(codeOf(lendIt(loanOn(day(2026, 3, 1)))), ErrorCode::refused)
        << "it was still out on that day";
    must(lendIt(loanOn(day(2026, 3, 2))));
    const auto history = loansOfIt();
    ASSERT_THAT(history, SizeIs(2));
    EXPECT_EQ(history[0].loan->lentOn, day(2026, 3, 2));
    EXPECT_EQ(history[1].loan->givenBackOn, day(2026, 3, 2));
    EXPECT_EQ(history[1].loan->takenBackByName, "Ruta Vennel");
}

TEST_F(Loans, ALoanThatIsOverStaysAsItWas)
{
    Loan loan = loanOn(day(2026, 2, 9));
    loan.id = must(lendIt(loan));
    EXPECT_EQ(codeOf(takeItBack(loan, day(2026, 2, 8))), ErrorCode::outOfRange);
    must(takeItBack(loan, day(2026, 3, 2)));
    loan.version = 2;
    EXPECT_EQ(codeOf(takeItBack(loan, day(2026, 3, 3))), ErrorCode::refused);
    loan.dueOn = day(2026, 5, 1);
    EXPECT_EQ(codeOf(store->write(author(), "change",
                                  [&](Writing& writing) { changeLoan(writing, loan); })),
              ErrorCode::refused);
    EXPECT_EQ(codeOfSql("UPDATE loan SET given_back_on = NULL"), raisedByTrigger);
    EXPECT_EQ(codeOfSql("UPDATE loan SET due_on = '2026-05-01'"), raisedByTrigger);
    EXPECT_EQ(codeOfSql("DELETE FROM loan"), raisedByTrigger);
}

TEST_F(Loans, AnOpenLoanKeepsWhatWasLentToWhomOnWhichDayAndByWhom)
{
    must(lendIt(loanOn(day(2026, 2, 9))));
    for (const char* change : {"id = 9", "unit = 9", "course = 9", "lent_on = '2026-02-10'",
                               "lent_by = NULL", "lent_by_name = 'another'"}) {
        EXPECT_EQ(codeOfSql(std::string("UPDATE loan SET ") + change), raisedByTrigger) << change;
    }
    EXPECT_EQ(codeOfSql("UPDATE loan SET due_on = '2026-05-01'"), 0);
    EXPECT_EQ(codeOfSql("DELETE FROM loan"), raisedByTrigger);
}

TEST_F(Loans, MayBeProlonged)
{
    Loan loan = loanOn(day(2026, 2, 9), day(2026, 3, 9));
    loan.id = must(lendIt(loan));
    loan.dueOn = day(2026, 4, 6);
    const auto prolong = [&] {
        return store->write(author(), "prolong a loan",
                            [&](Writing& writing) { changeLoan(writing, loan); });
    };
    must(prolong());
    EXPECT_EQ(lent().front().loan->dueOn, day(2026, 4, 6));
    loan.dueOn = day(2026, 5, 4);
    EXPECT_EQ(codeOf(prolong()), ErrorCode::changedElsewhere);
    loan.version = 2;
    loan.dueOn = day(2026, 2, 8);
    const auto tooEarly = prolong();
    ASSERT_EQ(codeOf(tooEarly), ErrorCode::outOfRange);
    EXPECT_EQ(tooEarly.error().field, quadrille::Field::dueBack);
}

TEST_F(Loans, AUnitThatIsOutOfUseIsNotLentAndOneThatIsLentStaysInUse)
{
    LoanUnit archived = unit;
    archived.archived = true;
    must(change(archived));
    EXPECT_EQ(codeOf(lendIt(loanOn(day(2026, 2, 9)))), ErrorCode::refused);
    archived.version = 2;
    archived.archived = false;
    must(change(archived));
    must(lendIt(loanOn(day(2026, 2, 9))));
    archived.version = 3;
    archived.archived = true;
    EXPECT_EQ(codeOf(change(archived)), ErrorCode::refused);
}

TEST_F(Loans, PlainSqlIsHeldToTheSameRules)
{
    EXPECT_EQ(codeOfSql(insertLoan("1, 1, '2026-03-09', '2026-04-01', NULL")), 0);
    EXPECT_EQ(codeOfSql(insertLoan("1, 1, '2026-02-30', NULL, NULL")), checkFailed);
    EXPECT_EQ(codeOfSql(insertLoan("1, 1, '2026-03-09', '2026-03-08', NULL")), checkFailed);
    EXPECT_EQ(codeOfSql(insertLoan("1, 1, '2026-03-09', '9 April', NULL")), checkFailed);
    EXPECT_EQ(codeOfSql(insertLoan("1, 1, '2026-03-09', NULL, '2026-03-08'")), checkFailed);
    EXPECT_EQ(codeOfSql(insertLoan("9, 1, '2026-03-09', NULL, NULL")), foreignKeyFailed);
    EXPECT_EQ(codeOfSql(insertLoan("1, 9, '2026-03-09', NULL, NULL")), foreignKeyFailed);
    EXPECT_EQ(codeOfSql("INSERT INTO loan (unit, course, lent_on, lent_by_name, "
                        "taken_back_by_name) VALUES (1, 1, '2026-03-09', 'R', 'R')"),
              checkFailed)
        << "taken back, but not given back";

    const auto insertUnit = [](const std::string& values) {
        return "INSERT INTO loan_unit (stimulator, inventory_number, next_safety_check_on, "
               "serial_number, note) VALUES (" +
               values + ", '', '')";
    };
    EXPECT_EQ(codeOfSql(insertUnit("1, 'U-04', NULL")), 0);
    EXPECT_EQ(codeOfSql(insertUnit("1, 'U-03', NULL")), raisedByTrigger);
    EXPECT_EQ(codeOfSql(insertUnit("1, '', NULL")), checkFailed);
    EXPECT_EQ(codeOfSql(insertUnit("1, 'U-04', 'soon'")), checkFailed);
    EXPECT_EQ(codeOfSql(insertUnit("9, 'U-04', NULL")), foreignKeyFailed);
    EXPECT_EQ(codeOfSql("UPDATE loan_unit SET id = 9"), raisedByTrigger);
    EXPECT_EQ(codeOfSql("DELETE FROM loan_unit"), raisedByTrigger);
    EXPECT_EQ(codeOfSql("INSERT OR REPLACE INTO loan_unit SELECT id, stimulator, "
                        "inventory_number, 'x', NULL, '', 0, 1 FROM loan_unit"),
              raisedByTrigger);
}

TEST_F(Loans, AUnitIsNeverRemovedByAnotherThatTakesItsNumber)
{
    LoanUnit other = unit;
    other.inventoryNumber = "U-04";
    must(add(other));
    EXPECT_EQ(codeOfSql("UPDATE OR REPLACE loan_unit SET inventory_number = 'U-03'"),
              raisedByTrigger);
    EXPECT_EQ(codeOfSql("UPDATE loan_unit SET inventory_number = 'U-05' WHERE id = 2"), 0);
    other.id = LoanUnitId(2);
    other.inventoryNumber = "U-03";
    EXPECT_EQ(codeOf(change(other)), ErrorCode::notUnique);
    EXPECT_THAT(all(), SizeIs(2));
}

TEST_F(Loans, AUnitIsOfAStimulatorOfThePracticeNotOfACopyThatAPlanRestsOn)
{
    tests::anIssuedPlan(*store, ids);
    EXPECT_EQ(codeOfSql("INSERT INTO loan_unit (stimulator, inventory_number, serial_number, note) "
                        "SELECT id, 'U-05', '', '' FROM stimulator WHERE copy_of IS NOT NULL"),
              raisedByTrigger);
    EXPECT_EQ(codeOfSql("UPDATE loan_unit SET stimulator = (SELECT id FROM stimulator WHERE "
                        "copy_of IS NOT NULL)"),
              raisedByTrigger);
}

// By hand: a block of four weeks from Monday 9 February 2026 ends on Sunday 8 March.
TEST_F(Loans, GoToCoursesThatHaveNotEnded)
{
    const auto courses = [&](Date today) {
        return must(store->read([&](Reading& reading) { return coursesToLendTo(reading, today); }));
    };
    ASSERT_THAT(courses(day(2026, 3, 12)), SizeIs(1));
    EXPECT_EQ(courses(day(2026, 3, 12)).front().stimulator, std::nullopt) << "none is chosen yet";
    EXPECT_EQ(courses(day(2026, 3, 12)).front().lastDay, std::nullopt);
    tests::anIssuedPlan(*store, ids);
    must(lendIt(loanOn(day(2026, 2, 9))));
    const LendingCourse course = courses(day(2026, 3, 12)).front();
    EXPECT_EQ(course.course, ids.course);
    EXPECT_EQ(course.patientName, "Agnes Thorley");
    EXPECT_EQ(course.stimulator, ids.stimulator) << "the unit itself, not the plan's copy";
    EXPECT_EQ(course.unitsLent, 1);
    EXPECT_EQ(course.lastDay, day(2026, 3, 8));
    must(store->write(author(), "end course", [&](Writing& writing) {
        Course ended = quadrille::db::course(writing, ids.course).value();
        ended.endDate = day(2026, 3, 11);
        changeCourse(writing, ended);
    }));
    EXPECT_THAT(courses(day(2026, 3, 12)), IsEmpty());
    EXPECT_THAT(courses(day(2026, 3, 11)), SizeIs(1));
}

TEST_F(Loans, GoToPeopleInTheOrderOfTheCaseload)
{
    must(store->write(author(), "add patients", [](Writing& writing) {
        for (const char* name : {"Zoë Wendmore", "Édouard Quillan", "edward Quill"}) {
            addCourse(writing, tests::aCourse(addPatient(writing, tests::aPatient(name, name))));
        }
    }));
    std::vector<std::string> names;
    for (const LendingCourse& course : must(store->read(
             [](Reading& reading) { return coursesToLendTo(reading, day(2026, 3, 12)); }))) {
        names.push_back(course.patientName);
    }
    EXPECT_THAT(names,
                ElementsAre("Agnes Thorley", "Édouard Quillan", "edward Quill", "Zoë Wendmore"));
}

TEST_F(Loans, AreKeptInThePatientsHistoryWithTheNumberOfTheUnit)
{
    Loan loan = loanOn(day(2026, 2, 9));
    loan.id = must(lendIt(loan));
    must(takeItBack(loan, day(2026, 3, 2)));
    const auto changes =
        must(store->read([&](Reading& reading) { return historyOf(reading, ids.patient, 100); }));
    std::vector<std::string> told;
    for (const Change& change : changes) {
        if (change.recordKind == "loan") {
            told.push_back(change.what + ": " + change.field + " " + change.to.value_or("-"));
        }
    }
    EXPECT_THAT(told, ElementsAre("take a unit back: given_back_on 2026-03-02",
                                  "lend a unit: lent_on 2026-02-09",
                                  "lend a unit: inventory_number U-03", "lend a unit:  -"));
    EXPECT_THAT(must(store->read(verify)), IsEmpty());
}

} // namespace
} // namespace quadrille::db
