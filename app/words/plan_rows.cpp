// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/plan_rows.h"

#include "app/words/starting_point_text.h"
#include "app/words/trade_words.h"

#include "core/block_fatigue.h"
#include "core/settings.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

struct PlanRowWords {
    Q_DECLARE_TR_FUNCTIONS(PlanRowWords)
};

/// A label with its value; empty where there is none.
using Values = std::vector<std::pair<QString, QString>>;

QString shownOrNone(const QString& value)
{
    return value.isEmpty() ? QStringLiteral("—") : value;
}

Values valuesOf(const std::vector<Block>& blocks, std::size_t index, const QuantityText& text)
{
    if (index >= blocks.size()) {
        return {};
    }
    const Block& block = blocks[index];
    const bool several = block.sites.size() > 1;
    const QString order = block.siteOrder == SiteOrder::together ? PlanRowWords::tr("at once")
                                                                 : PlanRowWords::tr("in turn");
    return {{fieldName(Field::weeks), weeksName(firstWeekOf(blocks, index), block.weeks)},
            {fieldName(Field::weekdays), scheduleName(block.schedule, text)},
            {PlanRowWords::tr("Sessions"), timesADay(block.sessionsPerDay)},
            {PlanRowWords::tr("Sites run"), several ? order : QString()},
            {PlanRowWords::tr("Settings"), block.origin ? originText(*block.origin) : QString()}};
}

QString padsText(const Site& site, const QuantityText& text)
{
    QStringList pads;
    for (const Pad& pad : site.pads) {
        pads.append(PlanRowWords::tr("%1 %2", "lead, size")
                        .arg(pad.lead == Lead::a ? PlanRowWords::tr("A") : PlanRowWords::tr("B"),
                             padSize(pad, text)));
    }
    return pads.join(QStringLiteral(", "));
}

Values valuesOf(const Site* site, const QuantityText& text)
{
    if (site == nullptr) {
        return {};
    }
    const Settings& settings = site->settings;
    Values values{{fieldName(Field::channel), text.count(site->channel)},
                  {fieldName(Field::waveform), waveformName(settings.waveform)}};
    for (const Field field : standardAskingOrder()) {
        const bool isAmplitude =
            field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
        const auto count = isAmplitude || appliesTo(field, settings.waveform)
                               ? countIn(settings, field)
                               : std::nullopt;
        values.emplace_back(fieldName(field, settings.waveform),
                            count ? text.setting(field, *count) : QString());
    }
    values.emplace_back(fieldName(Field::padSize), padsText(*site, text));
    values.emplace_back(fieldName(Field::position), QString::fromStdString(site->position));
    values.emplace_back(fieldName(Field::instruction), QString::fromStdString(site->instruction));
    return values;
}

QString valueIn(const Values& values, const QString& label)
{
    const auto found = std::ranges::find(values, label, &Values::value_type::first);
    return found != values.end() ? found->second : QString();
}

/// Every label of either side once, in their order; none of a value that neither has.
void appendRows(std::vector<PlanRow>& rows, const QString& section, const Values& left,
                const Values& right)
{
    QStringList labels;
    for (const Values* values : {&left, &right}) {
        for (const auto& [label, value] : *values) {
            if (!labels.contains(label)) {
                labels.append(label);
            }
        }
    }
    for (const QString& label : std::as_const(labels)) {
        const QString before = valueIn(left, label);
        const QString after = valueIn(right, label);
        if (!before.isEmpty() || !after.isEmpty()) {
            rows.push_back({section, label, shownOrNone(before), shownOrNone(after)});
        }
    }
}

std::vector<const Site*> sitesOf(const std::vector<Block>& blocks, std::size_t index)
{
    std::vector<const Site*> sites;
    if (index < blocks.size()) {
        for (const Site& site : blocks[index].sites) {
            sites.push_back(&site);
        }
    }
    return sites;
}

/// Sites of both sides in pairs, the left ones in their order, then those that only the right has.
std::vector<std::pair<const Site*, const Site*>> pairsOf(const std::vector<const Site*>& left,
                                                         std::vector<const Site*> right)
{
    std::vector<std::pair<const Site*, const Site*>> pairs;
    for (const Site* site : left) {
        const auto partner = std::ranges::find_if(
            right, [&](const Site* other) { return isSameSite(*other, *site); });
        pairs.emplace_back(site, partner != right.end() ? *partner : nullptr);
        if (partner != right.end()) {
            right.erase(partner);
        }
    }
    for (const Site* site : right) {
        pairs.emplace_back(nullptr, site);
    }
    return pairs;
}

} // namespace

std::vector<PlanRow> planRows(const Plan& left, const Plan& right, const QuantityText& text)
{
    std::vector<PlanRow> rows;
    appendRows(rows, fieldName(Field::stimulator),
               {{fieldName(Field::stimulator), QString::fromStdString(left.stimulator.name)}},
               {{fieldName(Field::stimulator), QString::fromStdString(right.stimulator.name)}});
    const std::size_t blocks = std::max(left.blocks.size(), right.blocks.size());
    for (std::size_t i = 0; i < blocks; ++i) {
        const QString block = PlanRowWords::tr("Block %1").arg(i + 1);
        appendRows(rows, block, valuesOf(left.blocks, i, text), valuesOf(right.blocks, i, text));
        for (const auto& [before, after] :
             pairsOf(sitesOf(left.blocks, i), sitesOf(right.blocks, i))) {
            const QString site = siteName(before != nullptr ? *before : *after);
            appendRows(rows, PlanRowWords::tr("%1, %2", "block, site").arg(block, site),
                       valuesOf(before, text), valuesOf(after, text));
        }
    }
    return rows;
}

} // namespace quadrille::app
