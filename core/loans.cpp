// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/loans.h"

#include "core/limits.h"
#include "core/suitability.h"

#include <algorithm>
#include <tuple>

namespace quadrille
{

namespace
{

using std::chrono::days;

std::optional<days> overdue(const std::optional<Date>& due, Date day)
{
    return due && *due < day ? std::optional(day - *due) : std::nullopt;
}

Finding attention(FindingCode code, Field field)
{
    return {.code = code,
            .severity = Severity::attention,
            .field = field,
            .source = limits::commonPractice};
}

} // namespace

UnitStanding standingOn(const LoanUnit& unit, const std::optional<Loan>& loan, Date day)
{
    UnitStanding standing;
    if (unit.archived) {
        return standing;
    }
    const std::optional<Date> due = loan ? loan->dueOn : std::nullopt;
    standing.backOverdue = overdue(due, day);
    standing.checkOverdue = overdue(unit.nextSafetyCheckOn, day);
    for (const std::optional<Date>& date : {due, unit.nextSafetyCheckOn}) {
        if (date && *date >= day && (!standing.next || *date < *standing.next)) {
            standing.next = date;
        }
    }
    return standing;
}

bool isMoreUrgent(const LoanUnit& a, const UnitStanding& standingOfA, const LoanUnit& b,
                  const UnitStanding& standingOfB)
{
    const auto key = [](const LoanUnit& unit, const UnitStanding& standing) {
        const days longest = std::max(standing.backOverdue.value_or(days(0)),
                                      standing.checkOverdue.value_or(days(0)));
        return std::tuple(unit.archived, -longest.count(), standing.next.value_or(Date::max()),
                          unit.inventoryNumber);
    };
    return key(a, standingOfA) < key(b, standingOfB);
}

std::vector<Finding> loanFindings(const LoanUnit& unit, const Stimulator& stimulator,
                                  std::optional<StimulatorId> wanted, int alreadyLent, Date day)
{
    std::vector<Finding> findings = suitabilityFindings(stimulator);
    if (const auto late = overdue(unit.nextSafetyCheckOn, day)) {
        Finding finding = attention(FindingCode::safetyCheckOverdue, Field::none);
        finding.figure = countOf(late->count());
        findings.push_back(finding);
    }
    if (wanted && unit.stimulator != wanted) {
        findings.push_back(attention(FindingCode::unitOfAnotherKind, Field::stimulator));
    }
    if (alreadyLent > 0) {
        findings.push_back(attention(FindingCode::courseHasAUnit, Field::none));
    }
    sortBySeverity(findings);
    return findings;
}

} // namespace quadrille
