// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/quantity_box.h"

#include <QApplication>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

/// A box for phase duration as a unit with 50 to 400 µs in steps of 10 has it, in a window with the
/// focus.
class PhaseDurationBox : public testing::Test
{
protected:
    PhaseDurationBox()
        : text(QLocale(QLocale::English, QLocale::UnitedKingdom))
        , box(Field::phaseDuration, text)
    {
        box.setRange(CountRange{50, 400, 10, 100});
        box.setCount(300);
        box.show();
        QApplication::setActiveWindow(&box);
        box.setFocus();
    }
    void type(const QString& typed)
    {
        box.selectAll();
        QTest::keyClicks(&box, typed);
    }
    QuantityText text;
    QuantityBox box;
};

void turnWheel(QWidget& widget, int angle)
{
    QWheelEvent turn(QPointF(5, 5), widget.mapToGlobal(QPointF(5, 5)), {}, {0, angle}, Qt::NoButton,
                     Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&widget, &turn);
}

} // namespace

TEST_F(PhaseDurationBox, ShowsTheValueWithItsUnit)
{
    EXPECT_EQ(box.text(), QStringLiteral("300\u00A0µs"));
}

TEST_F(PhaseDurationBox, UpIsOneStepAndShiftUpIsTen)
{
    QTest::keyClick(&box, Qt::Key_Up);
    EXPECT_EQ(box.count(), 310);
    QTest::keyClick(&box, Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(box.count(), 210);
}

TEST_F(PhaseDurationBox, TurningStopsAtTheEndOfTheRange)
{
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(&box, Qt::Key_Up, Qt::ShiftModifier);
    }
    EXPECT_EQ(box.count(), 400);
    QTest::keyClick(&box, Qt::Key_PageDown);
    EXPECT_EQ(box.count(), 50);
}

TEST_F(PhaseDurationBox, TurningFromBetweenTwoStepsGoesToTheNextOne)
{
    box.setCount(305);
    QTest::keyClick(&box, Qt::Key_Up);
    EXPECT_EQ(box.count(), 310);
    box.setCount(305);
    QTest::keyClick(&box, Qt::Key_Down);
    EXPECT_EQ(box.count(), 300);
}

TEST_F(PhaseDurationBox, AnnouncesEachTypedValueAtOnce)
{
    QSignalSpy entered(&box, &QuantityBox::countEntered);
    type(QStringLiteral("420"));
    EXPECT_EQ(box.count(), 420) << "a value outside the range is kept and judged by the form";
    EXPECT_GE(entered.count(), 1);
}

TEST_F(PhaseDurationBox, NonsenseIsKeptToBeMendedAndTheValueStays)
{
    QSignalSpy problems(&box, &QuantityBox::problemChanged);
    type(QStringLiteral("abc"));
    EXPECT_TRUE(box.hasProblem());
    EXPECT_EQ(box.count(), 300);
    EXPECT_EQ(box.text(), QStringLiteral("abc"));
    EXPECT_EQ(problems.count(), 3) << "once a letter, so that a sentence can quote the text";
    QTest::keyClick(&box, Qt::Key_Escape);
    EXPECT_FALSE(box.hasProblem());
    EXPECT_EQ(box.text(), QStringLiteral("300\u00A0µs"));
}

TEST_F(PhaseDurationBox, AnEmptyFieldIsAProblemUnlessItMayBeUnknown)
{
    box.selectAll();
    QTest::keyClick(&box, Qt::Key_Delete);
    EXPECT_TRUE(box.hasProblem());
    box.setMayBeEmpty(true);
    QTest::keyClick(&box, Qt::Key_5);
    box.selectAll();
    QTest::keyClick(&box, Qt::Key_Delete);
    EXPECT_FALSE(box.hasProblem());
    EXPECT_FALSE(box.count().has_value());
}

TEST_F(PhaseDurationBox, CtrlBackspaceTakesTheValueOfTheBlockBefore)
{
    box.setEarlierCount(250);
    QTest::keyClick(&box, Qt::Key_Backspace, Qt::ControlModifier);
    EXPECT_EQ(box.count(), 250);
}

TEST(AmplitudeBox, NeitherWheelNorPageKeysEverChangeAnAmplitude)
{
    const QuantityText text(QLocale::c());
    QuantityBox box(Field::amplitudeCeiling, text);
    box.setRange(CountRange{0, 100'000, 1000, 0});
    box.setCount(40'000);
    box.show();
    QApplication::setActiveWindow(&box);
    box.setFocus();
    turnWheel(box, 240);
    QTest::keyClick(&box, Qt::Key_PageUp);
    EXPECT_EQ(box.count(), 40'000);
    QTest::keyClick(&box, Qt::Key_Up);
    EXPECT_EQ(box.count(), 41'000);
}

TEST(QuantityBoxWheel, ChangesNothingWithoutTheFocus)
{
    const QuantityText text(QLocale::c());
    QWidget window;
    auto* box = new QuantityBox(Field::onTime, text, &window);
    auto* other = new QLineEdit(&window);
    box->setRange(CountRange{1000, 30'000, 1000, 4000});
    box->setCount(4000);
    window.show();
    QApplication::setActiveWindow(&window);
    other->setFocus();
    turnWheel(*box, 120);
    EXPECT_EQ(box->count(), 4000);
    box->setFocus();
    turnWheel(*box, 120);
    EXPECT_EQ(box->count(), 5000);
}
