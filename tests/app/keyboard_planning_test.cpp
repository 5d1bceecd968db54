// SPDX-License-Identifier: GPL-3.0-or-later
// A course of three blocks planned, saved and issued without touching the mouse.
//
// The scenario is the invented one of the demo. Its figures are worked by hand, ramps inside the on
// time: 6 s on, 18 s off for 16 min are 40 contractions and 240 s; 8 s on, 24 s off are 30 and
// 240 s; 10 s on, 30 s off for 20 min are 30 and 300 s. Five days a week make 200, 300 and 300
// contractions (from the second block on twice a day) and 20, 40 and 50 min.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "tests/app/practice_window.h"

#include "db/plans.h"

#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

class KeysOnly : public testing::Test
{
protected:
    KeysOnly()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.bringToFront();
    }

    static QString focused()
    {
        const QWidget* widget = QApplication::focusWidget();
        return widget != nullptr ? widget->objectName() : QString();
    }
    static void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    /// Tab until the field has the focus.
    static void go(const QString& name)
    {
        for (int presses = 0; presses < 120 && focused() != name; ++presses) {
            press(Qt::Key_Tab);
        }
        EXPECT_EQ(focused(), name) << "Tab does not reach it";
    }
    static void enter(const QString& name, const char* value)
    {
        go(name);
        press(Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(value));
        press(Qt::Key_Tab);
    }
    static QString setting(Field field)
    {
        return QStringLiteral("setting-%1").arg(static_cast<int>(field));
    }
    void ctrl(Qt::Key key, Qt::KeyboardModifiers more = Qt::NoModifier)
    {
        practice.bringToFront();
        press(key, Qt::ControlModifier | more);
    }
    PlanDraft& draft() { return practice.window().recordPage().planPage().draft(); }
    QString row(int block)
    {
        return practice.find<QListWidget>("blocks")->item(block)->text().replace(
            noBreakSpace(), QStringLiteral(" "));
    }

    void chooseUnitAndFirstSite()
    {
        go(QStringLiteral("stimulator"));
        press(Qt::Key_Down);
        ctrl(Qt::Key_N, Qt::ShiftModifier);
        onNextDialog([](QDialog& dialog) {
            QTest::keyClicks(dialog.focusWidget(), QStringLiteral("vastus lateralis"));
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
        });
        go(QStringLiteral("addSite"));
        press(Qt::Key_Space);
        practice.bringToFront();
    }
    void fillBlock(const char* frequency, const char* on, const char* off, const char* session,
                   const char* timesADay, const char* weeks)
    {
        enter(setting(Field::pulseFrequency), frequency);
        enter(setting(Field::onTime), on);
        enter(setting(Field::offTime), off);
        enter(setting(Field::sessionLength), session);
        enter(QStringLiteral("sessionsPerDay"), timesADay);
        enter(QStringLiteral("weeks"), weeks);
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(KeysOnly, ThreeBlocksArePlannedSavedAndIssued)
{
    chooseUnitAndFirstSite();
    fillBlock("35", "6", "18", "16", "1", "2");
    ctrl(Qt::Key_N, Qt::ShiftModifier);
    fillBlock("50", "8", "24", "16", "2", "2");
    ctrl(Qt::Key_N, Qt::ShiftModifier);
    fillBlock("50", "10", "30", "20", "2", "4");
    ASSERT_EQ(draft().draft().blocks.size(), 3U);
    EXPECT_EQ(draft().figuresOf(0)->weekContractions, 200);
    EXPECT_EQ(draft().figuresOf(1)->weekContractions, 300);
    EXPECT_EQ(draft().figuresOf(2)->weekContractions, 300);
    EXPECT_TRUE(row(0).contains(QStringLiteral("weeks 1–2"))) << row(0).toStdString();
    EXPECT_TRUE(row(1).contains(QStringLiteral("On time a week +100 %"))) << row(1).toStdString();
    EXPECT_TRUE(row(1).contains(QStringLiteral("Contractions a week +50 %")));
    EXPECT_TRUE(row(2).contains(QStringLiteral("On time a week +25 %"))) << row(2).toStdString();
    EXPECT_TRUE(row(2).contains(QStringLiteral("Contractions a week same")));
    EXPECT_FALSE(row(2).contains(QStringLiteral("Pulse frequency"))) << "it did not change";

    ctrl(Qt::Key_S);
    EXPECT_FALSE(draft().isChanged());
    onNextDialog([](QDialog& dialog) {
        auto* reason = dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason"));
        for (int presses = 0; presses < 30 && dialog.focusWidget() != reason; ++presses) {
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Tab);
        }
        QTest::keyClicks(reason, QStringLiteral("first plan after assessment"));
        QWidget* save = dialog.findChild<QWidget*>(QStringLiteral("save"));
        for (int presses = 0; presses < 30 && dialog.focusWidget() != save; ++presses) {
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Tab);
        }
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Space);
        if (dialog.isVisible()) {
            ADD_FAILURE()
                << dialog.findChild<QLabel*>(QStringLiteral("problem"))->text().toStdString();
            dialog.reject();
        }
    });
    ctrl(Qt::Key_Return);
    const auto plans = must(practice.store().read(
        [&](db::Reading& r) { return db::plansOf(r, practice.ids().course); }));
    ASSERT_EQ(plans.size(), 1U);
    EXPECT_EQ(plans.front().blocks.size(), 3U);
    EXPECT_EQ(totalWeeks(plans.front().blocks), 8);
}
