// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the practice's single units and their loans.
#pragma once

#include "db/store.h"

#include "core/loans.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

/// A unit, and a loan of it with the person who has or had it.
struct InventoryRow {
    LoanUnit unit;
    std::string stimulatorName;
    std::optional<Loan> loan = std::nullopt;
    std::optional<PatientId> patient = std::nullopt;
    std::string patientName = {};
    std::string patientReference = {};
    std::string problem = {}; ///< what the course is for
};

/// A course that a unit can be lent to.
struct LendingCourse {
    CourseId course{0};
    PatientId patient{0};
    std::string patientName;
    std::string patientReference;
    std::string problem;
    std::optional<StimulatorId> stimulator = std::nullopt; ///< of the draft, else of the last plan
    int unitsLent = 0;
    Date startDate = {};
    std::optional<Date> lastDay = std::nullopt; ///< of the last plan
};

/// The courses that have not ended on `today`, by the patient's name; none of archived patients.
std::vector<LendingCourse> coursesToLendTo(Reading& reading, Date today);

/// All units, archived ones too, each with the loan that is open; by inventory number.
std::vector<InventoryRow> inventory(Reading& reading);
/// The units that a course has now, the one lent first first.
std::vector<InventoryRow> unitsLentTo(Reading& reading, CourseId course);
/// Every loan of a unit, the latest first. Loans of erased patients are gone.
std::vector<InventoryRow> loansOf(Reading& reading, LoanUnitId unit);

/// Error notUnique when another unit has the number, notFilled without number or stimulator.
LoanUnitId addLoanUnit(Writing& writing, const LoanUnit& unit);
/// Also refused: a unit that is lent is not archived.
void changeLoanUnit(Writing& writing, const LoanUnit& unit);

/// Lends a unit on `loan.lentOn`; by whom is the author. Errors: notUnique when it is out already;
/// refused when it came back later than that day or is archived; outOfRange (dueBack) when it would
/// be due before it is lent.
LoanId lend(Writing& writing, const Loan& loan);
/// Another day on which it is due, over the version that was read.
void changeLoan(Writing& writing, const Loan& loan);
/// Ends a loan; by whom is the author. Error refused when it is over already, outOfRange
/// (givenBack) when the day lies before the loan.
void takeBack(Writing& writing, const Loan& loan, Date givenBackOn);

} // namespace quadrille::db
