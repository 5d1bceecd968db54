// SPDX-License-Identifier: GPL-3.0-or-later
// The single units of a practice and to whom they are lent.
#pragma once

#include "core/calendar.h"
#include "core/finding.h"
#include "core/ids.h"
#include "core/stimulator.h"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// One unit on the practice's shelf. What it can do says its stimulator.
struct LoanUnit {
    std::optional<LoanUnitId> id = std::nullopt;
    std::optional<StimulatorId> stimulator = std::nullopt;
    std::string inventoryNumber;                          ///< the practice's own; unique
    std::string serialNumber;                             ///< the maker's; may be empty
    std::optional<Date> nextSafetyCheckOn = std::nullopt; ///< nothing: not known
    std::string note = {};
    bool archived = false; ///< no longer lent
    Version version = 1;
    friend bool operator==(const LoanUnit&, const LoanUnit&) = default;
};

/// A unit in the hands of a patient, for a course.
struct Loan {
    std::optional<LoanId> id = std::nullopt;
    std::optional<LoanUnitId> unit = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date lentOn;
    std::string lentByName = {};              ///< as it was on the day
    std::optional<Date> dueOn = std::nullopt; ///< when it is to come back; never before lentOn
    std::optional<Date> givenBackOn = std::nullopt; ///< nothing: it is out
    std::string takenBackByName = {};
    Version version = 1;
    friend bool operator==(const Loan&, const Loan&) = default;
};

/// How a unit stands on a day.
struct UnitStanding {
    std::optional<std::chrono::days> backOverdue = std::nullopt;  ///< since it was due, > 0
    std::optional<std::chrono::days> checkOverdue = std::nullopt; ///< since it was to be checked
    std::optional<Date> next = std::nullopt; ///< what falls due first of what is not overdue
    bool isOverdue() const { return backOverdue || checkOverdue; }
    friend bool operator==(const UnitStanding&, const UnitStanding&) = default;
};

/// `loan`: the one that is open, if the unit is out. An archived unit is neither checked nor due.
UnitStanding standingOn(const LoanUnit& unit, const std::optional<Loan>& loan, Date day);

/// Whether the first comes before the second in a list: what is overdue, the longest first; then
/// what falls due, the earliest first; then the rest; archived units last. Equals by inventory
/// number.
bool isMoreUrgent(const LoanUnit& a, const UnitStanding& standingOfA, const LoanUnit& b,
                  const UnitStanding& standingOfB);

/// What to think of before a unit is lent to a course; the decision stays open (common practice).
/// `wanted`: the course's stimulator, if one is chosen. `alreadyLent`: units that the course has.
/// Also what speaks against the unit itself (core/suitability.h).
std::vector<Finding> loanFindings(const LoanUnit& unit, const Stimulator& stimulator,
                                  std::optional<StimulatorId> wanted, int alreadyLent, Date day);

} // namespace quadrille
