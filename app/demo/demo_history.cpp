// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_history.h"

#include "app/demo/demo_diary.h"
#include "app/demo/demo_screenings.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/electrode_sets.h"
#include "db/measurements.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

using namespace std::chrono_literals;
using std::chrono::days;

/// References count up from here.
constexpr int firstReference = 1001;
/// Telephone numbers that are kept free for fiction: 01632 960000 to 960999.
constexpr int firstTelephone = 960200;

/// The last working day before a day.
Date visitBefore(Date day)
{
    const Weekday weekday(day);
    if (weekday == std::chrono::Monday) {
        return day - days(3);
    }
    return weekday == std::chrono::Sunday ? day - days(2) : day - days(1);
}

/// The first visit: the working day before the start, or last Friday where the course is still to
/// begin.
Date intakeOf(const DemoCourse& course, Date today)
{
    const Date start = firstDayOf(course, today);
    return visitBefore(std::min(start, mondayOf(today)));
}

/// The working day before the week after the last.
Date endOf(const DemoCourse& course, Date today)
{
    return visitBefore(firstDayOf(course, today) + days(7 * course.endedAfter.value_or(0)));
}

Date birthDateOf(const DemoPatient& patient, Date today)
{
    const std::chrono::month month(static_cast<unsigned>(patient.birthMonth));
    const std::chrono::day day(static_cast<unsigned>(patient.birthDay));
    const std::chrono::year_month_day now(today);
    const auto thisYear = now.year() - std::chrono::years(patient.age);
    const bool birthdayToCome = std::chrono::month_day(month, day) > now.month() / now.day();
    return (birthdayToCome ? thisYear - std::chrono::years(1) : thisYear) / month / day;
}

/// The acts on one patient.
class PatientStory
{
public:
    PatientStory(std::size_t place, const DemoPatient& patient, DemoKeys& keys, Date today,
                 std::vector<DemoEvent>& events)
        : m_place(place)
        , m_patient(patient)
        , m_keys(keys)
        , m_today(today)
        , m_events(events)
    {
    }

    void tell()
    {
        const Date first = m_patient.courses.empty() ? visitBefore(m_today)
                                                     : intakeOf(m_patient.courses.front(), m_today);
        arrive(first);
        for (std::size_t i = 0; i < m_patient.courses.size(); ++i) {
            treat(i, m_patient.courses[i]);
        }
        if (!m_patient.note.empty()) {
            change(noteDay(first), "add a note",
                   [note = m_patient.note](Patient& patient) { patient.note = note; });
        }
        if (m_patient.archived) {
            change(visitBefore(m_today), "archive patient",
                   [](Patient& patient) { patient.archived = true; });
        }
    }

private:
    /// Visits of a day lie half an hour apart, the acts of a visit some minutes.
    void add(Date day, std::chrono::minutes intoVisit, std::string what,
             std::function<void(db::Writing&)> act)
    {
        const auto slot = 30min * static_cast<int>(m_place % 16);
        m_events.push_back({Moment(day) + 8h + slot + intoVisit, m_patient.practitioner,
                            std::move(what), std::move(act)});
    }

    /// A week after the first visit, or as the last course ends.
    Date noteDay(Date first) const
    {
        const bool ended = !m_patient.courses.empty() && m_patient.courses.back().endedAfter;
        return ended ? endOf(m_patient.courses.back(), m_today)
                     : std::min(first + days(7), visitBefore(m_today));
    }

    void arrive(Date day)
    {
        const int number = static_cast<int>(m_place);
        Patient patient;
        patient.reference = std::to_string(firstReference + number);
        patient.name = m_patient.name;
        patient.birthDate = birthDateOf(m_patient, m_today);
        patient.telephone = "01632 " + std::to_string(firstTelephone + number);
        add(day, 0min, "add patient",
            [&keys = m_keys, place = m_place, patient](db::Writing& writing) {
                keys.patients.emplace(place, db::addPatient(writing, patient));
            });
    }

    void change(Date day, std::string what, std::function<void(Patient&)> edit)
    {
        add(day, 20min, std::move(what),
            [&keys = m_keys, place = m_place, edit = std::move(edit)](db::Writing& writing) {
                Patient patient = db::patient(writing, keys.patients.at(place)).value();
                edit(patient);
                db::changePatient(writing, patient);
            });
    }

    void treat(std::size_t index, const DemoCourse& course)
    {
        const Date start = firstDayOf(course, m_today);
        const Date intake = intakeOf(course, m_today);
        const auto key = std::pair(m_place, index);
        add(intake, 4min, "add course",
            [&keys = m_keys, key, problem = course.problem, start,
             side = course.treatedSide](db::Writing& writing) {
                Course added;
                added.patient = keys.patients.at(key.first);
                added.problem = problem;
                added.startDate = start;
                added.treatedSide = side;
                keys.courses.emplace(key, db::addCourse(writing, added));
            });
        screen(intake, key, course);
        for (const DemoPlan& plan : course.plans) {
            const bool first = &plan == &course.plans.front();
            const Date from = start + days(7 * (plan.fromWeek - 1));
            issue(first ? intake : from, from, key, course.unit, plan);
        }
        for (const DemoVisit& visit : course.visits) {
            measure(visitDay(course, visit.week), key, visit);
        }
        for (const DemoPads& pads : course.pads) {
            handOut(course, key, pads);
        }
        for (const DemoPause& one : course.pauses) {
            pause(course, key, one);
        }
        if (!course.draft.empty()) {
            add(visitBefore(mondayOf(m_today)), 15min, "save draft",
                [&keys = m_keys, draft = draftOf(course.draft), key,
                 unit = course.unit](db::Writing& writing) {
                    db::saveDraft(writing, withKeys(draft, keys, key, unit));
                });
        }
        if (course.endedAfter) {
            end(endOf(course, m_today), key);
        }
        keepDiary(course, key);
    }

    void screen(Date day, std::pair<std::size_t, std::size_t> key, const DemoCourse& course)
    {
        const DemoScreening& demo = course.screening;
        const std::vector<Block>& blocks =
            course.plans.empty() ? course.draft : course.plans.front().blocks;
        add(day, 6min, "answer the screening",
            [&keys = m_keys, key, demo, blocks](db::Writing& writing) {
                db::addScreening(writing, demoScreening(keys.courses.at(key), demo, blocks));
            });
        if (!demo.isSigned) {
            return;
        }
        const auto signer = static_cast<std::size_t>(m_patient.practitioner);
        add(day, 8min, "sign screening", [&keys = m_keys, key, signer, day](db::Writing& writing) {
            const auto stored = db::latestScreeningOf(writing, keys.courses.at(key)).value();
            db::signScreening(writing, *stored.id, stored.version, keys.practitioners[signer], day);
        });
        if (!demo.wentAheadOf.empty()) {
            add(day, 9min, "go ahead in spite of the screening",
                [&keys = m_keys, key, signer, demo](db::Writing& writing) {
                    ScreeningOverride reason;
                    reason.screening =
                        db::latestScreeningOf(writing, keys.courses.at(key)).value().id;
                    reason.question = demo.wentAheadOf;
                    reason.practitioner = keys.practitioners[signer];
                    reason.reason = demo.wentAheadWhy;
                    db::addOverride(writing, reason);
                });
        }
        if (!demo.openChange.empty()) {
            add(visitBefore(m_today), 24min, "begin a screening",
                [&keys = m_keys, key, demo](db::Writing& writing) {
                    const auto last = db::latestScreeningOf(writing, keys.courses.at(key)).value();
                    db::addScreening(writing, demoOpenChange(last, demo));
                });
        }
    }

    /// The working day before a week of the course begins, and the first visit for the first.
    Date visitDay(const DemoCourse& course, int week) const
    {
        return week <= 1 ? intakeOf(course, m_today)
                         : visitBefore(firstDayOf(course, m_today) + days(7 * (week - 1)));
    }

    void measure(Date day, std::pair<std::size_t, std::size_t> key, const DemoVisit& visit)
    {
        add(day, 6min, "add measurements",
            [&keys = m_keys, key, day, values = visit.values](db::Writing& writing) {
                for (Measurement value : values) {
                    value.course = keys.courses.at(key);
                    value.measuredOn = day;
                    db::addMeasurement(writing, value);
                }
            });
    }

    void handOut(const DemoCourse& course, std::pair<std::size_t, std::size_t> key,
                 const DemoPads& pads)
    {
        const Date issued = visitDay(course, pads.week);
        add(issued, 16min, "hand out pads",
            [&keys = m_keys, key, issued, set = pads.set](db::Writing& writing) {
                ElectrodeSet added = set;
                added.course = keys.courses.at(key);
                added.issuedOn = issued;
                db::addElectrodeSet(writing, added);
            });
        if (!pads.outOfUseWeek) {
            return;
        }
        const Date out = visitDay(course, *pads.outOfUseWeek);
        add(out, 15min, "take pads out of use",
            [&keys = m_keys, key, issued, out](db::Writing& writing) {
                for (ElectrodeSet set : db::electrodeSetsOf(writing, keys.courses.at(key))) {
                    if (set.issuedOn == issued) {
                        set.outOfUseOn = out;
                        db::changeElectrodeSet(writing, set);
                    }
                }
            });
    }

    void pause(const DemoCourse& course, std::pair<std::size_t, std::size_t> key,
               const DemoPause& demo)
    {
        Pause pause;
        pause.fromDate = firstDayOf(course, m_today) + days(7 * (demo.fromWeek - 1));
        if (demo.weeks) {
            pause.toDate = pause.fromDate + days(7 * *demo.weeks - 1);
        }
        pause.reason = demo.reason;
        add(visitDay(course, demo.fromWeek), 18min, "pause course",
            [&keys = m_keys, key, pause](db::Writing& writing) {
                Pause added = pause;
                added.course = keys.courses.at(key);
                db::addPause(writing, added);
            });
    }

    void issue(Date day, Date from, std::pair<std::size_t, std::size_t> key, DemoUnit unit,
               const DemoPlan& plan)
    {
        const Draft draft = draftOf(plan.blocks);
        add(day, 10min, "save draft", [&keys = m_keys, draft, key, unit](db::Writing& writing) {
            db::saveDraft(writing, withKeys(draft, keys, key, unit));
        });
        add(day, 14min, "issue plan",
            [&keys = m_keys, draft, key, unit, from, day, reason = plan.reason,
             by = m_patient.practitioner](db::Writing& writing) {
                const PractitionerId signer = keys.practitioners[static_cast<std::size_t>(by)];
                Draft issued = withKeys(draft, keys, key, unit);
                issued.version = 1; // saved once
                db::issuePlan(writing, issued,
                              {.fromDate = from, .reason = reason, .issuedBy = signer}, day);
            });
    }

    /// The diary comes back every other week, known through the day before.
    void keepDiary(const DemoCourse& course, std::pair<std::size_t, std::size_t> key)
    {
        const Date start = firstDayOf(course, m_today);
        const Date last = course.endedAfter ? endOf(course, m_today) : visitBefore(m_today);
        Date from = start;
        for (int week = 2; demoDiaryComesBack(m_place); week += 2) {
            const Date back = visitBefore(start + days(7 * week));
            if (back > last) {
                return;
            }
            add(back, 8min, "enter diary",
                [&keys = m_keys, key, place = m_place, from,
                 through = back - days(1)](db::Writing& writing) {
                    enterDemoDiary(writing, keys.courses.at(key), place, from, through);
                });
            from = back;
        }
    }

    void end(Date day, std::pair<std::size_t, std::size_t> key)
    {
        add(day, 12min, "end course", [&keys = m_keys, key, day](db::Writing& writing) {
            Course course = db::course(writing, keys.courses.at(key)).value();
            course.endDate = day;
            course.endReason = "Goals reached";
            db::changeCourse(writing, course);
        });
    }

    static Draft draftOf(const std::vector<Block>& blocks)
    {
        Draft draft;
        draft.blocks = blocks;
        return draft;
    }

    static Draft withKeys(Draft draft, const DemoKeys& keys,
                          std::pair<std::size_t, std::size_t> key, DemoUnit unit)
    {
        draft.course = keys.courses.at(key);
        draft.stimulator = keys.stimulators[static_cast<std::size_t>(unit)];
        return draft;
    }

    std::size_t m_place;
    const DemoPatient& m_patient;
    DemoKeys& m_keys;
    Date m_today;
    std::vector<DemoEvent>& m_events;
};

} // namespace

Date mondayOf(Date day)
{
    return day - (Weekday(day) - std::chrono::Monday);
}

Date firstDayOf(const DemoCourse& course, Date today)
{
    return mondayOf(today) - days(7 * (course.week - 1)) + days(course.startsOn);
}

std::vector<DemoEvent> demoHistory(const std::vector<DemoPatient>& patients, DemoKeys& keys,
                                   Date today)
{
    std::vector<DemoEvent> events;
    for (std::size_t place = 0; place < patients.size(); ++place) {
        PatientStory(place, patients[place], keys, today, events).tell();
    }
    std::ranges::stable_sort(events, {}, &DemoEvent::at);
    return events;
}

} // namespace quadrille::app
