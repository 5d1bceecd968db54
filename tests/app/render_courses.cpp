// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_courses.h"

#include "app/patient/course_act_forms.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/plan/plans_issued_dialog.h"
#include "app/plan/split_form.h"
#include "app/window/main_window.h"

#include "db/course_events.h"
#include "db/courses.h"

#include "core/course_acts.h"

#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>

namespace quadrille::app
{

namespace
{

bool renderForms(Shown& shown, Renderer& renderer, const Course& course,
                 const std::vector<Pause>& pauses)
{
    bool saved = true;
    const auto form = [&](EntryDialog& dialog, const char* name) {
        dialog.show();
        saved = renderer.save(dialog, QString::fromLatin1(name)) && saved;
        dialog.hide();
    };
    PauseForm pause(shown.services, course, pauses, shown.window.get());
    pause.show();
    pause.accept(); // with its sentence about the pause that stands already
    form(pause, "form-pause");
    GoOnForm goOn(shown.services, course, pauses.front(), shown.window.get());
    form(goOn, "form-go-on");
    EndCourseForm end(shown.services, course, shown.window.get());
    form(end, "form-end-course");
    Course ended = course;
    ended.endDate = shown.services.clock.today();
    ended.endReason = "Goals reached";
    ReopenForm reopen(shown.services, ended, shown.window.get());
    form(reopen, "form-reopen");
    SplitForm split(shown.services, 1, {{4}, {6}}, CourseWeek{5}, shown.window.get());
    form(split, "form-split");
    return saved;
}

} // namespace

bool renderCourses(Shown& shown, Renderer& renderer, PatientId planned, PatientId paused)
{
    MainWindow& window = *shown.window;
    window.openPatient(paused, std::nullopt);
    bool saved = renderer.save(window, QStringLiteral("plan-paused"));
    const Course course =
        shown.store->read([&](db::Reading& r) { return db::coursesOf(r, paused).at(0); }).value();
    const std::vector<Pause> pauses =
        shown.store->read([&](db::Reading& r) { return db::pausesOf(r, *course.id); }).value();
    saved = renderForms(shown, renderer, course, pauses) && saved;

    window.openPatient(planned, std::nullopt);
    PlanPage& plan = window.recordPage().planPage();
    plan.draft().setCurrentBlock(1);
    plan.draft().setSessionsPerDay(2);
    plan.draft().setSetting(Field::onTime, 7000);
    PlansIssuedDialog plans(plan.plans(), plan.draft().draft(), plan.draft().stimulator(),
                            shown.text, &window);
    plans.show();
    saved = renderer.save(plans, QStringLiteral("plans-issued")) && saved;
    plans.hide();
    QMenu* menu = window.findChild<QPushButton*>(QStringLiteral("moreBlock"))->menu();
    menu->popup(window.mapToGlobal(QPoint(100, 200)));
    saved = renderer.save(*menu, QStringLiteral("plan-block-menu")) && saved;
    menu->close();
    plan.revert();
    return saved;
}

} // namespace quadrille::app
