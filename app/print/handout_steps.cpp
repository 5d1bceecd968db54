// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_site_words.h"
#include "app/print/handout_words.h"
#include "app/print/rich_text.h"
#include "app/words/trade_words.h"

namespace quadrille::app
{

namespace
{

/// Longer texts stand below a step's head, not in it.
constexpr qsizetype longestStepHead = 90;

/// A text of the sites as one sentence where all say the same, else a paragraph per site.
struct SiteTexts {
    QString shared;
    std::vector<RichText> each;
    bool isEmpty() const { return shared.isEmpty() && each.empty(); }
};

/// Sites that run at once share what only one of them says; one after another each has its own.
SiteTexts textsOf(const HandoutCard& card, std::string HandoutSite::*which)
{
    SiteTexts texts;
    QStringList different;
    bool anyEmpty = false;
    for (const HandoutSite& site : card.sites) {
        const QString text = sentence(typedText(site.*which));
        anyEmpty = anyEmpty || text.isEmpty();
        if (text.isEmpty()) {
            continue;
        }
        different.append(text);
        texts.each.push_back({{whereOf(site) + QStringLiteral(": "), true}, {text}});
    }
    different.removeDuplicates();
    if (different.size() == 1 && !(anyEmpty && inTurn(card))) {
        return {different.front(), {}};
    }
    return texts;
}

/// A step headed by the practitioner's own words where they are short and the same for all.
StepText stepOf(const SiteTexts& texts, const QString& headOfLong, const QString& headOfNone)
{
    if (texts.isEmpty()) {
        return {headOfNone, {}};
    }
    if (texts.shared.isEmpty()) {
        return {headOfLong, texts.each};
    }
    if (texts.shared.size() <= longestStepHead) {
        return {texts.shared, {}};
    }
    return {headOfLong, {plain(texts.shared)}};
}

} // namespace

StepText HandoutWords::padsStep(const HandoutCard& card) const
{
    std::size_t pads = 0;
    for (const HandoutSite& site : card.sites) {
        pads += site.pads.size();
    }
    StepText step{tr("Look at the skin. Stick on the pads."), {}};
    if (pads > 1 && !inTurn(card)) {
        step.head = tr("Look at the skin. Stick on the %1 pads.")
                        .arg(m_text.count(static_cast<std::int64_t>(pads)));
    }
    step.body.push_back(plain(samePads(card, m_text)
                                  ? tr("Clean, dry, no cream. Each pad %1, where you were shown.")
                                        .arg(padSize(card.sites.front().pads.front(), m_text))
                                  : tr("Clean, dry, no cream. Each pad where you were shown.")));
    return step;
}

StepText HandoutWords::turnUpStep(const HandoutCard& card)
{
    StepText step{tr("Switch on. Turn up slowly while it pulls."), {}};
    if (inTurn(card)) {
        step.body = {plain(tr("One muscle after the other, in the order of the list.")),
                     plain(tr("The muscle should go hard, without sharp pain."))};
    } else if (card.sites.size() > 1) {
        step.body = {plain(tr("First one channel, then the next. Hard muscle, no sharp pain."))};
    } else {
        step.body = {plain(tr("The muscle should go hard, without sharp pain."))};
    }
    return step;
}

std::vector<StepText> HandoutWords::steps(const HandoutCard& card) const
{
    return {
        positionStep(card),
        padsStep(card),
        turnUpStep(card),
        workStep(card),
        {tr("Switch off first, then take the pads off."), {plain(tr("Look at the skin again."))}}};
}

StepText HandoutWords::positionStep(const HandoutCard& card) const
{
    return stepOf(textsOf(card, &HandoutSite::position), tr("Get into position."),
                  tr("Sit or lie as you were shown."));
}

StepText HandoutWords::workStep(const HandoutCard& card) const
{
    StepText step = stepOf(textsOf(card, &HandoutSite::instruction), tr("While it pulls:"),
                           tr("Let it pull, then let it rest."));
    if (card.common.rhythm) {
        step.body.push_back(plain(rhythm(*card.common.rhythm, inTurn(card))));
    }
    for (const HandoutSite& site : card.sites) {
        if (site.own.rhythm) {
            step.body.push_back({{whereOf(site) + QStringLiteral(": "), true},
                                 {rhythm(*site.own.rhythm, false), false}});
        }
    }
    return step;
}

QString HandoutWords::rhythm(const HandoutRhythm& rhythm, bool forEachMuscle) const
{
    const QString pull = m_text.setting(Field::onTime, rhythm.onPhase.count());
    const QString rest = m_text.setting(Field::offTime, rhythm.offTime.count());
    const QString times = m_text.count(rhythm.contractions.started);
    QString text = forEachMuscle
                       ? tr("It pulls for %1 and rests for %2, %3 times for each muscle")
                             .arg(pull, rest, times)
                       : tr("It pulls for %1 and rests for %2, %3 times").arg(pull, rest, times);
    text = rhythm.contractions.started != rhythm.contractions.completed
               ? tr("%1, the last one cut short.").arg(text)
               : tr("%1.", "a whole sentence").arg(text);
    return rhythm.restsFirst ? tr("It begins with a rest. %1").arg(text) : text;
}

} // namespace quadrille::app
