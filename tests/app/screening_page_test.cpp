// SPDX-License-Identifier: GPL-3.0-or-later
// The Screening page in the real window, by the keyboard.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/screening/practice_question_form.h"
#include "app/screening/question_row.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_record.h"
#include "app/screening/screening_term_form.h"
#include "app/words/screening_questions.h"
#include "tests/app/practice_window.h"

#include "db/practice_preferences.h"
#include "db/practice_questions.h"
#include "db/screenings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

/// A patient with a draft of one site, the right vastus lateralis, and the page open.
class ScreeningPageTest : public testing::Test
{
protected:
    ScreeningPageTest()
    {
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, aDraft(practice.ids()));
        }));
        open();
    }
    void open()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.window().activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
        QTest::keyClick(&practice.window(), Qt::Key_E, Qt::ControlModifier);
        ASSERT_EQ(record().currentPage(), RecordPage::screeningIndex);
    }
    RecordPage& record() { return practice.window().recordPage(); }
    ScreeningRecord& screening() { return record().screeningPage().record(); }
    static QWidget* focus() { return QApplication::focusWidget(); }
    static void press(Qt::Key key) { QTest::keyClick(focus(), key); }
    QString label(const char* name) { return practice.find<QLabel>(name)->text(); }
    QPushButton* button(const char* name) { return practice.find<QPushButton>(name); }
    /// Answers every question from the focus on with N.
    void answerAllNo()
    {
        const std::size_t questions = screening().current().questions.size();
        while (qobject_cast<QuestionRow*>(focus()) != nullptr && answered() < questions) {
            press(Qt::Key_N);
            press(Qt::Key_Return);
        }
    }
    std::size_t answered() { return screening().current().answers.size(); }
    /// A new screening that asks the questions of today, ready to be signed.
    void screenAgainAllNo()
    {
        QTest::keyClick(button("screenAgain"), Qt::Key_Space);
        answerAllNo();
        seeTheSkin();
    }
    /// Whether one of the sheets at the right has this line.
    bool sideSays(const QString& line)
    {
        const auto labels = record().screeningPage().side()->findChildren<QLabel*>();
        return std::ranges::any_of(labels, [&](const QLabel* label) {
            return label->isVisible() && label->text() == line;
        });
    }
    void choose(const char* combo, int down)
    {
        auto* list = practice.find<QComboBox>(combo);
        list->setFocus();
        for (int i = 0; i < down; ++i) {
            QTest::keyClick(list, Qt::Key_Down);
        }
        emit list->activated(list->currentIndex());
    }
    void seeTheSkin()
    {
        choose("sharpBlunt1", 1);
        choose("warmCold1", 1);
        auto* seen = practice.find<QCheckBox>("skinSeen");
        seen->setFocus();
        QTest::keyClick(seen, Qt::Key_Space);
    }
    void sign()
    {
        button("signScreening")->setFocus();
        QTest::keyClick(button("signScreening"), Qt::Key_Space);
    }
    std::vector<Screening> stored()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::screeningsOf(reading, practice.ids().course);
        }));
    }
    /// Issues the draft that the constructor saved.
    void issueThePlan()
    {
        must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
            Draft draft = aDraft(practice.ids());
            draft.version = 1;
            draft.blocks.front().weeks = 8;
            return db::issuePlan(writing, draft,
                                 {.fromDate = day(2026, 2, 9),
                                  .reason = "first plan",
                                  .issuedBy = practice.ids().practitioner},
                                 day(2026, 3, 12));
        }));
        open();
    }

    PracticeWindow practice;
};

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
    QTest::keyClick(&practice.window(), Qt::Key_I, Qt::ControlModifier);
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
