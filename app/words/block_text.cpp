// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/block_text.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>

#include <cmath>
#include <vector>

namespace quadrille::app
{

namespace
{

struct BlockWords {
    Q_DECLARE_TR_FUNCTIONS(BlockWords)
};

/// A change in three parts; without `from` it is a remark that stands alone.
struct Parts {
    QString name;
    QString from;
    QString to;
    QString whole; ///< `from` with its unit, for a voice
};

Parts settingParts(const BlockChange& change, const Settings& before, const Settings& after,
                   const QuantityText& text)
{
    const auto shown = [&](const Settings& settings, bool unit) {
        const auto count = countIn(settings, change.field);
        if (!count) {
            return QStringLiteral("—");
        }
        return unit ? text.setting(change.field, *count) : text.settingNumber(change.field, *count);
    };
    const bool known = countIn(after, change.field).has_value();
    return {fieldName(change.field, after.waveform), shown(before, !known), shown(after, true),
            shown(before, true)};
}

Parts scheduleParts(const Block& before, const Block& after, const QuantityText& text)
{
    const bool moreOrLess = daysPerWeek(before) != daysPerWeek(after);
    const auto shown = [&](const Block& block) {
        return moreOrLess ? daysOfWeek(daysPerWeek(block)) : scheduleName(block.schedule, text);
    };
    return {moreOrLess ? BlockWords::tr("A week") : BlockWords::tr("Days"), shown(before),
            shown(after), shown(before)};
}

QString ordered(SiteOrder order)
{
    return order == SiteOrder::together ? BlockWords::tr("Sites at once")
                                        : BlockWords::tr("Sites in turn");
}

Parts ownParts(const BlockChange& change, const Block& before, const Block& after,
               const QuantityText& text)
{
    switch (change.part) {
    case ChangedPart::schedule:
        return scheduleParts(before, after, text);
    case ChangedPart::sessionsPerDay: {
        const QString from = timesADay(before.sessionsPerDay);
        return {BlockWords::tr("Sessions"), from, timesADay(after.sessionsPerDay), from};
    }
    case ChangedPart::siteOrder:
        return {ordered(after.siteOrder), {}, {}, {}};
    case ChangedPart::siteAdded:
        return {BlockWords::tr("New: %1", "a site").arg(siteName(after.sites[*change.siteAfter])),
                {},
                {},
                {}};
    case ChangedPart::siteRemoved:
        return {
            BlockWords::tr("Without %1", "a site").arg(siteName(before.sites[*change.siteBefore])),
            {},
            {},
            {}};
    default:
        return {};
    }
}

Parts siteParts(const BlockChange& change, const Site& before, const Site& after,
                const QuantityText& text)
{
    switch (change.part) {
    case ChangedPart::setting:
        return settingParts(change, before.settings, after.settings, text);
    case ChangedPart::waveform:
        return {waveformName(after.settings.waveform), {}, {}, {}};
    case ChangedPart::channel: {
        const QString from = text.count(before.channel);
        return {fieldName(Field::channel), from, text.count(after.channel), from};
    }
    case ChangedPart::pads:
        return {BlockWords::tr("Other pads"), {}, {}, {}};
    case ChangedPart::position:
        return {BlockWords::tr("Other position"), {}, {}, {}};
    case ChangedPart::instruction:
        return {BlockWords::tr("Other instruction"), {}, {}, {}};
    default:
        return {};
    }
}

std::vector<Parts> allParts(const Block& before, const Block& after, const QuantityText& text)
{
    std::vector<Parts> all;
    const bool several = after.sites.size() > 1;
    for (const BlockChange& change : blockChanges(before, after)) {
        if (!change.siteBefore || !change.siteAfter) {
            all.push_back(ownParts(change, before, after, text));
            continue;
        }
        Parts parts = siteParts(change, before.sites[*change.siteBefore],
                                after.sites[*change.siteAfter], text);
        if (several && !change.inAllSites) {
            parts.name = BlockWords::tr("Site %1: %2").arg(*change.siteAfter + 1).arg(parts.name);
        }
        all.push_back(parts);
    }
    return all;
}

QString shareText(double share, const QuantityText& text)
{
    if (share == 0.0) {
        return BlockWords::tr("same");
    }
    // A small step is told with a decimal, so that it does not read as none.
    const int decimals = std::abs(share) < 0.01 ? 1 : 0;
    return (share > 0.0 ? QStringLiteral("+") : QStringLiteral("\u2212")) +
           text.percent(std::abs(share), decimals);
}

} // namespace

QStringList blockLines(const Block& block, const QuantityText& text)
{
    if (block.sites.empty()) {
        return {};
    }
    const Settings& settings = block.sites.front().settings;
    const auto value = [&](Field field) {
        return text.setting(field, countIn(settings, field).value_or(0));
    };
    const QString pulses = settings.waveform == Waveform::kilohertzBursts
                               ? value(Field::pulseFrequency)
                               : BlockWords::tr("%1 · %2").arg(value(Field::pulseFrequency),
                                                               value(Field::phaseDuration));
    return {BlockWords::tr("%1 · %2 on, %3 off")
                .arg(pulses, value(Field::onTime), value(Field::offTime)),
            BlockWords::tr("%1, %2, %3")
                .arg(value(Field::sessionLength), timesADay(block.sessionsPerDay),
                     daysOfWeek(daysPerWeek(block)))};
}

QStringList changeLines(const Block& before, const Block& after, int numberBefore,
                        const QuantityText& text)
{
    QStringList lines;
    for (const Parts& parts : allParts(before, after, text)) {
        lines.append(parts.to.isEmpty() ? parts.name
                                        : BlockWords::tr("%1 %2 → %3", "setting, from, to")
                                              .arg(parts.name, parts.from, parts.to));
    }
    return lines.isEmpty() ? QStringList{BlockWords::tr("as Block %1").arg(numberBefore)} : lines;
}

QStringList spokenChanges(const Block& before, const Block& after, int numberBefore,
                          const QuantityText& text)
{
    QStringList lines;
    for (const Parts& parts : allParts(before, after, text)) {
        lines.append(parts.to.isEmpty() ? parts.name
                                        : BlockWords::tr("%1 from %2 to %3", "setting, from, to")
                                              .arg(parts.name, parts.whole, parts.to));
    }
    return lines.isEmpty() ? QStringList{BlockWords::tr("as Block %1").arg(numberBefore)} : lines;
}

QStringList stepLines(const StepSize& step, const QuantityText& text)
{
    const QString onTime = step.onTime ? shareText(*step.onTime, text) : QString();
    const QString contractions =
        step.contractions ? shareText(*step.contractions, text) : QString();
    if (!onTime.isEmpty() && onTime == contractions) {
        return {BlockWords::tr("On time, contractions %1", "both by the same share").arg(onTime)};
    }
    QStringList lines;
    if (!onTime.isEmpty()) {
        lines.append(BlockWords::tr("On time a week %1").arg(onTime));
    }
    if (!contractions.isEmpty()) {
        lines.append(BlockWords::tr("Contractions a week %1").arg(contractions));
    }
    return lines;
}

} // namespace quadrille::app
