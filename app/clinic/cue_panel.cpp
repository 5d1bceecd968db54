// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/cue_panel.h"

#include "app/clinic/cue_view.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace quadrille::app
{

CuePanel::CuePanel(PractiseCue::SteadyTime now, CueSound& sound, const QuantityText& text,
                   QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_cue(std::move(now))
    , m_sound(sound)
    , m_view(new CueView(text, this))
    , m_start(new QPushButton(this))
    , m_again(new QPushButton(tr("From the &beginning"), this))
    , m_heard(new QCheckBox(tr("S&ound"), this))
    , m_words(new QLabel(this))
{
    setRole(*this, Role::sheet);
    layOut();
    connect(m_start, &QPushButton::clicked, this, &CuePanel::startOrPause);
    connect(m_again, &QPushButton::clicked, this, [this] {
        m_heardLast.reset();
        m_cue.reset();
    });
    connect(&m_cue, &PractiseCue::ticked, this, &CuePanel::refresh);
    connect(&m_cue, &PractiseCue::phaseChanged, this, &CuePanel::hear);
    refresh();
}

void CuePanel::layOut()
{
    m_start->setObjectName(QStringLiteral("cueStart"));
    m_again->setObjectName(QStringLiteral("cueAgain"));
    m_again->setAutoDefault(false);
    m_start->setAutoDefault(false);
    // What the room likes to hear is no part of the record; no name, so that no form keeps it.
    m_heard->setChecked(true);
    m_heard->setAccessibleName(tr("Sound at work, rest and the end"));
    m_words->setObjectName(QStringLiteral("cueWords"));
    m_words->setWordWrap(true);
    setRole(*m_words, Role::secondLineText);
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(space::small);
    buttons->addWidget(m_start);
    buttons->addWidget(m_again);
    buttons->addWidget(m_heard);
    buttons->addStretch();
    auto* row = new QHBoxLayout;
    row->setSpacing(space::wide);
    row->addWidget(m_view, 1);
    row->addLayout(buttons);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(space::insideSheet, space::medium, space::insideSheet, space::close);
    column->setSpacing(space::small);
    column->addLayout(row);
    column->addWidget(m_words);
}

void CuePanel::setRhythm(const std::optional<SessionTiming>& timing, const QString& shut)
{
    m_shut = shut;
    m_heardLast.reset();
    m_cue.setTiming(shut.isEmpty() ? timing : std::nullopt);
}

void CuePanel::hear(CuePhase phase)
{
    const CueTone tone = phase == CuePhase::over   ? CueTone::over
                         : phase == CuePhase::rest ? CueTone::rest
                                                   : CueTone::work;
    // Ramp, plateau and ramp are one piece of work, whichever of them the unit has.
    if (m_heardLast != tone && m_heard->isChecked()) {
        m_sound.play(tone);
    }
    m_heardLast = tone;
}

void CuePanel::startOrPause()
{
    if (m_cue.isRunning()) {
        m_cue.pause();
    } else {
        m_cue.start();
    }
    refresh();
}

void CuePanel::refresh()
{
    const auto moment = m_cue.moment();
    m_view->setVisible(moment.has_value());
    const bool paused =
        m_cue.hasBegun() && !m_cue.isRunning() && moment && moment->phase != CuePhase::over;
    m_view->show(
        moment ? std::optional(CueView::Content{*m_cue.timing(), *moment, m_cue.hasBegun(), paused})
               : std::nullopt);
    m_start->setText(m_cue.isRunning()  ? tr("&Pause")
                     : m_cue.hasBegun() ? tr("&Go on")
                                        : tr("&Start"));
    m_start->setEnabled(moment && moment->phase != CuePhase::over);
    m_again->setEnabled(m_cue.hasBegun());
    if (!m_shut.isEmpty()) {
        m_words->setText(m_shut);
    } else if (!moment) {
        m_words->setText(tr("The settings of this site give no rhythm yet."));
    } else {
        m_words->setText(tr("A rhythm for the two of you to follow. It controls no stimulator: the "
                            "unit is set and switched by hand."));
    }
}

} // namespace quadrille::app
