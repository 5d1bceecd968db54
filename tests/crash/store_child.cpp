// SPDX-License-Identifier: GPL-3.0-or-later
// A program that writes a store until it is killed or can't go on.
//
//   store_child write FILE TAG        adds patients TAG-1, TAG-2 … with a course and a change of
//   each,
//                                     and says each number on standard output once it is saved
//   store_child full FILE TAG BYTES   the same; no file may grow past BYTES
//   store_child edit FILE TAG COUNT   adds COUNT words "TAG-n " to the note of each of two
//   patients,
//                                     over whatever others have written
#include "db/courses.h"
#include "db/people.h"
#include "db/store.h"

#include <QCoreApplication>

#include <csignal>
#include <cstdlib>
#include <string>
#include <sys/resource.h>
#include <unistd.h>

namespace
{

using namespace quadrille;

class StandingClock : public Clock
{
public:
    Date today() const override { return std::chrono::floor<std::chrono::days>(now()); }
    Moment now() const override
    {
        return Moment(Date(std::chrono::year(2026) / 3 / 12)) + std::chrono::hours(10);
    }
};

const db::Author author{.practitioner = std::nullopt, .name = "Child"};

/// Without a buffer: what is said is said before the next statement.
void say(const std::string& line)
{
    const std::string text = line + "\n";
    if (::write(STDOUT_FILENO, text.data(), text.size()) != static_cast<ssize_t>(text.size())) {
        std::exit(3); // nobody listens any more
    }
}

Result<void> saveOne(db::Store& store, const std::string& reference)
{
    const auto added = store.write(author, "add patient", [&](db::Writing& writing) {
        Patient patient{.reference = reference,
                        .name = "Person " + reference,
                        .birthDate = Date(std::chrono::year(1958) / 6 / 4),
                        .telephone = "01632 960117",
                        .note = std::string(300, 'n')};
        patient.id = db::addPatient(writing, patient);
        Course course;
        course.patient = patient.id;
        course.problem = "Knee";
        course.startDate = Date(std::chrono::year(2026) / 3 / 9);
        db::addCourse(writing, course);
        return patient;
    });
    if (!added) {
        return added.error();
    }
    return store.write(author, "change patient", [&](db::Writing& writing) {
        Patient changed = *added;
        changed.telephone = "01632 960118";
        db::changePatient(writing, changed);
    });
}

int write(db::Store& store, const std::string& tag)
{
    for (int number = 1;; ++number) {
        if (const auto saved = saveOne(store, tag + "-" + std::to_string(number)); !saved) {
            say("error " + std::to_string(static_cast<int>(saved.error().code)));
            return 1;
        }
        say(std::to_string(number));
    }
}

/// Reads, adds a word and saves, again from the start whenever somebody else was faster.
Result<void> addWord(db::Store& store, const std::string& reference, const std::string& word)
{
    for (;;) {
        auto read = store.read(
            [&](db::Reading& reading) { return db::patientByReference(reading, reference); });
        if (!read) {
            return read.error();
        }
        Patient patient = read->value();
        patient.note += word + " ";
        const auto saved = store.write(author, "change patient", [&](db::Writing& writing) {
            db::changePatient(writing, patient);
        });
        if (saved || (saved.error().code != ErrorCode::changedElsewhere &&
                      saved.error().code != ErrorCode::locked)) {
            return saved;
        }
    }
}

int edit(db::Store& store, const std::string& tag, int count)
{
    for (int number = 1; number <= count; ++number) {
        // In both orders, so that two that wait for each other would meet.
        const bool firstFirst = number % 2 == 0;
        for (const char* reference : {firstFirst ? "1001" : "1002", firstFirst ? "1002" : "1001"}) {
            if (const auto added = addWord(store, reference, tag + "-" + std::to_string(number));
                !added) {
                say("error " + std::to_string(static_cast<int>(added.error().code)));
                return 1;
            }
        }
    }
    return 0;
}

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    const StandingClock clock;
    const std::string mode = argc > 3 ? argv[1] : "";
    const auto store = db::Store::open(QString::fromLocal8Bit(argc > 3 ? argv[2] : ""),
                                       db::Opening::createIfMissing, clock);
    if (!store) {
        say("error " + std::to_string(static_cast<int>(store.error().code)));
        return 2;
    }
    const std::string tag = argv[3];
    if (mode == "full" && argc > 4) {
        std::signal(SIGXFSZ, SIG_IGN); // the write fails instead
        const rlimit limit{std::strtoul(argv[4], nullptr, 10), RLIM_INFINITY};
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    return mode == "edit" && argc > 4 ? edit(**store, tag, std::atoi(argv[4]))
                                      : write(**store, tag);
}
