// SPDX-License-Identifier: GPL-3.0-or-later
// Measurements with their trials: kept to the thousandth, corrected over the version that was read,
// withdrawn and never deleted.
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/courses.h"
#include "db/history.h"
#include "db/measurements.h"
#include "db/verification.h"

#include <QFile>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class Measurements : public testing::Test
{
protected:
    template <class Act>
    auto write(Act&& act)
    {
        return store->write(author(), "test", std::forward<Act>(act));
    }
    std::vector<Measurement> stored()
    {
        return must(
            store->read([&](Reading& reading) { return measurementsOf(reading, ids.course); }));
    }
    /// Best of three, at 60° of the knee.
    Measurement torque() const
    {
        Measurement made;
        made.course = ids.course;
        made.measuredOn = day(2026, 3, 2);
        made.kind = isometricTorque;
        made.subject = "quadriceps";
        made.side = Side::left;
        made.unit = "N.m";
        made.method = "knee at 60°, strap";
        made.device = "hand-held gauge";
        made.counted = Counted::best;
        made.trials = {61'525, 66'250, 64'000};
        made.thousandths = 66'250;
        return made;
    }
    Measurement added(Measurement measurement)
    {
        measurement.id =
            must(write([&](Writing& writing) { return addMeasurement(writing, measurement); }));
        measurement.recordedByName = "Set-up";
        return measurement;
    }
    auto tryToAdd(const Measurement& measurement)
    {
        return write([&](Writing& writing) { return addMeasurement(writing, measurement); });
    }
    /// Whether the database itself takes a statement; nothing is kept.
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

TEST_F(Measurements, AreKeptToTheThousandthWithTheirTrialsInOrder)
{
    const Measurement first = added(torque());
    Measurement single = torque();
    single.measuredOn = day(2026, 3, 12);
    single.counted = Counted::one;
    single.trials.clear();
    single.thousandths = -1;
    const Measurement second = added(single);
    EXPECT_THAT(stored(), ElementsAre(first, second));
}

TEST_F(Measurements, ACorrectionKeepsTheOldValueInTheChangeRecord)
{
    Measurement changed = added(torque());
    changed.trials = {61'525, 68'000};
    changed.thousandths = 68'000;
    must(write([&](Writing& writing) { changeMeasurement(writing, changed); }));
    changed.version = 2;
    EXPECT_THAT(stored(), ElementsAre(changed));
    const auto changes = must(store->read([&](Reading& reading) {
        return historyOfRecord(reading, "measurement", changed.id->key());
    }));
    const auto value = std::ranges::find(changes, "value_thousandths", &Change::field);
    ASSERT_NE(value, changes.end());
    EXPECT_EQ(value->from, "66250");
    EXPECT_EQ(value->to, "68000");
    const auto dropped = std::ranges::find(changes, "trials.3", &Change::field);
    ASSERT_NE(dropped, changes.end());
    EXPECT_EQ(dropped->from, "64000");
    EXPECT_FALSE(dropped->to);
}

TEST_F(Measurements, NobodyCorrectsOverSomebodyElsesCorrection)
{
    Measurement changed = added(torque());
    Measurement stale = changed;
    changed.device = "fixed gauge";
    must(write([&](Writing& writing) { changeMeasurement(writing, changed); }));
    stale.withdrawn = true;
    const auto late = write([&](Writing& writing) { changeMeasurement(writing, stale); });
    EXPECT_EQ(codeOf(late), ErrorCode::changedElsewhere);
    EXPECT_FALSE(stored().at(0).withdrawn);
}

TEST_F(Measurements, AreWithdrawnAndNeverDeleted)
{
    Measurement mistaken = added(torque());
    mistaken.withdrawn = true;
    must(write([&](Writing& writing) { changeMeasurement(writing, mistaken); }));
    ASSERT_THAT(stored(), SizeIs(1));
    EXPECT_TRUE(stored().at(0).withdrawn);
    EXPECT_THAT(stored().at(0).trials, SizeIs(3));
    EXPECT_FALSE(takes("DELETE FROM measurement"));
}

TEST_F(Measurements, KeepTheirCourse)
{
    const CourseId other = must(
        write([&](Writing& writing) { return addCourse(writing, tests::aCourse(ids.patient)); }));
    Measurement moved = added(torque());
    moved.course = other;
    EXPECT_EQ(codeOf(write([&](Writing& writing) { changeMeasurement(writing, moved); })),
              ErrorCode::refused);
    EXPECT_FALSE(takes("UPDATE measurement SET course = " + std::to_string(other.key())));
}

TEST_F(Measurements, AValueIsWhatItsTrialsMakeOrItIsRefused)
{
    Measurement wrong = torque();
    wrong.thousandths = 64'000; // neither end of the three
    EXPECT_EQ(codeOf(tryToAdd(wrong)), ErrorCode::refused);
    wrong.trials = {66'250};
    wrong.thousandths = 66'250;
    EXPECT_EQ(codeOf(tryToAdd(wrong)), ErrorCode::refused) << "one trial is a value";
    wrong.trials = {1, 2, 3, 4, 5, 66'250};
    EXPECT_EQ(codeOf(tryToAdd(wrong)), ErrorCode::refused) << "six are too many";
    wrong.trials = {66'250, 66'250};
    wrong.counted = Counted::one;
    EXPECT_EQ(codeOf(tryToAdd(wrong)), ErrorCode::refused);
    EXPECT_THAT(stored(), IsEmpty());
    Measurement lowest = torque(); // the weakest of three
    lowest.thousandths = 61'525;
    EXPECT_EQ(codeOf(tryToAdd(lowest)), ErrorCode::refused);
    Measurement mean = torque();
    mean.counted = Counted::mean;
    mean.thousandths = 63'925; // (61.525 + 66.25 + 64) / 3
    EXPECT_TRUE(tryToAdd(mean));
}

TEST_F(Measurements, TheBestIsTheEndThatIsBetterForTheKind)
{
    // By hand: of 8.1 s, 9.4 s and 8.7 s the shortest is 8.1 s.
    Measurement best = torque();
    best.trials = {8'100, 9'400, 8'700};
    const auto takesAs = [&](std::string_view kind, std::int64_t value) {
        best.kind = kind;
        best.thousandths = value;
        return tryToAdd(best).has_value();
    };
    EXPECT_TRUE(takesAs("timed_up_and_go", 8'100));
    EXPECT_FALSE(takesAs("timed_up_and_go", 9'400));
    EXPECT_TRUE(takesAs("grip_force", 9'400));
    EXPECT_FALSE(takesAs("grip_force", 8'100));
    for (const std::string_view kind : {std::string_view("girth"), ownKind}) {
        EXPECT_TRUE(takesAs(kind, 8'100)) << kind;
        EXPECT_TRUE(takesAs(kind, 9'400)) << kind;
        EXPECT_FALSE(takesAs(kind, 8'700)) << kind;
    }
    const auto faults = [&] {
        return must(store->read([](Reading& reading) { return verify(reading); }));
    };
    EXPECT_THAT(faults(), IsEmpty());
    run(*temp.rawConnection(), "UPDATE measurement SET value_thousandths = 9400 WHERE kind = "
                               "'timed_up_and_go'");
    EXPECT_THAT(faults(), SizeIs(1));
    run(*temp.rawConnection(), "UPDATE measurement SET value_thousandths = 8100");
    EXPECT_THAT(faults(), ElementsAre(Complaint{Fault::value, "measurement 2",
                                                "it is not what its trials make"}))
        << "the grip";
}

TEST_F(Measurements, TheDatabaseTakesUcumCodesAndKindsOfTheCatalogueOnly)
{
    added(torque());
    for (const char* unit : {"N.m", "deg", "{stairs}", "mm[Hg]"}) {
        EXPECT_TRUE(takes("UPDATE measurement SET unit = '" + std::string(unit) + "'")) << unit;
    }
    for (const char* unit : {"", "N·m", "N m", "°"}) {
        EXPECT_FALSE(takes("UPDATE measurement SET unit = '" + std::string(unit) + "'")) << unit;
    }
    for (const char* kind : {"", "Isometric torque", "torque; --"}) {
        EXPECT_FALSE(takes("UPDATE measurement SET kind = '" + std::string(kind) + "'")) << kind;
    }
    Measurement trade = torque();
    trade.unit = "N·m";
    EXPECT_EQ(codeOf(tryToAdd(trade)), ErrorCode::refused);
}

TEST_F(Measurements, TheDatabaseBoundsTrialsAndTheWordsOfChoices)
{
    const std::string id = std::to_string(added(torque()).id->key());
    EXPECT_TRUE(takes("INSERT INTO measurement_trial VALUES (" + id + ", 5, 1)"));
    EXPECT_FALSE(takes("INSERT INTO measurement_trial VALUES (" + id + ", 6, 1)"));
    EXPECT_FALSE(takes("INSERT INTO measurement_trial VALUES (" + id + ", 0, 1)"));
    EXPECT_FALSE(takes("INSERT INTO measurement_trial VALUES (" + id + ", 3, 1)")) << "twice";
    EXPECT_FALSE(takes("INSERT INTO measurement_trial VALUES (99, 1, 1)")) << "of nothing";
    EXPECT_FALSE(takes("INSERT INTO measurement_trial VALUES (" + id + ", 5, 2000000000000)"));
    EXPECT_FALSE(takes("UPDATE measurement_trial SET value_thousandths = 1"));
    EXPECT_FALSE(takes("UPDATE measurement SET counted = 'median'"));
    EXPECT_FALSE(takes("UPDATE course SET treated_side = 'middle'"));
    EXPECT_TRUE(takes("UPDATE course SET treated_side = 'both'"));
}

TEST_F(Measurements, AValueThatItsTrialsDoNotMakeIsFoundByVerification)
{
    added(torque());
    const auto faults = [&] {
        return must(store->read([](Reading& reading) { return verify(reading); }));
    };
    EXPECT_THAT(faults(), IsEmpty());
    const auto raw = temp.rawConnection();
    for (const char* wrong :
         {"UPDATE measurement SET value_thousandths = 64000",
          "UPDATE measurement SET counted = 'mean'", "UPDATE measurement SET counted = 'one'",
          "DELETE FROM measurement_trial"}) {
        run(*raw, wrong);
        EXPECT_THAT(faults(), ElementsAre(Complaint{Fault::value, "measurement 1",
                                                    "it is not what its trials make"}))
            << wrong;
        run(*raw, "UPDATE measurement SET counted = 'best', value_thousandths = 66250");
    }
}

TEST_F(Measurements, OneTakenBeforeTheBirthIsFoundByVerification)
{
    Measurement early = torque();
    early.measuredOn = day(1950, 3, 2);
    added(early);
    const auto faults = must(store->read([](Reading& reading) { return verify(reading); }));
    ASSERT_THAT(faults, SizeIs(1));
    EXPECT_EQ(faults[0].fault, Fault::date);
}

TEST_F(Measurements, KindsOfThePracticesOwnAreKnownAsTheyWereLastMeasured)
{
    Measurement stairs = torque();
    stairs.kind = ownKind;
    stairs.subject = "Stairs in a minute";
    stairs.unit = "{steps}";
    stairs.side = Side::middle;
    added(stairs);
    stairs.unit = "{stairs}";
    added(stairs);
    Measurement mistaken = stairs;
    mistaken.subject = "Stars in a minute";
    mistaken.withdrawn = true;
    added(mistaken);
    Measurement heel = stairs;
    heel.subject = "Heel rises";
    heel.unit = "{rises}";
    heel.side = Side::left;
    added(heel);
    added(torque());
    EXPECT_THAT(must(store->read(ownKinds)),
                ElementsAre(OwnKind{"Heel rises", "{rises}", true},
                            OwnKind{"Stairs in a minute", "{stairs}", false}));
}

/// A file of schema 3 with other words for kind and unit than it has.
class OlderMeasurement : public testing::Test
{
protected:
    Measurement broughtForward(const std::string& kind, const std::string& unit)
    {
        const tests::TempStore temp;
        QFile dump(QStringLiteral(QUADRILLE_TEST_STORES "/schema_3.dump"));
        if (!dump.open(QIODevice::ReadOnly)) {
            throw std::runtime_error("no dump");
        }
        tests::runDump(temp.file(), dump.readAll().toStdString());
        run(*temp.rawConnection(),
            "UPDATE measurement SET kind = '" + kind + "', unit = '" + unit + "'");
        const auto store = temp.open(Opening::existing);
        return must(store->read(
                        [](Reading& reading) { return measurementsOf(reading, CourseId(1)); }))
            .at(0);
    }
};

TEST_F(OlderMeasurement, GetsTheCodeOfItsUnitAndKeepsItsKind)
{
    const Measurement torque = broughtForward("isometric_torque", "N·m");
    EXPECT_EQ(torque.kind, "isometric_torque");
    EXPECT_EQ(torque.unit, "N.m");
    EXPECT_EQ(torque.thousandths, 61'500);
    EXPECT_EQ(torque.method, "strap at 60°");
    EXPECT_EQ(torque.counted, Counted::one);
    EXPECT_EQ(broughtForward("range_of_motion", "°").unit, "deg");
    EXPECT_EQ(broughtForward("girth", "cm").unit, "cm");
}

TEST_F(OlderMeasurement, OfAnUnknownKindBecomesThePracticesOwnUnderItsName)
{
    const Measurement stairs = broughtForward("Stairs in a minute", "stairs up");
    EXPECT_EQ(stairs.kind, ownKind);
    EXPECT_EQ(stairs.subject, "Stairs in a minute");
    EXPECT_EQ(stairs.unit, "{stairs_up}");
}

TEST_F(OlderMeasurement, RemembersAUnitThatNoCodeHas)
{
    const Measurement chairs = broughtForward("chairs", "Stühle");
    EXPECT_EQ(chairs.unit, "{unit}");
    EXPECT_EQ(chairs.method, "strap at 60° (Stühle)");
}

} // namespace
} // namespace quadrille::db
