// SPDX-License-Identifier: GPL-3.0-or-later
// Saves every screen as PNG, light and dark, at both window sizes, for people to look at:
// render_screens FOLDER.
#include "app/caseload/caseload_page.h"
#include "app/charts/chart_table_dialog.h"
#include "app/charts/chart_view.h"
#include "app/demo/demo_practice.h"
#include "app/look/look.h"
#include "app/measurements/electrode_set_form.h"
#include "app/measurements/visit_form.h"
#include "app/patient/patient_form.h"
#include "app/patient/record_page.h"
#include "app/plan/fit_dialog.h"
#include "app/plan/issue_form.h"
#include "app/plan/plan_page.h"
#include "app/plan/site_form.h"
#include "app/practice/pad_life_form.h"
#include "app/practice/practice_form.h"
#include "app/screening/practice_question_form.h"
#include "app/screening/screening_page.h"
#include "app/stimulator/loan_form.h"
#include "app/stimulator/stimulator_form.h"
#include "app/stimulator/stimulators_dialog.h"
#include "app/window/conflict_dialog.h"
#include "app/window/main_window.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/window/system_clock.h"
#include "app/words/translations.h"
#include "tests/app/render_clinic.h"
#include "tests/app/render_courses.h"
#include "tests/app/render_diary.h"
#include "tests/app/render_import.h"
#include "tests/app/render_starting_points.h"
#include "tests/app/render_units.h"
#include "tests/app/render_whatif.h"
#include "tests/app/screen_renderer.h"
#include "tests/support/whole_caseload.h"

#include "db/caseload_query.h"
#include "db/courses.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/stimulators.h"

#include <QApplication>
#include <QCheckBox>
#include <QDir>
#include <QLineEdit>
#include <QScrollArea>
#include <QTabBar>
#include <QTableView>
#include <QTemporaryDir>
#include <QTextStream>

#include <algorithm>
#include <functional>
#include <memory>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

const Date renderedDay = Date(std::chrono::year(2026) / 3 / 12);

std::optional<PatientId> patientNamed(Shown& shown, const std::string& name)
{
    const std::vector<db::CaseloadRow> rows = shown.store->read(tests::wholeCaseload).value();
    for (const db::CaseloadRow& row : rows) {
        if (row.patient.name == name) {
            return row.patient.id;
        }
    }
    return std::nullopt;
}

bool renderRecord(Shown& shown, Renderer& renderer)
{
    const auto patient = patientNamed(shown, "Agnes Thorley");
    if (!patient) {
        return false;
    }
    MainWindow& window = *shown.window;
    window.openPatient(*patient, std::nullopt);
    PlanPage& plan = window.recordPage().planPage();
    plan.draft().setCurrentBlock(2);
    bool saved = renderer.save(window, QStringLiteral("plan"));
    plan.draft().setCurrentBlock(3); // differs from block 3 in off time alone
    if (auto* chart = window.findChild<ChartView*>(QStringLiteral("forceChart"))) {
        chart->setCrosshair(12.0);
    }
    if (auto* chart = window.findChild<ChartView*>(QStringLiteral("contractionsChart"))) {
        emit chart->crosshairMoved(5.0);
        chart->setCrosshair(5.0);
        ChartTableDialog table(chart->spec(), &window);
        table.show();
        saved = renderer.save(table, QStringLiteral("chart-table")) && saved;
    }
    saved = renderer.save(window, QStringLiteral("plan-compared")) && saved;
    if (auto* tabs = window.findChild<QTabBar*>(QStringLiteral("chartTabs"))) {
        tabs->setCurrentIndex(1);
        saved = renderer.save(window, QStringLiteral("plan-force")) && saved;
        tabs->setCurrentIndex(0);
    }
    plan.draft().setCurrentBlock(2);
    plan.draft().setSetting(Field::phaseDuration, 420);
    saved = renderer.save(window, QStringLiteral("plan-outside")) && saved;
    plan.draft().undoStack().undo();
    window.recordPage().showPage(RecordPage::handoutIndex);
    saved = renderer.save(window, QStringLiteral("handout")) && saved;
    window.recordPage().showPage(RecordPage::historyIndex);
    saved = renderer.save(window, QStringLiteral("history")) && saved;
    window.recordPage().showPage(RecordPage::measurementsIndex);
    saved = renderer.save(window, QStringLiteral("measurements")) && saved;
    window.recordPage().showPage(RecordPage::padsIndex);
    saved = renderer.save(window, QStringLiteral("pads")) && saved;
    window.recordPage().showPage(RecordPage::planIndex);
    return saved;
}

/// The measurements of a course: chosen kinds, a page without one, and the form of a visit.
bool renderMeasurements(Shown& shown, Renderer& renderer)
{
    const auto agnes = patientNamed(shown, "Agnes Thorley");
    const auto mei = patientNamed(shown, "Mei Garrowby");
    if (!agnes || !mei) {
        return false;
    }
    MainWindow& window = *shown.window;
    window.openPatient(*agnes, std::nullopt);
    window.recordPage().showPage(RecordPage::measurementsIndex);
    auto* table = window.findChild<QTableView*>(QStringLiteral("measurements"));
    bool saved = table != nullptr;
    for (const int row : {2, 9}) {
        table->setCurrentIndex(table->model()->index(row, 0));
        saved = renderer.save(window, QStringLiteral("measurements-row-%1").arg(row)) && saved;
    }
    const Course course =
        shown.store
            ->read([&](db::Reading& reading) { return db::coursesOf(reading, *agnes).at(0); })
            .value();
    VisitForm visit(
        shown.services, course,
        shown.store
            ->read([&](db::Reading& reading) { return db::measurementsOf(reading, *course.id); })
            .value(),
        shown.window.get());
    visit.show();
    visit.findChild<QLineEdit*>(QStringLiteral("isometric_torque/quadriceps/N.m/right"))
        ->setText(QStringLiteral("70 71.5 69"));
    visit.findChild<QLineEdit*>(QStringLiteral("isometric_torque/quadriceps/N.m/left"))
        ->setText(QStringLiteral("940"));
    saved = renderer.save(visit, QStringLiteral("form-visit")) && saved;
    visit.hide();
    ElectrodeSet set;
    set.course = course.id;
    set.issuedOn = renderedDay;
    ElectrodeSetForm pads(shown.services, set, {}, shown.window.get());
    pads.show();
    pads.accept(); // with its sentence about what is missing
    saved = renderer.save(pads, QStringLiteral("form-pads")) && saved;
    pads.hide();
    PadLifeForm lives(shown.services, shown.window.get());
    lives.show();
    saved = renderer.save(lives, QStringLiteral("form-pad-life")) && saved;
    lives.hide();
    window.openPatient(*mei, std::nullopt);
    saved = renderer.save(window, QStringLiteral("measurements-empty")) && saved;
    window.recordPage().showPage(RecordPage::planIndex);
    return saved;
}

/// The act of issuing while the screening waits for its signature.
bool renderBlockedIssue(Shown& shown, Renderer& renderer)
{
    const auto patient = patientNamed(shown, "Gwen Polstead");
    if (!patient) {
        return false;
    }
    const auto course =
        shown.store
            ->read([&](db::Reading& reading) { return db::coursesOf(reading, *patient).at(0); })
            .value();
    const auto plan =
        shown.store
            ->read([&](db::Reading& reading) { return db::plansOf(reading, *course.id).back(); })
            .value();
    IssueForm issue(shown.services, course, draftFrom(plan), plan.stimulator, 1,
                    shown.window.get());
    issue.show();
    const bool saved = renderer.save(issue, QStringLiteral("form-issue-blocked"));
    issue.hide();
    return saved;
}

/// Screenings of every kind: not signed with a blood clot not known, gone ahead, precautions.
bool renderScreenings(Shown& shown, Renderer& renderer)
{
    bool saved = true;
    MainWindow& window = *shown.window;
    const auto show = [&](const char* patient, const char* name) {
        const auto id = patientNamed(shown, patient);
        if (!id) {
            saved = false;
            return;
        }
        window.openPatient(*id, std::nullopt);
        window.recordPage().showPage(RecordPage::screeningIndex);
        window.recordPage().screeningPage().focusFirst();
        saved = renderer.save(window, QString::fromLatin1(name)) && saved;
    };
    show("Gwen Polstead", "screening-unsigned");
    window.recordPage().showPage(RecordPage::handoutIndex);
    saved = renderer.save(window, QStringLiteral("handout-blocked")) && saved;
    show("Callum Pettifer", "screening-open");
    if (auto* seen = window.findChild<QCheckBox*>(QStringLiteral("skinSeen"))) {
        seen->setFocus();
        window.recordPage().screeningPage().findChild<QScrollArea*>()->ensureWidgetVisible(seen);
    }
    saved = renderer.save(window, QStringLiteral("screening-skin")) && saved;
    show("Lucía Fernvale", "screening-local");
    if (auto* seen = window.findChild<QCheckBox*>(QStringLiteral("skinSeen"))) {
        window.recordPage().screeningPage().findChild<QScrollArea*>()->ensureWidgetVisible(seen);
    }
    saved = renderer.save(window, QStringLiteral("screening-skin-signed")) && saved;
    show("Desmond Achterby", "screening-gone-ahead");
    show("Hamid Larkfield", "screening-precaution");
    window.recordPage().showPage(RecordPage::planIndex);
    saved = renderBlockedIssue(shown, renderer) && saved;
    PracticeQuestionForm question(shown.services, PracticeQuestion{}, &window);
    question.show();
    saved = renderer.save(question, QStringLiteral("form-question")) && saved;
    question.hide();
    return saved;
}

bool renderForms(Shown& shown, Renderer& renderer)
{
    bool saved = true;
    const auto form = [&](QDialog& dialog, const QString& name) {
        dialog.show();
        saved = renderer.save(dialog, name) && saved;
        dialog.hide();
    };
    PatientForm patient(shown.services, shown.window.get());
    patient.show();
    patient.accept(); // with its sentence about what is missing
    form(patient, QStringLiteral("form-patient"));
    StimulatorForm unit(shown.services, commonStimulator(), shown.window.get());
    form(unit, QStringLiteral("form-stimulator"));
    SiteForm site(shown.services, Site{}, commonStimulator(), shown.window.get());
    form(site, QStringLiteral("form-site"));
    PracticeForm practice(shown.services, shown.window.get());
    form(practice, QStringLiteral("form-practice"));
    ConflictDialog conflict(
        QStringLiteral("Anselm Orrick changed this record while it was open here. Choose what "
                       "shall stand; what was saved elsewhere stays in the history."),
        {{QStringLiteral("Telephone"), QStringLiteral("01632 960147"),
          QStringLiteral("01632 960148")},
         {QStringLiteral("Note"), QString(), QStringLiteral("Rings before nine in the morning.")}},
        shown.window.get());
    form(conflict, QStringLiteral("conflict"));
    return saved;
}

bool renderAll(const QString& folder, Look& look, SchemeChoice scheme, Size size)
{
    look.apply(scheme);
    const QTemporaryDir temporary;
    const SystemClock clock(renderedDay);
    const QString suffix =
        QStringLiteral("%1-%2x%3")
            .arg(scheme == SchemeChoice::dark ? QStringLiteral("dark") : QStringLiteral("light"))
            .arg(size.width)
            .arg(size.height);
    Renderer renderer(folder, suffix);
    const QString demo = temporary.filePath(QStringLiteral("demo.quadrille"));
    if (!writeDemoPractice(demo, renderedDay)) {
        return false;
    }
    Shown shown(demo, db::Opening::existing, clock, look);
    shown.window->resize(size.width, size.height);
    shown.window->show();
    bool saved = renderer.save(*shown.window, QStringLiteral("caseload"));
    saved = renderRecord(shown, renderer) && saved;
    saved = renderScreenings(shown, renderer) && saved;
    saved = renderMeasurements(shown, renderer) && saved;
    saved = renderDiary(shown, renderer, patientNamed(shown, "Agnes Thorley").value(),
                        patientNamed(shown, "Mei Garrowby").value()) &&
            saved;
    saved = renderForms(shown, renderer) && saved;
    saved = renderImport(shown, renderer, patientNamed(shown, "Agnes Thorley").value()) && saved;
    saved = renderClinic(shown, renderer, patientNamed(shown, "Agnes Thorley").value()) && saved;
    saved = renderCourses(shown, renderer, patientNamed(shown, "Agnes Thorley").value(),
                          patientNamed(shown, "Amina Holloworth").value()) &&
            saved;
    saved = renderStartingPoints(shown, renderer, patientNamed(shown, "Agnes Thorley").value()) &&
            saved;
    saved = renderWhatIf(shown, renderer, patientNamed(shown, "Agnes Thorley").value()) && saved;
    saved = renderUnits(shown, renderer, renderedDay) && saved;
    saved = renderPlanOfUnits(shown, renderer) && saved;
    shown.window->close();

    Shown empty(temporary.filePath(QStringLiteral("empty.quadrille")), db::Opening::createIfMissing,
                clock, look);
    empty.window->resize(size.width, size.height);
    empty.window->show();
    saved = renderer.save(*empty.window, QStringLiteral("caseload-empty")) && saved;
    PracticeForm first(empty.services, empty.window.get());
    first.show();
    saved = renderer.save(first, QStringLiteral("form-first-start")) && saved;
    StimulatorsDialog noUnits(empty.services, std::nullopt, empty.window.get());
    noUnits.show();
    saved = renderer.save(noUnits, QStringLiteral("units-empty")) && saved;
    noUnits.hide();
    first.hide();
    empty.window->close();
    return saved;
}

} // namespace

int main(int argc, char** argv)
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    installTranslations(application);
    if (argc != 2) {
        QTextStream(stderr) << "render_screens FOLDER\n";
        return 2;
    }
    const QString folder = QString::fromLocal8Bit(argv[1]);
    QDir().mkpath(folder);
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
    Look look(application);
    bool saved = true;
    for (const SchemeChoice scheme : {SchemeChoice::light, SchemeChoice::dark}) {
        for (const Size size : {Size{1440, 900}, Size{1280, 720}}) {
            saved = renderAll(folder, look, scheme, size) && saved;
        }
    }
    return saved ? 0 : 1;
}
