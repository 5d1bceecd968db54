// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_delegate.h"
#include "app/caseload/caseload_page.h"
#include "app/caseload/caseload_table.h"
#include "app/caseload/desk_sheet.h"
#include "app/look/segment_row.h"
#include "tests/app/invented_caseload.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

class CaseloadPageTest : public testing::Test
{
protected:
    CaseloadPageTest()
        : page(source, english)
    {
        page.resize(1440, 850);
        page.reload();
        page.show();
        page.activateWindow();
        QApplication::processEvents();
    }
    QLineEdit& search() { return *page.findChild<QLineEdit*>(); }
    CaseloadTable& table() { return *page.findChild<CaseloadTable*>(); }
    SegmentRow& filter() { return *page.findChild<SegmentRow*>(); }
    QString current() { return table().currentLine() ? table().currentLine()->name : QString(); }
    /// Labels and buttons that can be seen, in one text.
    QString shownText()
    {
        QStringList texts;
        for (const QLabel* label : page.findChildren<QLabel*>()) {
            texts << (label->isVisible() ? label->text() : QString());
        }
        for (const QAbstractButton* button : page.findChildren<QAbstractButton*>()) {
            texts << (button->isVisible() ? button->text() : QString());
        }
        return texts.join(QLatin1Char('\n'));
    }

    InventedSource source;
    CaseloadPage page;
};

} // namespace

TEST_F(CaseloadPageTest, CtrlFLeadsIntoTheSearchAndDownIntoTheList)
{
    table().setFocus();
    page.focusSearch();
    EXPECT_TRUE(search().hasFocus());
    QTest::keyClick(&search(), Qt::Key_Down);
    EXPECT_TRUE(table().hasFocus());
    EXPECT_EQ(current(), QStringLiteral("Édouard Quillan"));
}

TEST_F(CaseloadPageTest, ArrowsStepOverTheHeadsOfGroupsAndUpLeadsBackToTheSearch)
{
    page.focusList();
    for (int step = 0; step < 5; ++step) {
        QTest::keyClick(&table(), Qt::Key_Down);
    }
    EXPECT_EQ(current(), QStringLiteral("Agnes Thorley")) << "first of the second group";
    for (int step = 0; step < 5; ++step) {
        QTest::keyClick(&table(), Qt::Key_Up);
    }
    EXPECT_EQ(current(), QStringLiteral("Édouard Quillan"));
    QTest::keyClick(&table(), Qt::Key_Up);
    EXPECT_TRUE(search().hasFocus());
}

TEST_F(CaseloadPageTest, EnterOpensThePatientWithTheCourse)
{
    std::optional<PatientId> patient;
    std::optional<CourseId> course;
    QObject::connect(&page, &CaseloadPage::openRequested, &page,
                     [&](PatientId opened, std::optional<CourseId> its) {
                         patient = opened;
                         course = its;
                     });
    page.focusList();
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_EQ(patient, PatientId(13));
    EXPECT_EQ(course, CourseId(113));
    search().setText(QStringLiteral("weatherby"));
    page.focusList();
    QTest::keyClick(&table(), Qt::Key_Enter);
    EXPECT_EQ(patient, PatientId(16));
    EXPECT_FALSE(course) << "no course entered yet";
}

TEST_F(CaseloadPageTest, TypingFiltersAndEscapeClears)
{
    search().setFocus();
    QTest::keyClicks(&search(), QStringLiteral("lucia"));
    EXPECT_EQ(table().model()->rowCount(), 2) << "a head and a patient";
    QTest::keyClick(&search(), Qt::Key_Escape);
    EXPECT_TRUE(search().text().isEmpty());
    EXPECT_EQ(table().model()->rowCount(), 17) << "15 patients and two heads";
}

TEST_F(CaseloadPageTest, ASearchWithoutHitSaysSoAndOffersToClearIt)
{
    search().setText(QStringLiteral("xyz"));
    EXPECT_TRUE(shownText().contains(
        QStringLiteral("Nobody matches ‘xyz’. Ended courses are searched too.")));
    QPushButton* clear = nullptr;
    for (QPushButton* button : page.findChildren<QPushButton*>()) {
        clear = button->isVisible() && button->text() == QStringLiteral("Clear the search") ? button
                                                                                            : clear;
    }
    ASSERT_TRUE(clear);
    QTest::mouseClick(clear, Qt::LeftButton);
    EXPECT_EQ(table().model()->rowCount(), 17);
}

TEST_F(CaseloadPageTest, FiltersShowHowManyStandBehindThem)
{
    EXPECT_TRUE(shownText().contains(QStringLiteral("Needs attention\u20025")));
    filter().choose(static_cast<int>(CaseloadFilter::ended));
    EXPECT_EQ(table().model()->rowCount(), 3);
}

TEST_F(CaseloadPageTest, TheChosenPatientStaysChosenWhenRowsOrFiltersChange)
{
    page.choosePatient(PatientId(5));
    page.reload();
    EXPECT_EQ(current(), QStringLiteral("Imran Castell"));
    filter().choose(static_cast<int>(CaseloadFilter::needsAttention));
    EXPECT_EQ(current(), QStringLiteral("Imran Castell"));
}

TEST_F(CaseloadPageTest, ALineOfTheDeskFiltersTheListUntilItIsReleased)
{
    auto* desk = page.findChild<DeskSheet*>();
    QList<DeskLine*> lines = desk->findChildren<DeskLine*>();
    ASSERT_EQ(lines.size(), 4);
    EXPECT_EQ(lines[0]->accessibleName(),
              QStringLiteral("2 Courses without a plan: Édouard Quillan, Wanda Isley-Croft"));
    QTest::mouseClick(lines[0], Qt::LeftButton);
    EXPECT_EQ(table().model()->rowCount(), 3);
    QTest::mouseClick(lines[0], Qt::LeftButton);
    EXPECT_EQ(table().model()->rowCount(), 17);
    QTest::mouseClick(lines[2], Qt::LeftButton);
    filter().choose(static_cast<int>(CaseloadFilter::ended));
    EXPECT_FALSE(lines[2]->isChecked()) << "a filter takes its place";
}

TEST_F(CaseloadPageTest, WhenWhatLayOnTheDeskIsDoneTheWholeListComesBack)
{
    auto* desk = page.findChild<DeskSheet*>();
    QTest::mouseClick(desk->findChildren<DeskLine*>()[2], Qt::LeftButton);
    for (db::CaseloadRow& row : source.held) {
        row.hasDraft = false;
    }
    page.reload();
    EXPECT_GT(table().model()->rowCount(), 10);
}

TEST_F(CaseloadPageTest, TheSideSheetNeedsRoom)
{
    auto* desk = page.findChild<DeskSheet*>();
    EXPECT_TRUE(desk->isVisible());
    page.resize(1190, 700);
    EXPECT_FALSE(desk->isVisible());
}

TEST_F(CaseloadPageTest, AnEmptyPracticeOffersTwoWaysToBegin)
{
    source.held.clear();
    page.reload();
    EXPECT_TRUE(shownText().contains(QStringLiteral("No patients yet")));
    EXPECT_TRUE(shownText().contains(QStringLiteral("Nothing on the desk.")));
    QSignalSpy fresh(&page, &CaseloadPage::newPatientRequested);
    QSignalSpy demo(&page, &CaseloadPage::demoRequested);
    for (QPushButton* button : page.findChildren<QPushButton*>()) {
        if (button->isVisible() && !button->isCheckable()) {
            QTest::mouseClick(button, Qt::LeftButton);
        }
    }
    EXPECT_EQ(fresh.size(), 2) << "in the head and beside the empty grid";
    EXPECT_EQ(demo.size(), 1);
    EXPECT_EQ(page.statusText(), QStringLiteral("No courses yet"));
}

TEST_F(CaseloadPageTest, TheStatusBarLearnsHowManyCoursesRun)
{
    EXPECT_EQ(page.statusText(), QStringLiteral("14 courses running · 2 ended"));
}

TEST_F(CaseloadPageTest, EveryWidgetThatTakesTheFocusHasANameForAVoice)
{
    for (const QWidget* widget : page.findChildren<QWidget*>()) {
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        const bool named =
            !widget->accessibleName().isEmpty() || (button && !button->text().isEmpty());
        EXPECT_TRUE(named || widget->focusPolicy() == Qt::NoFocus || !widget->isVisible())
            << widget->metaObject()->className() << " " << widget->objectName().toStdString();
    }
}

namespace
{

/// Counts how many rows are drawn.
class CountingDelegate : public CaseloadDelegate
{
public:
    using CaseloadDelegate::CaseloadDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        painted += index.column() == 0 ? 1 : 0;
        CaseloadDelegate::paint(painter, option, index);
    }
    mutable int painted = 0;
};

} // namespace

TEST_F(CaseloadPageTest, OfManyRowsOnlyThoseInViewAreDrawn)
{
    source.held = inventedCaseload(600);
    page.reload();
    CountingDelegate counting(english);
    table().setItemDelegate(&counting);
    page.grab();
    EXPECT_GT(counting.painted, 5);
    EXPECT_LT(counting.painted, 20) << "850 px hold some 13 rows of 64 px";
    table().setItemDelegate(new CaseloadDelegate(english, &table()));
}
