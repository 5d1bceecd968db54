// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/daily_copies.h"
#include "app/window/preferences.h"
#include "tests/support/records.h"
#include "tests/support/store_rows.h"
#include "tests/support/temp_store.h"

#include "db/backup.h"

#include <QFile>
#include <QSettings>
#include <QSignalSpy>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

TEST(DailyCopiesOfTheProgram, CopyThePracticeOnceADayBesideTheWork)
{
    TempStore temp;
    const auto store = temp.open();
    aPracticeWithCourse(*store);
    DailyCopies copies(temp.file(), db::usualCopyFolder(temp.file()), temp.clock);
    QSignalSpy made(&copies, &DailyCopies::copied);
    copies.copyIfDue();
    ASSERT_TRUE(made.wait(30000));
    EXPECT_EQ(everyRow(made.first().first().toString()), everyRow(temp.file()));
    temp.clock.set(temp.clock.now() + std::chrono::hours(24));
    copies.copyIfDue();
    ASSERT_TRUE(made.wait(30000));
    EXPECT_EQ(db::dailyCopiesOf(temp.file(), copies.folder()).size(), 2U);
}

TEST(DailyCopiesOfTheProgram, SayWhyNoneCouldBeMade)
{
    TempStore temp;
    const auto store = temp.open();
    const QString folder = temp.folder() + QStringLiteral("/taken");
    QFile file(folder);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    DailyCopies copies(temp.file(), folder, temp.clock);
    QSignalSpy failed(&copies, &DailyCopies::failed);
    copies.copyIfDue();
    ASSERT_TRUE(failed.wait(30000));
    EXPECT_EQ(failed.first().first().value<Error>().code, ErrorCode::cannotWrite);
}

TEST(DailyCopiesOfTheProgram, GoToTheFolderOfChoiceOfEachPractice)
{
    const TempStore temp;
    QSettings settings(temp.folder() + QStringLiteral("/settings.ini"), QSettings::IniFormat);
    Preferences preferences(settings);
    EXPECT_FALSE(preferences.copyFolder(QStringLiteral("a")));
    preferences.setCopyFolder(QStringLiteral("a"), QStringLiteral("copies of a"));
    EXPECT_EQ(preferences.copyFolder(QStringLiteral("a")), QStringLiteral("copies of a"));
    EXPECT_FALSE(preferences.copyFolder(QStringLiteral("b")));
}

} // namespace
