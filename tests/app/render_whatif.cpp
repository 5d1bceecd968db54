// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_whatif.h"

#include "app/charts/chart_view.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "app/plan/what_if_dialog.h"

#include <QPushButton>
#include <QTest>

namespace quadrille::app
{

bool renderWhatIf(Shown& shown, Renderer& renderer, PatientId planned)
{
    shown.window->openPatient(planned, std::nullopt);
    PlanDraft& draft = shown.window->recordPage().planPage().draft();
    draft.setCurrentBlock(1);
    const auto unit = draft.stimulator();
    if (draft.block() == nullptr || !unit) {
        return false;
    }
    WhatIfDialog dialog(shown.services, *draft.block(), 1, *unit, shown.window.get());
    dialog.show();
    bool saved = renderer.save(dialog, QStringLiteral("what-if"));
    const auto enter = [&](int variant, Field field, const char* value) {
        auto* box = dialog.findChild<QuantityBox*>(
            QStringLiteral("variant-%1-%2").arg(variant).arg(static_cast<int>(field)));
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, QString::fromLatin1(value));
    };
    enter(0, Field::offTime, "12");
    enter(1, Field::offTime, "40");
    enter(1, Field::sessionLength, "30");
    enter(2, Field::pulseFrequency, "35");
    enter(2, Field::amplitudeCeiling, "110");
    const auto* chart = dialog.findChild<ChartView*>(QStringLiteral("variantChart"));
    const bool drawn = QTest::qWaitFor([&] { return chart->spec().lines.size() == 3; });
    dialog.findChild<QPushButton*>(QStringLiteral("findRatio"))->click();
    dialog.findChild<QPushButton*>(QStringLiteral("adopt"))->click();
    saved = renderer.save(dialog, QStringLiteral("what-if-variants")) && saved && drawn;
    return saved;
}

} // namespace quadrille::app
