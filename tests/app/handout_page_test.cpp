// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/look.h"
#include "app/print/handout_page.h"
#include "app/print/paper_view.h"
#include "app/window/store_events.h"
#include "tests/app/handout_samples.h"
#include "tests/app/pdf_reader.h"
#include "tests/app/practice_window.h"
#include "tests/support/screened.h"
#include "tests/support/temp_store.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPrintDialog>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using quadrille::tests::blockWithSites;
using quadrille::tests::sampleContent;
using quadrille::tests::samplePlan;

namespace
{

class HandoutPageTest : public testing::Test
{
protected:
    HandoutPageTest()
    {
        page.resize(1000, 700);
        page.show();
        for (QWidget* act : page.acts()) {
            act->show();
        }
    }

    template <class Widget>
    Widget* find(const char* name)
    {
        return page.findChild<Widget*>(QString::fromLatin1(name));
    }
    PaperView& view() { return *find<PaperView>("paperView"); }
    void showPlan() { page.setContent(sampleContent(samplePlan({blockWithSites(2, false)}))); }

    tests::TempStore temp;
    std::unique_ptr<db::Store> store = temp.open();
    QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    Look look{*qApp};
    tests::ScriptedPrompts prompts;
    StoreEvents events;
    db::Author author{std::nullopt, "Ruta Vennel"};
    HandoutPage page{Services{*store, temp.clock, text, look, prompts, events, author}, nullptr};
};

} // namespace

TEST_F(HandoutPageTest, WithoutAPlanSaysSoAndLeadsToIt)
{
    page.setContent(std::nullopt);
    EXPECT_EQ(find<QLabel>("noHandout")->text(),
              QStringLiteral("No plan issued yet. Issue the plan first."));
    EXPECT_TRUE(find<QLabel>("noHandout")->isVisible());
    EXPECT_FALSE(find<QPushButton>("savePdf")->isEnabled());
    EXPECT_FALSE(find<QPushButton>("printHandout")->isEnabled());
    const QSignalSpy requested(&page, &HandoutPage::planRequested);
    QTest::mouseClick(find<QPushButton>("goToPlan"), Qt::LeftButton);
    EXPECT_EQ(requested.count(), 1);
}

TEST_F(HandoutPageTest, WhileTheScreeningBlocksItSaysSoAndLeadsThere)
{
    showPlan();
    const Error notSigned{.code = ErrorCode::screeningNotSigned, .subject = {}, .detail = {}};
    page.setContent(Result<HandoutContent>(notSigned));
    EXPECT_TRUE(find<QLabel>("noHandout")->text().contains(QStringLiteral("is not signed")));
    EXPECT_TRUE(find<QLabel>("noHandout")->isVisible());
    EXPECT_FALSE(view().isVisible());
    EXPECT_FALSE(view().document());
    EXPECT_FALSE(find<QPushButton>("savePdf")->isEnabled());
    EXPECT_FALSE(find<QPushButton>("printHandout")->isEnabled());
    EXPECT_FALSE(find<QPushButton>("goToPlan")->isVisible());
    prompts.pdf = temp.folder() + QStringLiteral("/handout.pdf");
    page.savePdf(); // also by the act itself
    EXPECT_FALSE(QFile::exists(*prompts.pdf));
    const QSignalSpy requested(&page, &HandoutPage::screeningRequested);
    page.focusFirst();
    QTest::keyClick(find<QPushButton>("goToScreening"), Qt::Key_Space);
    EXPECT_EQ(requested.count(), 1);
    showPlan();
    EXPECT_TRUE(find<QPushButton>("printHandout")->isEnabled());
}

TEST_F(HandoutPageTest, APlanThatIsOverIsNotPrinted)
{
    page.setContent(sampleContent(samplePlan({blockWithSites(1, false)}),
                                  tests::sampleStart + std::chrono::days(100)));
    EXPECT_TRUE(find<QLabel>("noHandout")->text().contains(QStringLiteral("29 Mar 2026")));
    EXPECT_FALSE(find<QPushButton>("savePdf")->isEnabled());
}

TEST_F(HandoutPageTest, ShowsThePagesAndTurnsThemByKey)
{
    showPlan();
    ASSERT_EQ(view().pageCount(), 3);
    EXPECT_EQ(find<QLabel>("pageNumber")->text(), QStringLiteral("page 1 of 3"));
    EXPECT_FALSE(find<QPushButton>("previousPage")->isEnabled());
    view().setFocus();
    QTest::keyClick(&view(), Qt::Key_PageDown);
    EXPECT_EQ(find<QLabel>("pageNumber")->text(), QStringLiteral("page 2 of 3"));
    QTest::keyClick(&view(), Qt::Key_End);
    EXPECT_EQ(find<QLabel>("pageNumber")->text(), QStringLiteral("page 3 of 3"));
    EXPECT_FALSE(find<QPushButton>("nextPage")->isEnabled());
    QTest::keyClick(&view(), Qt::Key_Home);
    EXPECT_EQ(view().currentPage(), 0);
    QTest::mouseClick(find<QPushButton>("nextPage"), Qt::LeftButton);
    EXPECT_EQ(view().currentPage(), 1);
}

TEST_F(HandoutPageTest, TheWholePageFitsWhereItIsAskedFor)
{
    showPlan();
    view().setZoom(PaperZoom::wholePage);
    view().goToPage(2);
    EXPECT_EQ(view().currentPage(), 2);
    view().setZoom(PaperZoom::pageWidth);
    EXPECT_EQ(view().currentPage(), 2);
}

TEST_F(HandoutPageTest, ThePageInViewCanBeReadOut)
{
    showPlan();
    EXPECT_EQ(view().accessibleName(), QStringLiteral("Handout, page 1 of 3"));
    EXPECT_TRUE(view().accessibleDescription().contains(QStringLiteral("times a day")));
    EXPECT_FALSE(view().accessibleDescription().contains(QStringLiteral("rial print")));
}

TEST_F(HandoutPageTest, PaperAndLargePrintChangeTheDocument)
{
    showPlan();
    find<QComboBox>("paperFormat")->setCurrentIndex(1);
    EXPECT_EQ(page.choice().format, PaperFormat::letter);
    EXPECT_NEAR(view().document()->pageSize().height(), 792, 0.5);
    QTest::mouseClick(find<QCheckBox>("largePrint"), Qt::LeftButton, Qt::NoModifier,
                      QPoint(8, find<QCheckBox>("largePrint")->height() / 2));
    EXPECT_EQ(page.choice().size, PrintSize::large);
    EXPECT_GT(view().pageCount(), 3);
}

TEST_F(HandoutPageTest, SavesWhatIsShown)
{
    showPlan();
    prompts.pdf = temp.folder() + QStringLiteral("/handout.pdf");
    const QSignalSpy said(&page, &HandoutPage::said);
    QTest::mouseClick(find<QPushButton>("savePdf"), Qt::LeftButton);
    EXPECT_EQ(prompts.suggestedPdfName, QStringLiteral("handout-1017-plan-2.pdf"));
    ASSERT_EQ(said.count(), 1);
    EXPECT_TRUE(tests::pdfText(*prompts.pdf).contains(QStringLiteral("Vastus medialis, right")));
    EXPECT_EQ(tests::pdfPageCount(*prompts.pdf), 3);
}

TEST_F(HandoutPageTest, ThinkingBetterOfSavingSavesNothing)
{
    showPlan();
    prompts.pdf = std::nullopt;
    const QSignalSpy said(&page, &HandoutPage::said);
    page.savePdf();
    EXPECT_EQ(said.count(), 0);
    EXPECT_TRUE(prompts.told.isEmpty());
}

TEST_F(HandoutPageTest, AFileThatCannotBeWrittenIsToldInOneSentence)
{
    showPlan();
    prompts.pdf = temp.folder() + QStringLiteral("/missing/handout.pdf");
    page.savePdf();
    EXPECT_TRUE(prompts.told.contains(*prompts.pdf));
}

TEST_F(HandoutPageTest, LeavingThePrintDialogPrintsNothing)
{
    showPlan();
    const QSignalSpy said(&page, &HandoutPage::said);
    bool asked = false;
    tests::onNextDialog([&](QDialog& dialog) {
        asked = qobject_cast<QPrintDialog*>(&dialog) != nullptr;
        dialog.reject();
    });
    page.print();
    EXPECT_TRUE(asked);
    EXPECT_EQ(said.count(), 0);
}

TEST_F(HandoutPageTest, AnotherPatientsHandoutStartsAtItsFirstPage)
{
    showPlan();
    view().goToPage(2);
    Patient other = tests::samplePatient();
    other.name = "Tobin Arkwell";
    page.setContent(handoutContent(tests::samplePractice(), other, tests::sampleCourse(),
                                   samplePlan({blockWithSites(1, false)}),
                                   tests::openGate(tests::sampleStart), "Ruta Vennel",
                                   tests::sampleStart));
    EXPECT_EQ(view().currentPage(), 0);
    EXPECT_TRUE(view().accessibleDescription().contains(QStringLiteral("Tobin Arkwell")));
    EXPECT_FALSE(view().accessibleDescription().contains(QStringLiteral("Agnes Thorley")));
}
