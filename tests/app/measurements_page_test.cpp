// SPDX-License-Identifier: GPL-3.0-or-later
// A visit is entered, read, corrected and withdrawn by keys.
#include "app/charts/chart_view.h"
#include "app/measurements/measurements_model.h"
#include "app/measurements/measurements_page.h"
#include "app/measurements/values_model.h"
#include "app/measurements/visit_form.h"
#include "app/patient/record_page.h"
#include "tests/app/practice_window.h"

#include "db/history.h"
#include "db/measurements.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

namespace
{

constexpr const char* torqueRight = "isometric_torque/quadriceps/N.m/right";
constexpr const char* torqueLeft = "isometric_torque/quadriceps/N.m/left";

class MeasuringJob : public testing::Test
{
protected:
    void openRecord(std::optional<TreatedSide> treated = TreatedSide::right)
    {
        must(practice.store().write(author(), "say the side", [&](db::Writing& writing) {
            Course course = db::course(writing, practice.ids().course).value();
            course.treatedSide = treated;
            db::changeCourse(writing, course);
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
    }
    void pressCtrlM()
    {
        practice.window().activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
        QTest::keyClick(&practice.window(), Qt::Key_M, Qt::ControlModifier);
    }
    /// Opens the form of a visit and answers it.
    void enterVisit(const std::function<void(QDialog&)>& answer)
    {
        onNextDialog(answer);
        pressCtrlM();
    }
    /// Types into whatever has the focus, then goes on with Enter.
    static void typeAndGoOn(QDialog& dialog, const QStringList& values)
    {
        for (const QString& value : values) {
            QTest::keyClicks(dialog.focusWidget(), value);
            QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
        }
    }
    static QString problemIn(const QDialog& dialog)
    {
        return static_cast<const EntryDialog&>(dialog).problemText();
    }
    std::vector<Measurement> stored()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::measurementsOf(reading, practice.ids().course);
        }));
    }
    void store(Date on, std::string_view kind, Side side, std::int64_t thousandths,
               const std::string& method = {}, const std::string& subject = {})
    {
        Measurement one;
        one.course = practice.ids().course;
        one.measuredOn = on;
        one.kind = kind;
        one.subject = subject;
        one.side = side;
        one.unit = measurementKind(kind)->unit;
        one.method = method;
        one.thousandths = thousandths;
        must(practice.store().write(author(), "measure", [&](db::Writing& writing) {
            return db::addMeasurement(writing, one);
        }));
    }
    void storeTwoVisits()
    {
        for (const auto& [on, right, left] :
             {std::tuple(day(2026, 2, 9), 41'000, 91'000), {day(2026, 3, 2), 55'000, 93'000}}) {
            store(on, isometricTorque, Side::right, right, "knee at 60°", "quadriceps");
            store(on, isometricTorque, Side::left, left, "knee at 60°", "quadriceps");
        }
        store(day(2026, 2, 9), "timed_up_and_go", Side::middle, 16'000);
        store(day(2026, 3, 2), "timed_up_and_go", Side::middle, 14'500);
    }
    std::string cell(int row, int column)
    {
        const auto* table = practice.find<QTableView>("measurements");
        return table->model()->index(row, column).data().toString().toStdString();
    }
    QTableView* values() { return practice.find<QTableView>("measuredValues"); }

    PracticeWindow practice;
};

} // namespace

TEST_F(MeasuringJob, AnEmptyPageSaysWhatToDo)
{
    openRecord();
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    auto* sentence = practice.find<QLabel>("noMeasurement");
    EXPECT_TRUE(sentence->isVisible());
    EXPECT_TRUE(sentence->text().contains(QStringLiteral("Ctrl M")));
    EXPECT_TRUE(practice.find<QPushButton>("enterMeasurements")->isEnabled());
}

TEST_F(MeasuringJob, AFirstVisitIsEnteredInOneGoWithTheKeyboardAlone)
{
    openRecord();
    enterVisit([](QDialog& dialog) {
        typeAndGoOn(dialog,
                    {QStringLiteral("61 64.5 66"), QStringLiteral("94"), QStringLiteral("3"),
                     QStringLiteral("6"), QStringLiteral("14.2 13.8"), QStringLiteral("9")});
        // The joint angle is missing; the form says so and waits in that field.
        EXPECT_TRUE(problemIn(dialog).contains(QStringLiteral("method is empty")))
            << problemIn(dialog).toStdString();
        typeAndGoOn(dialog, {QStringLiteral("knee at 60°"), {}, {}, {}, {}});
    });
    const auto all = stored();
    ASSERT_THAT(all, SizeIs(6));
    EXPECT_EQ(all[0].kind, isometricTorque);
    EXPECT_EQ(all[0].side, Side::right);
    EXPECT_EQ(all[0].thousandths, 66'000); // best of three
    EXPECT_THAT(all[0].trials, ElementsAre(61'000, 64'500, 66'000));
    EXPECT_EQ(all[0].method, "knee at 60°");
    EXPECT_EQ(all[0].unit, "N.m");
    EXPECT_EQ(all[0].recordedByName, "Ruta Vennel");
    EXPECT_EQ(all[0].measuredOn, practice.temp().clock.today());
    EXPECT_EQ(all[1].side, Side::left);
    EXPECT_EQ(all[4].kind, "timed_up_and_go");
    EXPECT_EQ(all[4].thousandths, 14'000); // mean of two
    EXPECT_EQ(all[5].thousandths, 9'000);
    EXPECT_EQ(practice.window().recordPage().currentPage(), RecordPage::measurementsIndex);
    EXPECT_EQ(cell(0, MeasurementsModel::index), "70\u00A0%"); // 66 / 94 = 70.2 %
}

TEST_F(MeasuringJob, TheNextVisitOffersWhatWasMeasuredLastWithItsMethod)
{
    openRecord();
    storeTwoVisits();
    store(day(2026, 2, 9), "girth", Side::right, 44'000, {}, "10 cm above the kneecap");
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    enterVisit([](QDialog& dialog) {
        EXPECT_EQ(
            dialog.findChild<QLineEdit*>(QStringLiteral("isometric_torque/quadriceps/N.m/method"))
                ->text(),
            QStringLiteral("knee at 60°"));
        EXPECT_EQ(
            dialog.findChild<QLineEdit*>(QStringLiteral("girth/10 cm above the kneecap/cm/right")),
            nullptr)
            << "measured at an earlier visit only";
        typeAndGoOn(dialog, {QStringLiteral("68"), QStringLiteral("94"), QStringLiteral("14,2")});
    });
    ASSERT_THAT(stored(), SizeIs(10));
    EXPECT_EQ(cell(0, MeasurementsModel::change), "+27\u00A0N·m");
    EXPECT_EQ(cell(0, MeasurementsModel::index), "72\u00A0%, was 45\u00A0%");
    EXPECT_EQ(cell(1, MeasurementsModel::index), "") << "the index is the treated side's";
}

TEST_F(MeasuringJob, AChangeIsHeldAgainstWhatWasPublishedAndTheSourceIsNamed)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    // Torque: nothing is published, and nothing is claimed.
    EXPECT_EQ(cell(0, MeasurementsModel::judged), "better, no published threshold");
    // 16.0 to 14.5 s: over 1.10 and 1.14 s, not over 2.49 s.
    EXPECT_EQ(cell(2, MeasurementsModel::judged), "better, reaches 1.14\u00A0s, below 2.49\u00A0s");
    auto* table = practice.find<QTableView>("measurements");
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Down);
    QTest::keyClick(table, Qt::Key_Down);
    const std::string thresholds = practice.find<QLabel>("thresholds")->text().toStdString();
    EXPECT_THAT(thresholds, HasSubstr("BMC Musculoskelet Disord 2015;16:174"));
    EXPECT_THAT(thresholds, HasSubstr("Kennedy 2005"));
    EXPECT_THAT(thresholds, HasSubstr("from memory"));
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        EXPECT_THAT(cell(row, MeasurementsModel::judged), testing::Not(HasSubstr("significant")));
    }
}

TEST_F(MeasuringJob, ThereIsNoIndexWhereBothSidesAreTreatedOrNobodyHasSaid)
{
    openRecord(TreatedSide::both);
    storeTwoVisits();
    for (const auto treated : {std::optional(TreatedSide::both), std::optional<TreatedSide>()}) {
        openRecord(treated);
        practice.window().recordPage().showPage(RecordPage::measurementsIndex);
        EXPECT_EQ(cell(0, MeasurementsModel::index), "");
        EXPECT_EQ(cell(1, MeasurementsModel::index), "");
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

TEST_F(MeasuringJob, AnUnusualValueIsSaidAndSavedAllTheSame)
{
    openRecord();
    enterVisit([](QDialog& dialog) {
        typeAndGoOn(dialog, {QStringLiteral("680")});
        const auto* note =
            dialog.findChild<QLabel*>(QStringLiteral("isometric_torque/quadriceps/N.m/note"));
        EXPECT_TRUE(note->text().contains(QStringLiteral("outside the usual")))
            << note->text().toStdString();
        typeAndGoOn(dialog, {{}, {}, {}, {}, {}});
        typeAndGoOn(dialog, {QStringLiteral("knee at 60°"), {}, {}, {}, {}});
    });
    ASSERT_THAT(stored(), SizeIs(1));
    EXPECT_EQ(stored()[0].thousandths, 680'000);
}

TEST_F(MeasuringJob, WhatIsNoNumberIsNotSavedAndStaysToBeMended)
{
    openRecord();
    enterVisit([](QDialog& dialog) {
        auto* right = dialog.findChild<QLineEdit*>(QLatin1String(torqueRight));
        for (const char* wrong : {"sixty", "1.2345", "1 2 3 4 5 6", "61-64"}) {
            typeInto(right, QString::fromLatin1(wrong));
            static_cast<EntryDialog&>(dialog).accept();
            EXPECT_TRUE(problemIn(dialog).contains(QString::fromLatin1(wrong)))
                << problemIn(dialog).toStdString();
            EXPECT_EQ(right->text(), QString::fromLatin1(wrong));
        }
        typeInto(right, {});
        static_cast<EntryDialog&>(dialog).accept();
        EXPECT_TRUE(problemIn(dialog).contains(QStringLiteral("Nothing is entered")));
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("pain_at_rest//{score}/value")),
                 QStringLiteral("3 4"));
        static_cast<EntryDialog&>(dialog).accept();
        EXPECT_TRUE(problemIn(dialog).contains(QStringLiteral("takes one")));
        dialog.reject();
    });
    EXPECT_THAT(stored(), SizeIs(0));
}

TEST_F(MeasuringJob, AKindOfThePracticesOwnIsAddedWithItsUnitAndOfferedToOthers)
{
    openRecord();
    enterVisit([](QDialog& dialog) {
        auto* kind = dialog.findChild<QComboBox*>(QStringLiteral("addKind"));
        kind->setFocus();
        QTest::keyClick(kind, Qt::Key_End);
        auto* name = dialog.findChild<QComboBox*>(QStringLiteral("addSubject"));
        typeInto(name->lineEdit(), QStringLiteral("Stairs in a minute"));
        QTest::keyClick(name, Qt::Key_Return);
        EXPECT_FALSE(dialog.findChild<QLabel*>(QStringLiteral("addNote"))->text().isEmpty())
            << "the unit is missing";
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("addUnit")), QStringLiteral("stairs"));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
        typeAndGoOn(dialog, {QStringLiteral("23")}); // the new row is the last
    });
    ASSERT_THAT(stored(), SizeIs(1));
    EXPECT_EQ(stored()[0].kind, ownKind);
    EXPECT_EQ(stored()[0].subject, "Stairs in a minute");
    EXPECT_EQ(stored()[0].unit, "{stairs}");
    EXPECT_EQ(stored()[0].side, Side::middle);
    EXPECT_EQ(cell(0, MeasurementsModel::baseline), "23\u00A0stairs, 12 Mar");
}

TEST_F(MeasuringJob, AWalkMayBeGivenInSeconds)
{
    openRecord();
    store(day(2026, 2, 9), walkTenMetres, Side::middle, 600, "usual pace");
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    enterVisit([](QDialog& dialog) { typeAndGoOn(dialog, {QStringLiteral("12 s")}); });
    ASSERT_THAT(stored(), SizeIs(2));
    EXPECT_EQ(stored()[1].thousandths, 833); // 10 m in 12 s
    EXPECT_EQ(cell(0, MeasurementsModel::change), "+0.23\u00A0m/s");
}

TEST_F(MeasuringJob, TorqueUnderStimulationIsShownAsAShareOfTheVoluntaryMaximum)
{
    openRecord();
    store(day(2026, 3, 2), isometricTorque, Side::right, 68'000, "knee at 60°", "quadriceps");
    store(day(2026, 3, 2), stimulatedTorque, Side::right, 21'000, "knee at 60°", "quadriceps");
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    EXPECT_EQ(cell(1, MeasurementsModel::index), "31\u00A0% MVIC"); // 21 / 68 = 30.9 %
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

TEST_F(MeasuringJob, AWithdrawnValueIsMarkedCountsNoMoreAndCanBeTakenBack)
{
    openRecord();
    storeTwoVisits();
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    practice.prompts().confirms = false;
    values()->setFocus();
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_FALSE(practice.prompts().asked.isEmpty());
    EXPECT_EQ(cell(0, MeasurementsModel::change), "+14\u00A0N·m") << "thought better of it";
    practice.prompts().confirms = true;
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_EQ(cell(0, MeasurementsModel::change), "");
    const auto withdrawn = values()->currentIndex().siblingAtColumn(ValuesModel::value);
    EXPECT_THAT(withdrawn.data().toString().toStdString(), HasSubstr("withdrawn"));
    EXPECT_THAT(stored(), SizeIs(6)) << "nothing is deleted";
    QTest::keyClick(values(), Qt::Key_Delete); // taken back without a question
    EXPECT_EQ(cell(0, MeasurementsModel::change), "+14\u00A0N·m");
}

TEST_F(MeasuringJob, AKindThatIsWithdrawnAltogetherCanStillBeFound)
{
    openRecord();
    store(day(2026, 2, 9), "timed_up_and_go", Side::middle, 16'000);
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    practice.window().recordPage().showPage(RecordPage::measurementsIndex);
    values()->setFocus();
    QTest::keyClick(values(), Qt::Key_Delete);
    EXPECT_EQ(cell(0, MeasurementsModel::what), "Timed up and go");
    EXPECT_EQ(cell(0, MeasurementsModel::baseline), "withdrawn");
}

TEST_F(MeasuringJob, WhatWasTypedComesBackAfterACrashAlsoInARowThatWasAdded)
{
    openRecord();
    const Course course = must(practice.store().read([&](db::Reading& reading) {
                              return db::course(reading, practice.ids().course);
                          })).value();
    {
        VisitForm form(practice.services(), course, {}, nullptr);
        form.show();
        auto* kind = form.findChild<QComboBox*>(QStringLiteral("addKind"));
        kind->setCurrentIndex(kind->findData(QStringLiteral("girth")));
        typeInto(form.findChild<QComboBox*>(QStringLiteral("addSubject"))->lineEdit(),
                 QStringLiteral("mid calf"));
        QTest::keyClick(form.findChild<QComboBox*>(QStringLiteral("addSubject")), Qt::Key_Return);
        typeInto(form.findChild<QLineEdit*>(QStringLiteral("girth/mid calf/cm/left")),
                 QStringLiteral("36.5"));
        typeInto(form.findChild<QLineEdit*>(QLatin1String(torqueLeft)), QStringLiteral("94"));
        ASSERT_TRUE(QTest::qWaitFor([&] {
            VisitForm other(practice.services(), course, {}, nullptr);
            const auto* girth =
                other.findChild<QLineEdit*>(QStringLiteral("girth/mid calf/cm/left"));
            const auto* left = other.findChild<QLineEdit*>(QLatin1String(torqueLeft));
            return girth != nullptr && girth->text() == QStringLiteral("36.5") &&
                   left->text() == QStringLiteral("94");
        }));
    } // gone without Save or Cancel
    practice.crashAndStartAgain();
    VisitForm again(practice.services(), course, {}, nullptr);
    EXPECT_EQ(again.findChild<QLineEdit*>(QLatin1String(torqueLeft))->text(), QStringLiteral("94"));
    again.reject();
    VisitForm afterCancel(practice.services(), course, {}, nullptr);
    EXPECT_TRUE(afterCancel.findChild<QLineEdit*>(QLatin1String(torqueLeft))->text().isEmpty());
}
