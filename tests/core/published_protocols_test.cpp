// SPDX-License-Identifier: GPL-3.0-or-later
// The counts and on times of published protocols, worked out by hand from on and off time, session
// length and sessions a week as the studies give them (ramps inside the on time, unless a test says
// otherwise). Where a study's own text was not at hand, figures of its protocol are from memory or
// from a later review; that concerns what the study did, not the arithmetic that is checked here.
#include "tests/core/examples.h"

#include "core/plan_figures.h"
#include "core/session_timing.h"

#include <array>
#include <gtest/gtest.h>
#include <string>
#include <string_view>
#include <vector>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

struct Protocol {
    std::string_view study;
    Milliseconds on;
    Milliseconds off;
    Milliseconds session;
    std::int64_t sessionsPerWeek;
    // expected
    std::int64_t contractions;
    double onTimeSeconds;
    double dutyPercent;
    double offOnRatio;
    std::int64_t weekContractions;
    double weekOnTimeMinutes;
};

/// Equal when both round to the same four significant digits, as the expected figures are given.
void expectFourDigits(double computed, double expected)
{
    EXPECT_NEAR(computed, expected, 5.1e-4 * expected);
}

constexpr std::array protocols{
    Protocol{"Stevens-Lapsley 2012, Phys Ther 92:210; knee replacement, home", 15s, 45s, 15min, 14,
             15, 225, 25.00, 3.000, 210, 52.50},
    Protocol{"Avramidis 2003, Arch Phys Med Rehabil 84:1850; knee replacement, home", 8s, 8s,
             120min, 14, 450, 3600, 50.00, 1.000, 6300, 840.0},
    Protocol{"Petterson 2009, Arthritis Rheum 61:174; knee replacement, 2 a week", 10s, 80s, 15min,
             2, 10, 100, 11.11, 8.000, 20, 3.333},
    Protocol{"Petterson 2009, Arthritis Rheum 61:174; knee replacement, 3 a week", 10s, 80s, 15min,
             3, 10, 100, 11.11, 8.000, 30, 5.000},
    Protocol{"Snyder-Mackler 1995, J Bone Joint Surg Am 77:1166; cruciate ligament", 11s, 120s,
             1'965'000ms, 3, 15, 165, 8.397, 10.91, 45, 8.250},
    Protocol{"Fitzgerald 2003, J Orthop Sports Phys Ther 33:492; cruciate ligament", 10s, 50s,
             10min, 2, 10, 100, 16.67, 5.000, 20, 3.333},
    Protocol{"Feil 2011, Am J Sports Med 39:1238; cruciate ligament, first group", 5s, 10s, 20min,
             15, 80, 400, 33.33, 2.000, 1200, 100.0},
    Protocol{"Feil 2011, Am J Sports Med 39:1238; cruciate ligament, second group", 10s, 20s, 20min,
             15, 40, 400, 33.33, 2.000, 600, 100.0},
    Protocol{"Lieber 1996, J Orthop Res 14:131; cruciate ligament", 10s, 20s, 30min, 5, 60, 600,
             33.33, 2.000, 300, 50.00},
    Protocol{"Wigerstad-Lossing 1988, Med Sci Sports Exerc 20:93; in cast, 4 bouts a day", 6s, 10s,
             10min, 12, 38, 228, 37.50, 1.667, 456, 45.60},
    Protocol{"Talbot 2003, J Rheumatol 30:1571; knee osteoarthritis, home", 10s, 50s, 15min, 3, 15,
             150, 16.67, 5.000, 45, 7.500},
    Protocol{"Elboim-Gabyzon 2013, Clin Rehabil 27:246; knee osteoarthritis", 10s, 50s, 10min, 2,
             10, 100, 16.67, 5.000, 20, 3.333},
    Protocol{"Bruce-Brand 2012, BMC Musculoskelet Disord 13:118; knee osteoarthritis", 10s, 50s,
             20min, 5, 20, 200, 16.67, 5.000, 100, 16.67},
    Protocol{"Palmieri-Smith 2010, Phys Ther 90:1441; knee osteoarthritis", 10s, 50s, 10min, 3, 10,
             100, 16.67, 5.000, 30, 5.000},
    Protocol{"Neder 2002, Thorax 57:333; lung disease, start", 2s, 18s, 15min, 5, 45, 90, 10.00,
             9.000, 225, 7.500},
    Protocol{"Neder 2002, Thorax 57:333; lung disease, end", 10s, 30s, 30min, 5, 45, 450, 25.00,
             3.000, 225, 37.50},
    Protocol{"Maddocks 2016, Lancet Respir Med 4:27; lung disease, start", 2s, 15s, 30min, 7, 106,
             212, 11.76, 7.500, 742, 24.73},
    Protocol{"Maddocks 2016, Lancet Respir Med 4:27; lung disease, end", 10s, 15s, 30min, 7, 72,
             720, 40.00, 1.500, 504, 84.00},
    Protocol{"Bourjeily-Habr 2002, Thorax 57:1045; lung disease", 200ms, 1300ms, 20min, 3, 800, 160,
             13.33, 6.500, 2400, 8.000},
    Protocol{"Quittan 1999, Artif Organs 23:432; heart failure", 2s, 6s, 30min, 5, 225, 450, 25.00,
             3.000, 1125, 37.50},
    Protocol{"Kho 2015, J Crit Care 30:32; intensive care, thigh", 5s, 10s, 60min, 7, 240, 1200,
             33.33, 2.000, 1680, 140.0},
    Protocol{"Kho 2015, J Crit Care 30:32; intensive care, lower leg", 5s, 5s, 60min, 7, 360, 1800,
             50.00, 1.000, 2520, 210.0},
    Protocol{"Segers 2014; intensive care", 8s, 20s, 25min, 5, 54, 432, 28.57, 2.500, 270, 36.00},
    Protocol{"Gerovasili 2009, Routsi 2010; intensive care", 12s, 6s, 55min, 7, 183, 2196, 66.67,
             0.5000, 1281, 256.2},
    Protocol{"Powell 1999, Stroke 30:1384; wrist extensors, 5 s on and 20 s off", 5s, 20s, 30min,
             21, 72, 360, 20.00, 4.000, 1512, 126.0},
    Protocol{"Powell 1999, Stroke 30:1384; wrist extensors, 5 s on and off", 5s, 5s, 30min, 21, 180,
             900, 50.00, 1.000, 3780, 315.0},
    Protocol{"Linn 1999, Stroke 30:963; shoulder, week 1", 15s, 15s, 30min, 28, 60, 900, 50.00,
             1.000, 1680, 420.0},
    Protocol{"Linn 1999, Stroke 30:963; shoulder, week 4", 15s, 15s, 60min, 28, 120, 1800, 50.00,
             1.000, 3360, 840.0},
    Protocol{"Ward and Shkuratova 2002, Phys Ther 82:1019; athletes, 5 days a week", 10s, 50s,
             10min, 5, 10, 100, 16.67, 5.000, 50, 8.333},
    Protocol{"Holcomb 2006; elbow flexors", 15s, 45s, 15min, 3, 15, 225, 25.00, 3.000, 45, 11.25},
};

SessionTiming timingOf(Milliseconds on, Milliseconds off, Milliseconds session)
{
    Settings settings = someSettings();
    settings.onTime = on;
    settings.offTime = off;
    settings.sessionLength = session;
    const Result<SessionTiming> timing = sessionTiming(settings, RampHabit::includedInOnTime);
    EXPECT_TRUE(timing.has_value());
    return timing ? *timing : SessionTiming{};
}

} // namespace

TEST(PublishedProtocols, ASessionHasTheContractionsAndOnTimeWorkedOutByHand)
{
    for (const Protocol& protocol : protocols) {
        SCOPED_TRACE(protocol.study);
        const SessionTiming timing = timingOf(protocol.on, protocol.off, protocol.session);
        EXPECT_EQ(timing.contractionsCompleted, protocol.contractions);
        // The table counts whole contractions; the one that a session's end cuts is left out.
        const Milliseconds whole = timing.totalOnTime - timing.cutContraction;
        expectFourDigits(static_cast<double>(whole.count()) / 1e3, protocol.onTimeSeconds);
        expectFourDigits(100.0 * timing.dutyCycle(), protocol.dutyPercent);
        expectFourDigits(timing.offOnRatio(), protocol.offOnRatio);
    }
}

TEST(PublishedProtocols, AWeekIsTheSumOfItsSessions)
{
    for (const Protocol& protocol : protocols) {
        SCOPED_TRACE(protocol.study);
        const SessionTiming timing = timingOf(protocol.on, protocol.off, protocol.session);
        const WeekFigures week = weekOf(timing, protocol.sessionsPerWeek, std::nullopt);
        EXPECT_EQ(week.contractionsCompleted, protocol.weekContractions);
        const Milliseconds whole = week.onTime - protocol.sessionsPerWeek * timing.cutContraction;
        expectFourDigits(static_cast<double>(whole.count()) / 6e4, protocol.weekOnTimeMinutes);
    }
}

// The same protocols counted as if the unit adds its ramps to the on time: the count alone is
// checked, because papers that count so take the plateau for the on time.
TEST(PublishedProtocols, AddedRampsChangeTheCount)
{
    struct Added {
        std::string study;
        Milliseconds up;
        Milliseconds on;
        Milliseconds down;
        Milliseconds off;
        Milliseconds session;
        std::int64_t sessionsPerWeek;
        std::int64_t contractions;
        std::int64_t weekContractions;
    };
    const std::vector<Added> table{
        {"Feil 2011, first group", 2s, 5s, 1s, 10s, 20min, 15, 67, 1005},
        {"Feil 2011, second group", 1500ms, 10s, 1s, 20s, 20min, 15, 37, 555},
        {"Kho 2015, thigh", 2s, 5s, 1s, 10s, 60min, 7, 200, 1400},
        // A teaching text, from memory: 10 repetitions of 6 s on with a 3 s ramp and 30 s off are
        // given as about 7 min, so ramps are no on time there. 10 × (3 + 6 + 3 + 30) = 420 s.
        {"teaching text, 10 repetitions", 3s, 6s, 3s, 30s, 7min, 3, 10, 30},
    };
    for (const Added& row : table) {
        SCOPED_TRACE(row.study);
        Settings settings = someSettings();
        settings.rampUp = row.up;
        settings.onTime = row.on;
        settings.rampDown = row.down;
        settings.offTime = row.off;
        settings.sessionLength = row.session;
        const Result<SessionTiming> timing = sessionTiming(settings, RampHabit::addedToOnTime);
        ASSERT_TRUE(timing);
        EXPECT_EQ(timing->contractionsCompleted, row.contractions);
        EXPECT_EQ(weekOf(*timing, row.sessionsPerWeek, std::nullopt).contractionsCompleted,
                  row.weekContractions);
    }
}

// Linn 1999 prints 15 s on including a 3 s ramp: 60 contractions with 12 s at full amplitude each.
TEST(PublishedProtocols, APlateauIsWhatRampsInsideTheOnTimeLeave)
{
    Settings settings = someSettings();
    settings.onTime = 15s;
    settings.offTime = 15s;
    settings.rampUp = 3s;
    settings.sessionLength = 30min;
    const Result<SessionTiming> timing = sessionTiming(settings, RampHabit::includedInOnTime);
    ASSERT_TRUE(timing);
    EXPECT_EQ(timing->contractionsCompleted * timing->plateau, 720s);
}
