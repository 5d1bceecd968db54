// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"
#include "core/plan_figures.h"

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace quadrille::app
{

/// The draft on the screen: a plain value with a stack of undo steps over it. Each change is one
/// verb of the trade ("Change on time") that keeps the draft before and after, so that undo never
/// touches live objects.
///
///   form ──verb──▶ PlanDraft ──changed()──▶ every view reads draft() again
class PlanDraft : public QObject
{
    Q_OBJECT

public:
    explicit PlanDraft(QObject* parent = nullptr);
    ~PlanDraft() override;

    /// Starts afresh from what is saved. `unsaved` is work kept from an earlier run; it becomes one
    /// undoable step.
    void load(Draft saved, const std::optional<Draft>& unsaved);
    /// The draft as it stands, over what was saved last: undo steps know nothing of versions.
    Draft draftToSave() const;
    /// draftToSave() was saved.
    void markSaved();
    /// Goes on from a draft that was saved elsewhere, with `draft` on the screen as an undoable
    /// step.
    void goOnFrom(Draft saved, const Draft& draft);
    /// Back to what was last saved, as an undoable step.
    void revert();

    const Draft& draft() const { return m_draft; }
    const Draft& saved() const { return m_saved; }
    bool isChanged() const;
    QUndoStack& undoStack() { return m_undo; }

    /// The units the practice has, to look up the draft's own.
    void setStimulators(std::vector<Stimulator> stimulators);
    const std::vector<Stimulator>& stimulators() const { return m_stimulators; }
    /// The draft's unit; nothing until one is chosen.
    std::optional<Stimulator> stimulator() const;

    /// The block in work; nothing while there is none.
    std::optional<std::size_t> currentBlock() const;
    void setCurrentBlock(std::size_t index);
    const Block* block() const;
    const Block* blockBefore() const;

    // The verbs. Those on settings change all sites of the current block together.
    /// Takes a unit, with a waveform that it gives and presets for what only such units ask.
    void chooseStimulator(StimulatorId id);
    /// Takes a unit and leaves every setting as it is, also what it can't be set to.
    void takeStimulator(StimulatorId id);
    /// Takes a unit with blocks that were fitted to it, as one step.
    void fitTo(StimulatorId id, std::vector<Block> blocks);
    void addBlock();
    void removeBlock(std::size_t index);
    /// The copy stands after its block and becomes the current one.
    void copyBlock(std::size_t index);
    void moveBlock(std::size_t index, std::size_t to);
    /// Steps of one pull at its edge merge until endStep(); back at the first length they are none.
    void setBlockWeeks(std::size_t index, int weeks);
    /// One step of undo. A block keeps a week at least.
    void lengthenBlock(std::size_t index, int byWeeks);
    /// The second half begins at course week `at` and becomes the current block.
    void splitBlock(std::size_t index, CourseWeek at);
    void setWeeks(int weeks);
    void setSchedule(const Schedule& schedule);
    void setSessionsPerDay(int sessions);
    void setSiteOrder(SiteOrder order);
    void setWaveform(Waveform waveform);
    /// A setting in base units, in all sites of the block; nothing empties an optional one.
    void setSetting(Field field, std::optional<std::int64_t> count);
    /// An amplitude of one site.
    void setAmplitude(std::size_t site, Field field, std::optional<std::int64_t> count);
    /// What was tolerated in the clinic, by site of the block, as one step.
    void setLastTolerated(const std::vector<std::pair<std::size_t, Amplitude>>& found);
    void addSite(const Site& site);
    void changeSite(std::size_t index, const Site& site);
    void removeSite(std::size_t index);
    /// The same site on another channel, its amplitudes left out.
    void copySite(std::size_t index, int channel);
    /// Takes a block that a starting point was applied to, in place of the current one, as one
    /// step.
    void applyStartingPoint(const Block& applied);
    /// Puts a variant in the place of the current block, and keeps why; one step of undo, which
    /// takes the reason away too. `name`: of the variant.
    void adopt(const Block& variant, const QString& name, const QString& reason);
    /// The next turn of the same box begins a new undo step.
    void endStep();

    /// Figures of a block of the draft with the draft's unit; nothing without a unit.
    std::optional<BlockFigures> figuresOf(std::size_t index) const;

signals:
    /// The draft or the unit differs from before.
    void changed();
    /// Another block is in work.
    void currentBlockChanged();

private:
    /// One step; blocks that no longer ask for what they started from are marked.
    void apply(const QString& verb, const QString& step, const std::function<void(Draft&)>& change);
    /// One step to a draft as it is.
    void push(const QString& verb, const QString& step, Draft after);
    void applyToBlock(const QString& verb, const QString& step,
                      const std::function<void(Block&)>& change);

    Draft m_saved;
    Draft m_draft;
    std::vector<Stimulator> m_stimulators;
    std::size_t m_currentBlock = 0;
    int m_turn = 0; ///< steps of the same turn merge
    QUndoStack m_undo;
};

} // namespace quadrille::app
