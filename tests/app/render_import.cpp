// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_import.h"

#include "app/diary_import/import_dialog.h"

#include "db/courses.h"
#include "db/diary.h"

using namespace quadrille;
using namespace quadrille::app;

namespace
{

QByteArray line(Date day, const char* rest)
{
    return QByteArray::fromStdString(isoDate(day)) + rest;
}

/// Two days that are on file, one of them told otherwise, and days after those.
QByteArray diary(const Course& course, const std::vector<DiaryEntry>& entries, Date today)
{
    const Date first = entries.empty() ? course.startDate : entries.front().day;
    const Date second = entries.size() > 1 ? entries[1].day : first + std::chrono::days(1);
    return "date,session,minutes,contractions,comfort,skin,pad,remark\n" +
           line(course.startDate - std::chrono::days(3), ",1,20,,,,,\n") +
           line(first, ",1,12,40,4,2,lower pad,Still red in the morning\n") +
           line(second, ",1,15,,6,,,\n") + line(today - std::chrono::days(2), ",1,20,35,7,0,,\n") +
           line(today - std::chrono::days(1), ",1,20.5,36,8,,,\"Late, after visitors\"\n") +
           line(today - std::chrono::days(1), ",1,20.5,36,8,,,\"Late, after visitors\"\n") +
           line(today, ",1,soon,,,,,\n") + line(today + std::chrono::days(1), ",1,20,,,,,\n");
}

} // namespace

bool renderImport(Shown& shown, Renderer& renderer, PatientId patient)
{
    struct Content {
        Course course;
        std::vector<DiaryEntry> entries;
    };
    const Date today = shown.services.clock.today();
    const auto content = shown.store->read([&](db::Reading& reading) {
        Content found;
        found.course = db::coursesOf(reading, patient).at(0);
        found.entries =
            db::diaryEntriesOf(reading, *found.course.id, found.course.startDate, today);
        return found;
    });
    const auto show = [&](const QByteArray& bytes, const char* name) {
        ImportDialog dialog(shown.services, content->course, QStringLiteral("diary-march.csv"),
                            bytes, shown.window.get());
        dialog.show();
        return renderer.save(dialog, QLatin1String(name));
    };
    bool saved = show(diary(content->course, content->entries, today), "import");
    saved =
        show("date;minutes;comfort\n9/3/2026;1:05;7\n10/3/2026;20,5;8\n", "import-asks") && saved;
    return show("Datum;Dauer;mA links\n2026-03-09;20;42,5\n", "import-columns") && saved;
}
