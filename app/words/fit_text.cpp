// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/fit_text.h"

#include "app/words/finding_text.h"
#include "app/words/trade_words.h"

#include "core/plan_figures.h"
#include "core/settings_comparison.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct FitWords {
    Q_DECLARE_TR_FUNCTIONS(FitWords)
};

QString valueText(Field field, const FitValue& value, const QuantityText& text)
{
    if (const auto* count = std::get_if<std::int64_t>(&value)) {
        return text.setting(field, *count);
    }
    if (const auto* waveform = std::get_if<Waveform>(&value)) {
        return waveformName(*waveform);
    }
    return QStringLiteral("—");
}

QString siteHead(std::size_t site, const QString& what)
{
    return FitWords::tr("Site %1: %2").arg(site + 1).arg(what);
}

FitRow rowOf(const FitChange& change, const QuantityText& text)
{
    const bool startsAbove = std::holds_alternative<std::monostate>(change.possible) &&
                             change.why != FitReason::otherPulse;
    const QString why = startsAbove
                            ? FitWords::tr("the unit begins above it: find it with the patient")
                            : fitReasonText(change.why);
    return {fieldName(change.field), valueText(change.field, change.wanted, text),
            valueText(change.field, change.possible, text), why};
}

/// A change that all sites share stands once.
std::vector<FitRow> settingRows(const BlockFit& fitted, const QuantityText& text)
{
    std::vector<FitRow> rows;
    const auto isEverywhere = [&](const FitChange& change) {
        return std::ranges::all_of(fitted.changes, [&](const auto& site) {
            return std::ranges::find(site, change) != site.end();
        });
    };
    for (std::size_t site = 0; site < fitted.changes.size(); ++site) {
        for (const FitChange& change : fitted.changes[site]) {
            const bool everywhere = isEverywhere(change);
            if (everywhere && site > 0) {
                continue;
            }
            FitRow row = rowOf(change, text);
            if (!everywhere) {
                row.what = siteHead(site, row.what);
            }
            rows.push_back(row);
        }
    }
    return rows;
}

struct FigureWords {
    ComparedFigure figure;
    const char* name;
};
constexpr std::array shownFigures{
    FigureWords{ComparedFigure::contractionsCompleted,
                QT_TRANSLATE_NOOP("FitWords", "Contractions")},
    FigureWords{ComparedFigure::totalOnTime, QT_TRANSLATE_NOOP("FitWords", "Total on time")},
    FigureWords{ComparedFigure::dutyCycle, QT_TRANSLATE_NOOP("FitWords", "Duty cycle")},
    FigureWords{ComparedFigure::phaseCharge, QT_TRANSLATE_NOOP("FitWords", "Phase charge")},
    FigureWords{ComparedFigure::rmsTrain, QT_TRANSLATE_NOOP("FitWords", "r.m.s. current")},
    FigureWords{ComparedFigure::currentDensity, QT_TRANSLATE_NOOP("FitWords", "Current density")},
};

QString figureText(ComparedFigure figure, const std::optional<Amount>& value,
                   const QuantityText& text)
{
    if (!value) {
        return QStringLiteral("—");
    }
    if (figure == ComparedFigure::dutyCycle) {
        return text.percent(value->value);
    }
    if (figure == ComparedFigure::totalOnTime) {
        return text.time(Milliseconds(std::llround(value->value * 1e3)));
    }
    return text.amount(*value);
}

/// The figures of one site; empty where it can't be run.
std::vector<QString> figuresOf(const Site& site, const FitOrigin& how, const QuantityText& text)
{
    SettingsCase given{.name = {}, .settings = site.settings, .habit = how.habit};
    given.smallerPad = smallerPadArea(site.pads);
    given.start = how.start;
    const auto compared = compareWithoutModel({given});
    std::vector<QString> figures;
    figures.reserve(shownFigures.size());
    for (const FigureWords& words : shownFigures) {
        figures.push_back(figureText(
            words.figure, compared ? compared->front().value(words.figure).value : std::nullopt,
            text));
    }
    return figures;
}

std::vector<FitRow> figureRows(const Block& before, const FitOrigin& origin, const Block& after,
                               const Stimulator& unit, const QuantityText& text)
{
    std::vector<std::vector<FitRow>> bySite;
    for (std::size_t site = 0; site < before.sites.size(); ++site) {
        const auto was = figuresOf(before.sites[site], origin, text);
        const auto is = figuresOf(after.sites[site], {unit.rampHabit, unit.cycleStart}, text);
        std::vector<FitRow>& rows = bySite.emplace_back();
        for (std::size_t i = 0; i < shownFigures.size(); ++i) {
            rows.push_back(
                {QCoreApplication::translate("FitWords", shownFigures[i].name), was[i], is[i], {}});
        }
    }
    std::vector<FitRow> rows;
    for (std::size_t i = 0; i < shownFigures.size() && !bySite.empty(); ++i) {
        const auto same = [&](const auto& site) {
            return site[i].before == bySite.front()[i].before &&
                   site[i].after == bySite.front()[i].after;
        };
        const bool everywhere = std::ranges::all_of(bySite, same);
        for (std::size_t site = 0; site < (everywhere ? 1 : bySite.size()); ++site) {
            FitRow row = bySite[site][i];
            if (row.before != row.after) {
                row.what = everywhere ? row.what : siteHead(site, row.what);
                rows.push_back(row);
            }
        }
    }
    return rows;
}

QStringList stopsOf(const Block& block, const Stimulator& unit, const QuantityText& text)
{
    const BlockFigures figures = blockFigures(block, unit);
    std::vector<Finding> all = figures.findings;
    for (const SiteFigures& site : figures.sites) {
        all.insert(all.end(), site.findings.begin(), site.findings.end());
    }
    QStringList sentences;
    for (const Finding& finding : all) {
        if (finding.severity == Severity::stop) {
            sentences.append(findingText(finding, text).what);
        }
    }
    sentences.removeDuplicates();
    return sentences;
}

} // namespace

QString fitReasonText(FitReason reason)
{
    switch (reason) {
    case FitReason::waveformNotOffered:
        return FitWords::tr("the unit gives another waveform");
    case FitReason::rampHabit:
        return FitWords::tr("keeps the on phase: the ramps count otherwise on this unit");
    case FitReason::outsideRange:
        return FitWords::tr("outside the unit’s range");
    case FitReason::fixedOnUnit:
        return FitWords::tr("fixed on this unit");
    case FitReason::betweenSteps:
        return FitWords::tr("between two steps");
    case FitReason::notOnUnit:
        return FitWords::tr("the unit has no such setting");
    case FitReason::rampsTooLong:
        return FitWords::tr("would not fit into the on time");
    case FitReason::otherPulse:
        return FitWords::tr("tolerated with another pulse: find it again with the patient");
    case FitReason::sharedTiming:
        return FitWords::tr("the channels share their timing with site 1");
    }
    return {};
}

std::vector<FitSection> fitSections(const std::vector<Block>& blocks, const FitOrigin& origin,
                                    const Stimulator& unit, const QuantityText& text)
{
    std::vector<FitSection> sections;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const BlockFit fitted = fit(blocks[i], unit, origin.habit);
        // Steps may bring a setting back to its old number while it means another on phase.
        const auto figures = figureRows(blocks[i], origin, fitted.block, unit, text);
        if (!fitted.isNeeded() && figures.empty()) {
            continue;
        }
        sections.push_back({FitWords::tr("Block %1, %2", "number, its weeks")
                                .arg(i + 1)
                                .arg(weeksName(firstWeekOf(blocks, i), blocks[i].weeks)),
                            settingRows(fitted, text), figures, stopsOf(fitted.block, unit, text)});
    }
    return sections;
}

} // namespace quadrille::app
