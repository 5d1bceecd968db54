// SPDX-License-Identifier: GPL-3.0-or-later
// Two windows on one practice: a save over somebody else's change shows both and lets the person
// choose.
#include "app/patient/course_form.h"
#include "app/patient/patient_form.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/practice/practice_form.h"
#include "app/window/conflict_dialog.h"
#include "tests/app/practice_window.h"

#include "db/kept_forms.h"

#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRadioButton>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

class Conflict : public testing::Test
{
protected:
    Patient stored()
    {
        return must(practice.store().read(
                        [&](db::Reading& reading) { return db::patient(reading, agnes()); }))
            .value();
    }
    PatientId agnes() const { return practice.ids().patient; }
    /// Another window changes telephone and note.
    void changeElsewhere()
    {
        Patient changed = stored();
        changed.telephone = "01632 960555";
        changed.note = "Rings before nine.";
        must(practice.store().write(
            {.practitioner = std::nullopt, .name = "Anselm Orrick"}, "change patient",
            [&](db::Writing& writing) { db::changePatient(writing, changed); }));
    }
    static std::vector<bool> mineOnlyOf(const QString& field,
                                        const std::vector<Difference>& differences)
    {
        std::vector<bool> chosen;
        for (const Difference& difference : differences) {
            chosen.push_back(difference.field == field);
        }
        return chosen;
    }

    PracticeWindow practice;
};

TEST_F(Conflict, ShowsBothAndSavesWhatIsChosenInEachField)
{
    PatientForm form(practice.services(), stored(), nullptr);
    changeElsewhere();
    typeInto(practice.find<QLineEdit>("telephone", &form), QStringLiteral("01632 960777"));
    typeInto(practice.find<QLineEdit>("name", &form), QStringLiteral("Agnes Thorley-Rusk"));
    practice.prompts().choose = [](const std::vector<Difference>& differences) {
        return mineOnlyOf(QStringLiteral("Name"), differences);
    };
    form.accept();
    EXPECT_EQ(form.result(), QDialog::Accepted) << form.problemText().toStdString();
    ASSERT_EQ(practice.prompts().shown.size(), 3U);
    EXPECT_THAT(practice.prompts().asked.toStdString(), testing::HasSubstr("Anselm Orrick"));
    EXPECT_EQ(stored().name, "Agnes Thorley-Rusk");
    EXPECT_EQ(stored().telephone, "01632 960555"); // theirs
    EXPECT_EQ(stored().note, "Rings before nine.");
    EXPECT_EQ(stored().version, 3);
}

TEST_F(Conflict, BackToTheFormKeepsWhatWasTypedAndNothingIsSaved)
{
    PatientForm form(practice.services(), stored(), nullptr);
    changeElsewhere();
    typeInto(practice.find<QLineEdit>("telephone", &form), QStringLiteral("01632 960777"));
    practice.prompts().choose = nullptr;
    form.accept();
    EXPECT_NE(form.result(), QDialog::Accepted);
    EXPECT_THAT(form.problemText().toStdString(), testing::HasSubstr("Anselm Orrick"));
    EXPECT_EQ(practice.find<QLineEdit>("telephone", &form)->text(), QStringLiteral("01632 960777"));
    EXPECT_EQ(stored().telephone, "01632 960555");
    // Saving again asks again: nothing goes over theirs unseen.
    practice.prompts().shown.clear();
    form.accept();
    EXPECT_EQ(practice.prompts().shown.size(), 2U);
    EXPECT_EQ(stored().telephone, "01632 960555");
}

TEST_F(Conflict, OfThePracticeIsSeenToo)
{
    PracticeForm form(practice.services(), nullptr);
    must(practice.store().write(author(), "change practice", [](db::Writing& writing) {
        Practice changed = db::practice(writing).value();
        changed.telephone = "01632 960555";
        db::savePractice(writing, changed);
    }));
    typeInto(practice.find<QLineEdit>("emergencyNumber", &form), QStringLiteral("999"));
    practice.prompts().choose = [](const std::vector<Difference>& differences) {
        return std::vector<bool>(differences.size(), true);
    };
    form.accept();
    EXPECT_EQ(practice.prompts().shown.size(), 2U);
    const Practice saved = must(practice.store().read([](db::Reading& reading) {
                               return db::practice(reading);
                           })).value();
    EXPECT_EQ(saved.telephone, "01632 960147"); // mine, chosen knowingly
    EXPECT_EQ(saved.emergencyNumber, "999");
}

TEST_F(Conflict, OfADraftShowsBothDraftsAndLetsOneStand)
{
    practice.window().openPatient(agnes(), practice.ids().course);
    PlanPage& page = practice.window().recordPage().planPage();
    page.draft().chooseStimulator(practice.ids().stimulator);
    page.draft().addBlock();
    page.draft().setWeeks(6);
    must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
        return db::saveDraft(writing, aDraft(practice.ids()));
    }));
    const auto weeks = [&] {
        return must(practice.store().read([&](db::Reading& reading) {
                   return db::draftOf(reading, practice.ids().course);
               }))
            ->blocks.at(0)
            .weeks;
    };
    practice.prompts().choose = nullptr;
    page.saveDraft();
    EXPECT_EQ(weeks(), 4); // theirs stands until somebody has chosen
    practice.prompts().choose = [](const std::vector<Difference>&) {
        return std::vector<bool>{true};
    };
    page.saveDraft();
    EXPECT_EQ(weeks(), 6);
    ASSERT_EQ(practice.prompts().shown.size(), 1U);
    EXPECT_THAT(practice.prompts().shown[0].mine.toStdString(), testing::HasSubstr("1–6"));
    EXPECT_FALSE(page.draft().isChanged());
}

TEST_F(Conflict, TakingTheOtherDraftCanBeUndone)
{
    practice.window().openPatient(agnes(), practice.ids().course);
    PlanPage& page = practice.window().recordPage().planPage();
    page.draft().chooseStimulator(practice.ids().stimulator);
    page.draft().addBlock();
    page.draft().setWeeks(6);
    must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
        return db::saveDraft(writing, aDraft(practice.ids()));
    }));
    practice.prompts().choose = [](const std::vector<Difference>&) {
        return std::vector<bool>{false};
    };
    page.saveDraft();
    EXPECT_EQ(page.draft().draft().blocks.at(0).weeks, 4);
    EXPECT_FALSE(page.draft().isChanged());
    page.draft().undoStack().undo();
    EXPECT_EQ(page.draft().draft().blocks.at(0).weeks, 6);
    practice.prompts().choose = [](const std::vector<Difference>&) {
        ADD_FAILURE() << "asked again";
        return std::vector<bool>{false};
    };
    page.saveDraft(); // now over the version that was shown
    EXPECT_FALSE(page.draft().isChanged());
    const auto saved = must(practice.store().read(
        [&](db::Reading& reading) { return db::draftOf(reading, practice.ids().course); }));
    EXPECT_EQ(saved->blocks.at(0).weeks, 6);
}

TEST_F(Conflict, IsSeenToByEntriesThatWereKeptWhenTheProgramEnded)
{
    {
        PatientForm form(practice.services(), stored(), nullptr);
        auto* note = form.findChild<QPlainTextEdit*>(QStringLiteral("note"));
        note->setPlainText(QStringLiteral("typed before the program ended"));
        const QString name = QStringLiteral("patient/%1").arg(agnes().key());
        ASSERT_TRUE(QTest::qWaitFor([&] {
            return must(practice.store().read(
                            [&](db::Reading& reading) { return db::keptForm(reading, name); }))
                .has_value();
        }));
    }
    changeElsewhere();
    PatientForm form(practice.services(), stored(), nullptr); // the program starts again
    std::vector<Difference> shown;
    practice.prompts().choose = [&](const std::vector<Difference>& differences) {
        shown = differences;
        return mineOnlyOf(QStringLiteral("Note"), differences);
    };
    form.accept();
    EXPECT_EQ(shown.size(), 2U); // telephone and note
    EXPECT_EQ(stored().telephone, "01632 960555");
    EXPECT_EQ(stored().note, "typed before the program ended");
}

TEST_F(Conflict, WhatIsChosenIsSavedOnlyWhereItGoesTogether)
{
    const auto course = [&] {
        return must(practice.store().read([&](db::Reading& reading) {
                   return db::course(reading, practice.ids().course);
               }))
            .value();
    };
    CourseForm form(practice.services(), course(), nullptr);
    form.findChild<QLineEdit*>(QStringLiteral("endDate"))->setText(QStringLiteral("1 Mar 2026"));
    Course elsewhere = course();
    elsewhere.startDate = day(2026, 3, 9);
    must(practice.store().write(author(), "change course", [&](db::Writing& writing) {
        db::changeCourse(writing, elsewhere);
    }));
    practice.prompts().choose = [](const std::vector<Difference>& differences) {
        return mineOnlyOf(QStringLiteral("Last day"), differences); // their start, my end
    };
    form.accept();
    EXPECT_THAT(form.problemText().toStdString(), testing::HasSubstr("before the start"));
    EXPECT_FALSE(course().endDate);
}

TEST(ConflictDialogOfTheDesktop, BeginsWithTheirsAndIsDrivenWithKeys)
{
    ConflictDialog dialog(
        QStringLiteral("Somebody changed this."),
        {{QStringLiteral("Name"), QStringLiteral("theirs"), QStringLiteral("mine")},
         {QStringLiteral("Note"), QString(), QStringLiteral("mine")}},
        nullptr);
    dialog.show();
    EXPECT_THAT(dialog.choices(), testing::ElementsAre(false, false));
    auto* theirs = dialog.findChild<QRadioButton*>(QStringLiteral("theirs2"));
    ASSERT_NE(theirs, nullptr);
    EXPECT_EQ(theirs->accessibleName(), QStringLiteral("Note, saved elsewhere: (empty)"));
    auto* mine = dialog.findChild<QRadioButton*>(QStringLiteral("mine2"));
    ASSERT_NE(mine, nullptr);
    QTest::keyClick(mine, Qt::Key_Space);
    EXPECT_THAT(dialog.choices(), testing::ElementsAre(false, true));
}

} // namespace
