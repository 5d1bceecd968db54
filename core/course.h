// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/ids.h"
#include "core/people.h"

#include <optional>
#include <string>

namespace quadrille
{

/// Which side a course treats.
enum class TreatedSide { left, right, both };

/// One course of treatment of one problem of one patient.
struct Course {
    std::optional<CourseId> id = std::nullopt;
    std::optional<PatientId> patient = std::nullopt; ///< none only until the patient is stored
    int number = 1; ///< 1, 2, 3 … within the patient; what --course names
    std::string problem;
    Date startDate;
    std::optional<Date> endDate = std::nullopt;            ///< the last day, once ended
    std::string endReason = {};                            ///< empty while it runs
    std::optional<Date> agreedReturnDate = std::nullopt;   ///< when the diary is to come back
    std::optional<TreatedSide> treatedSide = std::nullopt; ///< nothing until somebody has said
    Version version = 1;
    friend bool operator==(const Course&, const Course&) = default;
};

/// A course is running until its last day has passed.
inline bool isRunning(const Course& course, Date today)
{
    return !course.endDate || *course.endDate >= today;
}

} // namespace quadrille
