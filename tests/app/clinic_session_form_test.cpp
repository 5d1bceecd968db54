// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/clinic_session_form.h"
#include "app/clinic/clinic_words.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/window/entry_dialog.h"
#include "tests/app/practice_window.h"

#include "db/clinic_sessions.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace Qt::StringLiterals;

namespace
{

/// A saved draft with one site, its record open on the plan page.
class InTheClinic : public testing::Test
{
protected:
    InTheClinic()
    {
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, aDraft(practice.ids()));
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
    }
    void open(const std::function<void(QDialog&)>& answer)
    {
        practice.window().activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
        onNextDialog(answer);
        QTest::keyClick(&practice.window(), Qt::Key_K, Qt::ControlModifier);
    }
    /// Or a mistake would leave it open for ever.
    static void leave(QDialog& dialog)
    {
        if (dialog.isVisible()) {
            dialog.reject();
        }
    }
    static QLineEdit* field(QDialog& dialog, const char* name)
    {
        return dialog.findChild<QLineEdit*>(QLatin1String(name));
    }
    static void type(QDialog& dialog, const char* name, const char* text)
    {
        typeInto(field(dialog, name), QString::fromUtf8(text));
    }
    static QString problemOf(QDialog& dialog)
    {
        return dynamic_cast<EntryDialog&>(dialog).problemText();
    }
    std::vector<ClinicSession> stored()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::clinicSessionsOf(reading, practice.ids().course);
        }));
    }
    std::optional<Amplitude> toleratedInTheDraft()
    {
        const Block* block = practice.window().recordPage().planPage().draft().block();
        return block->sites.at(0).settings.amplitude.lastTolerated;
    }

    std::int64_t keptForms()
    {
        return must(practice.store().read([](db::Reading& reading) {
            db::Statement count(reading.connection(),
                                "SELECT count(*) FROM kept_form WHERE form GLOB 'clinic/*'");
            return count.next() ? count.takeInteger() : 0;
        }));
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(InTheClinic, ThresholdsAreTypedSavedAndBecomeTheGuidanceOfTheDraft)
{
    const auto planned = aDraft(practice.ids()).blocks[0].sites[0].settings.phaseDuration;
    open([&](QDialog& dialog) {
        EXPECT_TRUE(
            field(dialog, "site1_phase_1")->text().startsWith(QString::number(planned.count())));
        EXPECT_EQ(dialog.focusWidget(), field(dialog, "site1_sensory_1"));
        QTest::keyClicks(field(dialog, "site1_sensory_1"), QStringLiteral("12"));
        QTest::keyClick(field(dialog, "site1_sensory_1"), Qt::Key_Tab);
        QTest::keyClicks(dialog.focusWidget(), QStringLiteral("20,5"));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Tab);
        QTest::keyClicks(dialog.focusWidget(), QStringLiteral("46 mA"));
        type(dialog, "site1_torque", "42.5 Nm");
        dialog.findChild<QComboBox*>(QStringLiteral("site1_contraction"))->setCurrentIndex(1);
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QString());
        leave(dialog);
    });
    ASSERT_THAT(stored(), testing::SizeIs(1));
    const ClinicSite site = stored().at(0).sites.at(0);
    ASSERT_THAT(site.thresholds, testing::SizeIs(1));
    EXPECT_EQ(site.thresholds[0].phaseDuration, planned);
    EXPECT_EQ(site.thresholds[0].sensory, Amplitude::fromCount(12'000));
    EXPECT_EQ(site.thresholds[0].motor, Amplitude::fromCount(20'500));
    EXPECT_EQ(site.torque, 42'500);
    EXPECT_EQ(site.contractionSeen, true);
    EXPECT_EQ(site.skinBefore, std::nullopt) << "nothing is filled in for the person";
    EXPECT_EQ(toleratedInTheDraft(), Amplitude::fromCount(46'000));
    practice.window().recordPage().planPage().draft().undoStack().undo();
    EXPECT_NE(toleratedInTheDraft(), Amplitude::fromCount(46'000)) << "one step of undo";
}

TEST_F(InTheClinic, EnterGoesOnToTheNextFieldAndSavesNothing)
{
    open([&](QDialog& dialog) {
        QTest::keyClicks(field(dialog, "site1_sensory_1"), QStringLiteral("12"));
        QTest::keyClick(field(dialog, "site1_sensory_1"), Qt::Key_Return);
        EXPECT_EQ(dialog.focusWidget(), field(dialog, "site1_motor_1"));
        EXPECT_TRUE(dialog.isVisible());
        leave(dialog);
    });
    EXPECT_THAT(stored(), testing::IsEmpty());
}

TEST_F(InTheClinic, AConfirmedPlacementIsSomethingToSaveAndIsReadAgain)
{
    open([&](QDialog& dialog) {
        dialog.findChild<QCheckBox*>(QStringLiteral("site1_placement"))->setChecked(true);
        dialog.findChild<QComboBox*>(QStringLiteral("site1_skin_before"))->setCurrentIndex(1);
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QString());
        leave(dialog);
    });
    ASSERT_THAT(stored(), testing::SizeIs(1));
    EXPECT_EQ(clinicSiteText(stored().at(0).sites.at(0), practice.text()).section(u": "_s, 1),
              u"pads as planned; skin before: nothing to see."_s);
}

TEST_F(InTheClinic, WithTwoSitesOnlyTheOneTriedIsSavedAndBothAreOneStepOfUndo)
{
    PlanDraft& draft = practice.window().recordPage().planPage().draft();
    Site other = draft.block()->sites.at(0);
    other.muscle = "Soleus";
    other.channel = 2;
    draft.addSite(other);
    const Draft before = draft.draft();
    open([&](QDialog& dialog) {
        type(dialog, "site1_tolerated_1", "46");
        type(dialog, "site2_tolerated_1", "31");
        dialog.accept();
        leave(dialog);
    });
    EXPECT_EQ(draft.block()->sites.at(0).settings.amplitude.lastTolerated,
              Amplitude::fromCount(46'000));
    EXPECT_EQ(draft.block()->sites.at(1).settings.amplitude.lastTolerated,
              Amplitude::fromCount(31'000));
    draft.undoStack().undo();
    EXPECT_EQ(draft.draft(), before);
    open([&](QDialog& dialog) {
        type(dialog, "site2_tolerated_1", "33");
        dialog.accept();
        leave(dialog);
    });
    EXPECT_THAT(stored().at(1).sites, testing::SizeIs(1));
    EXPECT_EQ(stored().at(1).sites.at(0).muscle, "Soleus");
}

// Entries of a form that was torn down come back, but never beside another muscle.
TEST_F(InTheClinic, KeptEntriesDoNotComeBackUnderOtherSites)
{
    open([&](QDialog& dialog) {
        QTest::keyClicks(field(dialog, "site1_tolerated_1"), QStringLiteral("46"));
        ASSERT_TRUE(QTest::qWaitFor([&] { return keptForms() == 1; }));
        dialog.done(QDialog::Rejected); // as when the program ends: nothing is dropped
    });
    PlanDraft& draft = practice.window().recordPage().planPage().draft();
    Site other = draft.block()->sites.at(0);
    other.muscle = "Soleus";
    draft.changeSite(0, other);
    open([&](QDialog& dialog) {
        EXPECT_EQ(field(dialog, "site1_tolerated_1")->text(), QString());
        leave(dialog);
    });
    draft.undoStack().undo();
    open([&](QDialog& dialog) {
        EXPECT_EQ(field(dialog, "site1_tolerated_1")->text(), u"46"_s);
        leave(dialog);
    });
}

TEST_F(InTheClinic, ThePersonMayLeaveTheDraftAsItIs)
{
    const auto before = toleratedInTheDraft();
    open([&](QDialog& dialog) {
        type(dialog, "site1_tolerated_1", "31");
        dialog.findChild<QCheckBox*>(QStringLiteral("adopt"))->setChecked(false);
        dialog.accept();
        leave(dialog);
    });
    EXPECT_THAT(stored(), testing::SizeIs(1));
    EXPECT_EQ(toleratedInTheDraft(), before);
}

TEST_F(InTheClinic, WrongEntriesAreSaidOneByOneAndNothingIsLost)
{
    open([&](QDialog& dialog) {
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QStringLiteral("Nothing is entered yet. Enter what was found "
                                                    "at a site, or cancel."));
        type(dialog, "site1_motor_1", "strong");
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QStringLiteral("“strong” is no amplitude. Enter milliamperes, "
                                                    "for example 24, or leave it empty."));
        type(dialog, "site1_motor_1", "20");
        type(dialog, "site1_motor_2", "14");
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QStringLiteral("Line 2 has thresholds but no phase duration. "
                                                    "Enter the one they were found at."));
        field(dialog, "site1_phase_2")->setText(field(dialog, "site1_phase_1")->text());
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QStringLiteral("Two lines have the same phase duration. "
                                                    "Change one of them, or empty it."));
        type(dialog, "site1_phase_2", "55");
        type(dialog, "site1_torque", "much");
        dialog.accept();
        EXPECT_TRUE(problemOf(dialog).startsWith(QStringLiteral("“much” is no torque.")));
        type(dialog, "site1_torque", "");
        type(dialog, "heldOn", "13/3/2026");
        dialog.accept();
        EXPECT_EQ(problemOf(dialog),
                  QStringLiteral("The session lies in the future. Enter the day it was held."));
        EXPECT_EQ(field(dialog, "site1_motor_2")->text(), QStringLiteral("14"));
        type(dialog, "heldOn", "12/3/2026");
        dialog.accept();
        leave(dialog);
    });
    EXPECT_THAT(stored(), testing::SizeIs(1));
}

// Weiss: I = Irh (1 + tch / d). With 10 mA and 200 µs: 30 mA at 100 µs, 15 mA at 400 µs.
TEST_F(InTheClinic, ThresholdsAtTwoPhaseDurationsGiveACurve)
{
    open([&](QDialog& dialog) {
        type(dialog, "site1_phase_1", "100");
        type(dialog, "site1_motor_1", "30");
        auto* words = dialog.findChild<QLabel*>(QStringLiteral("curveWords1"));
        EXPECT_TRUE(words->text().contains(QStringLiteral("two or more phase durations")));
        type(dialog, "site1_phase_2", "400");
        type(dialog, "site1_motor_2", "15");
        EXPECT_TRUE(words->text().contains(QStringLiteral("rheobase 10\u00a0mA")))
            << words->text().toStdString();
        EXPECT_TRUE(words->text().contains(QStringLiteral("chronaxie 200\u00a0µs")))
            << words->text().toStdString();
        dialog.reject();
    });
    EXPECT_THAT(stored(), testing::IsEmpty());
}

TEST_F(InTheClinic, AnEarlierSessionIsShownAndCanBeWithdrawn)
{
    open([&](QDialog& dialog) {
        type(dialog, "site1_tolerated_1", "31");
        dialog.accept();
        leave(dialog);
    });
    open([&](QDialog& dialog) {
        QPushButton* withdraw = nullptr;
        for (auto* button : dialog.findChildren<QPushButton*>()) {
            withdraw = button->text().startsWith(QStringLiteral("Withdraw")) ? button : withdraw;
        }
        ASSERT_TRUE(withdraw);
        withdraw->click();
        EXPECT_TRUE(practice.prompts().asked.contains(QStringLiteral("12 Mar 2026")));
        dialog.reject();
    });
    EXPECT_TRUE(stored().at(0).withdrawn);
}

TEST(InTheClinicWithoutScreening, NothingIsMeasuredOrPractised)
{
    PracticeWindow practice;
    must(practice.store().write(author(), "save draft and screen again", [&](db::Writing& writing) {
        db::saveDraft(writing, aDraft(practice.ids()));
        db::addScreening(writing, allClear(practice.ids().course)); // not signed
    }));
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    onNextDialog([&](QDialog& dialog) {
        EXPECT_FALSE(dialog.findChild<QLineEdit*>(QStringLiteral("site1_motor_1"))->isEnabled());
        EXPECT_FALSE(dialog.findChild<QPushButton*>(QStringLiteral("cueStart"))->isEnabled());
        dialog.accept();
        EXPECT_FALSE(dynamic_cast<EntryDialog&>(dialog).problemText().isEmpty());
        dialog.reject();
    });
    QTest::keyClick(&practice.window(), Qt::Key_K, Qt::ControlModifier);
    EXPECT_THAT(must(practice.store().read([&](db::Reading& reading) {
                    return db::clinicSessionsOf(reading, practice.ids().course);
                })),
                testing::IsEmpty());
}

TEST(InTheClinicUnasked, AFormThatNobodyToldOfTheScreeningIsShut)
{
    PracticeWindow practice;
    const Draft draft = aDraft(practice.ids());
    Course course;
    course.id = practice.ids().course;
    class Silent : public CueSound
    {
        void play(CueTone) override {}
    } silent;
    ClinicSessionForm form(
        practice.services(), {.course = course, .block = draft.blocks[0]}, silent,
        [] { return Milliseconds(0); }, &practice.window());
    EXPECT_FALSE(form.findChild<QLineEdit*>(u"site1_motor_1"_s)->isEnabled());
    EXPECT_FALSE(form.findChild<QPushButton*>(u"cueStart"_s)->isEnabled());
}
