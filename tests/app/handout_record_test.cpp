// SPDX-License-Identifier: GPL-3.0-or-later
// What leaves the program from a patient's record, and what the record says of it.
#include "app/patient/record_page.h"
#include "app/print/handout_page.h"
#include "tests/app/practice_window.h"
#include "tests/support/records.h"

#include "db/course_events.h"
#include "db/screenings.h"

#include <QFile>
#include <QLabel>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace Qt::StringLiterals;

namespace
{

class HandedOut : public testing::Test
{
protected:
    HandedOut()
    {
        plan = must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
            Draft draft = aDraft(practice.ids());
            draft.blocks[0].weeks = 8; // it still runs
            return db::issuePlan(writing, draft,
                                 {.fromDate = day(2026, 2, 9),
                                  .reason = "first plan",
                                  .issuedBy = practice.ids().practitioner},
                                 day(2026, 3, 12));
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.window().recordPage().showPage(RecordPage::handoutIndex);
        practice.prompts().pdf = practice.temp().folder() + u"/handout.pdf"_s;
    }
    std::vector<PrintedDocument> recorded()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::printedDocumentsOf(reading, practice.ids().course);
        }));
    }
    HandoutPage& page() { return practice.window().recordPage().handoutPage(); }

    PracticeWindow practice;
    PlanId plan{0};
};

} // namespace

TEST_F(HandedOut, ASavedPdfStandsInTheRecordWithItsPlan)
{
    page().savePdf();
    ASSERT_TRUE(QFile::exists(*practice.prompts().pdf))
        << page().findChild<QLabel*>(u"noHandout"_s)->text().toStdString()
        << practice.prompts().told.toStdString();
    ASSERT_THAT(recorded(), testing::SizeIs(1));
    EXPECT_EQ(recorded()[0].plan, plan);
    EXPECT_EQ(recorded()[0].medium, Medium::pdf);
    EXPECT_EQ(recorded()[0].kind, DocumentKind::handout);
    EXPECT_EQ(recorded()[0].printedByName, practice.services().author.name);
}

TEST_F(HandedOut, NothingIsRecordedWhereNoFileWasChosen)
{
    practice.prompts().pdf.reset();
    page().savePdf();
    EXPECT_THAT(recorded(), testing::IsEmpty());
}

// The page stays open while somebody screens again in another window.
TEST_F(HandedOut, IsRefusedOnceTheScreeningShutsTheGateElsewhere)
{
    must(practice.store().write(author(), "screen again", [&](db::Writing& writing) {
        return db::addScreening(writing, allClear(practice.ids().course)); // not signed
    }));
    page().savePdf();
    EXPECT_FALSE(QFile::exists(*practice.prompts().pdf));
    EXPECT_THAT(recorded(), testing::IsEmpty());
    EXPECT_TRUE(page().findChild<QLabel*>(u"noHandout"_s)->text().contains(u"not signed"_s));
}
