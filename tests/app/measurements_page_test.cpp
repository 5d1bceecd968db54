// SPDX-License-Identifier: GPL-3.0-or-later
// Measurements are read, corrected and withdrawn by keys.
#include "app/charts/chart_view.h"
#include "app/measurements/measurements_model.h"
#include "app/measurements/values_model.h"
#include "tests/app/measuring_job.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

TEST_F(MeasuringJob, AnEmptyPageSaysWhatToDo)
{
    openRecord();
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    auto* sentence = practice.find<QLabel>("noMeasurement");
    EXPECT_TRUE(sentence->isVisible());
    EXPECT_TRUE(sentence->text().contains(QStringLiteral("Ctrl M")));
    EXPECT_TRUE(practice.find<QPushButton>("enterMeasurements")->isEnabled());
}

TEST_F(MeasuringJob, AChangeIsHeldAgainstWhatWasPublishedAndTheSourceIsNamed)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    // Torque: nothing is published, and nothing is claimed.
    EXPECT_EQ(cell(0, MeasurementsModel::judgedColumn), "better, no published threshold");
    // 16.0 to 14.5 s: over 1.10 and 1.14 s, not over 2.49 s.
    EXPECT_EQ(cell(2, MeasurementsModel::judgedColumn),
              "better, reaches 1.14\u00A0s, below 2.49\u00A0s, from memory");
    auto* table = practice.find<QTableView>("measurements");
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Down);
    QTest::keyClick(table, Qt::Key_Down);
    const std::string thresholds = practice.find<QLabel>("thresholds")->text().toStdString();
    EXPECT_THAT(thresholds, HasSubstr("BMC Musculoskelet Disord 2015;16:174"));
    EXPECT_THAT(thresholds, HasSubstr("Kennedy 2005"));
    EXPECT_THAT(thresholds, HasSubstr("from memory"));
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        EXPECT_THAT(cell(row, MeasurementsModel::judgedColumn),
                    testing::Not(HasSubstr("significant")));
    }
}

TEST_F(MeasuringJob, ThereIsNoIndexWhereBothSidesAreTreatedOrNobodyHasSaid)
{
    openRecord(TreatedSide::both);
    storeTwoVisits();
    for (const auto treated : {std::optional(TreatedSide::both), std::optional<TreatedSide>()}) {
        openRecord(treated);
        practice.window().recordPage().showPage(RecordPage::measurementsIndex);
        EXPECT_EQ(cell(0, MeasurementsModel::symmetryColumn), "");
        EXPECT_EQ(cell(1, MeasurementsModel::symmetryColumn), "");
    }
    EXPECT_TRUE(practice.find<QLabel>("treatedSide")->text().contains(QStringLiteral("not said")));
}

TEST_F(MeasuringJob, TheChartSaysTheSameInWords)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    const auto* chart = practice.find<ChartView>("measurementChart");
    const std::string spoken = chart->accessibleDescription().toStdString();
    EXPECT_THAT(spoken, HasSubstr("right: 41\u00A0N·m on 9 Feb, 55\u00A0N·m on 2 Mar"));
    EXPECT_THAT(spoken, HasSubstr("left: 91\u00A0N·m on 9 Feb"));
    // In black and white the treated side is a whole line with filled squares, the other dashed.
    ASSERT_THAT(chart->spec().lines, SizeIs(2));
    EXPECT_EQ(chart->spec().lines[0].marker, ChartLine::Marker::filled);
    EXPECT_EQ(chart->spec().lines[1].marker, ChartLine::Marker::open);
    EXPECT_EQ(chart->spec().lines[1].kind, ChartLine::Kind::comparison);
}

TEST_F(MeasuringJob, TorqueUnderStimulationIsShownAsAShareOfTheVoluntaryMaximum)
{
    openRecord();
    store(day(2026, 3, 2), isometricTorque, Side::right, 68'000, "knee at 60°", "quadriceps");
    store(day(2026, 3, 2), stimulatedTorque, Side::right, 21'000, "knee at 60°", "quadriceps");
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    EXPECT_EQ(cell(1, MeasurementsModel::symmetryColumn), "31\u00A0% MVIC"); // 21 / 68 = 30.9 %
    auto* table = practice.find<QTableView>("measurements");
    QTest::keyClick(table, Qt::Key_Down);
    EXPECT_THAT(practice.find<QLabel>("thresholds")->text().toStdString(),
                HasSubstr("30.9\u00A0% of the voluntary torque of 68\u00A0N·m on 2 Mar 2026"));
}

TEST_F(MeasuringJob, AValueIsCorrectedAndTheOldOneStaysInTheHistory)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    onNextDialog([](QDialog& dialog) {
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("value")), QStringLiteral("57 58"));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
    });
    values()->setFocus();
    QTest::keyClick(values(), Qt::Key_Return);
    const auto all = stored();
    const auto changed = std::ranges::find(all, 2, &Measurement::version);
    ASSERT_NE(changed, all.end());
    EXPECT_EQ(changed->thousandths, 58'000);
    EXPECT_THAT(changed->trials, ElementsAre(57'000, 58'000));
    practice.window().activateWindow(); // the form was there
    ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
    QTest::keyClick(&practice.window(), Qt::Key_H, Qt::ControlModifier);
    const auto* history = practice.find<QTableView>("history");
    std::vector<std::string> lines;
    for (int row = 0; row < history->model()->rowCount(); ++row) {
        QStringList cells;
        for (int column = 2; column <= 4; ++column) {
            cells.append(history->model()->index(row, column).data().toString());
        }
        lines.push_back(cells.join(QStringLiteral(" | ")).toStdString());
    }
    EXPECT_THAT(lines, testing::Contains("Measurement · Value | 55 | 58"));
    EXPECT_THAT(lines, testing::Contains("Measurement · Trial 1 | – | 57"));
}

TEST_F(MeasuringJob, AWithdrawnValueIsMarkedCountsNoMoreAndCanBeRestored)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    practice.prompts().confirms = false;
    values()->setFocus();
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_FALSE(practice.prompts().asked.isEmpty());
    EXPECT_EQ(cell(0, MeasurementsModel::changeColumn), "+14\u00A0N·m") << "thought better of it";
    practice.prompts().confirms = true;
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_EQ(cell(0, MeasurementsModel::changeColumn), "");
    const auto withdrawn = values()->currentIndex().siblingAtColumn(ValuesModel::valueColumn);
    EXPECT_THAT(withdrawn.data().toString().toStdString(), HasSubstr("withdrawn"));
    EXPECT_EQ(practice.find<QPushButton>("withdrawMeasurement")->text(),
              QStringLiteral("&Restore"));
    EXPECT_THAT(stored(), SizeIs(6)) << "nothing is deleted";
    QTest::keyClick(values(), Qt::Key_Delete); // restored without a question
    EXPECT_EQ(cell(0, MeasurementsModel::changeColumn), "+14\u00A0N·m");
}

TEST_F(MeasuringJob, AScoreThatThePracticeCountsItselfHasNoEndAtTen)
{
    openRecord();
    must(practice.store().write(author(), "measure", [&](db::Writing& writing) {
        Measurement one;
        one.course = practice.ids().course;
        one.measuredOn = day(2026, 2, 9);
        one.kind = ownKind;
        one.subject = "Knee questionnaire";
        one.side = Side::middle;
        one.unit = "{score}";
        one.thousandths = 85'000;
        return db::addMeasurement(writing, one);
    }));
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    EXPECT_EQ(cell(0, MeasurementsModel::baselineColumn), "85\u00A0score");
    EXPECT_GE(practice.find<ChartView>("measurementChart")->spec().y.most, 85.0);
}

TEST_F(MeasuringJob, AKindThatIsWithdrawnAltogetherCanStillBeFound)
{
    openRecord();
    store(day(2026, 2, 9), "timed_up_and_go", Side::middle, 16'000);
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    values()->setFocus();
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_EQ(cell(0, MeasurementsModel::whatColumn), "Timed up and go");
    EXPECT_EQ(cell(0, MeasurementsModel::baselineColumn), "withdrawn");
}

TEST_F(MeasuringJob, AKindThatOnlyANewerProgramKnowsIsShownAndNotEntered)
{
    openRecord();
    storeTwoVisits();
    must(practice.store().write(author(), "measure", [&](db::Writing& writing) {
        Measurement one;
        one.course = practice.ids().course;
        one.measuredOn = day(2026, 3, 2);
        one.kind = "kind_of_tomorrow";
        one.side = Side::middle;
        one.unit = "W";
        one.thousandths = 1'500;
        return db::addMeasurement(writing, one);
    }));
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    auto* table = practice.find<QTableView>("measurements");
    const int last = table->model()->rowCount() - 1;
    EXPECT_EQ(cell(last, MeasurementsModel::baselineColumn), "1.5\u00A0W");
    table->setCurrentIndex(table->model()->index(last, 0));
    EXPECT_FALSE(practice.find<QPushButton>("correctMeasurement")->isEnabled());
    enterVisit([](QDialog& dialog) {
        EXPECT_EQ(
            dialog.findChildren<QLineEdit*>(QStringLiteral("kind_of_tomorrow//W/value")).size(), 0);
        typeAndGoOn(dialog, {QStringLiteral("68"), {}, {}});
    });
    EXPECT_THAT(stored(), SizeIs(8));
}
