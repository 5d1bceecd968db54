// SPDX-License-Identifier: GPL-3.0-or-later
// Readings of the unit's counter are entered, explained, corrected and withdrawn.
#include "app/diary/counter_model.h"
#include "app/window/entry_dialog.h"
#include "tests/app/diary_job.h"
#include "tests/support/diary_records.h"

#include <QComboBox>
#include <QDialog>
#include <QTableView>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;
using testing::HasSubstr;
using testing::SizeIs;

namespace
{

class CounterJob : public DiaryJob
{
protected:
    void enter(const char* readOn, const char* uses, const char* minutes)
    {
        onNextDialog([=, this](QDialog& dialog) {
            const auto field = [&](const char* name) {
                return dialog.findChild<QLineEdit*>(QString::fromLatin1(name));
            };
            typeInto(field("readOn"), QString::fromLatin1(readOn));
            typeInto(field("totalUses"), QString::fromLatin1(uses));
            typeInto(field("totalMinutes"), QString::fromLatin1(minutes));
            dialog.accept();
            problem = static_cast<EntryDialog&>(dialog).problemText().toStdString();
            dialog.close();
        });
        practice.find<QPushButton>("enterCounter")->click();
    }
    std::vector<CounterReading> readings()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::counterReadingsOf(reading, practice.ids().course);
        }));
    }
    QTableView* table() { return practice.find<QTableView>("counters"); }
    std::string cell(int row, int column)
    {
        return table()->model()->index(row, column).data().toString().toStdString();
    }
    std::string problem;
};

} // namespace

TEST_F(CounterJob, TwoReadingsAreHeldAgainstTheDiaryAndADifferenceIsExplained)
{
    issue();
    aDiaryOfFourWeeks(practice.store(), practice.ids());
    open();
    enter("2026-02-09", "3", "60");
    enter("2026-03-09", "14", "280");
    ASSERT_THAT(readings(), SizeIs(2));
    // The diary has 14 sessions, 270 min; the unit 11 uses, 220 min: 27 % and 23 % more, by hand.
    EXPECT_THAT(cell(1, CounterModel::comparedColumn),
                HasSubstr("11 counted, 14 reported (diary 27\u00A0% more)"));
    EXPECT_THAT(cell(1, CounterModel::comparedColumn),
                HasSubstr("220 counted, 270 reported (diary 23\u00A0% more)"));
    EXPECT_THAT(cell(1, CounterModel::explanationColumn), HasSubstr("choose an explanation"));
    onNextDialog([](QDialog& dialog) {
        auto* box = dialog.findChild<QComboBox*>(QStringLiteral("explanation"));
        box->setCurrentIndex(box->findText(QStringLiteral("Something else")));
        dialog.accept();
        EXPECT_THAT(static_cast<EntryDialog&>(dialog).problemText().toStdString(),
                    HasSubstr("Say in a few words"));
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("explanationWords")),
                 QStringLiteral("wrote two days twice"));
        dialog.accept();
    });
    table()->setCurrentIndex(table()->model()->index(1, 0));
    practice.find<QPushButton>("correctCounter")->click();
    EXPECT_EQ(cell(1, CounterModel::explanationColumn), "Something else: wrote two days twice");
    EXPECT_EQ(readings().at(1).version, 2);
}

TEST_F(CounterJob, TheHelpSaysWhatGroupsShowAndThatNobodyIsCorrectedByIt)
{
    issue();
    open();
    enter("2026-02-09", "3", "");
    const std::string help = practice.find<QLabel>("counterSentence")->text().toStdString();
    EXPECT_THAT(help, HasSubstr("Nicolson 2018"));
    EXPECT_THAT(help, HasSubstr("no figure here is ever corrected"));
}

TEST_F(CounterJob, AReadingNeedsADayOfTheCourseAndAtLeastOneFigure)
{
    issue();
    open();
    enter("2026-02-09", "", "");
    EXPECT_THAT(problem, HasSubstr("at least one of them"));
    enter("2026-02-08", "3", "");
    EXPECT_THAT(problem, HasSubstr("The course starts on"));
    enter("2026-03-13", "3", "");
    EXPECT_THAT(problem, HasSubstr("still to come"));
    enter("2026-03-12", "three", "");
    EXPECT_THAT(problem, HasSubstr("no number of uses"));
    EXPECT_TRUE(readings().empty());
}

TEST_F(CounterJob, AWithdrawnReadingStaysAndCanBeRestored)
{
    issue();
    open();
    enter("2026-02-09", "3", "60.5");
    EXPECT_EQ(readings().at(0).totalTime, Milliseconds(60min + 30s));
    practice.find<QPushButton>("withdrawCounter")->click();
    EXPECT_FALSE(practice.prompts().asked.isEmpty());
    EXPECT_TRUE(readings().at(0).withdrawn);
    EXPECT_THAT(cell(0, CounterModel::dayColumn), HasSubstr("withdrawn"));
    practice.find<QPushButton>("withdrawCounter")->click();
    EXPECT_FALSE(readings().at(0).withdrawn);
}
