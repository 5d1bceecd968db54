// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/course_on_file.h"

#include "db/courses.h"

namespace quadrille::app
{

Result<Course> courseOnFile(const Services& services, const Course& course)
{
    const auto stored =
        services.store.read([&](db::Reading& reading) { return db::course(reading, *course.id); });
    if (!stored) {
        return stored.error();
    }
    if (!*stored) {
        return Error{.code = ErrorCode::notFound, .subject = course.problem, .detail = {}};
    }
    return **stored;
}

} // namespace quadrille::app
