// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_diary.h"

#include "app/diary/counter_form.h"
#include "app/diary/diary_grid.h"
#include "app/diary/diary_page.h"
#include "app/look/segment_row.h"
#include "app/patient/record_page.h"

#include "db/course_events.h"

#include <QScrollArea>
#include <QScrollBar>

namespace quadrille::app
{

namespace
{

void enterCounter(Shown& shown, CourseId course)
{
    const Date today = shown.services.clock.today();
    const auto entered =
        shown.store->write(shown.author, "enter reading", [&](db::Writing& writing) {
            for (const auto& [ago, uses, minutes] :
                 {std::tuple(31, 12, 240), std::tuple(17, 24, 470), std::tuple(3, 5, 100)}) {
                CounterReading reading;
                reading.course = course;
                reading.readOn = today - std::chrono::days(ago);
                reading.totalUses = uses;
                reading.totalTime = std::chrono::minutes(minutes);
                if (ago == 3) {
                    reading.explanation = CounterExplanation::unitSwapped;
                }
                db::addCounterReading(writing, reading);
            }
        });
    if (entered) {
        emit shown.events.diaryChanged(course);
    }
}

} // namespace

bool renderDiary(Shown& shown, Renderer& renderer, PatientId copied, PatientId bare)
{
    MainWindow& window = *shown.window;
    window.openPatient(copied, std::nullopt);
    RecordPage& record = window.recordPage();
    record.showPage(RecordPage::diaryIndex);
    DiaryPage& page = record.diaryPage();
    window.activateWindow();
    page.focusFirst();
    bool saved = renderer.save(window, QStringLiteral("diary"));
    const auto move = [&](auto act) {
        page.draft().move([&](DiarySheet& sheet) {
            act(sheet);
            return DiaryAnswer();
        });
    };
    move([](DiarySheet& sheet) { sheet.turnPage(-1); });
    saved = renderer.save(window, QStringLiteral("diary-copied")) && saved;
    const DiaryPlace place = page.draft().sheet().place();
    page.draft().typeSign(QStringLiteral("type"), [](DiarySheet& sheet) {
        sheet.type('9');
        return sheet.type('0');
    });
    saved = renderer.save(window, QStringLiteral("diary-error")) && saved;
    page.draft().undoStack().undo();
    move([&](DiarySheet& sheet) {
        sheet.goTo({place.day + std::chrono::days(1), 1, DiaryField::skin, 0});
    });
    page.draft().write(QStringLiteral("skin"), [](DiarySheet& sheet) { return sheet.type('2'); });
    saved = renderer.save(window, QStringLiteral("diary-skin")) && saved;
    page.draft().undoStack().undo();
    move([](DiarySheet& sheet) { sheet.turnPage(9); });
    saved = renderer.save(window, QStringLiteral("diary-to-come")) && saved;
    if (auto* weeks = window.findChild<SegmentRow*>(QStringLiteral("weeksShown"))) {
        weeks->choose(1);
        emit weeks->chosenChanged(1);
        saved = renderer.save(window, QStringLiteral("diary-one-week")) && saved;
        weeks->choose(weeksOfDiaryPage);
        emit weeks->chosenChanged(weeksOfDiaryPage);
    }
    enterCounter(shown, record.course().value());
    if (auto* scroll = page.findChild<QScrollArea*>()) {
        scroll->verticalScrollBar()->setValue(scroll->verticalScrollBar()->maximum());
    }
    saved = renderer.save(window, QStringLiteral("diary-counter")) && saved;
    Course course;
    course.id = record.course();
    CounterReading reading;
    reading.readOn = shown.services.clock.today();
    CounterForm form(shown.services, course, reading, QString(), &window);
    form.show();
    form.accept(); // with its sentence about what is missing
    saved = renderer.save(form, QStringLiteral("form-counter")) && saved;
    form.hide();
    window.openPatient(bare, std::nullopt);
    saved = renderer.save(window, QStringLiteral("diary-none")) && saved;
    record.showPage(RecordPage::planIndex);
    return saved;
}

} // namespace quadrille::app
