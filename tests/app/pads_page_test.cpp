// SPDX-License-Identifier: GPL-3.0-or-later
// Pads are handed out, counted, replaced and withdrawn by keys.
#include "app/look/look.h"
#include "app/measurements/electrode_set_form.h"
#include "app/measurements/pads_model.h"
#include "app/measurements/pads_page.h"
#include "app/patient/record_page.h"
#include "app/practice/pad_life_form.h"
#include "tests/app/practice_window.h"

#include "db/diary.h"
#include "db/electrode_lives.h"
#include "db/electrode_sets.h"

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTableView>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::SizeIs;

namespace
{

class PadsJob : public testing::Test
{
protected:
    void open()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.window().recordPage().showPage(RecordPage::padsIndex);
    }
    std::vector<ElectrodeSet> stored()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::electrodeSetsOf(reading, practice.ids().course);
        }));
    }
    void handOut(const std::function<void(QDialog&)>& answer)
    {
        onNextDialog(answer);
        QTest::keyClick(practice.find<QPushButton>("issuePads"), Qt::Key_Space);
    }
    void issueOn(Date on, ElectrodeLife life)
    {
        ElectrodeSet set;
        set.course = practice.ids().course;
        set.issuedOn = on;
        set.description = "right thigh";
        set.type = ElectrodeType::selfAdhesive;
        set.shape = PadShape::rectangle;
        set.width = set.height = Length::fromCount(50);
        set.life = life;
        must(practice.store().write(author(), "hand out", [&](db::Writing& writing) {
            return db::addElectrodeSet(writing, set);
        }));
    }
    void enterSession(Date on, int session, std::chrono::minutes length)
    {
        DiaryEntry entry;
        entry.course = practice.ids().course;
        entry.day = on;
        entry.sessionNumber = session;
        entry.duration = length;
        must(practice.store().write(author(), "enter", [&](db::Writing& writing) {
            return db::addDiaryEntry(writing, entry);
        }));
    }
    std::string cell(int row, int column)
    {
        const auto* table = practice.find<QTableView>("pads");
        return table->model()->index(row, column).data().toString().toStdString();
    }
    std::string tab()
    {
        return practice.find<QTabBar>("pages")->tabText(RecordPage::padsIndex).toStdString();
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(PadsJob, AnEmptyPageSaysWhatToDo)
{
    open();
    EXPECT_TRUE(practice.find<QLabel>("padsSentence")->text().contains(QStringLiteral("No set")));
    EXPECT_TRUE(practice.find<QPushButton>("issuePads")->isEnabled());
    EXPECT_FALSE(practice.find<QPushButton>("changePads")->isEnabled());
    EXPECT_EQ(tab(), "Pads");
}

TEST_F(PadsJob, ASetIsHandedOutWithTheKeyboardAlone)
{
    open();
    handOut([](QDialog& dialog) {
        const auto tabTo = [&](const QString& text) {
            QTest::keyClicks(dialog.focusWidget(), text);
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Tab);
        };
        tabTo(QStringLiteral("right thigh"));
        tabTo({}); // today
        tabTo({}); // self-adhesive
        tabTo({}); // two pads
        tabTo({}); // a rectangle
        tabTo(QStringLiteral("50"));
        QTest::keyClicks(dialog.focusWidget(), QStringLiteral("90"));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
    });
    ASSERT_THAT(stored(), SizeIs(1));
    const ElectrodeSet set = stored()[0];
    EXPECT_EQ(set.description, "right thigh");
    EXPECT_EQ(set.issuedOn, practice.temp().clock.today());
    EXPECT_EQ(set.type, ElectrodeType::selfAdhesive);
    EXPECT_EQ(set.width.count(), 50);
    EXPECT_EQ(set.height.count(), 90);
    EXPECT_EQ(set.life, usualLife(ElectrodeType::selfAdhesive));
    EXPECT_EQ(cell(0, PadsModel::padsColumn), "2 pads, self-adhesive, 50\u00A0×\u00A090\u00A0mm");
    EXPECT_EQ(cell(0, PadsModel::lifeColumn), "20 uses or 1 month");
    EXPECT_EQ(cell(0, PadsModel::stateColumn), "in use");
}

TEST_F(PadsJob, UsesAreCountedFromTheDiary)
{
    using namespace std::chrono_literals;
    issueOn(day(2026, 3, 2), {.uses = 4, .months = std::nullopt});
    enterSession(day(2026, 3, 1), 1, 20min); // before the set was there
    enterSession(day(2026, 3, 2), 1, 20min);
    enterSession(day(2026, 3, 3), 1, 5min); // cut short
    enterSession(day(2026, 3, 4), 1, 0min); // missed
    enterSession(day(2026, 3, 5), 1, 20min);
    open();
    EXPECT_EQ(cell(0, PadsModel::usesColumn), "3 of 4");
    EXPECT_EQ(tab(), "Pads");
    enterSession(day(2026, 3, 6), 1, 20min);
    open();
    EXPECT_EQ(cell(0, PadsModel::usesColumn), "4 of 4");
    EXPECT_EQ(cell(0, PadsModel::stateColumn), "replace: 4 of 4 uses");
    EXPECT_EQ(tab(), "Pads: replace") << "seen from every page";
}

TEST_F(PadsJob, ANewSetTakesThePlaceOfTheWornOne)
{
    issueOn(day(2026, 1, 12), {.uses = std::nullopt, .months = 1});
    open();
    EXPECT_EQ(cell(0, PadsModel::stateColumn), "replace: too old since 12 Feb 2026");
    handOut([](QDialog& dialog) {
        auto* replaces = dialog.findChild<QComboBox*>(QStringLiteral("replaces"));
        ASSERT_FALSE(replaces->isHidden());
        replaces->setFocus();
        QTest::keyClick(replaces, Qt::Key_Down);
        QTest::keyClick(dialog.findChild<QLineEdit*>(QStringLiteral("description")),
                        Qt::Key_Return);
    });
    ASSERT_THAT(stored(), SizeIs(2));
    EXPECT_EQ(stored()[0].outOfUseOn, practice.temp().clock.today());
    EXPECT_EQ(cell(0, PadsModel::stateColumn), "in use");
    EXPECT_EQ(cell(1, PadsModel::stateColumn), "out of use since 12 Mar 2026");
    EXPECT_EQ(tab(), "Pads");
}

TEST_F(PadsJob, ASetIsTakenOutOfUseOrWithdrawnAsAMistake)
{
    issueOn(day(2026, 1, 12), {.uses = std::nullopt, .months = 1});
    open();
    auto* table = practice.find<QTableView>("pads");
    table->setFocus();
    QTest::keyClick(practice.find<QPushButton>("padsOutOfUse"), Qt::Key_Space);
    EXPECT_EQ(stored()[0].outOfUseOn, practice.temp().clock.today());
    EXPECT_FALSE(practice.find<QPushButton>("padsOutOfUse")->isEnabled());
    QTest::keyClick(table, Qt::Key_Delete);
    EXPECT_TRUE(stored()[0].withdrawn);
    EXPECT_EQ(cell(0, PadsModel::stateColumn), "withdrawn");
    QTest::keyClick(table, Qt::Key_Delete);
    EXPECT_FALSE(stored()[0].withdrawn) << "restored";
}

TEST_F(PadsJob, AnotherKeyIsAboutTheSameSet)
{
    issueOn(day(2026, 1, 12), {.uses = 40, .months = std::nullopt});
    issueOn(day(2026, 3, 2), {.uses = 40, .months = std::nullopt});
    open();
    auto* table = practice.find<QTableView>("pads");
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Delete);
    EXPECT_TRUE(stored()[1].withdrawn) << "the last one stood first";
    EXPECT_EQ(practice.find<QPushButton>("withdrawPads")->text(), QStringLiteral("&Restore"));
    practice.prompts().asked.clear();
    QTest::keyClick(table, Qt::Key_Delete);
    EXPECT_EQ(practice.prompts().asked, QString());
    EXPECT_FALSE(stored()[0].withdrawn);
    EXPECT_FALSE(stored()[1].withdrawn);
}

TEST_F(PadsJob, WhatCannotBeRightIsSaidInOneSentence)
{
    open();
    handOut([](QDialog& dialog) {
        auto& form = static_cast<EntryDialog&>(dialog);
        const auto expect = [&](const char* field, const char* value, const char* sentence) {
            typeInto(dialog.findChild<QLineEdit*>(QLatin1String(field)), QString::fromUtf8(value));
            form.accept();
            EXPECT_TRUE(form.problemText().contains(QString::fromUtf8(sentence)))
                << field << ": " << form.problemText().toStdString();
        };
        expect("description", "", "is for is empty");
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("description")),
                 QStringLiteral("calf"));
        expect("issuedOn", "yesterday", "is no date");
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("issuedOn")),
                 QStringLiteral("12 Mar 2026"));
        expect("width", "4", "mm wide");
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("width")), QStringLiteral("50"));
        expect("height", "tall", "mm high");
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("height")), QStringLiteral("90"));
        expect("uses", "none", "life of “none” uses");
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("uses")), QStringLiteral("20"));
        expect("months", "121", "life of “121” months");
        dialog.reject();
    });
    EXPECT_THAT(stored(), SizeIs(0));
}

TEST_F(PadsJob, ThePracticeChangesHowLongPadsLast)
{
    PadLifeForm form(practice.services(), nullptr);
    form.show();
    typeInto(form.findChild<QLineEdit*>(QStringLiteral("uses0")), QStringLiteral("zero"));
    form.accept();
    EXPECT_FALSE(form.problemText().isEmpty());
    typeInto(form.findChild<QLineEdit*>(QStringLiteral("uses0")), QStringLiteral("30"));
    typeInto(form.findChild<QLineEdit*>(QStringLiteral("months0")), {});
    form.accept();
    EXPECT_EQ(form.result(), QDialog::Accepted) << form.problemText().toStdString();
    const auto lives = must(practice.store().read(db::electrodeLives));
    EXPECT_EQ(lives.selfAdhesive.uses, 30);
    EXPECT_FALSE(lives.selfAdhesive.months);
    EXPECT_EQ(lives.carbonRubberGel, usualLife(ElectrodeType::carbonRubberGel));
    open();
    handOut([](QDialog& dialog) {
        EXPECT_EQ(dialog.findChild<QLineEdit*>(QStringLiteral("uses"))->text(),
                  QStringLiteral("30"));
        dialog.reject();
    });
}
