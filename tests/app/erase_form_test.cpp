// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_page.h"
#include "app/patient/record_page.h"
#include "app/window/entry_dialog.h"
#include "app/window/main_window.h"
#include "app/window/program.h"
#include "tests/app/practice_window.h"

#include "db/people.h"
#include "db/plans.h"

#include <QAction>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QLineEdit>
#include <QPointer>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

/// The whole program on a practice with one patient, Agnes Thorley, reference 1001.
class Erasing : public testing::Test
{
protected:
    Erasing()
    {
        std::unique_ptr<db::Store> store = temp.open();
        made = aPracticeWithCourse(*store);
        anIssuedPlan(*store, *made);
        store.reset();
        must(program.open(temp.file(), db::Opening::existing));
        program.window()->openPatient(made->patient, made->course);
    }
    void chooseErase()
    {
        for (QAction* action : program.window()->findChildren<QAction*>()) {
            if (action->text() == QStringLiteral("&Erase…")) {
                ASSERT_TRUE(action->isEnabled());
                action->trigger();
                return;
            }
        }
        FAIL() << "no such act";
    }
    bool isThere()
    {
        std::unique_ptr<db::Store> store = temp.open();
        return must(store->read(
                        [&](db::Reading& reading) { return db::patient(reading, made->patient); }))
            .has_value();
    }
    static QString problemOf(QDialog& dialog)
    {
        return dynamic_cast<EntryDialog&>(dialog).problemText();
    }

    TempStore temp;
    std::optional<Practiced> made;
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    ScriptedPrompts prompts;
    Program program{*qApp, temp.clock, QLocale(QLocale::English, QLocale::UnitedKingdom), settings,
                    prompts};
};

TEST_F(Erasing, AsksForAGroundAndForTheReferenceOnceMore)
{
    onNextDialog([&](QDialog& dialog) {
        auto* ground = dialog.findChild<QComboBox*>(QStringLiteral("ground"));
        auto* reference = dialog.findChild<QLineEdit*>(QStringLiteral("reference"));
        ASSERT_TRUE(ground && reference);
        EXPECT_LT(ground->currentIndex(), 0) << "nothing is preselected";
        dialog.accept();
        EXPECT_EQ(problemOf(dialog),
                  QStringLiteral("No ground is chosen. Say why the patient is erased."));
        QTest::keyClick(ground, Qt::Key_Down);
        typeInto(reference, QStringLiteral("1002"));
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QStringLiteral("“1002” is not this patient’s reference. Type "
                                                    "1001 to confirm."));
        dialog.reject();
    });
    chooseErase();
    EXPECT_TRUE(isThere());
}

TEST_F(Erasing, TakesThePersonOutOfTheFileAndNamesTheCopiesThatStillHoldHer)
{
    const QString copy = temp.file() + QStringLiteral(".monday");
    ASSERT_TRUE(QFile::copy(temp.file(), copy));
    onNextDialog([&](QDialog& dialog) {
        auto* ground = dialog.findChild<QComboBox*>(QStringLiteral("ground"));
        QTest::keyClick(ground, Qt::Key_Down);
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("reference")), QStringLiteral("1001"));
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QString());
    });
    chooseErase();
    EXPECT_FALSE(isThere());
    EXPECT_TRUE(prompts.told.contains(copy)) << prompts.told.toStdString();
    EXPECT_TRUE(program.window()->caseloadPage().isVisible());
    EXPECT_EQ(program.window()->caseloadPage().statusText(), QStringLiteral("No courses yet"));
    EXPECT_FALSE(program.window()->recordPage().patient());
}

TEST_F(Erasing, ForgetsUnsavedWorkOfTheErasedRecord)
{
    QTest::keyClick(program.window(), Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    onNextDialog([&](QDialog& dialog) {
        QTest::keyClick(dialog.findChild<QComboBox*>(QStringLiteral("ground")), Qt::Key_Down);
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("reference")), QStringLiteral("1001"));
        dialog.accept();
        EXPECT_EQ(problemOf(dialog), QString());
    });
    const QPointer<RecordPage> shown = &program.window()->recordPage();
    chooseErase();
    // Longer than the delay after which unsaved work is kept.
    EXPECT_FALSE(
        QTest::qWaitFor([&] { return program.window()->recordPage().patient().has_value(); }, 700));
    EXPECT_FALSE(isThere());
    EXPECT_FALSE(shown) << "fields that showed the person are gone too";
    std::unique_ptr<db::Store> store = temp.open();
    EXPECT_FALSE(must(store->read(
        [&](db::Reading& reading) { return db::unsavedDraftOf(reading, made->course); })));
}

} // namespace
