// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/patient_form.h"
#include "app/practice/practice_form.h"
#include "tests/app/practice_window.h"

#include "db/courses.h"
#include "db/people.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

QLineEdit* field(QDialog& form, const char* name)
{
    return form.findChild<QLineEdit*>(QString::fromLatin1(name));
}

} // namespace

TEST(PatientForm, ANewPatientIsAddedWithTheKeyboardAlone)
{
    PracticeWindow practice;
    PatientForm form(practice.services(), nullptr);
    form.show();
    QApplication::setActiveWindow(&form);
    ASSERT_TRUE(QTest::qWaitForWindowActive(&form));
    const auto tabTo = [](const QString& text) {
        QTest::keyClicks(QApplication::focusWidget(), text);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    };
    tabTo(QStringLiteral("Odile Marchbank"));
    tabTo(QStringLiteral("14 Oct 1967"));
    tabTo({}); // the reference is filled in already
    tabTo(QStringLiteral("01632 960155"));
    tabTo({}); // no note
    tabTo(QStringLiteral("Stroke, left wrist extensors"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(form.result(), QDialog::Accepted) << form.problemText().toStdString();
    ASSERT_TRUE(form.savedPatient().has_value());
    const auto saved = must(practice.store().read(
        [&](db::Reading& r) { return db::patient(r, *form.savedPatient()); }));
    EXPECT_EQ(saved->name, "Odile Marchbank");
    EXPECT_EQ(saved->birthDate, day(1967, 10, 14));
    EXPECT_EQ(saved->reference, "1002");
    const auto courses = must(practice.store().read(
        [&](db::Reading& r) { return db::coursesOf(r, *form.savedPatient()); }));
    ASSERT_EQ(courses.size(), 1U);
    EXPECT_EQ(courses.front().startDate, practice.temp().clock.today());
}

TEST(PatientForm, SaysWhichFieldIsWrongAndKeepsWhatWasTyped)
{
    PracticeWindow practice;
    PatientForm form(practice.services(), nullptr);
    form.show();
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("name is empty")));
    field(form, "name")->setText(QStringLiteral("Tom Everling"));
    for (const char* wrong : {"yesterday", "31 Feb 1970", "4/6/58", "1 Jan 2190", "1 Jan 1850"}) {
        field(form, "birthDate")->setText(QString::fromUtf8(wrong));
        form.accept();
        EXPECT_FALSE(form.problemText().isEmpty()) << wrong;
        EXPECT_EQ(form.result(), QDialog::Rejected) << wrong;
        EXPECT_EQ(field(form, "birthDate")->text(), QString::fromUtf8(wrong));
    }
}

TEST(PatientForm, AReferenceThatIsTakenIsRefusedAndTheFormStaysOpen)
{
    PracticeWindow practice;
    PatientForm form(practice.services(), nullptr);
    form.show();
    field(form, "name")->setText(QStringLiteral("Tom Everling"));
    field(form, "birthDate")->setText(QStringLiteral("3 May 1976"));
    field(form, "reference")->setText(QStringLiteral("1001"));
    field(form, "problem")->setText(QStringLiteral("Knee arthritis"));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("1001")))
        << form.problemText().toStdString();
    EXPECT_TRUE(form.isVisible());
}

TEST(PatientForm, WhatWasTypedComesBackAfterACrash)
{
    PracticeWindow practice;
    {
        PatientForm form(practice.services(), nullptr);
        form.show();
        typeInto(field(form, "name"), QStringLiteral("Nils Haverford"));
        typeInto(field(form, "problem"), QStringLiteral("Ankle fracture"));
        EXPECT_TRUE(QTest::qWaitFor([&] {
            PatientForm other(practice.services(), nullptr);
            return field(other, "problem")->text() == QStringLiteral("Ankle fracture");
        }));
    } // gone without Save or Cancel
    practice.crashAndStartAgain();
    PatientForm again(practice.services(), nullptr);
    EXPECT_EQ(field(again, "name")->text(), QStringLiteral("Nils Haverford"));
    again.reject();
    PatientForm afterCancel(practice.services(), nullptr);
    EXPECT_TRUE(field(afterCancel, "name")->text().isEmpty()) << "Cancel drops it";
}

TEST(PatientForm, KeepsHowToReachSomebodyAndTheirTapedLengths)
{
    PracticeWindow practice;
    const auto stored = [&] {
        return must(practice.store().read(
                        [&](db::Reading& r) { return db::patient(r, practice.ids().patient); }))
            .value();
    };
    PatientForm form(practice.services(), stored(), nullptr);
    form.show();
    typeInto(field(form, "email"), QStringLiteral("agnes@example.org"));
    auto* address = form.findChild<QPlainTextEdit*>(QStringLiteral("address"));
    typeInto(address, QStringLiteral("1 Quay Lane"));
    QTest::keyClick(address, Qt::Key_Return);
    QTest::keyClicks(address, QStringLiteral("Marrowick"));
    typeInto(field(form, "contactPerson"), QStringLiteral("her daughter, 01632 960118"));
    auto* language = form.findChild<QComboBox*>(QStringLiteral("language"));
    language->setCurrentIndex(language->findData(QStringLiteral("de")));
    typeInto(field(form, "height"), QStringLiteral("167.5"));
    // Segment 3 is the thigh, 4 the lower leg (core/people.h).
    typeInto(field(form, "segment3Right"), QStringLiteral("41.5"));
    typeInto(field(form, "segment3Left"), QStringLiteral("41,2"));
    typeInto(field(form, "segment4Right"), QStringLiteral("38"));
    form.accept();
    ASSERT_EQ(form.result(), QDialog::Accepted) << form.problemText().toStdString();
    const Patient saved = stored();
    EXPECT_EQ(saved.email, "agnes@example.org");
    EXPECT_EQ(saved.address, "1 Quay Lane\nMarrowick");
    EXPECT_EQ(saved.contactPerson, "her daughter, 01632 960118");
    EXPECT_EQ(saved.language, "de");
    EXPECT_EQ(saved.height, Length::fromCount(1675));
    EXPECT_EQ(
        saved.segmentLengths,
        (std::vector<SegmentLength>{{Segment::thigh, BodySide::left, Length::fromCount(412)},
                                    {Segment::thigh, BodySide::right, Length::fromCount(415)},
                                    {Segment::shank, BodySide::right, Length::fromCount(380)}}));
    PatientForm again(practice.services(), saved, nullptr);
    EXPECT_EQ(field(again, "segment3Right")->text(), QStringLiteral("41.5"));
    EXPECT_EQ(field(again, "height")->text(), QStringLiteral("167.5"));
    typeInto(field(again, "segment3Right"), {});
    again.accept();
    EXPECT_EQ(stored().segmentLengths.size(), 2U) << "an empty field is not measured";
}

TEST(PatientForm, SaysInOneSentenceWhichLengthCannotBeRight)
{
    PracticeWindow practice;
    const Patient before = must(practice.store().read([&](db::Reading& r) {
                               return db::patient(r, practice.ids().patient);
                           })).value();
    PatientForm form(practice.services(), before, nullptr);
    form.show();
    for (const char* wrong : {"415", "1.9", "100.1", "41.55", "forty", "41 42", "-41"}) {
        typeInto(field(form, "segment3Right"), QString::fromLatin1(wrong));
        form.accept();
        EXPECT_TRUE(form.problemText().contains(
            QStringLiteral("Thigh of “%1” cm cannot be right").arg(QString::fromLatin1(wrong))))
            << form.problemText().toStdString();
    }
    typeInto(field(form, "segment3Right"), {});
    typeInto(field(form, "height"), QStringLiteral("1.67"));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("height of “1.67” cm")));
    typeInto(field(form, "height"), {});
    typeInto(field(form, "email"), QStringLiteral("agnes"));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("no e-mail address")));
}

TEST(PatientForm, ANewCourseMaySayWhichSideItTreats)
{
    PracticeWindow practice;
    PatientForm form(practice.services(), nullptr);
    form.show();
    field(form, "name")->setText(QStringLiteral("Tom Everling"));
    field(form, "birthDate")->setText(QStringLiteral("3 May 1976"));
    field(form, "problem")->setText(QStringLiteral("Knee arthritis"));
    auto* side = form.findChild<QComboBox*>(QStringLiteral("treatedSide"));
    side->setFocus();
    QTest::keyClick(side, Qt::Key_Down);
    QTest::keyClick(side, Qt::Key_Down);
    form.accept();
    ASSERT_TRUE(form.savedCourse()) << form.problemText().toStdString();
    const auto course = must(
        practice.store().read([&](db::Reading& r) { return db::course(r, *form.savedCourse()); }));
    EXPECT_EQ(course->treatedSide, TreatedSide::left);
}

TEST(PracticeForm, AtFirstStartTakesThePracticeAndItsFirstPractitioner)
{
    PracticeWindow practice(false);
    PracticeForm form(practice.services(), nullptr);
    form.show();
    field(form, "name")->setText(QStringLiteral("Harbour Road Physiotherapy"));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("Your own name")));
    field(form, "practitionerName")->setText(QStringLiteral("Ilse Tarn"));
    form.accept();
    ASSERT_TRUE(form.firstPractitioner().has_value());
    EXPECT_EQ(must(practice.store().read(db::practice))->name, "Harbour Road Physiotherapy");
}
