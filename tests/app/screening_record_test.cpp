// SPDX-License-Identifier: GPL-3.0-or-later
// What is kept, asked and signed of a screening, by the keyboard.
#include "app/screening/practice_question_form.h"
#include "app/screening/screening_term_form.h"
#include "app/words/screening_questions.h"
#include "tests/app/screening_job.h"

#include "db/practice_preferences.h"
#include "db/practice_questions.h"

#include <QLineEdit>
#include <QSpinBox>

#include <string>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

TEST_F(ScreeningPageTest, ANoteIsNotLostWhenTheWindowCloses)
{
    press(Qt::Key_Y);
    press(Qt::Key_Return);
    ASSERT_EQ(focus()->objectName(), QStringLiteral("note"));
    QTest::keyClicks(focus(), QStringLiteral("since 2019"));
    practice.window().close();
    EXPECT_EQ(answerTo(stored().back(), "active_implant")->note, "since 2019");
}

TEST_F(ScreeningPageTest, ANoteThatIsBeingTypedIsSignedWithTheRest)
{
    press(Qt::Key_Y);
    press(Qt::Key_Return);
    QTest::keyClicks(focus(), QStringLiteral("since 2019"));
    press(Qt::Key_Return);
    answerAllNo();
    seeTheSkin();
    auto* note = practice.find<QLineEdit>("note", practice.find<QuestionRow>("question1"));
    note->setFocus();
    QTest::keyClick(note, Qt::Key_End);
    QTest::keyClicks(note, QStringLiteral(", left chest"));
    QTest::keyClick(note, Qt::Key_I, Qt::AltModifier);
    // The button shows for a moment that its key was pressed before it acts.
    ASSERT_TRUE(QTest::qWaitFor([&] { return stored().back().signedOn.has_value(); }));
    EXPECT_EQ(answerTo(stored().back(), "active_implant")->note, "since 2019, left chest");
}

TEST_F(ScreeningPageTest, WhatIsSignedTakesNoNoteAndNoPlace)
{
    const Screening before = stored().back();
    QString said;
    QObject::connect(&screening(), &ScreeningRecord::said,
                     [&](const QString& sentence) { said = sentence; });
    screening().setNote("broken_skin", "a graze");
    screening().setPlaces("broken_skin", {{BodyRegion::thigh, PlaceSide::both}});
    EXPECT_EQ(stored().back(), before);
    EXPECT_EQ(screening().current().answers, before.answers);
    EXPECT_EQ(said, QString());
}

TEST_F(ScreeningPageTest, AQuestionThatIsNoLongerAskedBlocksNoSignature)
{
    PracticeQuestion own{.wording = "Afraid of current?"};
    own.id = must(practice.store().write(author(), "add question", [&](db::Writing& writing) {
        return db::addPracticeQuestion(writing, own);
    }));
    emit practice.services().events.practiceChanged();
    screenAgainAllNo();
    sign();
    ASSERT_NE(answerTo(stored().back(), "own_1"), nullptr);
    own.archived = true;
    must(practice.store().write(author(), "archive question", [&](db::Writing& writing) {
        db::changePracticeQuestion(writing, own);
    }));
    emit practice.services().events.practiceChanged();
    const std::string row = "question" + std::to_string(builtInQuestions().questions.size() + 1);
    practice.find<QuestionRow>(row.c_str())->setFocus();
    press(Qt::Key_Y); // begins the next one, which does not ask it
    ASSERT_EQ(stored().size(), 3U);
    EXPECT_EQ(answerTo(stored().back(), "own_1"), nullptr);
    seeTheSkin();
    sign();
    EXPECT_TRUE(stored().back().signedOn.has_value());
}

TEST_F(ScreeningPageTest, ThePracticeAddsAQuestionOfItsOwn)
{
    PracticeQuestionForm form(practice.services(), PracticeQuestion{}, &practice.window());
    form.show();
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("question is empty")));
    typeInto(form.findChild<QLineEdit*>(QStringLiteral("wording")),
             QStringLiteral("Afraid of current?"));
    typeInto(form.findChild<QLineEdit*>(QStringLiteral("advice")), QStringLiteral("Begin low."));
    form.accept();
    const auto own = must(practice.store().read(db::practiceQuestions));
    ASSERT_EQ(own.size(), 1U);
    EXPECT_EQ(own[0].questionClass, QuestionClass::precaution);
    EXPECT_EQ(own[0].advice, "Begin low.");
    QTest::keyClick(button("screenAgain"), Qt::Key_Space);
    EXPECT_EQ(screening().current().questions.back().wording, "Afraid of current?");
}

TEST_F(ScreeningPageTest, ThePracticeSaysHowLongASignatureHolds)
{
    ScreeningTermForm form(practice.services(), &practice.window());
    form.show();
    EXPECT_EQ(form.findChild<QSpinBox*>(QStringLiteral("months"))->value(), 6);
    form.findChild<QSpinBox*>(QStringLiteral("months"))->setValue(1);
    form.accept();
    // Signed on 9 February, today is 12 March.
    EXPECT_EQ(label("screeningFact"), QStringLiteral("Screen again"));
    EXPECT_EQ(label("screeningFactSecond"), QStringLiteral("held until 9 Mar 2026"));
}

TEST_F(ScreeningPageTest, ATermThatSaysNoNumberIsSetAgain)
{
    must(practice.store().write(author(), "damage", [](db::Writing& writing) {
        db::setPracticePreference(writing, db::screeningValidityName, "soon", 0);
    }));
    ScreeningTermForm form(practice.services(), &practice.window());
    form.show();
    EXPECT_EQ(form.findChild<QSpinBox*>(QStringLiteral("months"))->value(), 6);
    form.accept();
    EXPECT_EQ(form.result(), QDialog::Accepted) << form.problemText().toStdString();
    EXPECT_EQ(must(practice.store().read(db::screeningValidity)), std::chrono::months(6));
}
