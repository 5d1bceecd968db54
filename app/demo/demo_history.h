// SPDX-License-Identifier: GPL-3.0-or-later
// Turns the demo's records into the acts that would have made them, each at its moment.
#pragma once

#include "app/demo/demo_records.h"

#include "db/store.h"

#include "core/calendar.h"
#include "core/ids.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace quadrille::app
{

/// One act of the past half year.
struct DemoEvent {
    Moment at;
    DemoPractitioner by = DemoPractitioner::ruta;
    std::string what;
    std::function<void(db::Writing&)> act;
};

/// The keys that the store has given so far; events look theirs up when they happen.
struct DemoKeys {
    std::vector<PractitionerId> practitioners;                       ///< by DemoPractitioner
    std::vector<StimulatorId> stimulators;                           ///< by DemoUnit
    std::vector<LoanUnitId> units;                                   ///< in the shelf's order
    std::map<std::size_t, PatientId> patients;                       ///< by place in the list
    std::map<std::pair<std::size_t, std::size_t>, CourseId> courses; ///< by patient and course
};

/// The Monday of the week of a day.
Date mondayOf(Date day);

/// The first day of a course.
Date firstDayOf(const DemoCourse& course, Date today);

/// All acts on patients, the earliest first, none on `today` or later. `keys` and `patients`
/// outlive them.
std::vector<DemoEvent> demoHistory(const std::vector<DemoPatient>& patients, DemoKeys& keys,
                                   Date today);

} // namespace quadrille::app
