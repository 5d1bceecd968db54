// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_units.h"

#include "app/patient/record_page.h"
#include "app/plan/fit_dialog.h"
#include "app/plan/plan_page.h"
#include "app/stimulator/loan_form.h"
#include "app/stimulator/stimulator_form.h"
#include "app/stimulator/stimulators_dialog.h"

#include "db/courses.h"
#include "db/loans.h"
#include "db/stimulators.h"

#include <algorithm>
#include <functional>

namespace quadrille::app
{

namespace
{

const Stimulator& unitNamed(const std::vector<Stimulator>& units, const std::string& name)
{
    return *std::ranges::find(units, name, &Stimulator::name);
}

} // namespace

bool renderUnits(Shown& shown, Renderer& renderer, Date today)
{
    bool saved = true;
    const auto window = [&](QDialog& dialog, const QString& name) {
        dialog.show();
        saved = renderer.save(dialog, name) && saved;
    };
    StimulatorsDialog units(shown.services, std::nullopt, shown.window.get());
    window(units, QStringLiteral("units"));
    units.showPage(StimulatorsDialog::profilesIndex);
    window(units, QStringLiteral("stimulators"));
    units.hide();
    const auto rows = shown.store->read(db::inventory).value();
    const auto held = std::ranges::find(
        rows, "U-03", [](const db::InventoryRow& row) { return row.unit.inventoryNumber; });
    db::InventoryRow here = *held;
    here.loan.reset();
    const auto courses = shown.store->read(
        [&](db::Reading& reading) { return db::coursesToLendTo(reading, today); });
    LoanForm lend(shown.services, here, courses.value().at(3).course, shown.window.get());
    window(lend, QStringLiteral("form-lend"));
    lend.hide();
    TakeBackForm back(shown.services, *held, shown.window.get());
    window(back, QStringLiteral("form-take-back"));
    back.hide();
    const auto stimulators = shown.store->read(db::stimulators).value();
    StimulatorForm white(shown.services, unitNamed(stimulators, "Two-channel unit, white"),
                         shown.window.get());
    window(white, QStringLiteral("form-stimulator-white"));
    white.hide();
    const Stimulator& blue = unitNamed(stimulators, "Two-channel unit, blue");
    const auto& blocks = shown.window->recordPage().planPage().draft().draft().blocks;
    FitDialog fit(QString::fromStdString(blue.name), fitSections(blocks, {}, blue, shown.text),
                  FitDialog::Kept::offered, shown.window.get());
    window(fit, QStringLiteral("fit"));
    fit.hide();
    return saved;
}

bool renderPlanOfUnits(Shown& shown, Renderer& renderer)
{
    PlanDraft& draft = shown.window->recordPage().planPage().draft();
    const auto stimulators = shown.store->read(db::stimulators).value();
    draft.chooseStimulator(*unitNamed(stimulators, "Two-channel unit, blue").id);
    bool saved = renderer.save(*shown.window, QStringLiteral("plan-unit-to-fit"));
    draft.chooseStimulator(*unitNamed(stimulators, "Direct-current unit").id);
    saved = renderer.save(*shown.window, QStringLiteral("plan-unit-unsuitable")) && saved;
    draft.undoStack().undo();
    draft.undoStack().undo();
    return saved;
}

} // namespace quadrille::app
