// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/clinic/cue_sound.h"
#include "app/clinic/practise_cue.h"
#include "app/words/quantity_text.h"

#include <QFrame>

#include <optional>

class QCheckBox;
class QLabel;
class QPushButton;

namespace quadrille::app
{

class CueView;

/// The cue with its buttons: start, pause and go on, from the beginning, sound. It says that it
/// controls no stimulator.
class CuePanel : public QFrame
{
    Q_OBJECT

public:
    /// `sound` outlives the panel.
    CuePanel(PractiseCue::SteadyTime now, CueSound& sound, const QuantityText& text,
             QWidget* parent);

    /// The rhythm to practise; `shut`: why nothing may be practised, empty where it may.
    void setRhythm(const std::optional<SessionTiming>& timing, const QString& shut);
    PractiseCue& cue() { return m_cue; }

private:
    void layOut();
    void hear(CuePhase phase);
    void startOrPause();
    void refresh();

    const QuantityText& m_text;
    PractiseCue m_cue;
    CueSound& m_sound;
    CueView* m_view;
    QPushButton* m_start;
    QPushButton* m_again;
    QCheckBox* m_heard;
    QLabel* m_words;
    QString m_shut;
    std::optional<CueTone> m_heardLast;
};

} // namespace quadrille::app
