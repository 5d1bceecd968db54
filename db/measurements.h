// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of measurements with their trials. Nothing is deleted: a value is corrected over the
// version that was read, its old one stays in the change record, and one entered by mistake is
// changed to withdrawn.
#pragma once

#include "db/store.h"

#include "core/measurement.h"

#include <string>
#include <vector>

namespace quadrille::db
{

/// All of a course, withdrawn ones too, the earliest first.
std::vector<Measurement> measurementsOf(Reading& reading, CourseId course);
/// Errors: notFound without a course; refused for a unit that is no UCUM code, a kind that is no
/// word, or trials that do not make the value (2 … 5 of them where they count, none otherwise);
/// outOfRange.
MeasurementId addMeasurement(Writing& writing, const Measurement& measurement);
/// Errors: the same, and changedElsewhere, notFound, refused (a record keeps its course).
void changeMeasurement(Writing& writing, const Measurement& measurement);

/// A kind of the practice's own, as it was last measured in any patient.
struct OwnKind {
    std::string name;
    std::string unit; ///< UCUM
    bool hasSides = false;
    friend bool operator==(const OwnKind&, const OwnKind&) = default;
};
/// By name. No withdrawn ones.
std::vector<OwnKind> ownKinds(Reading& reading);

} // namespace quadrille::db
