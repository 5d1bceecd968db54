// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_loans.h"

#include "db/loans.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace quadrille::app
{

namespace
{

using namespace std::chrono_literals;
using std::chrono::days;

struct DemoShelfUnit {
    const char* number;
    DemoUnit kind;
    std::optional<int> checkIn; ///< days from today
    const char* note = "";
    bool archived = false;
};

constexpr std::array shelf{
    DemoShelfUnit{"U-01", DemoUnit::twoChannelA, 120},
    DemoShelfUnit{"U-02", DemoUnit::twoChannelA, 75},
    DemoShelfUnit{"U-03", DemoUnit::twoChannelA, -9},
    DemoShelfUnit{"U-04", DemoUnit::twoChannelB, 210},
    DemoShelfUnit{"U-05", DemoUnit::twoChannelB, 33},
    DemoShelfUnit{"U-06", DemoUnit::rampsAdded, 150},
    DemoShelfUnit{"U-07", DemoUnit::fourChannel, 260},
    DemoShelfUnit{"U-08", DemoUnit::bursts, 96},
    DemoShelfUnit{"U-09", DemoUnit::twoChannelA, 180, "New leads since last autumn."},
    DemoShelfUnit{"U-10", DemoUnit::relief, std::nullopt, "For pain relief in the clinic only."},
    DemoShelfUnit{"U-11", DemoUnit::twoChannelB, std::nullopt, "Dropped; the case is broken.",
                  true},
};

struct DemoLoan {
    const char* number;
    std::string_view patient;
    std::size_t course = 0;            ///< of the patient
    std::optional<int> dueIn = {};     ///< days from today
    std::optional<int> backAfter = {}; ///< weeks; nothing: still out
};

constexpr std::array loans{
    DemoLoan{"U-06", "Fenna Quilling", 0, {}, 10}, DemoLoan{"U-09", "Edwin Marlpit", 0, {}, 12},
    DemoLoan{"U-01", "Agnes Thorley", 0, 55, {}},  DemoLoan{"U-02", "Otto Wrenhall", 0, -5, {}},
    DemoLoan{"U-03", "Ravi Menshaw", 0, 60, {}},   DemoLoan{"U-04", "Tom Everling", 0, 12, {}},
    DemoLoan{"U-05", "Imran Castell", 0, 30, {}},  DemoLoan{"U-06", "Odile Marchbank", 0, 26, {}},
    DemoLoan{"U-07", "Bohdan Kressel", 0, 40, {}}, DemoLoan{"U-08", "Lucía Fernvale", 0, {}, {}},
};

std::size_t placeOnShelf(std::string_view number)
{
    const auto found = std::ranges::find_if(
        shelf, [&](const DemoShelfUnit& unit) { return number == unit.number; });
    return static_cast<std::size_t>(found - shelf.begin());
}

/// The loan of a unit that is out.
Loan openLoanOf(db::Reading& reading, LoanUnitId unit)
{
    return db::loansOf(reading, unit).front().loan.value();
}

} // namespace

void addDemoUnits(db::Writing& writing, DemoKeys& keys, Date today)
{
    for (const DemoShelfUnit& on : shelf) {
        LoanUnit unit;
        unit.stimulator = keys.stimulators[static_cast<std::size_t>(on.kind)];
        unit.inventoryNumber = on.number;
        if (on.checkIn) {
            unit.nextSafetyCheckOn = today + days(*on.checkIn);
        }
        unit.note = on.note;
        unit.archived = on.archived;
        keys.units.push_back(db::addLoanUnit(writing, unit));
    }
}

std::vector<DemoEvent> demoLoans(const std::vector<DemoPatient>& patients, DemoKeys& keys,
                                 Date today)
{
    std::vector<DemoEvent> events;
    for (const DemoLoan& lent : loans) {
        const auto patient = std::ranges::find(patients, lent.patient, &DemoPatient::name);
        if (patient == patients.end() || lent.course >= patient->courses.size()) {
            continue;
        }
        const auto key =
            std::pair(static_cast<std::size_t>(patient - patients.begin()), lent.course);
        const std::size_t place = placeOnShelf(lent.number);
        const Date start = firstDayOf(patient->courses[lent.course], today);
        const auto due = lent.dueIn ? std::optional(today + days(*lent.dueIn)) : std::nullopt;
        if (start >= today) {
            continue;
        }
        events.push_back({Moment(start) + 17h, patient->practitioner, "lend a unit",
                          [&keys, key, place, start, due](db::Writing& writing) {
                              Loan loan;
                              loan.unit = keys.units[place];
                              loan.course = keys.courses.at(key);
                              loan.lentOn = start;
                              loan.dueOn = due;
                              db::lend(writing, loan);
                          }});
        if (lent.backAfter) {
            const Date back = start + days(7 * *lent.backAfter);
            events.push_back({Moment(back) + 18h, patient->practitioner, "take a unit back",
                              [&keys, place, back](db::Writing& writing) {
                                  const Loan loan = openLoanOf(writing, keys.units[place]);
                                  db::takeBack(writing, loan, back);
                              }});
        }
    }
    return events;
}

} // namespace quadrille::app
