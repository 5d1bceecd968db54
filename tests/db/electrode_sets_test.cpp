// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/courses.h"
#include "db/electrode_lives.h"
#include "db/electrode_sets.h"
#include "db/history.h"
#include "db/practice_preferences.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using namespace literals;
using testing::ElementsAre;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class ElectrodeSets : public testing::Test
{
protected:
    template <class Act>
    auto write(Act&& act)
    {
        return store->write(author(), "test", std::forward<Act>(act));
    }
    std::vector<ElectrodeSet> stored()
    {
        return must(
            store->read([&](Reading& reading) { return electrodeSetsOf(reading, ids.course); }));
    }
    ElectrodeSet added()
    {
        ElectrodeSet set;
        set.course = ids.course;
        set.issuedOn = day(2026, 2, 6);
        set.description = "right thigh";
        set.pads = 4;
        set.type = ElectrodeType::selfAdhesive;
        set.shape = PadShape::rectangle;
        set.width = 50_mm;
        set.height = 90_mm;
        set.life = {.uses = 20, .months = 1};
        set.id = must(write([&](Writing& writing) { return addElectrodeSet(writing, set); }));
        return set;
    }
    bool takes(const std::string& sql)
    {
        const auto raw = temp.rawConnection();
        const Transaction undone(*raw, dialect::beginWriting);
        try {
            run(*raw, sql);
        } catch (const SqlError&) {
            return false;
        }
        return true;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(ElectrodeSets, AreKeptAndTakenOutOfUseOverTheVersionThatWasRead)
{
    ElectrodeSet set = added();
    EXPECT_THAT(stored(), ElementsAre(set));
    const ElectrodeSet stale = set;
    set.outOfUseOn = day(2026, 3, 2);
    must(write([&](Writing& writing) { changeElectrodeSet(writing, set); }));
    set.version = 2;
    EXPECT_THAT(stored(), ElementsAre(set));
    EXPECT_EQ(codeOf(write([&](Writing& writing) {
                  ElectrodeSet late = stale;
                  late.withdrawn = true;
                  changeElectrodeSet(writing, late);
              })),
              ErrorCode::changedElsewhere);
    const auto changes = must(store->read([&](Reading& reading) {
        return historyOfRecord(reading, "electrode_set", set.id->key());
    }));
    ASSERT_THAT(changes, testing::SizeIs(2));
    EXPECT_EQ(changes.back().field, "out_of_use_on");
    EXPECT_EQ(changes.back().to, "2026-03-02");
}

TEST_F(ElectrodeSets, OneThatIsRoundOrFromAnOlderProgramIsKept)
{
    ElectrodeSet round = added();
    round.shape = PadShape::round;
    round.width = round.height = 70_mm;
    round.type = ElectrodeType::carbonRubberGel;
    must(write([&](Writing& writing) { changeElectrodeSet(writing, round); }));
    round.version = 2;
    EXPECT_THAT(stored(), ElementsAre(round));
    ElectrodeSet old = round;
    old.type.reset();
    old.shape.reset();
    old.width = old.height = Length();
    old.life = {};
    must(write([&](Writing& writing) { changeElectrodeSet(writing, old); }));
    old.version = 3;
    EXPECT_THAT(stored(), ElementsAre(old));
}

TEST_F(ElectrodeSets, TheDatabaseBoundsWhatASetCanBe)
{
    added();
    const auto set = [](const std::string& values) { return "UPDATE electrode_set SET " + values; };
    EXPECT_TRUE(takes(set("type = 'carbon_rubber_sponge'")));
    EXPECT_FALSE(takes(set("type = 'gold'")));
    EXPECT_TRUE(takes(set("shape = 'round', width_mm = 50, height_mm = 50")));
    EXPECT_FALSE(takes(set("shape = 'round'"))) << "a round pad has one measure";
    EXPECT_FALSE(takes(set("width_mm = 4")));
    EXPECT_FALSE(takes(set("height_mm = 401")));
    EXPECT_FALSE(takes(set("width_mm = NULL"))) << "a shape has its sides";
    EXPECT_TRUE(takes(set("shape = NULL, width_mm = NULL, height_mm = NULL")));
    EXPECT_FALSE(takes(set("life_sessions = 0")));
    EXPECT_FALSE(takes(set("life_months = 0")));
    EXPECT_FALSE(takes(set("life_months = 121")));
    EXPECT_TRUE(takes(set("life_months = 120, life_sessions = NULL")));
    EXPECT_TRUE(takes(set("out_of_use_on = '2026-02-06'")));
    EXPECT_FALSE(takes(set("out_of_use_on = '2026-02-05'"))) << "before it was handed out";
    EXPECT_FALSE(takes(set("out_of_use_on = '2026-02-30'")));
    EXPECT_FALSE(takes("DELETE FROM electrode_set"));
}

TEST_F(ElectrodeSets, KeepTheirCourse)
{
    const CourseId other = must(
        write([&](Writing& writing) { return addCourse(writing, tests::aCourse(ids.patient)); }));
    ElectrodeSet moved = added();
    moved.course = other;
    EXPECT_EQ(codeOf(write([&](Writing& writing) { changeElectrodeSet(writing, moved); })),
              ErrorCode::refused);
}

TEST_F(ElectrodeSets, ThePracticeReckonsWithItsOwnLives)
{
    const auto lives = [&] { return must(store->read(electrodeLives)); };
    EXPECT_EQ(lives(), ElectrodeLives{});
    ElectrodeLives own;
    own.selfAdhesive = {.uses = 30, .months = std::nullopt};
    own.carbonRubberGel.months = 24;
    must(write([&](Writing& writing) { saveElectrodeLives(writing, ElectrodeLives{}, own); }));
    EXPECT_EQ(lives(), own);
    ElectrodeLives other = ElectrodeLives{};
    other.selfAdhesive.uses = 15;
    EXPECT_EQ(codeOf(write(
                  [&](Writing& writing) { saveElectrodeLives(writing, ElectrodeLives{}, other); })),
              ErrorCode::changedElsewhere);
    EXPECT_EQ(lives(), own);
    ElectrodeLives again = own;
    again.selfAdhesive.uses = 25;
    must(write([&](Writing& writing) { saveElectrodeLives(writing, own, again); }));
    EXPECT_EQ(lives(), again);
}

TEST_F(ElectrodeSets, ALifeThatIsNoNumberIsAnErrorUntilItIsSetAgain)
{
    const std::string name = "pad_life_uses.self_adhesive";
    const auto lives = [&] { return store->read(electrodeLives); };
    Version version = 0;
    for (const char* text : {"text", "0", "10001", "30 uses"}) {
        must(write([&](Writing& writing) { setPracticePreference(writing, name, text, version); }));
        ++version;
        EXPECT_EQ(codeOf(lives()), ErrorCode::badFormat) << text;
    }
    // The form could read nothing, and shows the usual lives.
    must(write([&](Writing& writing) {
        saveElectrodeLives(writing, ElectrodeLives{}, ElectrodeLives{});
    }));
    EXPECT_EQ(must(lives()), ElectrodeLives{});
    must(write([&](Writing& writing) { setPracticePreference(writing, name, "", version + 1); }));
    EXPECT_EQ(must(lives()).selfAdhesive.uses, std::nullopt) << "no limit was said, not guessed";
}

TEST_F(ElectrodeSets, ACourseSaysWhichSideItTreats)
{
    Course course = must(store->read([&](Reading& reading) {
                        return db::course(reading, ids.course);
                    })).value();
    EXPECT_FALSE(course.treatedSide);
    course.treatedSide = TreatedSide::left;
    must(write([&](Writing& writing) { changeCourse(writing, course); }));
    EXPECT_EQ(must(store->read([&](Reading& reading) {
                  return db::course(reading, ids.course);
              }))->treatedSide,
              TreatedSide::left);
}

} // namespace
} // namespace quadrille::db
