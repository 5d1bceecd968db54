// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/large_practice.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/diary.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"
#include "db/stimulators.h"

#include <QFile>

#include <algorithm>
#include <array>
#include <random>

namespace quadrille::app
{

namespace
{

using namespace literals;
using std::chrono::days;

constexpr int patientsInABatch = 250;
constexpr int firstReference = 100001;
constexpr int oneInSoManyRuns = 50;
constexpr int weeksOfAPlan = 10;
constexpr int sessionsAWeek = 5;

class BatchClock : public Clock
{
public:
    explicit BatchClock(Date day)
        : m_moment(Moment(day) + std::chrono::hours(8))
    {
    }
    Date today() const override { return std::chrono::floor<days>(m_moment); }
    Moment now() const override { return m_moment; }
    void goOn() { m_moment += std::chrono::minutes(1); }

private:
    Moment m_moment;
};

/// A number below `bound`; std::uniform_int_distribution differs between libraries.
int below(std::mt19937& random, int bound)
{
    return static_cast<int>(random() % static_cast<unsigned>(bound));
}

std::string nameFrom(std::mt19937& random)
{
    static constexpr std::array first{"Al",  "Ber", "Cor", "Del", "Em",  "Fen",
                                      "Gor", "Hal", "Is",  "Jor", "Kel", "Lor"};
    static constexpr std::array middle{"a", "e", "i", "o", "an", "en", "il", "or"};
    static constexpr std::array last{"by",  "dal",  "fen", "gar", "holm", "kirk",
                                     "low", "mere", "nes", "ran", "stow", "wick"};
    const auto pick = [&](const auto& from) {
        return std::string(
            from[static_cast<std::size_t>(below(random, static_cast<int>(from.size())))]);
    };
    std::string name = pick(first) + pick(middle) + pick(middle);
    return name + " " + pick(first) + pick(middle) + pick(last);
}

/// What all patients of the practice share.
struct Shared {
    PractitionerId practitioner{1};
    StimulatorId unit{1};
    Draft draft;
};

Draft draftFor(const Stimulator& unit)
{
    Site site;
    site.muscle = "quadriceps";
    site.settings = presetSettings(unit);
    site.pads = {{.width = 50_mm, .height = 90_mm, .lead = Lead::a},
                 {.width = 50_mm, .height = 90_mm, .lead = Lead::b}};
    Block block;
    block.weeks = weeksOfAPlan;
    block.sites = {site};
    Draft draft;
    draft.stimulator = unit.id;
    draft.blocks = {block};
    return draft;
}

Result<Shared> setUp(db::Store& store)
{
    return store.write(
        {.practitioner = std::nullopt, .name = "Set-up"}, "set up the practice",
        [](db::Writing& writing) {
            db::savePractice(writing, {.name = "Large made-up practice",
                                       .address = "1 Measure Street\nMarrowick",
                                       .telephone = "01632 960100",
                                       .emergencyNumber = "112"});
            Practitioner ruta;
            ruta.name = "Ruta Vennel";
            Stimulator unit = commonStimulator();
            unit.name = "Two-channel unit A";
            unit.id = db::addStimulator(writing, unit);
            return Shared{db::addPractitioner(writing, ruta), *unit.id, draftFor(unit)};
        });
}

class LargePractice
{
public:
    LargePractice(const Shared& shared, Date today, std::mt19937& random)
        : m_shared(shared)
        , m_today(today)
        , m_random(random)
    {
    }

    void addPatient(db::Writing& writing, int number)
    {
        Patient patient;
        patient.reference = std::to_string(firstReference + number);
        patient.name = nameFrom(m_random);
        patient.birthDate = m_today - days(365 * 20 + below(m_random, 365 * 65));
        patient.telephone = "01632 960" + std::to_string(100 + number % 900);
        Course course;
        course.patient = db::addPatient(writing, patient);
        course.problem = "Knee replacement";
        const bool runs = number % oneInSoManyRuns == 0;
        // Monday of a course that runs in its last week, or one that ended up to ten years ago.
        const int weeksAgo = runs ? weeksOfAPlan - 1 : weeksOfAPlan + 1 + below(m_random, 520);
        const auto weekday = Weekday(m_today).iso_encoding();
        course.startDate = m_today - days(static_cast<int>(weekday) - 1) - days(7 * weeksAgo);
        if (!runs) {
            course.endDate = course.startDate + days(7 * weeksOfAPlan - 1);
        }
        const CourseId key = db::addCourse(writing, course);
        screen(writing, key, course.startDate);
        Draft draft = m_shared.draft;
        draft.course = key;
        db::issuePlan(writing, draft,
                      {.fromDate = course.startDate,
                       .reason = "first plan",
                       .issuedBy = m_shared.practitioner},
                      course.startDate);
        addDiary(writing, key, course.startDate);
    }

private:
    /// One question, so that the practice stays one that is measured by its diaries.
    void screen(db::Writing& writing, CourseId course, Date day) const
    {
        Screening screening =
            newScreening(course, {{.name = "anything", .wording = "Anything against it?"}}, 1);
        giveAnswer(screening, "anything", Answer::no);
        screening.skinSeen = true;
        db::signScreening(writing, db::addScreening(writing, screening), 1, m_shared.practitioner,
                          day);
    }

    void addDiary(db::Writing& writing, CourseId course, Date start)
    {
        DiaryEntry entry;
        entry.course = course;
        for (int session = 0; session < entriesOfEach; ++session) {
            entry.day = start + days(7 * (session / sessionsAWeek) + session % sessionsAWeek);
            entry.duration = std::chrono::minutes(10 + below(m_random, 11));
            entry.comfort = 4 + below(m_random, 7);
            db::addDiaryEntry(writing, entry);
        }
        DiaryReceived receipt;
        receipt.course = course;
        receipt.throughDate = std::min(entry.day, m_today);
        receipt.receivedOn = std::max(receipt.throughDate, m_today);
        db::addReceipt(writing, receipt);
    }

    const Shared& m_shared;
    Date m_today;
    std::mt19937& m_random;
};

Result<void> write(db::Store& store, BatchClock& clock, Date today, int patients,
                   const std::function<void(int)>& progress)
{
    const auto shared = setUp(store);
    if (!shared) {
        return shared.error();
    }
    std::mt19937 random(20417);
    LargePractice practice(*shared, today, random);
    const db::Author author{.practitioner = shared->practitioner, .name = "Ruta Vennel"};
    for (int first = 0; first < patients; first += patientsInABatch) {
        const int last = std::min(first + patientsInABatch, patients);
        auto written = store.write(author, "enter the made-up practice", [&](db::Writing& writing) {
            for (int number = first; number < last; ++number) {
                practice.addPatient(writing, number);
            }
        });
        if (!written) {
            return written;
        }
        clock.goOn();
        progress(last);
    }
    return {};
}

} // namespace

Result<void> writeLargePractice(const QString& file, Date today, int patients,
                                const std::function<void(int)>& progress)
{
    if (QFile::exists(file)) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = file.toStdString(),
                     .detail = "it is there already"};
    }
    BatchClock clock(today);
    Result<void> written;
    {
        const auto store = db::Store::open(file, db::Opening::createIfMissing, clock);
        if (!store) {
            return store.error();
        }
        written = write(**store, clock, today, patients, progress);
    }
    if (!written) {
        QFile::remove(file);
    }
    return written;
}

} // namespace quadrille::app
