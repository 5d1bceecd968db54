// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/unit_choice.h"

#include "app/plan/fit_dialog.h"
#include "app/plan/plan_draft.h"
#include "app/stimulator/stimulator_form.h"
#include "app/words/fit_text.h"
#include "app/words/suitability_text.h"

#include "db/stimulators.h"

#include "core/suitability.h"
#include "core/unit_fit.h"

#include <QWidget>

#include <algorithm>
#include <iterator>
#include <vector>

namespace quadrille::app
{

namespace
{

std::vector<Block> fitted(const std::vector<Block>& blocks, const Stimulator& unit,
                          RampHabit wantedHabit)
{
    std::vector<Block> all;
    std::ranges::transform(blocks, std::back_inserter(all),
                           [&](const Block& block) { return fit(block, unit, wantedHabit).block; });
    return all;
}

} // namespace

UnitChoice::UnitChoice(const Services& services, PlanDraft& draft, QWidget* page)
    : QObject(page)
    , m_services(services)
    , m_draft(draft)
    , m_page(page)
{
}

std::optional<Stimulator> UnitChoice::unitOf(StimulatorId id) const
{
    const auto& units = m_draft.stimulators();
    const auto found = std::ranges::find(units, std::optional(id), &Stimulator::id);
    return found == units.end() ? std::nullopt : std::optional(*found);
}

void UnitChoice::choose(StimulatorId id)
{
    if (const auto unit = unitOf(id); unit && m_draft.draft().stimulator != id) {
        offer(*unit, true);
    }
    emit settled();
}

void UnitChoice::fitAll()
{
    if (const auto unit = m_draft.stimulator()) {
        offer(*unit, false);
    }
}

void UnitChoice::offer(const Stimulator& unit, bool isAnother)
{
    const Stimulator before = m_draft.stimulator().value_or(unit);
    const FitOrigin origin{before.rampHabit, before.cycleStart};
    const std::vector<Block>& blocks = m_draft.draft().blocks;
    if (hasStop(suitabilityFindings(unit))) {
        m_draft.takeStimulator(*unit.id); // nobody fits a plan to a unit that will not do
        return sayVerdict(unit);
    }
    const auto sections = fitSections(blocks, origin, unit, m_services.text);
    if (sections.empty()) {
        m_draft.chooseStimulator(*unit.id);
        return sayVerdict(unit);
    }
    FitDialog dialog(QString::fromStdString(unit.name), sections,
                     isAnother ? FitDialog::Kept::offered : FitDialog::Kept::notOffered, m_page);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    if (dialog.keepsSettings()) {
        m_draft.takeStimulator(*unit.id);
    } else {
        m_draft.fitTo(*unit.id, fitted(blocks, unit, origin.habit));
    }
    sayVerdict(unit);
}

void UnitChoice::sayVerdict(const Stimulator& unit)
{
    emit said(tr("%1: %2", "name of a unit, verdict")
                  .arg(QString::fromStdString(unit.name),
                       suitabilityText(unit, m_services.text).whole()));
}

void UnitChoice::add()
{
    StimulatorForm form(m_services, commonStimulator(), m_page);
    if (form.exec() == QDialog::Accepted && form.savedStimulator()) {
        reload();
        choose(*form.savedStimulator());
    }
}

void UnitChoice::change()
{
    if (const auto unit = m_draft.stimulator()) {
        StimulatorForm form(m_services, *unit, m_page);
        form.exec();
    }
}

void UnitChoice::reload()
{
    const auto stimulators = m_services.store.read(db::stimulators);
    if (!stimulators) {
        emit failed(stimulators.error());
        return;
    }
    m_draft.setStimulators(*stimulators);
}

std::size_t UnitChoice::misfits() const
{
    const auto unit = m_draft.stimulator();
    if (!unit || hasStop(suitabilityFindings(*unit))) {
        return 0;
    }
    std::size_t count = 0;
    for (const Block& block : m_draft.draft().blocks) {
        for (const std::vector<FitChange>& site : fit(block, *unit).changes) {
            count += site.size();
        }
    }
    return count;
}

} // namespace quadrille::app
