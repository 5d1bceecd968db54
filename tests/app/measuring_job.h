// SPDX-License-Identifier: GPL-3.0-or-later
// A record whose measurements are entered and read by keys.
#pragma once

#include "app/patient/record_page.h"
#include "app/window/entry_dialog.h"
#include "tests/app/practice_window.h"

#include "db/measurements.h"

#include <QDialog>
#include <QTableView>
#include <QTest>

#include <functional>
#include <gtest/gtest.h>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace quadrille::tests
{

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
        return static_cast<const app::EntryDialog&>(dialog).problemText();
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
        for (const auto& [on, right, left] : {std::tuple(day(2026, 2, 9), 41'000, 91'000),
                                              std::tuple(day(2026, 3, 2), 55'000, 93'000)}) {
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

} // namespace quadrille::tests
