// SPDX-License-Identifier: GPL-3.0-or-later
// The published starting points against a table of the studies, made by hand: each cell as it was
// read, "m" where it is from memory, "a" where it is assumed, "?" where it is too doubtful to be
// offered, nothing where it is not said. What they amount to was computed by hand with ramps inside
// the on time. Where a study's own text was not at hand, its row says so.
#include "app/words/starting_point_text.h"
#include "app/words/starting_points.h"

#include "core/starting_point.h"

#include <QLocale>

#include <algorithm>
#include <array>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <string_view>

using namespace quadrille;
using namespace quadrille::app;
using testing::HasSubstr;
using testing::Not;

namespace
{

constexpr Standing seen = Standing::read;
constexpr Standing quoted = Standing::readElsewhere;
constexpr Standing memory = Standing::fromMemory;

struct Row {
    const char* name;
    Standing standing;
    // cells
    const char* hertz;
    const char* microseconds;
    const char* on;
    const char* off;
    const char* up;
    const char* down;
    const char* minutes;
    const char* contractions;
    const char* perDay;
    const char* days;
    const char* weeks;
    // words: "r" read, "q" read in a text that quotes it, "m" from memory
    const char* intensity;
    const char* position;
};

// clang-format off
constexpr std::array table{
    //  study                                standing  Hz     µs          on     off    up      down   min    contr  a day  days   weeks int.  pos.
    Row{"Stevens-Lapsley 2012",              quoted, "50",  "250",      "15",  "45",  "3",    "",    "",    "15",  "2",   "7m",  "6",      "q",  "m"},
    Row{"Avramidis 2003",                    seen,   "40",  "300",      "?",   "?",   "",     "",    "120", "",    "2",   "7a",  "6",      "r",  ""},
    Row{"Petterson 2009",                    quoted, "50m", "",         "10m", "80m", "2-3m", "",    "",    "10m", "1a",  "2-3", "6",      "m",  "m"},
    Row{"Snyder-Mackler 1995",               memory, "75m", "",         "11m", "120m","?",    "",    "",    "15m", "1m",  "3m",  "4m",     "m",  "m"},
    Row{"Fitzgerald 2003",                   quoted, "75",  "",         "10",  "50",  "2",    "",    "",    "10m", "1m",  "2m",  "11-12m", "q",  "m"},
    Row{"Feil 2011, garment electrodes",     quoted, "50",  "300-400",  "5",   "10",  "2",    "1",   "20m", "",    "3m",  "5m",  "12m",    "",   "q"},
    Row{"Feil 2011, single pads",            quoted, "50",  "300-400",  "10",  "20",  "1.5",  "1",   "20m", "",    "3m",  "5m",  "12m",    "",   "q"},
    Row{"Lieber 1996",                       seen,   "50",  "250",      "10",  "20",  "2",    "",    "30",  "",    "1",   "5",   "4",      "r",  ""},
    Row{"Wigerstad-Lossing 1988",            quoted, "30",  "300",      "6",   "10",  "2",    "",    "10m", "",    "4m",  "3m",  "6m",     "q",  "q"},
    Row{"Talbot 2003",                       seen,   "50m", "300m",     "10m", "50m", "",     "",    "",    "15m", "1",   "3",   "12",     "r",  ""},
    Row{"Elboim-Gabyzon 2013",               seen,   "75",  "250",      "10m", "50m", "",     "",    "",    "10m", "1a",  "2",   "6",      "m",  ""},
    Row{"Bruce-Brand 2012",                  seen,   "50m", "100-400m", "?",   "?",   "",     "",    "20m", "",    "1m",  "5m",  "6",      "m",  ""},
    Row{"Palmieri-Smith 2010",               seen,   "50m", "",         "10m", "50m", "",     "",    "",    "10m", "1a",  "3",   "4",      "m",  ""},
    Row{"Neder 2002, first stage",           quoted, "50",  "300-400",  "2",   "18",  "",     "",    "15",  "",    "1a",  "5",   "",       "q",  ""},
    Row{"Neder 2002, last stage",            quoted, "50",  "300-400",  "10",  "30",  "",     "",    "30",  "",    "1a",  "5",   "",       "q",  ""},
    Row{"Maddocks 2016, first stage",        quoted, "50",  "350",      "2",   "15",  "",     "",    "30",  "",    "1a",  "7",   "",       "q",  ""},
    Row{"Maddocks 2016, last stage",         quoted, "50",  "350",      "10",  "15",  "",     "",    "30",  "",    "1a",  "7",   "",       "q",  ""},
    Row{"Bourjeily-Habr 2002",               quoted, "50",  "",         "0.2", "1.3", "",     "",    "20",  "",    "1a",  "3",   "6",      "q",  ""},
    Row{"Quittan 1999",                      seen,   "50",  "?",        "2",   "6",   "",     "",    "?",   "",    "?",   "?",   "8",      "",   ""},
    Row{"Kho 2015, quadriceps",              quoted, "50",  "400",      "5",   "10",  "2",    "0-1", "60",  "",    "1",   "7",   "",       "q",  ""},
    Row{"Kho 2015, lower leg",               quoted, "50",  "250",      "5",   "5",   "2",    "",    "60",  "",    "1",   "7",   "",       "q",  ""},
    Row{"Segers 2014",                       quoted, "50",  "300-500",  "8",   "20",  "",     "",    "25",  "",    "1a",  "5",   "",       "q",  ""},
    Row{"Gerovasili 2009",                   memory, "45m", "400m",     "12m", "6m",  "?",    "?",   "55m", "",    "1m",  "7m",  "",       "m",  "m"},
    Row{"Powell 1999",                       seen,   "20m", "300m",     "?",   "?",   "?",    "?",   "30",  "",    "3",   "7a",  "8",      "m",  ""},
    Row{"Linn 1999, first week",             quoted, "30",  "300",      "15",  "15",  "3",    "",    "30",  "",    "4",   "7a",  "",       "q",  "m"},
    Row{"Linn 1999, fourth week",            quoted, "30",  "300",      "15",  "15",  "3",    "",    "60",  "",    "4",   "7a",  "",       "",   ""},
    Row{"Resistance by stimulation, spinal cord injury",
                                             seen,   "35",  "450m",     "5m",  "",    "",     "",    "",    "40",  "1a",  "2",   "12-26",  "r",  "m"},
    Row{"Ward and Shkuratova 2002",          seen,   "50",  "200",      "10",  "50",  "",     "",    "10",  "",    "1",   "5a",  "",       "r",  ""},
    Row{"Holcomb 2006",                      seen,   "90",  "",         "15",  "45",  "",     "",    "",    "15",  "1a",  "3",   "4",      "r",  "m"},
    Row{"Hand opening after stroke 2022",    seen,   "",    "",         "",    "",    "",     "",    "29",  "",    "",    "",    "12",     "",   ""},
    Row{"Ennis 2017",                        seen,   "4",   "",         "",    "",    "",     "",    "60",  "",    "1a",  "5",   "8",      "",   "m"},
};

struct Amounts {
    const char* name;
    std::int64_t contractions;
    double onTimeSeconds; ///< of a session
    std::int64_t leastWeek;
    std::int64_t mostWeek;
    double leastWeekMinutes;
    double mostWeekMinutes;
};
constexpr std::array amounts{
    Amounts{"Stevens-Lapsley 2012",           15,  225,  210,  210, 52.50, 52.50},
    Amounts{"Petterson 2009",                 10,  100,   20,   30, 3.333, 5.000},
    Amounts{"Snyder-Mackler 1995",            15,  165,   45,   45, 8.250, 8.250},
    Amounts{"Fitzgerald 2003",                10,  100,   20,   20, 3.333, 3.333},
    Amounts{"Feil 2011, garment electrodes",  80,  400, 1200, 1200, 100.0, 100.0},
    Amounts{"Feil 2011, single pads",         40,  400,  600,  600, 100.0, 100.0},
    Amounts{"Lieber 1996",                    60,  600,  300,  300, 50.00, 50.00},
    Amounts{"Wigerstad-Lossing 1988",         38,  228,  456,  456, 45.60, 45.60},
    Amounts{"Talbot 2003",                    15,  150,   45,   45, 7.500, 7.500},
    Amounts{"Elboim-Gabyzon 2013",            10,  100,   20,   20, 3.333, 3.333},
    Amounts{"Palmieri-Smith 2010",            10,  100,   30,   30, 5.000, 5.000},
    Amounts{"Neder 2002, first stage",        45,   90,  225,  225, 7.500, 7.500},
    Amounts{"Neder 2002, last stage",         45,  450,  225,  225, 37.50, 37.50},
    Amounts{"Maddocks 2016, first stage",    106,  212,  742,  742, 24.73, 24.73},
    Amounts{"Maddocks 2016, last stage",      72,  720,  504,  504, 84.00, 84.00},
    Amounts{"Bourjeily-Habr 2002",           800,  160, 2400, 2400, 8.000, 8.000},
    Amounts{"Kho 2015, quadriceps",          240, 1200, 1680, 1680, 140.0, 140.0},
    Amounts{"Kho 2015, lower leg",           360, 1800, 2520, 2520, 210.0, 210.0},
    Amounts{"Segers 2014",                    54,  432,  270,  270, 36.00, 36.00},
    Amounts{"Gerovasili 2009",               183, 2196, 1281, 1281, 256.2, 256.2},
    Amounts{"Linn 1999, first week",          60,  900, 1680, 1680, 420.0, 420.0},
    Amounts{"Linn 1999, fourth week",        120, 1800, 3360, 3360, 840.0, 840.0},
    Amounts{"Resistance by stimulation, spinal cord injury",
                                              40,  200,   80,   80, 6.667, 6.667},
    Amounts{"Ward and Shkuratova 2002",       10,  100,   50,   50, 8.333, 8.333},
    Amounts{"Holcomb 2006",                   15,  225,   45,   45, 11.25, 11.25},
};
// clang-format on

StartingPoint pointNamed(std::string_view name)
{
    const auto points = publishedStartingPoints();
    const auto found = std::ranges::find(points, name, &StartingPoint::name);
    EXPECT_NE(found, points.end()) << name;
    return found == points.end() ? StartingPoint{} : *found;
}

/// A cell as the table writes it.
std::string cellOf(const CitedCount& cited, double perUnit)
{
    if (cited.standing == Standing::notSaid) {
        return {};
    }
    if (cited.standing == Standing::doubtful) {
        return "?";
    }
    const auto number = [&](std::int64_t count) {
        return QString::number(static_cast<double>(count) / perUnit).toStdString();
    };
    const std::string figure =
        cited.isRange() ? number(cited.least) + "-" + number(cited.most) : number(cited.least);
    return figure + (cited.standing == Standing::fromMemory ? "m"
                     : cited.standing == Standing::assumed  ? "a"
                                                            : "");
}

/// How far words were checked, as the table writes it.
std::string cellOf(const CitedWords& cited)
{
    if (cited.text.empty()) {
        return {};
    }
    return cited.standing == Standing::read            ? "r"
           : cited.standing == Standing::readElsewhere ? "q"
           : cited.standing == Standing::fromMemory    ? "m"
                                                       : "?";
}

const QuantityText& text()
{
    static const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    return english;
}

std::string problemOf(const std::string& json)
{
    const auto points = startingPointsFrom(QByteArray::fromStdString(json));
    EXPECT_FALSE(points) << json;
    return points ? std::string() : points.error().detail;
}

std::string withCells(const std::string& cells)
{
    return R"({"version":1,"starting_points":[{"name":"A","citation":"B","standing":"read")" +
           cells + "}]}";
}

} // namespace

TEST(PublishedStartingPoints, SayOfEachFigureWhatTheStudySaysAndHowFarItWasChecked)
{
    EXPECT_EQ(publishedStartingPoints().size(), table.size());
    for (const Row& row : table) {
        SCOPED_TRACE(row.name);
        const StartingPoint point = pointNamed(row.name);
        const auto cell = [&](Field field, double perUnit) {
            return cellOf(citedIn(point, field), perUnit);
        };
        EXPECT_EQ(point.citationStanding, row.standing);
        EXPECT_EQ(cell(Field::pulseFrequency, 1e3), row.hertz);
        EXPECT_EQ(cell(Field::phaseDuration, 1), row.microseconds);
        EXPECT_EQ(cell(Field::onTime, 1e3), row.on);
        EXPECT_EQ(cell(Field::offTime, 1e3), row.off);
        EXPECT_EQ(cell(Field::rampUp, 1e3), row.up);
        EXPECT_EQ(cell(Field::rampDown, 1e3), row.down);
        EXPECT_EQ(cell(Field::sessionLength, 6e4), row.minutes);
        EXPECT_EQ(cellOf(point.contractions, 1), row.contractions);
        EXPECT_EQ(cell(Field::sessionsPerDay, 1), row.perDay);
        EXPECT_EQ(cell(Field::weekdays, 1), row.days);
        EXPECT_EQ(cell(Field::weeks, 1), row.weeks);
        EXPECT_EQ(cellOf(point.intensity), row.intensity);
        EXPECT_EQ(cellOf(point.position), row.position);
    }
}

TEST(PublishedStartingPoints, AmountToWhatWasComputedByHand)
{
    for (const Amounts& expected : amounts) {
        SCOPED_TRACE(expected.name);
        const auto dose = doseOf(pointNamed(expected.name), RampHabit::includedInOnTime);
        ASSERT_TRUE(dose);
        EXPECT_EQ(dose->contractions, expected.contractions);
        EXPECT_EQ(static_cast<double>(dose->sessionOnTime.count()) / 1e3, expected.onTimeSeconds);
        ASSERT_TRUE(dose->least && dose->most);
        EXPECT_EQ(dose->least->contractions, expected.leastWeek);
        EXPECT_EQ(dose->most->contractions, expected.mostWeek);
        // Four significant digits, as the table has them.
        EXPECT_NEAR(static_cast<double>(dose->least->onTime.count()) / 6e4,
                    expected.leastWeekMinutes, 5.1e-4 * expected.leastWeekMinutes);
        EXPECT_NEAR(static_cast<double>(dose->most->onTime.count()) / 6e4, expected.mostWeekMinutes,
                    5.1e-4 * expected.mostWeekMinutes);
    }
    for (const char* name : {"Avramidis 2003", "Bruce-Brand 2012", "Quittan 1999", "Powell 1999",
                             "Ennis 2017", "Hand opening after stroke 2022"}) {
        EXPECT_FALSE(doseOf(pointNamed(name), RampHabit::includedInOnTime)) << name;
    }
}

// The same setting counts 80 contractions with the ramps inside the on time and 67 with the ramps
// added, 40 and 37 with single pads: 1005 and 555 a week.
TEST(PublishedStartingPoints, CountOtherwiseWhereRampsAreAdded)
{
    const auto garment =
        doseOf(pointNamed("Feil 2011, garment electrodes"), RampHabit::addedToOnTime);
    const auto pads = doseOf(pointNamed("Feil 2011, single pads"), RampHabit::addedToOnTime);
    ASSERT_TRUE(garment && pads && garment->least && pads->least);
    EXPECT_EQ(garment->contractions, 67);
    EXPECT_EQ(garment->least->contractions, 1005);
    EXPECT_EQ(pads->contractions, 37);
    EXPECT_EQ(pads->least->contractions, 555);
    const std::string shown =
        pointDoseText(pointNamed("Feil 2011, garment electrodes"), text()).toStdString();
    EXPECT_THAT(shown, HasSubstr("80 contractions"));
    EXPECT_THAT(shown, HasSubstr("with the ramps added to it 67 contractions"));
    EXPECT_THAT(shown, HasSubstr("does not say which"));
}

TEST(PublishedStartingPoints, KeepTheRuleOfTheRampsWhereItIsSaid)
{
    int said = 0;
    for (const StartingPoint& point : publishedStartingPoints()) {
        said += point.rampRule.habit ? 1 : 0;
    }
    EXPECT_EQ(said, 3);
    const CitedRampRule linn = pointNamed("Linn 1999, first week").rampRule;
    EXPECT_EQ(linn, (CitedRampRule{RampHabit::includedInOnTime, quoted}));
    EXPECT_EQ(pointNamed("Stevens-Lapsley 2012").rampRule,
              (CitedRampRule{RampHabit::includedInOnTime, memory}));
}

TEST(PublishedStartingPoints, NameTheirWaveforms)
{
    using W = Waveform;
    const std::vector<W> biphasic{W::symmetricBiphasic, W::asymmetricBalancedBiphasic};
    const auto is = [](const char* name, const std::vector<W>& any, Standing standing) {
        const CitedWaveform waveform = pointNamed(name).waveform;
        EXPECT_EQ(waveform.any, any) << name;
        EXPECT_EQ(waveform.standing, standing) << name;
    };
    is("Stevens-Lapsley 2012", {W::symmetricBiphasic}, quoted);
    is("Petterson 2009", {W::kilohertzBursts}, memory);
    is("Fitzgerald 2003", {W::kilohertzBursts}, quoted);
    is("Feil 2011, single pads", biphasic, quoted);
    is("Lieber 1996", {W::asymmetricBalancedBiphasic}, seen);
    is("Talbot 2003", biphasic, memory);
    is("Segers 2014", {}, Standing::notSaid);
    // "Asymmetric biphasic" alone is printed; whether balanced is not.
    is("Linn 1999, first week", {W::asymmetricBalancedBiphasic}, memory);
    is("Linn 1999, fourth week", {W::asymmetricBalancedBiphasic}, memory);
    is("Ward and Shkuratova 2002", {W::kilohertzBursts}, seen);
    const StartingPoint ward = pointNamed("Ward and Shkuratova 2002");
    EXPECT_EQ(cellOf(citedIn(ward, Field::carrierFrequency), 1e3), "2500");
    EXPECT_EQ(cellOf(citedIn(ward, Field::burstDuty), 10), "50");
}

TEST(PublishedStartingPoints, SayWhichCannotBePlansOfContractions)
{
    for (const StartingPoint& point : publishedStartingPoints()) {
        const PointUse expected = point.name == "Ennis 2017" ? PointUse::subTetanic
                                  : point.name == "Hand opening after stroke 2022"
                                      ? PointUse::citationOnly
                                      : PointUse::plan;
        EXPECT_EQ(point.use, expected) << point.name;
    }
}

TEST(PublishedStartingPoints, SayWhereVolumeAndPageWereNotSeen)
{
    EXPECT_THAT(citationText(pointNamed("Feil 2011, single pads")).toStdString(),
                HasSubstr("from memory"));
    EXPECT_THAT(citationText(pointNamed("Lieber 1996")).toStdString(),
                Not(HasSubstr("from memory")));
    for (const char* withoutJournal : {"Segers 2014", "Gerovasili 2009"}) {
        EXPECT_THAT(citationText(pointNamed(withoutJournal)).toStdString(),
                    testing::AllOf(HasSubstr("not known"), Not(HasSubstr("volume and page"))));
    }
}

TEST(StartingPointFilter, FindsByMuscleAndConditionInWhateverWords)
{
    const StartingPoint knee = pointNamed("Stevens-Lapsley 2012");
    for (const char* asked :
         {"Quadriceps", "quad", "QUADRÍCEPS", "Vastus medialis", "", "rectus"}) {
        EXPECT_TRUE(isForMuscle(knee, QString::fromUtf8(asked))) << asked;
    }
    for (const char* asked : {"Tibialis anterior", "deltoid", "iceps"}) {
        EXPECT_FALSE(isForMuscle(knee, QString::fromUtf8(asked))) << asked;
    }
    for (const char* asked : {"Knee replacement", "After total knee replacement, left", "TKA"}) {
        EXPECT_TRUE(isForCondition(knee, QString::fromUtf8(asked))) << asked;
    }
    EXPECT_FALSE(isForCondition(knee, QStringLiteral("Stroke")));
    EXPECT_TRUE(isForMuscle(pointNamed("Powell 1999"), QStringLiteral("wrist")));
}

TEST(StartingPointFilter, TakesNoMuscleForAnotherOfANameLikeIt)
{
    const StartingPoint elbow = pointNamed("Holcomb 2006");
    for (const char* asked : {"Biceps brachii", "biceps", "Elbow flexors, left", "Brachialis"}) {
        EXPECT_TRUE(isForMuscle(elbow, QString::fromUtf8(asked))) << asked;
    }
    EXPECT_FALSE(isForMuscle(elbow, QStringLiteral("Biceps femoris")));
    EXPECT_TRUE(isForMuscle(pointNamed("Bourjeily-Habr 2002"), QStringLiteral("Biceps femoris")));
    const StartingPoint wrist = pointNamed("Powell 1999");
    EXPECT_TRUE(isForMuscle(wrist, QStringLiteral("Extensor carpi radialis")));
    EXPECT_FALSE(isForMuscle(wrist, QStringLiteral("Extensor digitorum longus")));
}

TEST(StartingPointReader, SaysWhatItDoesNotUnderstand)
{
    EXPECT_FALSE(problemOf("{").empty());
    EXPECT_THAT(problemOf(R"({"starting_points":[]})"), HasSubstr("none"));
    EXPECT_THAT(problemOf(R"({"starting_points":[{"name":"A","standing":"read"}]})"),
                HasSubstr("citation is missing"));
    EXPECT_THAT(problemOf(withCells(R"(,"on_tme_s":5)")), HasSubstr("“on_tme_s” is no key"));
    EXPECT_THAT(problemOf(withCells(R"(,"on_time_s":0.0001)")), HasSubstr("no figure"));
    EXPECT_THAT(problemOf(withCells(R"(,"on_time_s":{"value":5,"standing":"doubtful"})")),
                HasSubstr("not to be offered"));
    EXPECT_THAT(problemOf(withCells(R"(,"on_time_s":{"standing":"from_memory"})")),
                HasSubstr("or none"));
    EXPECT_THAT(problemOf(withCells(R"(,"weeks":{"value":5,"standing":"sure"})")),
                HasSubstr("“sure” is no standing"));
    EXPECT_THAT(problemOf(withCells(R"(,"waveform":{"any":["square"]})")),
                HasSubstr("no waveform"));
    EXPECT_THAT(problemOf(withCells(R"(,"place":"moon")")), HasSubstr("“place”"));
    EXPECT_THAT(problemOf(R"({"starting_points":[{"name":"A","citation":"B","standing":"read"},)"
                          R"({"name":"A","citation":"B","standing":"read"}]})"),
                HasSubstr("stands twice"));
    EXPECT_TRUE(startingPointsFrom(QByteArray::fromStdString(withCells(R"(,"on_time_s":[5,10])"))));
}
