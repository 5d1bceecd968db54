// SPDX-License-Identifier: GPL-3.0-or-later
// A session in the clinic is written once and can only be withdrawn.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/clinic_sessions.h"
#include "db/history.h"
#include "db/sql.h"
#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class ClinicSessions : public testing::Test
{
protected:
    ClinicSession firstSession() const
    {
        ClinicSite site;
        site.muscle = "Quadriceps";
        site.side = Side::left;
        site.channel = 2;
        site.placementConfirmed = true;
        site.contractionSeen = true;
        site.torque = 42'500;
        site.skinBefore = SkinLook::clear;
        site.skinAfter = SkinLook::pink;
        site.thresholds = {{.phaseDuration = PhaseDuration::fromCount(100),
                            .sensory = Amplitude::fromCount(12'000),
                            .motor = Amplitude::fromCount(20'500),
                            .tolerated = Amplitude::fromCount(46'000)},
                           {.phaseDuration = PhaseDuration::fromCount(300),
                            .tolerated = Amplitude::fromCount(30'000)}};
        ClinicSite other;
        other.muscle = "Soleus";
        ClinicSession session;
        session.course = ids.course;
        session.heldOn = day(2026, 3, 12);
        session.practitioner = ids.practitioner;
        session.practitionerName = tests::aPractitioner().name;
        session.sites = {site, other};
        session.note = "with her own unit";
        return session;
    }
    ClinicSessionId add(const ClinicSession& session)
    {
        return must(store->write(author(), "record a session in the clinic", [&](Writing& writing) {
            return addClinicSession(writing, session, today);
        }));
    }
    std::vector<ClinicSession> stored()
    {
        return must(
            store->read([&](Reading& reading) { return clinicSessionsOf(reading, ids.course); }));
    }
    ErrorCode codeOfSql(const std::string& sql)
    {
        return codeOf(store->write(author(), "by hand",
                                   [&](Writing& writing) { run(writing.connection(), sql); }));
    }

    const Date today = day(2026, 3, 12);
    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(ClinicSessions, ComeBackAsTheyWereEntered)
{
    ClinicSession session = firstSession();
    session.id = add(session);
    EXPECT_THAT(stored(), ElementsAre(session));
}

TEST_F(ClinicSessions, NeedASiteAndAPractitioner)
{
    ClinicSession session = firstSession();
    session.sites.clear();
    const auto refused = store->write(author(), "record", [&](Writing& writing) {
        return addClinicSession(writing, session, today);
    });
    EXPECT_EQ(codeOf(refused), ErrorCode::refused);
    session = firstSession();
    session.practitioner.reset();
    EXPECT_EQ(codeOf(store->write(
                  author(), "record",
                  [&](Writing& writing) { return addClinicSession(writing, session, today); })),
              ErrorCode::notFilled);
}

TEST_F(ClinicSessions, AreRefusedWhileTheScreeningIsNotSigned)
{
    tests::TempStore other;
    const auto unscreened = other.open();
    const auto there = tests::aPracticeWithCourse(*unscreened, tests::Screened::no);
    ClinicSession session = firstSession();
    session.course = there.course;
    const auto refused = unscreened->write(author(), "record", [&](Writing& writing) {
        return addClinicSession(writing, session, today);
    });
    EXPECT_EQ(codeOf(refused), ErrorCode::notScreened);
}

// Signed on 9 February: six months hold through 9 August, whatever day it is elsewhere.
TEST_F(ClinicSessions, AreJudgedByTheDayInTheClinic)
{
    const auto hold = [&](Date on) {
        return store->write(author(), "record", [&](Writing& writing) {
            return addClinicSession(writing, firstSession(), on);
        });
    };
    EXPECT_EQ(codeOf(hold(day(2026, 8, 10))), ErrorCode::screeningTooOld);
    EXPECT_TRUE(hold(day(2026, 8, 9)));
}

TEST_F(ClinicSessions, AreWithdrawnOverTheVersionThatWasRead)
{
    const ClinicSessionId id = add(firstSession());
    const auto withdraw = [&](Version read) {
        return store->write(author(), "withdraw",
                            [&](Writing& writing) { withdrawClinicSession(writing, id, read); });
    };
    EXPECT_EQ(codeOf(withdraw(7)), ErrorCode::changedElsewhere);
    EXPECT_FALSE(stored().at(0).withdrawn);
    must(withdraw(1));
    EXPECT_TRUE(stored().at(0).withdrawn);
    EXPECT_EQ(stored().at(0).sites, firstSession().sites) << "what was entered stays";
    must(withdraw(1)); // a second window that takes it back too changes nothing
    EXPECT_EQ(stored().at(0).version, 2);
    const auto changes = must(store->read(
        [&](Reading& reading) { return historyOfRecord(reading, "clinic_session", id.key()); }));
    EXPECT_EQ(changes.back().field, "withdrawn");
}

TEST_F(ClinicSessions, TheDatabaseItselfRefusesEveryOtherChange)
{
    add(firstSession());
    const auto before = stored();
    for (const char* sql :
         {"INSERT OR REPLACE INTO clinic_session (id, course, held_on, practitioner, "
          "practitioner_name, note) SELECT id, course, '2026-03-13', practitioner, "
          "practitioner_name, '' FROM clinic_session",
          "INSERT INTO clinic_session (course, held_on, practitioner, practitioner_name, note, "
          "sealed) SELECT course, held_on, practitioner, practitioner_name, '', 1 FROM "
          "clinic_session",
          "INSERT OR REPLACE INTO clinic_site SELECT id, clinic_session, ordinal, 'Soleus', side, "
          "channel, placement_confirmed, contraction_seen, torque_thousandths, skin_before, "
          "skin_after, note FROM clinic_site WHERE ordinal = 1",
          "INSERT INTO clinic_site SELECT 9, clinic_session, 3, muscle, side, channel, "
          "placement_confirmed, contraction_seen, torque_thousandths, skin_before, skin_after, "
          "note FROM clinic_site WHERE ordinal = 1",
          "INSERT OR REPLACE INTO clinic_threshold SELECT site, phase_duration_us, 1, 2, 3 FROM "
          "clinic_threshold",
          "INSERT INTO clinic_threshold SELECT site, 500, 1, 2, 3 FROM clinic_threshold LIMIT 1",
          "UPDATE clinic_session SET sealed = 0", "UPDATE OR REPLACE clinic_session SET id = 9",
          "UPDATE clinic_session SET held_on = '2026-03-13'", "UPDATE clinic_session SET note = ''",
          "UPDATE clinic_site SET channel = 1", "UPDATE clinic_threshold SET motor_ua = 1",
          "DELETE FROM clinic_threshold", "DELETE FROM clinic_site",
          "DELETE FROM clinic_session"}) {
        EXPECT_EQ(codeOfSql(sql), ErrorCode::refused) << sql;
    }
    EXPECT_EQ(stored(), before);
}

TEST_F(ClinicSessions, StayWithdrawnWhoeverWrites)
{
    const ClinicSessionId id = add(firstSession());
    must(store->write(author(), "withdraw",
                      [&](Writing& writing) { withdrawClinicSession(writing, id, 1); }));
    EXPECT_EQ(codeOfSql("UPDATE clinic_session SET withdrawn = 0"), ErrorCode::refused);
    EXPECT_TRUE(stored().at(0).withdrawn);
}

TEST_F(ClinicSessions, AreSealedWithTheirSitesAndNeverWithout)
{
    const std::string open = "INSERT INTO clinic_session (course, held_on, practitioner, "
                             "practitioner_name, note) VALUES (1, '2026-03-12', 1, 'Ruta', '')";
    const auto sealed = store->write(author(), "by hand", [&](Writing& writing) {
        run(writing.connection(), open);
        run(writing.connection(), "UPDATE clinic_session SET sealed = 1");
    });
    ASSERT_EQ(codeOf(sealed), ErrorCode::refused);
    EXPECT_THAT(sealed.error().detail, testing::HasSubstr("once it has its sites"));
    must(store->write(author(), "by hand",
                      [&](Writing& writing) { run(writing.connection(), open); }));
    EXPECT_THAT(must(store->read(verify)),
                ElementsAre(Complaint{Fault::orphan, "clinic_session 1", "never sealed"}));
}

TEST_F(ClinicSessions, BoundsItsValues)
{
    ClinicSession session = firstSession();
    session.sites[0].thresholds[0].tolerated = Amplitude::fromCount(1'000'001);
    const auto tooStrong = store->write(author(), "record", [&](Writing& writing) {
        return addClinicSession(writing, session, today);
    });
    EXPECT_EQ(codeOf(tooStrong), ErrorCode::outOfRange);
    session = firstSession();
    session.sites[0].thresholds[1].tolerated.reset();
    EXPECT_FALSE(store->write(author(), "record", [&](Writing& writing) {
        return addClinicSession(writing, session, today);
    })) << "a phase duration at which nothing was found says nothing";
    EXPECT_THAT(stored(), testing::IsEmpty()) << "all or nothing";
}

} // namespace
} // namespace quadrille::db
