// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/cue_panel.h"
#include "app/clinic/cue_view.h"
#include "app/clinic/practise_cue.h"

#include <QCheckBox>
#include <QElapsedTimer>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <vector>

using namespace quadrille;
using namespace quadrille::app;
using namespace std::chrono_literals;
using testing::ElementsAre;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

SessionTiming rhythm(Milliseconds on, Milliseconds off, Milliseconds ramp, Milliseconds session)
{
    Settings settings;
    settings.pulseFrequency = PulseFrequency::fromCount(50'000);
    settings.phaseDuration = PhaseDuration::fromCount(300);
    settings.onTime = on;
    settings.offTime = off;
    settings.rampUp = settings.rampDown = ramp;
    settings.sessionLength = session;
    return sessionTiming(settings, RampHabit::includedInOnTime).value();
}

class HeardTones : public CueSound
{
public:
    void play(CueTone tone) override { tones.push_back(tone); }
    std::vector<CueTone> tones;
};

class Panel : public testing::Test
{
protected:
    Panel() { panel.show(); }
    QPushButton& start() { return *panel.findChild<QPushButton*>(QStringLiteral("cueStart")); }
    QString words() { return panel.findChild<QLabel*>(QStringLiteral("cueWords"))->text(); }
    /// Turns the test's own clock and lets the cue wake.
    void wait(Milliseconds time)
    {
        now += time;
        panel.cue().pause();
        panel.cue().start();
    }

    Milliseconds now{0};
    HeardTones heard;
    CuePanel panel{[this] { return now; }, heard, english, nullptr};
};

} // namespace

TEST_F(Panel, StartsPausesGoesOnAndBeginsAgain)
{
    panel.setRhythm(rhythm(4s, 12s, 1s, 60s), {});
    EXPECT_EQ(start().text(), QStringLiteral("&Start"));
    QTest::mouseClick(&start(), Qt::LeftButton);
    EXPECT_EQ(start().text(), QStringLiteral("&Pause"));
    now += 5s;
    QTest::mouseClick(&start(), Qt::LeftButton);
    EXPECT_EQ(start().text(), QStringLiteral("&Go on"));
    EXPECT_TRUE(panel.findChild<CueView*>()->accessibleDescription().startsWith(
        QStringLiteral("Paused. contraction 1 of 4")))
        << "somebody who comes in must not take it for the rest";
    now += 30s;
    EXPECT_EQ(panel.cue().moment()->left, 11s) << "the pause takes nothing from the rest";
    QTest::mouseClick(panel.findChild<QPushButton*>(QStringLiteral("cueAgain")), Qt::LeftButton);
    EXPECT_EQ(panel.cue().elapsed(), 0ms);
    EXPECT_EQ(start().text(), QStringLiteral("&Start"));
}

TEST_F(Panel, SoundsWorkRestAndTheEndOnceEach)
{
    panel.setRhythm(rhythm(4s, 6s, 1s, 15s), {});
    panel.cue().start();
    for (int step = 0; step < 29; ++step) {
        wait(500ms);
    }
    now = 15s; // the end is heard when the cue wakes by itself
    ASSERT_TRUE(QTest::qWaitFor([&] { return !panel.cue().isRunning(); }));
    EXPECT_THAT(heard.tones, ElementsAre(CueTone::work, CueTone::rest, CueTone::work, CueTone::rest,
                                         CueTone::over));
    EXPECT_FALSE(start().isEnabled());
}

TEST_F(Panel, SoundsWorkAlsoWhereTheUnitHasNoRamp)
{
    panel.setRhythm(rhythm(4s, 6s, 0s, 15s), {});
    panel.cue().start();
    EXPECT_THAT(heard.tones, ElementsAre(CueTone::work));
}

TEST_F(Panel, IsSilentWhenMuted)
{
    panel.setRhythm(rhythm(4s, 6s, 1s, 15s), {});
    panel.findChild<QCheckBox*>()->setChecked(false);
    panel.cue().start();
    wait(5s);
    EXPECT_THAT(heard.tones, testing::IsEmpty());
}

TEST_F(Panel, SaysThatItControlsNoStimulatorAndWhyItIsShut)
{
    panel.setRhythm(rhythm(4s, 6s, 1s, 15s), {});
    EXPECT_TRUE(words().contains(QStringLiteral("It controls no stimulator")));
    panel.setRhythm(rhythm(4s, 6s, 1s, 15s), QStringLiteral("Screening is not signed."));
    EXPECT_EQ(words(), QStringLiteral("Screening is not signed."));
    EXPECT_FALSE(start().isEnabled());
    panel.setRhythm(std::nullopt, {});
    EXPECT_FALSE(start().isEnabled());
}

namespace
{

Milliseconds median(std::vector<Milliseconds> times)
{
    std::ranges::sort(times);
    return times[times.size() / 2];
}

} // namespace

// One minute of real time: 30 s of contractions in cycles of 1.5 s. A busy machine may wake a timer
// late now and then; what must not happen is that lateness adds up, or is the rule.
TEST(PractiseCueInRealTime, ChangesWithinFiftyMillisecondsOverAMinuteWithoutDrift)
{
    QElapsedTimer steady;
    steady.start();
    PractiseCue cue([&] { return Milliseconds(steady.elapsed()); });
    cue.setTiming(rhythm(750ms, 750ms, 0ms, 60s));
    std::vector<Milliseconds> late;
    QObject::connect(&cue, &PractiseCue::phaseChanged, &cue, [&](CuePhase) {
        late.push_back(cue.elapsed() - Milliseconds(750 * static_cast<std::int64_t>(late.size())));
    });
    cue.start();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !cue.isRunning(); }, 70'000));
    ASSERT_EQ(late.size(), 81U) << "40 contractions, 40 rests and the end";
    EXPECT_GE(std::ranges::min(late), 0ms) << "never early";
    EXPECT_LT(median(late), 50ms);
    EXPECT_LT(median({late.end() - 20, late.end()}),
              median({late.begin(), late.begin() + 20}) + 20ms)
        << "lateness adds up";
}
