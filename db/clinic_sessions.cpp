// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/clinic_sessions.h"

#include "db/course_parts.h"
#include "db/screening_rows.h"

#include <utility>

namespace quadrille::db
{

template <>
struct Kind<ClinicSession> {
    static constexpr const char* table = "clinic_session";
    static constexpr const char* columns =
        "id, course, held_on, practitioner, practitioner_name, note, withdrawn, version";
    static constexpr const char* order = "held_on, id";
    static ClinicSession take(Statement& row)
    {
        ClinicSession session;
        session.id = takeId<ClinicSession>(row);
        session.course = takeId<Course>(row);
        session.heldOn = takeDate(row);
        session.practitioner = takeId<Practitioner>(row);
        session.practitionerName = row.takeText();
        session.note = row.takeText();
        session.withdrawn = takeFlag(row);
        session.version = takeInt(row);
        return session;
    }
    static Columns columnsOf(const ClinicSession& session)
    {
        return {{"withdrawn", valueOf(session.withdrawn)}};
    }
};

namespace
{

std::vector<ClinicThreshold> thresholdsOf(const Connection& connection, std::int64_t site)
{
    std::vector<ClinicThreshold> thresholds;
    Statement rows(connection, "SELECT phase_duration_us, sensory_ua, motor_ua, tolerated_ua FROM "
                               "clinic_threshold WHERE site = ? ORDER BY phase_duration_us");
    rows.bind({valueOf(site)});
    while (rows.next()) {
        ClinicThreshold& threshold = thresholds.emplace_back();
        threshold.phaseDuration = takeQuantity<PhaseDuration>(rows);
        threshold.sensory = takeOptionalQuantity<Amplitude>(rows);
        threshold.motor = takeOptionalQuantity<Amplitude>(rows);
        threshold.tolerated = takeOptionalQuantity<Amplitude>(rows);
    }
    return thresholds;
}

std::vector<ClinicSite> sitesOf(const Connection& connection, ClinicSessionId session)
{
    std::vector<ClinicSite> sites;
    Statement rows(connection,
                   "SELECT id, muscle, side, channel, placement_confirmed, contraction_seen, "
                   "torque_thousandths, skin_before, skin_after, note FROM clinic_site "
                   "WHERE clinic_session = ? ORDER BY ordinal");
    rows.bind({valueOf(session)});
    while (rows.next()) {
        ClinicSite& site = sites.emplace_back();
        const std::int64_t id = rows.takeInteger();
        site.muscle = rows.takeText();
        site.side = takeChoice<Side>(rows);
        site.channel = takeInt(rows);
        site.placementConfirmed = takeFlag(rows);
        if (const auto seen = rows.takeOptionalInteger()) {
            site.contractionSeen = *seen != 0;
        }
        site.torque = rows.takeOptionalInteger();
        site.skinBefore = takeOptionalChoice<SkinLook>(rows);
        site.skinAfter = takeOptionalChoice<SkinLook>(rows);
        site.note = rows.takeText();
        site.thresholds = thresholdsOf(connection, id);
    }
    return sites;
}

void addSite(const Connection& connection, ClinicSessionId session, int ordinal,
             const ClinicSite& site)
{
    const Value seen = site.contractionSeen ? valueOf(*site.contractionSeen) : Value();
    const std::int64_t id = insertRow(connection, "clinic_site",
                                      {{"clinic_session", valueOf(session)},
                                       {"ordinal", valueOf(ordinal)},
                                       {"muscle", valueOf(site.muscle)},
                                       {"side", valueOf(site.side)},
                                       {"channel", valueOf(site.channel)},
                                       {"placement_confirmed", valueOf(site.placementConfirmed)},
                                       {"contraction_seen", seen},
                                       {"torque_thousandths", valueOf(site.torque)},
                                       {"skin_before", valueOf(site.skinBefore)},
                                       {"skin_after", valueOf(site.skinAfter)},
                                       {"note", valueOf(site.note)}});
    for (const ClinicThreshold& threshold : site.thresholds) {
        insertPart(connection, "clinic_threshold",
                   {{"site", valueOf(id)},
                    {"phase_duration_us", valueOf(threshold.phaseDuration)},
                    {"sensory_ua", valueOf(threshold.sensory)},
                    {"motor_ua", valueOf(threshold.motor)},
                    {"tolerated_ua", valueOf(threshold.tolerated)}});
    }
}

/// Nothing is measured where the screening forbids it.
void requireScreened(Writing& writing, const ClinicSession& session, Date today)
{
    if (!session.course) {
        return; // refused as a record without a course
    }
    Block block;
    for (const ClinicSite& site : session.sites) {
        Site& asked = block.sites.emplace_back();
        asked.muscle = site.muscle;
        asked.side = site.side;
    }
    requireOpenGate(writing, *session.course, {block}, today);
}

} // namespace

std::vector<ClinicSession> clinicSessionsOf(Reading& reading, CourseId course)
{
    auto sessions = partsOf<ClinicSession>(reading, course);
    for (ClinicSession& session : sessions) {
        session.sites = sitesOf(reading.connection(), *session.id);
    }
    return sessions;
}

ClinicSessionId addClinicSession(Writing& writing, const ClinicSession& session, Date today)
{
    if (!session.practitioner) {
        throw Failure({.code = ErrorCode::notFilled,
                       .subject = {},
                       .detail = {},
                       .field = Field::practitioner});
    }
    if (session.sites.empty()) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = {},
                       .detail = "a session in the clinic has a site"});
    }
    requireScreened(writing, session, today);
    const Connection& connection = writing.connection();
    const ClinicSessionId id = addPart(
        writing, session,
        {{"held_on", valueOf(session.heldOn)},
         {"practitioner", valueOf(session.practitioner)},
         {"practitioner_name", valueOf(nameOfPractitioner(connection, *session.practitioner))},
         {"note", valueOf(session.note)}});
    int ordinal = 0;
    for (const ClinicSite& site : session.sites) {
        addSite(connection, id, ++ordinal, site);
    }
    updateRow(connection, Kind<ClinicSession>::table, id.key(), {{"sealed", valueOf(true)}});
    return id;
}

void withdrawClinicSession(Writing& writing, ClinicSessionId session, Version read)
{
    auto stored = partsWhere<ClinicSession>(writing, "id = ?", valueOf(session));
    if (stored.empty()) {
        throw Failure({.code = ErrorCode::notFound, .subject = "clinic_session", .detail = {}});
    }
    ClinicSession withdrawn = std::move(stored.front());
    withdrawn.withdrawn = true;
    withdrawn.version = read;
    changePart(writing, withdrawn);
}

} // namespace quadrille::db
