// SPDX-License-Identifier: GPL-3.0-or-later
// Taking a variant over into the draft, with the keyboard alone, and what becomes of its reason.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "tests/app/what_if_job.h"

#include "db/plans.h"

#include <QApplication>
#include <QLineEdit>
#include <QPlainTextEdit>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::literals;
using namespace std::chrono_literals;

TEST_F(WhatIfVariants, AreAdoptedWithAReasonOnly)
{
    open(tenOnThirtyOff());
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("is as the block")));
    enter(0, Field::offTime, QStringLiteral("0"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("can’t be run")));
    enter(0, Field::offTime, QStringLiteral("x"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("is no value")));
    enter(0, Field::offTime, QStringLiteral("45"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("The reason is empty")));
    EXPECT_EQ(dialog->result(), 0);
    typeInto(&field<QLineEdit>("adoptReason"), QStringLiteral("tires less"));
    click("adopt");
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_EQ(dialog->reason(), QStringLiteral("tires less"));
    EXPECT_EQ(dialog->variant().sites.front().settings.offTime, 45s);
}

namespace
{

/// The window on a saved draft of one block.
class AdoptedVariant : public testing::Test
{
protected:
    AdoptedVariant()
    {
        Draft saved = aDraft(practice.ids());
        saved.blocks = {tenOnThirtyOff()};
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, saved);
        }));
        openRecord();
    }
    void openRecord()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.bringToFront();
    }
    PlanPage& page() { return practice.window().recordPage().planPage(); }
    PlanDraft& draft() { return page().draft(); }
    Milliseconds offTime() { return draft().block()->sites.front().settings.offTime; }
    /// Tab until the field has the focus, then in the place of what it holds.
    static void type(QDialog& dialog, const QString& name, const QString& value)
    {
        const QWidget* field = dialog.findChild<QWidget*>(name);
        for (int presses = 0; presses < 120 && dialog.focusWidget() != field; ++presses) {
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Tab);
        }
        ASSERT_EQ(dialog.focusWidget(), field) << "Tab does not reach it";
        QTest::keyClick(dialog.focusWidget(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(dialog.focusWidget(), value);
    }
    /// With the keyboard alone: off time of variant A, the reason, Return.
    void adopt(const QString& seconds, const QString& reason)
    {
        practice.bringToFront();
        onNextDialog([=](QDialog& dialog) {
            type(dialog, cellName(0, Field::offTime), seconds);
            type(dialog, QStringLiteral("adoptReason"), reason);
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
        });
        QTest::keyClick(&practice.window(), Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
    }
    QString proposedReason()
    {
        QString reason;
        onNextDialog([&reason](QDialog& dialog) {
            reason = dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason"))->toPlainText();
            dialog.reject();
        });
        page().issue();
        return reason;
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(AdoptedVariant, ChangesTheBlockAsOneStepAndGivesTheReasonOfThePlan)
{
    adopt(QStringLiteral("45"), QStringLiteral("tires less"));
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    adopt(QStringLiteral("60"), QStringLiteral("still too tired"));
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less; still too tired"));
    draft().undoStack().undo();
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    draft().undoStack().undo();
    EXPECT_EQ(offTime(), 30s);
    EXPECT_EQ(proposedReason(), QString());
    EXPECT_FALSE(draft().isChanged());
}

TEST_F(AdoptedVariant, KeepsItsReasonAcrossARestart)
{
    adopt(QStringLiteral("45"), QStringLiteral("tires less"));
    page().keepNow();
    practice.crashAndStartAgain();
    openRecord();
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    page().saveDraft();
    practice.crashAndStartAgain();
    openRecord();
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
}

TEST_F(AdoptedVariant, NeedsAUnitABlockAndASite)
{
    const auto sentence = [this] {
        QString heard;
        QObject context;
        QObject::connect(&page(), &PlanPage::said, &context,
                         [&heard](const QString& said) { heard = said; });
        page().askWhatIf();
        return heard;
    };
    draft().removeSite(0);
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Add a site first")));
    draft().removeBlock(0);
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Add a block first")));
    draft().takeStimulator(StimulatorId(999));
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Choose the patient’s stimulator first")));
}
