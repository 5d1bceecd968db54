// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <memory>

class QSoundEffect;

namespace quadrille::app
{

enum class CueTone { work, rest, over };

/// What is heard when work begins, rest begins, and the session is over.
class CueSound
{
public:
    CueSound() = default;
    virtual ~CueSound() = default;
    CueSound(const CueSound&) = delete;
    CueSound& operator=(const CueSound&) = delete;

    virtual void play(CueTone tone) = 0;
};

/// Three short tones of our own. A machine without sound stays silent.
class DesktopCueSound : public CueSound
{
public:
    DesktopCueSound();
    ~DesktopCueSound() override;
    void play(CueTone tone) override;

private:
    /// Loaded when they are first needed: most days nobody practises.
    std::array<std::unique_ptr<QSoundEffect>, 3> m_tones;
};

} // namespace quadrille::app
