// SPDX-License-Identifier: GPL-3.0-or-later
// Text that was made to do harm, in every field of every record that takes text.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/clinic_sessions.h"
#include "db/course_events.h"
#include "db/diary.h"
#include "db/electrode_sets.h"
#include "db/house_settings.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/practice_preferences.h"
#include "db/practice_questions.h"
#include "db/screenings.h"
#include "db/verification.h"

#include <algorithm>
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

const std::vector<std::string> hostileTexts{
    "'; DROP TABLE patient; --",
    "\" OR 1=1 --",
    "a\\'b\\\"c",
    "=HYPERLINK(\"http://example.org\",\"click\")",
    "+1+1",
    "%s%n%1%L1",
    "\xD8\xB9\xD9\x85\xD8\xB1\xE2\x80\xAE abc",     // right to left, with an override
    "\xF0\x9F\xA6\xB5\xF0\x9F\x8F\xBD\xE2\x80\x8D", // a leg with a skin tone and a joiner
    "line\nbreak\r\n\ttab",
    "<script>alert(1)</script>&amp;",
    std::string(100'000, 'x'),
};

class HostileText : public testing::Test
{
protected:
    /// Every text field of every record as a writer of it; the writer's record is new each time.
    std::vector<std::function<void(Writing&, const std::string&)>> writers()
    {
        const CourseId course = ids.course;
        return {
            [](Writing& w, const std::string& text) {
                Patient patient = tests::aPatient(text, text);
                patient.telephone = patient.note = patient.email = text;
                patient.address = patient.contactPerson = text;
                addPatient(w, patient);
            },
            [](Writing& w, const std::string& text) {
                addPractitioner(w, {.name = text, .registrationNumber = text, .initials = text});
            },
            [](Writing& w, const std::string& text) { addStimulator(w, tests::aUnit(text)); },
            [this](Writing& w, const std::string& text) {
                Course added = tests::aCourse(ids.patient);
                added.problem = text;
                const CourseId id = addCourse(w, added);
                Draft draft = tests::aDraft(ids);
                draft.course = id;
                Site& site = draft.blocks[0].sites[0];
                site.muscle = site.position = site.instruction = text;
                draft.blocks[0].origin = BlockOrigin{text, true};
                saveDraft(w, draft);
                draft.version = 1;
                tests::signAllClear(w, id, ids.practitioner, day(2026, 2, 9));
                issuePlan(
                    w, draft,
                    {.fromDate = day(2026, 2, 9), .reason = text, .issuedBy = ids.practitioner},
                    day(2026, 3, 12));
            },
            [course, this](Writing& w, const std::string& text) {
                Screening screening;
                screening.course = course;
                screening.questions = {{.name = text, .wording = text, .advice = text}};
                screening.answers = {{text, Answer::yes, text}};
                screening.skin = {{.muscle = text,
                                   .sharpBlunt = Sensation::intact,
                                   .warmCold = Sensation::notTested}};
                screening.skinSeen = true;
                addPracticeQuestion(w, {.wording = text, .reason = text, .advice = text});
                const ScreeningId id = addScreening(w, screening);
                signScreening(w, id, 1, ids.practitioner, day(2026, 3, 12));
                ScreeningOverride reason;
                reason.screening = id;
                reason.question = reason.reason = text;
                reason.practitioner = ids.practitioner;
                addOverride(w, reason);
            },
            [](Writing& w, const std::string& text) {
                HouseSettings kept = houseSettingsFrom(tests::aBlock(tests::aUnit()), {});
                kept.name = kept.muscle = kept.condition = kept.note = text;
                addHouseSettings(w, kept);
            },
            [course, this](Writing& w, const std::string& text) {
                LoanUnit unit;
                unit.stimulator = ids.stimulator;
                unit.inventoryNumber = unit.serialNumber = unit.note = text;
                Loan loan;
                loan.unit = addLoanUnit(w, unit);
                loan.course = course;
                loan.lentOn = day(2026, 3, 12);
                lend(w, loan);
            },
            [course, this](Writing& w, const std::string& text) {
                ClinicSession session;
                session.course = course;
                session.heldOn = day(2026, 3, 12);
                session.practitioner = ids.practitioner;
                session.note = text;
                session.sites.emplace_back().muscle = text;
                session.sites.front().note = text;
                addClinicSession(w, session, day(2026, 3, 12));
            },
            [course, this](Writing& w, const std::string& text) {
                DiaryDay monday;
                monday.course = course;
                monday.day = day(2026, 2, 9) + std::chrono::days(m_day++);
                monday.remark = text;
                saveDiaryDay(w, monday);
            },
            [course, this](Writing& w, const std::string& text) {
                FollowUp visit;
                visit.course = course;
                visit.heldOn = day(2026, 3, 2);
                visit.practitioner = ids.practitioner;
                visit.review = visit.reason = text;
                addFollowUp(w, visit);
                Measurement value;
                value.course = course;
                value.measuredOn = day(2026, 3, 2);
                value.kind = ownKind; // kind and unit are words of the program
                value.unit = "N.m";
                value.subject = value.method = value.device = text;
                addMeasurement(w, value);
                ElectrodeSet set;
                set.course = course;
                set.issuedOn = day(2026, 3, 2);
                set.description = text;
                addElectrodeSet(w, set);
                CounterReading counter;
                counter.course = course;
                counter.readOn = day(2026, 3, 2);
                counter.totalUses = 15;
                counter.explanation = CounterExplanation::other;
                counter.explanationWords = text;
                addCounterReading(w, counter);
                setPracticePreference(w, text, text, 0);
            },
        };
    }

    int m_day = 0;
    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(HostileText, IsKeptAsItIsAndDoesNothing)
{
    const auto all = writers();
    for (const std::string& text : hostileTexts) {
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto saved =
                store->write(author(), "enter", [&](Writing& writing) { all[i](writing, text); });
            EXPECT_TRUE(saved) << i << ": " << text.substr(0, 40);
        }
    }
    must(store->read([&](Reading& reading) {
        EXPECT_THAT(verify(reading), testing::IsEmpty());
        for (const std::string& text : hostileTexts) {
            const auto patient = patientByReference(reading, text);
            ASSERT_TRUE(patient) << text.substr(0, 40);
            EXPECT_EQ(patient->name, text);
            EXPECT_EQ(patient->address, text);
            const auto units = inventory(reading);
            EXPECT_TRUE(std::ranges::any_of(units, [&](const InventoryRow& row) {
                return row.unit.inventoryNumber == text && row.unit.serialNumber == text &&
                       row.unit.note == text && row.loan;
            })) << text.substr(0, 40);
            const auto sessions = clinicSessionsOf(reading, ids.course);
            EXPECT_TRUE(std::ranges::any_of(sessions, [&](const ClinicSession& session) {
                return session.note == text && session.sites.at(0).muscle == text &&
                       session.sites.at(0).note == text;
            })) << text.substr(0, 40);
            const auto counters = counterReadingsOf(reading, ids.course);
            EXPECT_TRUE(std::ranges::any_of(counters, [&](const CounterReading& counter) {
                return counter.explanationWords == text;
            })) << text.substr(0, 40);
        }
    }));
}

TEST_F(HostileText, ThatNoDatabaseKeepsWholeIsRefusedEverywhereAndNothingIsSaved)
{
    const std::vector<std::string> impossible{
        std::string(10'000'000, 'x'),
        std::string("before\0after", 12),
        "\xC3\x28", // no UTF-8
        "\xED\xA0\x80",
    };
    const auto rows = [&] {
        return must(store->read([](Reading& reading) {
            return numberFrom(reading.connection(), "SELECT count(*) FROM change_record");
        }));
    };
    const auto before = rows();
    const auto all = writers();
    for (const std::string& text : impossible) {
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto saved =
                store->write(author(), "enter", [&](Writing& writing) { all[i](writing, text); });
            EXPECT_EQ(codeOf(saved), ErrorCode::badFormat) << i << ": " << text.substr(0, 10);
        }
    }
    EXPECT_EQ(rows(), before);
}

} // namespace
} // namespace quadrille::db
