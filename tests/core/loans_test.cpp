// SPDX-License-Identifier: GPL-3.0-or-later
// Which unit is lent, what falls due, and what to think of before lending. Common practice, no
// source.
#include "tests/core/examples.h"

#include "core/loans.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using std::chrono::days;

namespace
{

const Date today = Date(std::chrono::year(2026) / 3 / 12);

LoanUnit aUnitOnTheShelf(const std::string& number = "U-01")
{
    return {.id = LoanUnitId(1),
            .stimulator = StimulatorId(7),
            .inventoryNumber = number,
            .serialNumber = {}};
}

Loan aLoanDue(std::optional<Date> dueOn)
{
    Loan loan;
    loan.lentOn = today - days(40);
    loan.dueOn = dueOn;
    return loan;
}

} // namespace

TEST(UnitStanding, ADayIsOverdueFromTheDayAfterOn)
{
    LoanUnit unit = aUnitOnTheShelf();
    EXPECT_FALSE(standingOn(unit, aLoanDue(today), today).isOverdue());
    EXPECT_EQ(standingOn(unit, aLoanDue(today), today).next, today);
    const UnitStanding late = standingOn(unit, aLoanDue(today - days(3)), today);
    EXPECT_EQ(late.backOverdue, days(3));
    EXPECT_EQ(late.next, std::nullopt);
    unit.nextSafetyCheckOn = today - days(1);
    EXPECT_EQ(standingOn(unit, std::nullopt, today).checkOverdue, days(1));
    unit.nextSafetyCheckOn = today;
    EXPECT_FALSE(standingOn(unit, std::nullopt, today).isOverdue());
}

TEST(UnitStanding, NamesWhatFallsDueFirst)
{
    LoanUnit unit = aUnitOnTheShelf();
    unit.nextSafetyCheckOn = today + days(90);
    EXPECT_EQ(standingOn(unit, aLoanDue(today + days(14)), today).next, today + days(14));
    EXPECT_EQ(standingOn(unit, aLoanDue(std::nullopt), today).next, today + days(90));
    unit.archived = true;
    EXPECT_EQ(standingOn(unit, std::nullopt, today), UnitStanding{}) << "nobody waits for it";
}

TEST(UnitStanding, TheMostOverdueComesFirstAndTheArchivedLast)
{
    struct Listed {
        LoanUnit unit;
        std::optional<Loan> loan;
    };
    std::vector<Listed> all{{aUnitOnTheShelf("U-05 archived"), std::nullopt},
                            {aUnitOnTheShelf("U-04 here"), std::nullopt},
                            {aUnitOnTheShelf("U-02 back in a week"), aLoanDue(today + days(7))},
                            {aUnitOnTheShelf("U-03 check two days ago"), std::nullopt},
                            {aUnitOnTheShelf("U-01 due five days ago"), aLoanDue(today - days(5))},
                            {aUnitOnTheShelf("U-00 here"), std::nullopt}};
    all[0].unit.archived = true;
    all[0].unit.nextSafetyCheckOn = today - days(400);
    all[3].unit.nextSafetyCheckOn = today - days(2);
    std::ranges::sort(all, [](const Listed& a, const Listed& b) {
        return isMoreUrgent(a.unit, standingOn(a.unit, a.loan, today), b.unit,
                            standingOn(b.unit, b.loan, today));
    });
    std::vector<std::string> numbers;
    for (const Listed& listed : all) {
        numbers.push_back(listed.unit.inventoryNumber);
    }
    EXPECT_THAT(numbers, testing::ElementsAre("U-01 due five days ago", "U-03 check two days ago",
                                              "U-02 back in a week", "U-00 here", "U-04 here",
                                              "U-05 archived"));
}

TEST(LoanFindings, WarnOfASafetyCheckThatIsOverdueOnly)
{
    LoanUnit unit = aUnitOnTheShelf();
    const auto findings = [&] {
        return loanFindings(unit, someStimulator(), StimulatorId(7), 0, today);
    };
    EXPECT_TRUE(findings().empty()) << "no date is known";
    unit.nextSafetyCheckOn = today;
    EXPECT_TRUE(findings().empty());
    unit.nextSafetyCheckOn = today - days(12);
    ASSERT_EQ(codesOf(findings()), std::vector{FindingCode::safetyCheckOverdue});
    EXPECT_EQ(findings().front().figure, countOf(12));
    EXPECT_FALSE(hasStop(findings()));
}

TEST(LoanFindings, TellOfAnotherKindThanTheCourseIsPlannedForAndLeaveItOpen)
{
    const LoanUnit unit = aUnitOnTheShelf();
    const auto codes = [&](std::optional<StimulatorId> wanted, int lent) {
        return codesOf(loanFindings(unit, someStimulator(), wanted, lent, today));
    };
    EXPECT_TRUE(codes(StimulatorId(7), 0).empty());
    EXPECT_TRUE(codes(std::nullopt, 0).empty()) << "none is chosen yet";
    EXPECT_EQ(codes(StimulatorId(8), 0), std::vector{FindingCode::unitOfAnotherKind});
    EXPECT_EQ(codes(StimulatorId(7), 1), std::vector{FindingCode::courseHasAUnit});
    EXPECT_FALSE(hasStop(loanFindings(unit, someStimulator(), StimulatorId(8), 1, today)));
}

TEST(LoanFindings, SayWhatSpeaksAgainstTheUnitItself)
{
    Stimulator relief = someStimulator();
    relief.hasWorkRestCycles = false;
    EXPECT_EQ(codesOf(loanFindings(aUnitOnTheShelf(), relief, StimulatorId(8), 0, today)),
              (std::vector{FindingCode::noWorkRestCycles, FindingCode::unitOfAnotherKind}));
}
