// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/clinic/practise_cue.h"
#include "app/window/entry_dialog.h"

#include "core/clinic_session.h"
#include "core/course.h"
#include "core/plan.h"
#include "core/screening_gate.h"

#include <optional>
#include <utility>
#include <vector>

class QComboBox;
class QCheckBox;
class QLineEdit;
class QScrollArea;
class QStackedWidget;
class QVBoxLayout;

namespace quadrille::app
{

class ClinicSiteFields;
class CuePanel;
class CueSound;
class SegmentRow;

/// The first session in the clinic, or a later one: the cue to practise with, and for each site of
/// a block what was felt, seen and tolerated. Earlier ones stand below.
class ClinicSessionForm : public EntryDialog
{
    Q_OBJECT

public:
    /// What the form rests on. Where the screening lets nothing be measured or practised at a site,
    /// its fields are shut; so are all while nobody says what the screening gives.
    struct Basis {
        Course course;
        Block block;
        RampHabit rampHabit = RampHabit::includedInOnTime;
        CycleStart cycleStart = CycleStart::withOn;
        ScreeningGate gate = {};
        std::vector<GateSite> asked = {}; ///< the sites that the gate numbers
    };
    /// `sound` outlives the form; `now` is a clock that never goes back.
    ClinicSessionForm(const Services& services, Basis basis, CueSound& sound,
                      PractiseCue::SteadyTime now, QWidget* parent);

    /// After saving: for sites of the block, by index, the most tolerated amplitude at the planned
    /// phase duration, where the person wants it in the draft.
    std::vector<std::pair<std::size_t, Amplitude>> guidance() const;

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    void layOut();
    QWidget* makeFoot();
    void keyPressEvent(QKeyEvent* event) override;
    void showEarlier();
    void withdraw(const ClinicSession& session);
    void chooseSite(int index);
    bool isShut(std::size_t site) const;
    void refresh();

    const Basis m_basis;
    const QStringList m_shut; ///< for each site why nothing is done there; empty where it may be
    CuePanel* m_cue;
    SegmentRow* m_choice;
    QStackedWidget* m_stack;
    std::vector<ClinicSiteFields*> m_sites;
    QLineEdit* m_heldOn;
    QComboBox* m_practitioner;
    QLineEdit* m_note;
    QCheckBox* m_adopt;
    QScrollArea* m_earlierRoom;
    QWidget* m_earlier;
    QVBoxLayout* m_earlierLines;
};

} // namespace quadrille::app
