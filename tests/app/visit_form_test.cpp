// SPDX-License-Identifier: GPL-3.0-or-later
// All measurements of a visit are entered in one go, by keys.
#include "app/measurements/measurements_model.h"
#include "app/measurements/visit_form.h"
#include "tests/app/measuring_job.h"

#include "db/courses.h"
#include "db/kept_forms.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::ElementsAre;
using testing::SizeIs;

namespace
{

constexpr const char* torqueRight = "isometric_torque/quadriceps/N.m/right";
constexpr const char* torqueLeft = "isometric_torque/quadriceps/N.m/left";

} // namespace

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
    EXPECT_EQ(cell(0, MeasurementsModel::symmetryColumn), "70\u00A0%"); // 66 / 94 = 70.2 %
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
    EXPECT_EQ(cell(0, MeasurementsModel::changeColumn), "+27\u00A0N·m");
    EXPECT_EQ(cell(0, MeasurementsModel::symmetryColumn), "72\u00A0%, was 45\u00A0%");
    EXPECT_EQ(cell(1, MeasurementsModel::symmetryColumn), "") << "the index is the treated side's";
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
    EXPECT_EQ(cell(0, MeasurementsModel::baselineColumn), "23\u00A0stairs");
}

TEST_F(MeasuringJob, AWalkMayBeGivenInSeconds)
{
    openRecord();
    store(day(2026, 2, 9), walkTenMetres, Side::middle, 600, "usual pace");
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    enterVisit([](QDialog& dialog) { typeAndGoOn(dialog, {QStringLiteral("12 s")}); });
    ASSERT_THAT(stored(), SizeIs(2));
    EXPECT_EQ(stored()[1].thousandths, 833); // 10 m in 12 s
    EXPECT_EQ(cell(0, MeasurementsModel::changeColumn), "+0.23\u00A0m/s");
}

TEST_F(MeasuringJob, ASecondRowOfTheSameKindComesBackAfterACrash)
{
    openRecord();
    const Course course = must(practice.store().read([&](db::Reading& reading) {
                              return db::course(reading, practice.ids().course);
                          })).value();
    const auto secondRow = QStringLiteral("isometric_torque/quadriceps/N.m#2/right");
    {
        VisitForm form(practice.services(), course, {}, nullptr);
        form.show();
        typeInto(
            form.findChild<QLineEdit*>(QStringLiteral("isometric_torque/quadriceps/N.m/method")),
            QStringLiteral("knee at 60°"));
        auto* kind = form.findChild<QComboBox*>(QStringLiteral("addKind"));
        kind->setCurrentIndex(kind->findData(QStringLiteral("isometric_torque")));
        auto* subject = form.findChild<QComboBox*>(QStringLiteral("addSubject"));
        typeInto(subject->lineEdit(), QStringLiteral("quadriceps"));
        QTest::keyClick(subject, Qt::Key_Return);
        auto* right = form.findChild<QLineEdit*>(secondRow);
        ASSERT_NE(right, nullptr);
        typeInto(right, QStringLiteral("48"));
        const auto isKept = [&] {
            const auto kept = must(practice.store().read([&](db::Reading& reading) {
                return db::keptForm(reading,
                                    QStringLiteral("measurements/%1").arg(course.id->key()));
            }));
            return kept && kept->value(secondRow).toString() == QStringLiteral("48");
        };
        ASSERT_TRUE(QTest::qWaitFor(isKept));
    } // gone without Save or Cancel
    practice.crashAndStartAgain();
    VisitForm again(practice.services(), course, {}, nullptr);
    const auto* right = again.findChild<QLineEdit*>(secondRow);
    ASSERT_NE(right, nullptr);
    EXPECT_EQ(right->text(), QStringLiteral("48"));
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
