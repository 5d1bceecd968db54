// SPDX-License-Identifier: GPL-3.0-or-later
// A record whose diary is copied by keys. The course starts on Monday 9 February 2026; today is
// Thursday 12 March.
#pragma once

#include "app/diary/diary_grid.h"
#include "app/diary/diary_page.h"
#include "app/patient/record_page.h"
#include "tests/app/practice_window.h"

#include "db/course_events.h"
#include "db/course_records.h"
#include "db/diary.h"
#include "db/plans.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

namespace quadrille::tests
{

class DiaryJob : public testing::Test
{
protected:
    void issue(int sessionsPerDay = 1)
    {
        must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
            Draft draft = aDraft(practice.ids());
            draft.blocks.front().sessionsPerDay = sessionsPerDay;
            Settings& settings = draft.blocks.front().sites.front().settings;
            settings.sessionLength = std::chrono::minutes(20);
            settings.amplitude.ceiling = Amplitude::fromCount(60'000);
            return db::issuePlan(writing, draft,
                                 {.fromDate = day(2026, 2, 9),
                                  .reason = "first plan",
                                  .issuedBy = practice.ids().practitioner},
                                 day(2026, 3, 12));
        }));
    }
    void open()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.window().recordPage().showPage(app::RecordPage::diaryIndex);
        practice.bringToFront();
        page().focusFirst();
    }
    app::DiaryPage& page() { return practice.window().recordPage().diaryPage(); }
    app::DiaryGrid* grid() { return practice.find<app::DiaryGrid>("diaryGrid"); }
    /// To whatever has the focus, as a person's hands do.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::keyClick(practice.window().focusWidget(), key, modifiers);
    }
    void type(const char* text)
    {
        QTest::keyClicks(practice.window().focusWidget(), QString::fromUtf8(text));
    }
    const WrittenDiary& written() { return page().draft().sheet().diary(); }
    WrittenDiary stored()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            const Course course = db::course(reading, practice.ids().course).value();
            return writtenDiaryOf(db::courseRecords(reading, course));
        }));
    }
    std::string strip()
    {
        const auto* label = practice.find<QLabel>("diaryStrip");
        return label->isHidden() ? std::string() : label->text().toStdString();
    }
    std::string said() { return practice.find<QLabel>("said")->text().toStdString(); }

    PracticeWindow practice;
};

} // namespace quadrille::tests
