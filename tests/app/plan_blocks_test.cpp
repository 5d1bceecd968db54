// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks in the real window: copied, moved, lengthened, split and pulled along the weeks, each a
// step of undo.
#include "app/grid/course_grid_widget.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "tests/app/practice_window.h"

#include "db/plans.h"

#include <QAction>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMouseEvent>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;

namespace
{

/// The window on a draft of three blocks of 2, 4 and 6 weeks; today is in week 5, nothing is
/// issued.
class BlocksOfADraft : public testing::Test
{
protected:
    BlocksOfADraft()
    {
        Draft saved = aDraft(practice.ids());
        saved.blocks.assign(3, saved.blocks.front());
        const int weeks[] = {2, 4, 6};
        for (std::size_t i = 0; i < 3; ++i) {
            saved.blocks[i].weeks = weeks[i];
            saved.blocks[i].sessionsPerDay = static_cast<int>(i) + 1;
        }
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, saved);
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.bringToFront();
    }

    PlanDraft& draft() { return practice.window().recordPage().planPage().draft(); }
    QListWidget* list() { return practice.find<QListWidget>("blocks"); }
    CourseGridWidget* grid() { return practice.find<CourseGridWidget>("courseGrid"); }

    void chooseBlock(int row)
    {
        list()->setFocus();
        list()->setCurrentRow(row);
    }
    std::vector<int> weeks()
    {
        std::vector<int> all;
        for (const Block& block : draft().draft().blocks) {
            all.push_back(block.weeks);
        }
        return all;
    }
    std::vector<int> sessions()
    {
        std::vector<int> all;
        for (const Block& block : draft().draft().blocks) {
            all.push_back(block.sessionsPerDay);
        }
        return all;
    }
    void undo()
    {
        practice.bringToFront();
        QTest::keyClick(&practice.window(), Qt::Key_Z, Qt::ControlModifier);
    }
    void redo()
    {
        QTest::keyClick(&practice.window(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    }

    /// The edge after so many weeks, in the heads.
    QPoint edgeAfter(int week)
    {
        return {grid()->latticeLeft() +
                    (week + 1 - grid()->firstShownWeek().number) * grid()->pitch(),
                8};
    }
    void pointer(QEvent::Type type, const QPoint& onScreen, Qt::MouseButtons held)
    {
        const auto button = type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton;
        QMouseEvent event(type, grid()->mapFromGlobal(onScreen), onScreen, button, held,
                          Qt::NoModifier);
        QCoreApplication::sendEvent(grid(), &event);
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(BlocksOfADraft, ACopyFollowsItsBlockAndIsChosen)
{
    chooseBlock(1);
    QTest::keyClick(list(), Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(sessions(), (std::vector{1, 2, 2, 3}));
    EXPECT_EQ(draft().currentBlock(), 2U);
    undo();
    EXPECT_EQ(sessions(), (std::vector{1, 2, 3}));
    redo();
    EXPECT_EQ(sessions(), (std::vector{1, 2, 2, 3}));
}

TEST_F(BlocksOfADraft, AltUpAndDownMoveTheChosenBlockAndItStaysChosen)
{
    chooseBlock(2);
    QTest::keyClick(list(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(sessions(), (std::vector{1, 3, 2}));
    EXPECT_EQ(draft().currentBlock(), 1U);
    QTest::keyClick(list(), Qt::Key_Up, Qt::AltModifier);
    QTest::keyClick(list(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(sessions(), (std::vector{3, 1, 2})) << "the first one goes no further";
    QTest::keyClick(list(), Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(sessions(), (std::vector{1, 3, 2}));
    undo();
    EXPECT_EQ(sessions(), (std::vector{3, 1, 2}));
}

TEST_F(BlocksOfADraft, AltRightAndLeftLengthenAndShortenAndStayInTheRecord)
{
    chooseBlock(0);
    QTest::keyClick(list(), Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(weeks(), (std::vector{3, 4, 6}));
    QTest::keyClick(list(), Qt::Key_Left, Qt::AltModifier);
    QTest::keyClick(list(), Qt::Key_Left, Qt::AltModifier);
    QTest::keyClick(list(), Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(weeks(), (std::vector{1, 4, 6})) << "a week stays";
    EXPECT_TRUE(practice.window().recordPage().isVisible())
        << "Alt Left goes back to the caseload from elsewhere only";
    undo();
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6})) << "each key is a step";
}

TEST_F(BlocksOfADraft, TheGridLengthensTheChosenBlockToo)
{
    chooseBlock(2);
    grid()->setFocus();
    QTest::keyClick(grid(), Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(weeks(), (std::vector{2, 4, 7}));
    QTest::keyClick(grid(), Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6}));
}

TEST_F(BlocksOfADraft, ASplitAsksForTheWeekAndProposesThePresentOne)
{
    chooseBlock(1);
    int proposed = 0;
    onNextDialog([&](QDialog& dialog) {
        auto* week = dialog.findChild<QSpinBox*>(QStringLiteral("splitWeek"));
        proposed = week->value();
        QTest::keyClick(week, Qt::Key_Up);
        QTest::keyClick(week, Qt::Key_Return);
    });
    QTest::keyClick(list(), Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(proposed, 5) << "block 2 lasts from week 3 to 6, today is in week 5";
    EXPECT_EQ(weeks(), (std::vector{2, 3, 1, 6}));
    EXPECT_EQ(sessions(), (std::vector{1, 2, 2, 3}));
    EXPECT_EQ(draft().currentBlock(), 2U);
    undo();
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6}));
}

TEST_F(BlocksOfADraft, TheMenuOffersOnlyWhatCanBeDone)
{
    chooseBlock(0);
    QMenu* menu = practice.find<QPushButton>("moreBlock")->menu();
    emit menu->aboutToShow();
    QStringList off;
    for (const QAction* action : menu->actions()) {
        if (!action->isEnabled() && !action->isSeparator()) {
            off.append(action->text().remove(QLatin1Char('&')));
        }
    }
    EXPECT_EQ(off, QStringList{QStringLiteral("Move earlier")});
}

TEST_F(BlocksOfADraft, DeleteRemovesTheChosenBlockAndUndoBringsItBack)
{
    chooseBlock(1);
    QTest::keyClick(list(), Qt::Key_Delete);
    EXPECT_EQ(sessions(), (std::vector{1, 3}));
    undo();
    EXPECT_EQ(sessions(), (std::vector{1, 2, 3}));
}

TEST_F(BlocksOfADraft, AnEdgePulledAlongTheWeeksSnapsAndIsOneStep)
{
    const int pitch = grid()->pitch();
    const QPoint edge = grid()->mapToGlobal(edgeAfter(6));
    pointer(QEvent::MouseMove, edge, Qt::NoButton);
    EXPECT_EQ(grid()->cursor().shape(), Qt::SplitHCursor) << "the pointer shows it can be pulled";
    pointer(QEvent::MouseButtonPress, edge, Qt::LeftButton);
    pointer(QEvent::MouseMove, edge + QPoint(pitch + 3, 0), Qt::LeftButton);
    EXPECT_EQ(weeks(), (std::vector{2, 5, 6})) << "while it is pulled";
    EXPECT_EQ(draft().currentBlock(), 1U);
    pointer(QEvent::MouseMove, edge + QPoint(2 * pitch - 4, 0), Qt::LeftButton);
    pointer(QEvent::MouseButtonRelease, edge + QPoint(2 * pitch - 4, 0), Qt::NoButton);
    EXPECT_EQ(weeks(), (std::vector{2, 6, 6}));
    undo();
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6}));
    EXPECT_FALSE(draft().isChanged());
    redo();
    EXPECT_EQ(weeks(), (std::vector{2, 6, 6}));
}

TEST_F(BlocksOfADraft, TwoPullsAreTwoSteps)
{
    const int pitch = grid()->pitch();
    for (int pull = 0; pull < 2; ++pull) {
        const QPoint edge = grid()->mapToGlobal(edgeAfter(12 + pull));
        pointer(QEvent::MouseButtonPress, edge, Qt::LeftButton);
        pointer(QEvent::MouseMove, edge + QPoint(pitch, 0), Qt::LeftButton);
        pointer(QEvent::MouseButtonRelease, edge + QPoint(pitch, 0), Qt::NoButton);
    }
    EXPECT_EQ(weeks(), (std::vector{2, 4, 8}));
    undo();
    EXPECT_EQ(weeks(), (std::vector{2, 4, 7}));
}

TEST_F(BlocksOfADraft, EscapeTakesThePullBackWithoutAStep)
{
    const QPoint edge = grid()->mapToGlobal(edgeAfter(2));
    pointer(QEvent::MouseButtonPress, edge, Qt::LeftButton);
    pointer(QEvent::MouseMove, edge + QPoint(3 * grid()->pitch(), 0), Qt::LeftButton);
    EXPECT_EQ(weeks(), (std::vector{5, 4, 6}));
    QTest::keyClick(grid(), Qt::Key_Escape);
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6}));
    EXPECT_FALSE(draft().undoStack().canUndo());
    pointer(QEvent::MouseMove, edge + QPoint(3 * grid()->pitch(), 0), Qt::LeftButton);
    EXPECT_EQ(weeks(), (std::vector{2, 4, 6})) << "the button may still be down";
}

TEST_F(BlocksOfADraft, PulledToTheLeftABlockKeepsAWeek)
{
    const QPoint edge = grid()->mapToGlobal(edgeAfter(12));
    pointer(QEvent::MouseButtonPress, edge, Qt::LeftButton);
    pointer(QEvent::MouseMove, edge - QPoint(20 * grid()->pitch(), 0), Qt::LeftButton);
    pointer(QEvent::MouseButtonRelease, edge - QPoint(20 * grid()->pitch(), 0), Qt::NoButton);
    EXPECT_EQ(weeks(), (std::vector{2, 4, 1}));
}

TEST_F(BlocksOfADraft, EachBlockShowsWhatChangedAndTheSizeOfTheStep)
{
    EXPECT_TRUE(list()->item(1)->text().contains(QStringLiteral("from once a day to twice a day")))
        << list()->item(1)->text().toStdString();
    EXPECT_TRUE(list()->item(1)->text().contains(QStringLiteral("+100\u00A0%")))
        << list()->item(1)->text().toStdString();
    EXPECT_TRUE(list()->item(2)->text().contains(QStringLiteral("+50\u00A0%")))
        << "three sessions in place of two";
    EXPECT_FALSE(list()->item(2)->text().contains(QStringLiteral("Pulse frequency")));
}

TEST_F(BlocksOfADraft, ASiteIsCopiedToTheFreeChannelAndSharesItsTiming)
{
    auto* sites = practice.find<QListWidget>("sites");
    sites->setFocus();
    sites->setCurrentRow(0);
    QTest::keyClick(sites, Qt::Key_D, Qt::ControlModifier);
    ASSERT_EQ(draft().block()->sites.size(), 2U);
    EXPECT_EQ(draft().block()->sites[1].channel, 2);
    EXPECT_TRUE(sites->item(1)->text().contains(QStringLiteral("timing shared with site 1")))
        << sites->item(1)->text().toStdString();
    QTest::keyClick(sites, Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(draft().block()->sites.size(), 2U) << "the unit has two channels";
    EXPECT_TRUE(practice.find<QLabel>("said")->text().startsWith(QStringLiteral("All channels")))
        << practice.find<QLabel>("said")->text().toStdString();
    undo();
    EXPECT_EQ(draft().block()->sites.size(), 1U);
}

TEST_F(BlocksOfADraft, ASecondSiteIsToldThatTheChannelsShareTheirTiming)
{
    QString note;
    onNextDialog([&](QDialog& dialog) {
        if (const auto* label = dialog.findChild<QLabel*>(QStringLiteral("note"))) {
            note = label->text();
        }
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("muscle")),
                 QStringLiteral("vastus medialis"));
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    QTest::mouseClick(practice.find<QPushButton>("addSite"), Qt::LeftButton);
    EXPECT_TRUE(note.contains(QStringLiteral("share their timing"))) << note.toStdString();
    ASSERT_EQ(draft().block()->sites.size(), 2U);
    EXPECT_EQ(draft().block()->sites[1].channel, 2) << "the free one";
}

// What was lived under an issued plan stays: its edges are not pulled any more.
TEST_F(BlocksOfADraft, AnEdgeBeforeTodayOfAnIssuedPlanStaysWhereItIs)
{
    must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
        return db::issuePlan(writing, draft().draftToSave(),
                             {.fromDate = day(2026, 2, 9),
                              .reason = "first plan",
                              .issuedBy = practice.ids().practitioner},
                             day(2026, 3, 12));
    }));
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    const QPoint lived = grid()->mapToGlobal(edgeAfter(2));
    pointer(QEvent::MouseMove, lived, Qt::NoButton);
    EXPECT_NE(grid()->cursor().shape(), Qt::SplitHCursor);
    const QPoint ahead = grid()->mapToGlobal(edgeAfter(6));
    pointer(QEvent::MouseButtonPress, ahead, Qt::LeftButton);
    pointer(QEvent::MouseMove, ahead - QPoint(5 * grid()->pitch(), 0), Qt::LeftButton);
    pointer(QEvent::MouseButtonRelease, ahead - QPoint(5 * grid()->pitch(), 0), Qt::NoButton);
    EXPECT_EQ(weeks(), (std::vector{2, 2, 6})) << "to the end of week 4; today is in week 5";
}
