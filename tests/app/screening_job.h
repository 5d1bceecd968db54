// SPDX-License-Identifier: GPL-3.0-or-later
// The Screening page in the real window, to be used by the keyboard.
#pragma once

#include "app/patient/record_page.h"
#include "app/screening/question_row.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_record.h"
#include "tests/app/practice_window.h"

#include "db/plans.h"
#include "db/screenings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <algorithm>
#include <gtest/gtest.h>
#include <vector>

namespace quadrille::tests
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
        ASSERT_EQ(record().currentPage(), app::RecordPage::screeningIndex);
    }
    app::RecordPage& record() { return practice.window().recordPage(); }
    app::ScreeningRecord& screening() { return record().screeningPage().record(); }
    static QWidget* focus() { return QApplication::focusWidget(); }
    static void press(Qt::Key key) { QTest::keyClick(focus(), key); }
    QString label(const char* name) { return practice.find<QLabel>(name)->text(); }
    QPushButton* button(const char* name) { return practice.find<QPushButton>(name); }
    /// Answers every question from the focus on with N.
    void answerAllNo()
    {
        const std::size_t questions = screening().current().questions.size();
        while (qobject_cast<app::QuestionRow*>(focus()) != nullptr && answered() < questions) {
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

} // namespace quadrille::tests
