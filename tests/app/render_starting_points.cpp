// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_starting_points.h"

#include "app/patient/record_page.h"
#include "app/plan/house_settings_form.h"
#include "app/plan/plan_page.h"
#include "app/plan/starting_points_dialog.h"
#include "app/window/main_window.h"

#include "db/courses.h"
#include "db/house_settings.h"

#include <QListWidget>

namespace quadrille::app
{

bool renderStartingPoints(Shown& shown, Renderer& renderer, PatientId planned)
{
    MainWindow& window = *shown.window;
    window.openPatient(planned, std::nullopt);
    PlanPage& plan = window.recordPage().planPage();
    PlanDraft& draft = plan.draft();
    if (draft.block() == nullptr || !draft.stimulator()) {
        return false;
    }
    HouseSettings kept = houseSettingsFrom(*draft.block(), *draft.stimulator());
    kept.name = "Our first weeks after knee replacement";
    kept.note = "As agreed in spring; slower for people over 80.";
    const auto added = shown.store->write(shown.author, "keep", [&](db::Writing& writing) {
        return db::addHouseSettings(writing, kept);
    });
    const auto open = [&](const QString& condition, const QString& name, const char* picture) {
        StartingPointsDialog dialog(
            shown.services, {*draft.block(), draft.stimulator(), draft.currentBlock(), condition},
            &window);
        dialog.show();
        auto* list = dialog.findChild<QListWidget*>(QStringLiteral("pointList"));
        for (int i = 0; i < list->count(); ++i) {
            if (list->item(i)->text().startsWith(name)) {
                list->setCurrentRow(i);
            }
        }
        const bool saved = renderer.save(dialog, QString::fromLatin1(picture));
        dialog.hide();
        return saved;
    };
    bool saved = added.has_value();
    saved = open({}, QStringLiteral("Stevens-Lapsley"), "starting-points") && saved;
    saved = open({}, QStringLiteral("Feil 2011, single"), "starting-points-range") && saved;
    saved = open({}, QStringLiteral("Petterson"), "starting-points-bursts") && saved;
    saved = open({}, QStringLiteral("Ennis"), "starting-points-twitches") && saved;
    saved = open({}, QStringLiteral("Our first"), "starting-points-house") && saved;
    HouseSettingsForm form(shown.services, kept, &window);
    form.show();
    saved = renderer.save(form, QStringLiteral("form-house-settings")) && saved;
    form.hide();
    Block started = *draft.block();
    started.origin = BlockOrigin{"Stevens-Lapsley 2012", true};
    draft.applyStartingPoint(started);
    saved = renderer.save(window, QStringLiteral("plan-started-from")) && saved;
    plan.revert();
    return saved;
}

} // namespace quadrille::app
