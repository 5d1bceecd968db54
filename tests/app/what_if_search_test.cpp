// SPDX-License-Identifier: GPL-3.0-or-later
// What is asked of a variant. Expected settings are worked by hand beside the checks.
#include "app/plan/model_worker.h"
#include "app/plan/what_if_search.h"
#include "tests/app/what_if_job.h"

#include <QApplication>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QSpinBox>

#include <atomic>
#include <gtest/gtest.h>
#include <memory>
#include <thread>
#include <utility>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::literals;
using namespace std::chrono_literals;

TEST_F(WhatIfVariants, FitFifteenMinutesWithTheSameContractions)
{
    // 30 contractions of 10 s leave 600 s for 29 rests: 20 s. 880 s; the timer's next is 15 min.
    open(tenOnThirtyOff());
    QuantityBox& length = field<QuantityBox>("wishedLength");
    length.setFocus();
    length.selectAll();
    QTest::keyClicks(&length, QStringLiteral("15"));
    QTest::keyClick(&length, Qt::Key_Return);
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("contractions 30")))
        << said("searchAnswer").toStdString();
    EXPECT_EQ(box(0, Field::offTime).count(), 20'000);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 900'000);
}

TEST_F(WhatIfVariants, FitFifteenMinutesWithTheSameTotalOnTime)
{
    // 300 s of on time are the same 30 contractions of 10 s.
    open(tenOnThirtyOff());
    field<QuantityBox>("wishedLength").setCount(900'000);
    field<QComboBox>("keptDose").setCurrentIndex(1);
    click("findLength");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("contractions 30")));
    EXPECT_EQ(box(0, Field::offTime).count(), 20'000);
}

TEST_F(WhatIfVariants, GiveTheSessionForTwentyContractions)
{
    // 19 × 40 + 10 = 770 s; the timer's next minute is 13.
    open(tenOnThirtyOff());
    dialog->findChild<WhatIfSearch*>()->setVariant(2);
    field<QSpinBox>("wishedContractions").setValue(20);
    click("findContractions");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("C: ")));
    EXPECT_EQ(box(2, Field::sessionLength).count(), 780'000);
    EXPECT_EQ(box(2, Field::offTime).count(), 30'000);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 1'200'000) << "A stays as it is";
}

TEST_F(WhatIfVariants, KeepTheFatigueRatioByOffTime)
{
    const Block block = tenOnThirtyOff();
    open(block);
    field<QDoubleSpinBox>("wishedRatio").setValue(0.7);
    click("findRatio");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("A: Off time")));
    // Against trying the off times of the unit around it; its steps are whole seconds or less.
    const auto found = box(0, Field::offTime).count();
    ASSERT_TRUE(found);
    const auto step = aUnit().offTime.step.count();
    FatigueMemory memory;
    const auto ratioAt = [&](std::int64_t offTime) {
        Settings settings = block.sites.front().settings;
        settings.offTime = Milliseconds(offTime);
        return memory.predict(settings, RampHabit::includedInOnTime)
            ->lastToFirst->forceTimeIntegral;
    };
    EXPECT_GE(ratioAt(*found), 0.7);
    EXPECT_LT(ratioAt(*found - step), 0.7);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 1'200'000);
}

TEST_F(WhatIfVariants, SayWhyNoSettingDoesIt)
{
    open(tenOnThirtyOff());
    field<QuantityBox>("wishedLength").setCount(300'000); // 300 s of on time alone fill 5 min
    click("findLength");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("shortest off time")));
    field<QSpinBox>("wishedContractions").setValue(9999);
    click("findContractions");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("session timer of the unit ends at")));
    field<QDoubleSpinBox>("wishedRatio").setValue(1.0);
    click("findRatio");
    ASSERT_TRUE(
        comesToSay("searchAnswer", QStringLiteral("model, group values, not this patient")));
    EXPECT_EQ(box(0, Field::offTime).count(), 30'000) << "a refusal changes nothing";
}

TEST_F(WhatIfVariants, SayThatAFixedOffTimeCannotDoIt)
{
    Stimulator unit = aUnit();
    unit.offTime = {30s, 30s, 1s, 30s};
    open(tenOnThirtyOff(), unit);
    field<QDoubleSpinBox>("wishedRatio").setValue(1.0);
    click("findRatio");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("off time of this unit is fixed")));
    EXPECT_TRUE(box(0, Field::offTime).isReadOnly());
}

TEST(WhatIfPanel, OffersToStopASearchThatGoesOn)
{
    const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    const Block block = tenOnThirtyOff();
    WhatIfSearch panel({block, {block, block, block}, 0, aUnit()}, text, nullptr);
    panel.show();
    auto* stop = panel.findChild<QPushButton*>(QStringLiteral("stopSearch"));
    int stops = 0;
    QObject::connect(&panel, &WhatIfSearch::stopRequested, &panel, [&stops] { ++stops; });
    EXPECT_FALSE(stop->isVisible());
    panel.showPending();
    ASSERT_TRUE(QTest::qWaitFor([&] { return stop->isVisible(); }));
    stop->click();
    EXPECT_EQ(stops, 1);
    panel.showAnswer(QStringLiteral("Stopped"));
    EXPECT_FALSE(stop->isVisible());
}

TEST(ModelWorker, StopsTheJobBeforeAndDeliversTheLastOnly)
{
    ModelWorker worker(nullptr);
    std::atomic<bool> started = false;
    QStringList delivered;
    worker.ask([&](ModelMemory&, const std::stop_token& stop) -> ModelWorker::Delivery {
        started = true;
        while (!stop.stop_requested()) {
            std::this_thread::yield();
        }
        return [&delivered] { delivered.append(QStringLiteral("first")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return started.load(); }));
    worker.ask([&](ModelMemory&, const std::stop_token&) -> ModelWorker::Delivery {
        return [&delivered] { delivered.append(QStringLiteral("second")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !delivered.isEmpty(); }));
    QApplication::processEvents();
    EXPECT_EQ(delivered, QStringList{QStringLiteral("second")});
}

TEST(ModelWorker, DeliversNothingOfAJobThatWasDropped)
{
    ModelWorker worker(nullptr);
    std::atomic<bool> started = false;
    QStringList delivered;
    auto held = std::make_shared<int>();
    const std::weak_ptr<int> delivery = held; // gone with the delivery, shown or not
    worker.ask([&started, &delivered, held = std::move(held)](
                   ModelMemory&, const std::stop_token& stop) -> ModelWorker::Delivery {
        started = true;
        while (!stop.stop_requested()) {
            std::this_thread::yield();
        }
        return [&delivered, held] { delivered.append(QStringLiteral("dropped")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return started.load(); }));
    worker.drop();
    ASSERT_TRUE(QTest::qWaitFor([&] { return delivery.expired(); }));
    EXPECT_TRUE(delivered.isEmpty());
    worker.ask([&](ModelMemory&, const std::stop_token&) -> ModelWorker::Delivery {
        return [&delivered] { delivered.append(QStringLiteral("next")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !delivered.isEmpty(); }));
    EXPECT_EQ(delivered, QStringList{QStringLiteral("next")});
}
