// SPDX-License-Identifier: GPL-3.0-or-later
// The Screening page in the real window, by the keyboard.
#include "app/patient/record_page.h"
#include "app/screening/question_row.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_record.h"
#include "app/words/screening_questions.h"
#include "tests/app/screening_job.h"

#include "db/screenings.h"

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

/// Nothing asked yet.
class FirstScreening : public ScreeningPageTest
{
protected:
    FirstScreening()
    {
        Course second = aCourse(practice.ids().patient);
        second.problem = "Weak grip";
        course = must(practice.store().write(author(), "add course", [&](db::Writing& writing) {
            const CourseId id = db::addCourse(writing, second);
            Draft draft = aDraft(practice.ids());
            draft.course = id;
            db::saveDraft(writing, draft);
            return id;
        }));
        practice.window().openPatient(practice.ids().patient, course);
        QTest::keyClick(&practice.window(), Qt::Key_E, Qt::ControlModifier);
    }
    std::vector<Screening> storedOfCourse()
    {
        return must(practice.store().read(
            [&](db::Reading& reading) { return db::screeningsOf(reading, course); }));
    }

    CourseId course{0};
};

} // namespace

TEST_F(FirstScreening, IsAnsweredByOneKeyEachAndSigned)
{
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Not screened"));
    EXPECT_EQ(focus()->objectName(), QStringLiteral("question1"));
    answerAllNo();
    EXPECT_EQ(answered(), builtInQuestions().questions.size());
    // Enter after the last question leads to the skin.
    EXPECT_EQ(focus()->objectName(), QStringLiteral("sharpBlunt1"));
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Not signed"));
    EXPECT_FALSE(button("signScreening")->isEnabled());
    EXPECT_EQ(label("missing"),
              QStringLiteral("Before signing: fill in the skin tests; look at the skin."));
    seeTheSkin();
    EXPECT_TRUE(button("signScreening")->isEnabled());
    sign();
    const auto all = storedOfCourse();
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].signedByName, "Ruta Vennel");
    EXPECT_EQ(all[0].signedOn, practice.temp().clock.today());
    ASSERT_EQ(all[0].skin.size(), 1U);
    EXPECT_EQ(all[0].skin[0].sharpBlunt, Sensation::intact);
    EXPECT_TRUE(label("screeningFact").startsWith(QStringLiteral("Signed ")));
}

TEST_F(FirstScreening, SaysWhichQuestionsAreOpen)
{
    press(Qt::Key_N);
    press(Qt::Key_Down);
    press(Qt::Key_K);
    EXPECT_TRUE(label("missing").startsWith(
        QStringLiteral("Before signing: answer 3, 4, 5, 6, 7 and 23 more")))
        << label("missing").toStdString();
    EXPECT_EQ(storedOfCourse().at(0).answers.size(), 2U) << "each answer is saved at once";
}

TEST_F(FirstScreening, AYesAsksForItsNoteAndALocalOneForItsPlace)
{
    for (int i = 0; i < 3; ++i) {
        press(Qt::Key_N);
        press(Qt::Key_Return);
    }
    ASSERT_EQ(focus()->objectName(), QStringLiteral("question4")); // blood clot
    press(Qt::Key_Y);
    press(Qt::Key_Return);
    ASSERT_EQ(focus()->objectName(), QStringLiteral("note"));
    EXPECT_TRUE(label("missing").contains(QStringLiteral("add a note to 4")));
    QTest::keyClicks(focus(), QStringLiteral("yes, in May")); // letters, no answers
    press(Qt::Key_Return);
    EXPECT_TRUE(label("missing").contains(QStringLiteral("say where for 4")));
    auto* part = qobject_cast<QComboBox*>(focus());
    ASSERT_NE(part, nullptr);
    ASSERT_EQ(part->objectName(), QStringLiteral("part"));
    part->setCurrentIndex(part->findData(static_cast<int>(BodyRegion::lowerLeg)));
    emit part->activated(part->currentIndex());
    const ScreeningAnswer answer = *answerTo(storedOfCourse().at(0), "blood_clot");
    EXPECT_EQ(answer.answer, Answer::yes);
    EXPECT_EQ(answer.note, "yes, in May");
    EXPECT_THAT(answer.places,
                testing::ElementsAre(BodyPlace{BodyRegion::lowerLeg, PlaceSide::both}));
    EXPECT_FALSE(label("missing").contains(QStringLiteral("for 4")));
}

TEST_F(ScreeningPageTest, WhatAnAnswerBlocksIsShownAtOnce)
{
    EXPECT_TRUE(label("screeningFact").startsWith(QStringLiteral("Signed ")));
    QTest::keyClick(button("screenAgain"), Qt::Key_Space); // asks, and is told yes
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Not signed"));
    ASSERT_TRUE(QTest::qWaitFor([&] {
        return sideSays(QStringLiteral("vastus lateralis, right: waits for the signature"));
    }));
    press(Qt::Key_K); // the implant
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return sideSays(QStringLiteral("vastus lateralis, right: blocked")); }));
    const auto& blocks = screening().gate().blocks;
    ASSERT_EQ(blocks.size(), 2U);
    EXPECT_EQ(blocks[0].reason, GateReason::notSigned);
    EXPECT_EQ(blocks[1].question, "active_implant");
    EXPECT_EQ(blocks[1].sites.size(), 1U);
}

TEST_F(ScreeningPageTest, ScreeningAgainAsksEverythingAndMarksWhatDiffers)
{
    QTest::keyClick(button("screenAgain"), Qt::Key_Space);
    EXPECT_TRUE(practice.prompts().asked.contains(QStringLiteral("blocks until it is signed")));
    ASSERT_EQ(stored().size(), 2U);
    EXPECT_TRUE(stored()[1].answers.empty());
    EXPECT_TRUE(practice.find<QLabel>("screeningNotice")->isVisible());
    ASSERT_NE(screening().previous(), nullptr);
    press(Qt::Key_N);
    auto* row = qobject_cast<QuestionRow*>(focus());
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(row->question().name, "active_implant");
    press(Qt::Key_K);
    EXPECT_THAT(changedSince(screening().current(), *screening().previous()),
                testing::Contains("active_implant"));
}

TEST_F(ScreeningPageTest, AChangeAfterSigningBeginsTheNextOneWhichBlocks)
{
    screenAgainAllNo(); // the first was asked in other words
    sign();
    QTest::keyClick(&practice.window(), Qt::Key_E, Qt::ControlModifier);
    ASSERT_EQ(focus()->objectName(), QStringLiteral("question1"));
    practice.prompts().confirms = false;
    press(Qt::Key_K);
    EXPECT_EQ(stored().size(), 2U) << "nobody wanted the next one";
    EXPECT_TRUE(practice.prompts().asked.contains(QStringLiteral("never changed")));
    practice.prompts().confirms = true;
    press(Qt::Key_K);
    const auto all = stored();
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(answerTo(all[1], "active_implant")->answer, Answer::no);
    EXPECT_EQ(answerTo(all[2], "active_implant")->answer, Answer::notKnown);
    EXPECT_EQ(answerTo(all[2], "broken_skin")->answer, Answer::no) << "taken over";
    EXPECT_FALSE(all[2].skinSeen);
    EXPECT_TRUE(practice.find<QLabel>("screeningNotice")
                    ->text()
                    .contains(QStringLiteral("is not signed. Until it is")));
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Not signed"));
}

TEST_F(ScreeningPageTest, TheIssueFormSaysWhyAndIsOff)
{
    press(Qt::Key_K);
    QString said;
    bool enabled = true;
    onNextDialog([&](QDialog& dialog) {
        for (const QLabel* line : dialog.findChildren<QLabel*>()) {
            said += line->text() + QLatin1Char('\n');
        }
        enabled = dialog.findChild<QPushButton*>(QStringLiteral("save"))->isEnabled();
        dialog.reject();
    });
    QTest::keyClick(&practice.window(), Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(said.contains(QStringLiteral("The screening of this course is not signed")));
    EXPECT_FALSE(enabled);
}

TEST_F(ScreeningPageTest, WhoGoesAheadSignsAReasonThatStandsInTheHead)
{
    press(Qt::Key_K);
    press(Qt::Key_Return);
    answerAllNo(); // the first screening asked three questions only
    seeTheSkin();
    sign();
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Blocks everything"));
    onNextDialog([](QDialog& dialog) {
        QTest::keyClick(&dialog, Qt::Key_Return); // the reason is empty
        EXPECT_TRUE(dialog.findChild<QLabel*>(QStringLiteral("problem"))->isVisible());
        typeInto(dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason")),
                 QStringLiteral("asked the heart clinic"));
        QTest::keyClick(dialog.findChild<QPushButton*>(QStringLiteral("save")), Qt::Key_Space);
    });
    button("goAhead")->setFocus();
    QTest::keyClick(button("goAhead"), Qt::Key_Space);
    EXPECT_TRUE(screening().gate().isOpen());
    EXPECT_EQ(
        label("screeningFact"),
        QStringLiteral("Gone ahead: Pacemaker, defibrillator or another implant with a battery"));
    EXPECT_TRUE(sideSays(QStringLiteral("In the way, gone ahead")));
    EXPECT_FALSE(sideSays(QStringLiteral("Nothing in the way")));
    EXPECT_EQ(label("screeningFactSecond"), QStringLiteral("Ruta Vennel: asked the heart clinic"));
}

TEST_F(ScreeningPageTest, TheHandoutIsKeptBackUntilItIsSigned)
{
    issueThePlan();
    while (record().currentPage() < RecordPage::handoutIndex) {
        const int before = record().currentPage();
        QTest::keyClick(&practice.window(), Qt::Key_PageDown, Qt::ControlModifier);
        ASSERT_GT(record().currentPage(), before);
    }
    EXPECT_TRUE(button("printHandout")->isEnabled());
    QTest::keyClick(&practice.window(), Qt::Key_E, Qt::ControlModifier);
    press(Qt::Key_K);
    record().showPage(RecordPage::handoutIndex);
    EXPECT_FALSE(button("printHandout")->isEnabled());
    EXPECT_TRUE(label("noHandout").contains(QStringLiteral("not signed")));
    button("goToScreening")->setFocus();
    QTest::keyClick(button("goToScreening"), Qt::Key_Space);
    EXPECT_EQ(record().currentPage(), RecordPage::screeningIndex);
}

TEST_F(ScreeningPageTest, WhereAMusclesNameDoesNotTellThePartIsAskedFor)
{
    must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
        Draft draft = aDraft(practice.ids());
        draft.version = 1;
        draft.blocks.front().sites.front().muscle = "thumb";
        return db::saveDraft(writing, draft);
    }));
    open();
    EXPECT_EQ(screening().facts().sites.at(0).region, std::nullopt);
    QTest::keyClick(button("screenAgain"), Qt::Key_Space);
    choose("region1", 1 + static_cast<int>(BodyRegion::hand));
    ASSERT_EQ(stored().back().skin.size(), 1U);
    EXPECT_EQ(stored().back().skin[0].region, BodyRegion::hand);
    EXPECT_EQ(screening().facts().sites.at(0).region, BodyRegion::hand);
}

TEST_F(ScreeningPageTest, WhatWasSaidLastTimeStandsUnderTheQuestion)
{
    QTest::keyClick(button("screenAgain"), Qt::Key_Space);
    const auto* row = practice.find<QuestionRow>("question1");
    const auto last = [&] {
        for (const QLabel* label : row->findChildren<QLabel*>()) {
            if (label->isVisible() && label->text().startsWith(QStringLiteral("last time"))) {
                return label->text();
            }
        }
        return QString();
    };
    EXPECT_EQ(last(), QStringLiteral("last time: no"));
    press(Qt::Key_N);
    EXPECT_EQ(last(), QString()) << "the same again is no news";
    press(Qt::Key_Y);
    EXPECT_EQ(last(), QStringLiteral("last time: no"));
}
