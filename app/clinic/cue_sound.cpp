// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/cue_sound.h"

#include <QSoundEffect>
#include <QUrl>

namespace quadrille::app
{

DesktopCueSound::DesktopCueSound() = default;
DesktopCueSound::~DesktopCueSound() = default;

void DesktopCueSound::play(CueTone tone)
{
    static constexpr std::array files{"work.wav", "rest.wav", "over.wav"};
    const auto index = static_cast<std::size_t>(tone);
    auto& effect = m_tones[index];
    if (!effect) {
        effect = std::make_unique<QSoundEffect>();
        effect->setSource(QUrl(QStringLiteral("qrc:/sounds/") + QLatin1String(files[index])));
    }
    effect->play();
}

} // namespace quadrille::app
