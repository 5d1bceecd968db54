// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/stimulator.h"

#include <QString>

#include <optional>
#include <vector>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace quadrille::app
{

class OrderList;
class RangeRows;

/// What a unit can do: output, channels, ramp habit, ranges and the order of its settings. Says at
/// once whether the unit will do for muscle exercise.
class StimulatorForm : public EntryDialog
{
    Q_OBJECT

public:
    /// A unit without id is a new one.
    StimulatorForm(const Services& services, const Stimulator& stimulator, QWidget* parent);
    std::optional<StimulatorId> savedStimulator() const { return m_saved; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_stimulator.id ? &m_stimulator.version : nullptr; }
    void fieldsEntered() override;

private:
    void layOutFacts(QGridLayout& grid);
    void layOutTraits(QGridLayout& grid);
    void addFact(QGridLayout& grid, const QString& label, QWidget* field);
    std::optional<Amplitude> mostOutput() const;
    void fill();
    std::vector<Waveform> waveforms() const;
    Stimulator entered() const;
    void judge();

    Stimulator m_stimulator;
    std::optional<StimulatorId> m_saved;
    QLineEdit* m_name;
    QSpinBox* m_channels;
    std::vector<QCheckBox*> m_waveforms;
    QCheckBox* m_sharedTiming;
    QCheckBox* m_workRest;
    QComboBox* m_rampHabit;
    QComboBox* m_cycleStart;
    QComboBox* m_usageCounter;
    QSpinBox* m_memories;
    QLineEdit* m_mostOutput; ///< empty: not known
    QCheckBox* m_archived;
    RangeRows* m_ranges;
    OrderList* m_order;
    QLabel* m_verdict;
};

} // namespace quadrille::app
