// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plan_draft.h"

#include "app/plan/plan_commands.h"
#include "app/words/trade_words.h"

#include "core/starting_point.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

/// The same work, whichever draft on file it belongs to.
bool isSameWork(const Draft& a, const Draft& b)
{
    return a.stimulator == b.stimulator && a.blocks == b.blocks &&
           a.adoptedReasons == b.adoptedReasons;
}

/// Takes over from one unit to another: the waveform and the settings that only some units have.
void fitToUnit(Settings& settings, const Stimulator& unit)
{
    const Settings presets = presetSettings(unit);
    if (std::ranges::find(unit.waveforms, settings.waveform) == unit.waveforms.end()) {
        settings.waveform = presets.waveform;
    }
    for (const Field field :
         {Field::secondPhaseDuration, Field::carrierFrequency, Field::burstDuty}) {
        if (!countIn(settings, field)) {
            setCount(settings, field, countIn(presets, field));
        }
    }
}

} // namespace

PlanDraft::PlanDraft(QObject* parent)
    : QObject(parent)
{
}

PlanDraft::~PlanDraft()
{
    // The stack announces that it empties while it goes, when those who listen are going too.
    m_undo.disconnect();
}

void PlanDraft::load(Draft saved, const std::optional<Draft>& unsaved)
{
    m_undo.clear();
    m_saved = std::move(saved);
    m_draft = m_saved;
    m_currentBlock = 0;
    if (unsaved && !isSameWork(*unsaved, m_saved)) {
        // The work goes on from the draft that it began from, which may not be the last one saved.
        m_saved.version = unsaved->version;
        push(tr("Unsaved work of last time"), {}, *unsaved);
    }
    emit currentBlockChanged();
    emit changed();
}

bool PlanDraft::isChanged() const
{
    return !isSameWork(m_draft, m_saved);
}

Draft PlanDraft::draftToSave() const
{
    Draft draft = m_draft;
    draft.id = m_saved.id;
    draft.version = m_saved.version;
    return draft;
}

void PlanDraft::markSaved()
{
    m_saved = draftToSave();
    m_saved.version += 1;
    emit changed();
}

void PlanDraft::goOnFrom(Draft saved, const Draft& draft)
{
    saved.course = m_draft.course;
    m_saved = std::move(saved);
    if (!isSameWork(draft, m_draft)) {
        push(tr("Take the draft saved elsewhere"), {}, draft);
    }
    emit changed();
}

void PlanDraft::revert()
{
    push(tr("Revert to what was saved"), {}, m_saved);
}

void PlanDraft::setStimulators(std::vector<Stimulator> stimulators)
{
    m_stimulators = std::move(stimulators);
    emit changed();
}

std::optional<Stimulator> PlanDraft::stimulator() const
{
    const auto found = std::ranges::find(m_stimulators, m_draft.stimulator, &Stimulator::id);
    return m_draft.stimulator && found != m_stimulators.end() ? std::optional(*found)
                                                              : std::nullopt;
}

std::optional<std::size_t> PlanDraft::currentBlock() const
{
    if (m_draft.blocks.empty()) {
        return std::nullopt;
    }
    return std::min(m_currentBlock, m_draft.blocks.size() - 1);
}

void PlanDraft::setCurrentBlock(std::size_t index)
{
    if (currentBlock() == index || index >= m_draft.blocks.size()) {
        return;
    }
    m_currentBlock = index;
    endStep();
    emit currentBlockChanged();
}

const Block* PlanDraft::block() const
{
    const auto current = currentBlock();
    return current ? &m_draft.blocks[*current] : nullptr;
}

const Block* PlanDraft::blockBefore() const
{
    const auto current = currentBlock();
    return current && *current > 0 ? &m_draft.blocks[*current - 1] : nullptr;
}

void PlanDraft::chooseStimulator(StimulatorId id)
{
    apply(tr("Choose the stimulator"), {}, [&](Draft& draft) {
        draft.stimulator = id;
        const auto unit = std::ranges::find(m_stimulators, draft.stimulator, &Stimulator::id);
        if (unit == m_stimulators.end()) {
            return;
        }
        for (Block& block : draft.blocks) {
            for (Site& site : block.sites) {
                fitToUnit(site.settings, *unit);
            }
        }
    });
}

void PlanDraft::takeStimulator(StimulatorId id)
{
    apply(tr("Choose the stimulator"), {}, [&](Draft& draft) { draft.stimulator = id; });
}

void PlanDraft::fitTo(StimulatorId id, std::vector<Block> blocks)
{
    apply(tr("Fit all to the unit"), {}, [&](Draft& draft) {
        draft.stimulator = id;
        draft.blocks = std::move(blocks);
    });
}

void PlanDraft::addBlock()
{
    apply(tr("Add a block"), {}, [&](Draft& draft) {
        Block next = draft.blocks.empty() ? Block{} : draft.blocks.back();
        draft.blocks.push_back(std::move(next));
    });
    setCurrentBlock(m_draft.blocks.size() - 1);
}

void PlanDraft::removeBlock(std::size_t index)
{
    apply(tr("Remove block %1").arg(index + 1), {}, [&](Draft& draft) {
        draft.blocks.erase(draft.blocks.begin() + static_cast<std::ptrdiff_t>(index));
    });
    emit currentBlockChanged();
}

void PlanDraft::setWeeks(int weeks)
{
    applyToBlock(tr("Change weeks"), QStringLiteral("weeks"), [&](Block& b) { b.weeks = weeks; });
}

void PlanDraft::setSchedule(const Schedule& schedule)
{
    applyToBlock(tr("Change days"), QStringLiteral("days"),
                 [&](Block& b) { b.schedule = schedule; });
}

void PlanDraft::setSessionsPerDay(int sessions)
{
    applyToBlock(tr("Change sessions per day"), QStringLiteral("sessions"),
                 [&](Block& b) { b.sessionsPerDay = sessions; });
}

void PlanDraft::setSiteOrder(SiteOrder order)
{
    applyToBlock(tr("Change the order of sites"), {}, [&](Block& b) { b.siteOrder = order; });
}

void PlanDraft::setWaveform(Waveform waveform)
{
    const auto unit = stimulator();
    applyToBlock(tr("Change waveform"), {}, [&](Block& b) {
        for (Site& site : b.sites) {
            site.settings.waveform = waveform;
            if (unit) {
                fitToUnit(site.settings, *unit);
            }
        }
    });
}

void PlanDraft::setSetting(Field field, std::optional<std::int64_t> count)
{
    applyToBlock(tr("Change %1", "a setting").arg(fieldName(field).toLower()),
                 QString::number(static_cast<int>(field)), [&](Block& b) {
                     for (Site& site : b.sites) {
                         setCount(site.settings, field, count);
                     }
                 });
}

void PlanDraft::setAmplitude(std::size_t site, Field field, std::optional<std::int64_t> count)
{
    applyToBlock(tr("Change amplitude of site %1").arg(site + 1),
                 QStringLiteral("%1/%2").arg(static_cast<int>(field)).arg(site), [&](Block& b) {
                     if (site < b.sites.size()) {
                         setCount(b.sites[site].settings, field, count);
                     }
                 });
}

void PlanDraft::setLastTolerated(const std::vector<std::pair<std::size_t, Amplitude>>& found)
{
    if (found.empty()) {
        return;
    }
    applyToBlock(tr("Take over from the session in the clinic"), {}, [&](Block& b) {
        for (const auto& [site, amplitude] : found) {
            if (site < b.sites.size()) {
                b.sites[site].settings.amplitude.lastTolerated = amplitude;
            }
        }
    });
}

void PlanDraft::addSite(const Site& site)
{
    applyToBlock(tr("Add a site"), {}, [&](Block& b) { b.sites.push_back(site); });
}

void PlanDraft::changeSite(std::size_t index, const Site& site)
{
    applyToBlock(tr("Change site %1").arg(index + 1), {}, [&](Block& b) {
        if (index < b.sites.size()) {
            b.sites[index] = site;
        }
    });
}

void PlanDraft::removeSite(std::size_t index)
{
    applyToBlock(tr("Remove site %1").arg(index + 1), {}, [&](Block& b) {
        if (index < b.sites.size()) {
            b.sites.erase(b.sites.begin() + static_cast<std::ptrdiff_t>(index));
        }
    });
}

void PlanDraft::endStep()
{
    ++m_turn;
}

std::optional<BlockFigures> PlanDraft::figuresOf(std::size_t index) const
{
    const auto unit = stimulator();
    if (!unit || index >= m_draft.blocks.size()) {
        return std::nullopt;
    }
    return blockFigures(m_draft.blocks[index], *unit);
}

void PlanDraft::apply(const QString& verb, const QString& step,
                      const std::function<void(Draft&)>& change)
{
    Draft after = m_draft;
    change(after);
    markChangedSince(m_draft.blocks, after.blocks);
    push(verb, step, std::move(after));
}

void PlanDraft::push(const QString& verb, const QString& step, Draft after)
{
    if (after == m_draft) {
        return;
    }
    const QString named =
        step.isEmpty() ? QString() : QStringLiteral("%1/%2").arg(step).arg(m_turn);
    m_undo.push(
        new ReplaceDraft(verb, named, m_draft, std::move(after), [this](const Draft& draft) {
            const auto blockBefore = currentBlock();
            m_draft = draft;
            if (blockBefore != currentBlock()) {
                emit currentBlockChanged();
            }
            emit changed();
        }));
}

void PlanDraft::applyToBlock(const QString& verb, const QString& step,
                             const std::function<void(Block&)>& change)
{
    const auto current = currentBlock();
    if (!current) {
        return;
    }
    const QString named =
        step.isEmpty() ? QString() : QStringLiteral("%1/block %2").arg(step).arg(*current);
    apply(verb, named, [&](Draft& draft) { change(draft.blocks[*current]); });
}

} // namespace quadrille::app
