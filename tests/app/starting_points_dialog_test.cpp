// SPDX-License-Identifier: GPL-3.0-or-later
// Starting points in the real window, by keyboard: found, applied as one step of undo, kept, called
// otherwise and withdrawn. Figures of protocols are those of the studies that are named.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/plan/starting_points_dialog.h"
#include "tests/app/practice_window.h"

#include "db/house_settings.h"

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::literals;
using namespace std::chrono_literals;
using testing::HasSubstr;

namespace
{

/// The course is called "Knee replacement"; its block has one site, on the vastus lateralis.
class StartingPointsInTheWindow : public testing::Test
{
protected:
    StartingPointsInTheWindow()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.bringToFront();
    }
    void planOneBlock()
    {
        draft().chooseStimulator(practice.ids().stimulator);
        draft().addBlock();
        Site site = aSite(aUnit());
        site.settings.amplitude.ceiling = 60_mA;
        draft().addSite(site);
    }
    PlanPage& page() { return practice.window().recordPage().planPage(); }
    PlanDraft& draft() { return page().draft(); }
    const Settings& settings() { return draft().block()->sites.front().settings; }

    static bool isActive(QDialog& dialog)
    {
        dialog.activateWindow();
        return QTest::qWaitFor([&] { return QApplication::activeWindow() == &dialog; });
    }
    static QString textOf(const QDialog& dialog, const char* label)
    {
        const auto* found = dialog.findChild<QLabel*>(QLatin1String(label));
        return found == nullptr ? QString() : found->text().replace(QChar::Nbsp, QLatin1Char(' '));
    }
    static QListWidget& listOf(const QDialog& dialog)
    {
        return *dialog.findChild<QListWidget*>(QStringLiteral("pointList"));
    }
    static void type(QDialog& dialog, const char* field, const QString& text)
    {
        typeInto(dialog.findChild<QLineEdit*>(QLatin1String(field)), text);
    }
    /// Goes down the list until this one is chosen.
    static void choose(QDialog& dialog, const QString& name)
    {
        QListWidget& list = listOf(dialog);
        list.setFocus();
        for (int i = 0; i < list.count(); ++i) {
            QTest::keyClick(&list, Qt::Key_Up);
        }
        for (int i = 0; i < list.count() && textOf(dialog, "pointName") != name; ++i) {
            QTest::keyClick(&list, Qt::Key_Down);
        }
        ASSERT_EQ(textOf(dialog, "pointName"), name);
    }
    static QPushButton* applyOf(const QDialog& dialog)
    {
        return dialog.findChild<QPushButton*>(QStringLiteral("applyPoint"));
    }
    /// Every cell of the figures, line by line.
    static std::string figuresOf(const QDialog& dialog)
    {
        const auto* table = dialog.findChild<QTableView*>(QStringLiteral("pointRows"));
        QString all;
        for (int row = 0; row < table->model()->rowCount(); ++row) {
            QStringList line;
            for (int column = 0; column < table->model()->columnCount(); ++column) {
                line.append(table->model()->index(row, column).data().toString());
            }
            all += line.join(QStringLiteral(" | ")) + QLatin1Char('\n');
        }
        return all.replace(QChar::Nbsp, QLatin1Char(' ')).toStdString();
    }
    void openDialog(const std::function<void(QDialog&)>& answer)
    {
        bool seen = false;
        onNextDialog([&](QDialog& dialog) {
            seen = true;
            answer(dialog);
            if (dialog.isVisible()) {
                dialog.reject();
            }
        });
        QTest::keyClick(&practice.window(), Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        EXPECT_TRUE(seen);
    }
    std::vector<HouseSettings> house() { return must(practice.store().read(db::houseSettings)); }
    void keepAs(const std::string& name)
    {
        must(practice.store().write(author(), "keep", [&](db::Writing& writing) {
            HouseSettings kept = houseSettingsFrom(*draft().block(), aUnit());
            kept.name = name;
            kept.settings.onTime = 9s;
            return db::addHouseSettings(writing, kept);
        }));
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(StartingPointsInTheWindow, AreFoundByWhatThePlanIsFor)
{
    planOneBlock();
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        EXPECT_EQ(dialog.findChild<QLineEdit*>(QStringLiteral("conditionFilter"))->text(),
                  QStringLiteral("Knee replacement"));
        EXPECT_EQ(dialog.findChild<QLineEdit*>(QStringLiteral("muscleFilter"))->text(),
                  QStringLiteral("vastus lateralis"));
        EXPECT_EQ(listOf(dialog).count(), 4); // a heading and three studies after knee replacement
        type(dialog, "conditionFilter", {});
        type(dialog, "muscleFilter", QStringLiteral("WRIST"));
        EXPECT_EQ(textOf(dialog, "pointName"), QStringLiteral("Powell 1999"));
        type(dialog, "muscleFilter", QStringLiteral("ear"));
        EXPECT_EQ(listOf(dialog).count(), 0);
        EXPECT_FALSE(applyOf(dialog)->isEnabled());
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
    EXPECT_FALSE(draft().block()->origin);
}

// Stevens-Lapsley 2012, Phys Ther 92:210: 15 contractions of 15 s on and 45 s off are 15 min.
TEST_F(StartingPointsInTheWindow, AreAppliedByEnterAsOneStepAndSayWhatIsNotConfirmed)
{
    planOneBlock();
    const Draft before = draft().draft();
    QSignalSpy said(&page(), &PlanPage::said);
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        choose(dialog, QStringLiteral("Stevens-Lapsley 2012"));
        EXPECT_THAT(textOf(dialog, "pointDose").toStdString(), HasSubstr("210 contractions"));
        EXPECT_THAT(textOf(dialog, "pointBefore").toStdString(),
                    HasSubstr("Not confirmed against the paper: days a week, rule of the ramps."));
        EXPECT_THAT(figuresOf(dialog),
                    HasSubstr("Days a week | 7 | not confirmed against the paper | 7"));
        QTest::keyClick(&listOf(dialog), Qt::Key_Return);
    });
    EXPECT_EQ(settings().onTime, 15s);
    EXPECT_EQ(settings().offTime, 45s);
    EXPECT_EQ(settings().sessionLength, 15min);
    EXPECT_EQ(settings().amplitude.ceiling, 60_mA);
    EXPECT_EQ(draft().block()->sessionsPerDay, 2);
    EXPECT_EQ(draft().block()->weeks, 6);
    EXPECT_EQ(draft().block()->origin, (BlockOrigin{"Stevens-Lapsley 2012", false}));
    ASSERT_FALSE(said.isEmpty());
    EXPECT_THAT(said.last().front().toString().toStdString(),
                testing::AllOf(HasSubstr("Stevens-Lapsley 2012 applied"),
                               HasSubstr("Not confirmed against the paper: days a week"),
                               HasSubstr("Left for you to fill in: ramp down")));
    EXPECT_EQ(practice.find<QLabel>("origin")->text(),
              QStringLiteral("Started from Stevens-Lapsley 2012"));
    practice.bringToFront();
    QTest::keyClick(&practice.window(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(draft().draft(), before);
    QTest::keyClick(&practice.window(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    draft().setSetting(Field::onTime, 12'000);
    EXPECT_EQ(practice.find<QLabel>("origin")->text(),
              QStringLiteral("Started from Stevens-Lapsley 2012, changed since"));
}

TEST_F(StartingPointsInTheWindow, LeaveEmptyWhatIsDoubtfulAndSaySo)
{
    planOneBlock();
    const Settings before = settings();
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        choose(dialog, QStringLiteral("Avramidis 2003"));
        EXPECT_THAT(textOf(dialog, "pointBefore").toStdString(),
                    HasSubstr("Left for you to fill in: waveform, on time, off time"));
        EXPECT_THAT(figuresOf(dialog), HasSubstr("doubtful: left empty"));
        QTest::keyClick(&listOf(dialog), Qt::Key_Return);
    });
    EXPECT_EQ(settings().onTime, before.onTime);
    EXPECT_EQ(settings().offTime, before.offTime);
    EXPECT_EQ(settings().pulseFrequency, 40_Hz);
    EXPECT_EQ(settings().phaseDuration, 300_us);
    EXPECT_EQ(settings().sessionLength, 59min); // 2 h are past the end of this unit's timer
}

TEST_F(StartingPointsInTheWindow, WaitForAUnitAndSayWhy)
{
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        EXPECT_FALSE(applyOf(dialog)->isEnabled());
        EXPECT_THAT(textOf(dialog, "pointBefore").toStdString(),
                    HasSubstr("No stimulator is chosen."));
        QTest::keyClick(&listOf(dialog), Qt::Key_Return); // does nothing
        EXPECT_TRUE(dialog.isVisible());
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
    EXPECT_TRUE(draft().draft().blocks.empty());
}

TEST_F(StartingPointsInTheWindow, OfSingleTwitchesAreShownToBeRead)
{
    planOneBlock();
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        type(dialog, "muscleFilter", {});
        type(dialog, "conditionFilter", QStringLiteral("heart failure"));
        choose(dialog, QStringLiteral("Ennis 2017"));
        EXPECT_FALSE(applyOf(dialog)->isEnabled());
        EXPECT_THAT(textOf(dialog, "pointBefore").toStdString(), HasSubstr("Below tetany"));
        EXPECT_EQ(textOf(dialog, "pointDose"), QString());
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
}

TEST_F(StartingPointsInTheWindow, KeepTheBlockAsHouseSettings)
{
    planOneBlock();
    draft().setSetting(Field::onTime, 7'000);
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        onNextDialog([&](QDialog& form) {
            EXPECT_TRUE(isActive(form));
            type(form, "houseName", QStringLiteral("Quay Lane knees"));
            QTest::keyClick(form.focusWidget(), Qt::Key_Return);
            if (form.isVisible()) {
                ADD_FAILURE() << "the form stays open";
                form.reject();
            }
        });
        // The list of the dialog below stays the active modal one until the form opens.
        dialog.findChild<QPushButton*>(QStringLiteral("keepHouseSettings"))->click();
        EXPECT_EQ(textOf(dialog, "pointName"), QStringLiteral("Quay Lane knees"));
        EXPECT_THAT(figuresOf(dialog), HasSubstr("On time | 7 s | kept by the practice | 7 s"));
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
    ASSERT_EQ(house().size(), 1U);
    EXPECT_EQ(house().front().muscle, "vastus lateralis");
    EXPECT_EQ(house().front().condition, "Knee replacement");
    EXPECT_EQ(house().front().settings.onTime, 7s);
    EXPECT_EQ(house().front().settings.amplitude, AmplitudeGuidance{});
}

TEST_F(StartingPointsInTheWindow, ApplyHouseSettingsInTheSameWay)
{
    planOneBlock();
    keepAs("Quay Lane knees");
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        type(dialog, "conditionFilter", {});
        choose(dialog, QStringLiteral("Quay Lane knees"));
        EXPECT_EQ(textOf(dialog, "pointBefore"), QString());
        QTest::keyClick(&listOf(dialog), Qt::Key_Return);
    });
    EXPECT_EQ(settings().onTime, 9s);
    EXPECT_EQ(draft().block()->origin, (BlockOrigin{"Quay Lane knees", false}));
}

TEST_F(StartingPointsInTheWindow, WithdrawHouseSettingsAfterAQuestion)
{
    planOneBlock();
    keepAs("Quay Lane knees");
    openDialog([&](QDialog& dialog) {
        ASSERT_TRUE(isActive(dialog));
        type(dialog, "conditionFilter", {});
        choose(dialog, QStringLiteral("Quay Lane knees"));
        const auto isAsked = [&] { return practice.prompts().asked.contains(u"Quay Lane knees"); };
        practice.prompts().confirms = false;
        QTest::keyClick(&dialog, Qt::Key_W, Qt::AltModifier);
        ASSERT_TRUE(QTest::qWaitFor(isAsked));
        EXPECT_EQ(house().size(), 1U);
        practice.prompts().confirms = true;
        practice.prompts().asked.clear();
        QTest::keyClick(&dialog, Qt::Key_W, Qt::AltModifier);
        ASSERT_TRUE(QTest::qWaitFor(isAsked));
        EXPECT_TRUE(house().empty());
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
}
