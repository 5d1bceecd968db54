// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/what_if.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace quadrille
{

namespace
{

bool isAmplitude(Field field)
{
    return field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
}

SettingsCase caseOf(const WhatIf& whatIf, const Block& block)
{
    const Site& site = block.sites[whatIf.site];
    SettingsCase given{
        .name = {}, .settings = site.settings, .habit = whatIf.unit.rampHabit, .smallerPad = {}};
    if (std::ranges::all_of(site.pads, isPossible)) {
        given.smallerPad = smallerPadArea(site.pads);
    }
    if (daysPerWeek(block) >= 1 && block.sessionsPerDay >= 1) {
        given.sessionsPerWeek = sessionsPerWeek(block);
    }
    given.start = whatIf.unit.cycleStart;
    return given;
}

/// Compares as far as `memory` is there to ask the model.
Result<std::vector<ComparedCase>> compared(const std::vector<SettingsCase>& cases,
                                           FatigueMemory* memory)
{
    return memory != nullptr ? compareSettings(cases, *memory) : compareWithoutModel(cases);
}

/// True where there is a difference that the model may judge.
bool asksModel(const Judgement& judgement)
{
    return !judgement.missing && judgement.differs;
}

void takeModelFiguresFrom(ComparedCase& figures)
{
    for (ComparedValue& value : figures.values) {
        if (isModelFigure(value.figure)) {
            value.value.reset();
            value.difference.reset();
        }
    }
}

std::vector<Finding> findingsOf(const WhatIf& whatIf, const Settings& settings,
                                const std::optional<ComparedCase>& figures)
{
    std::vector<Finding> findings =
        figures ? figures->findings
                : settingsFindings(settings, whatIf.unit.rampHabit, whatIf.unit.cycleStart);
    std::ranges::copy(stimulatorFindings(settings, whatIf.unit), std::back_inserter(findings));
    sortBySeverity(findings);
    return findings;
}

std::optional<double> ratioOf(const ComparedCase& figures)
{
    const auto& ratio = figures.value(ComparedFigure::fatigueRatioIntegral).value;
    return ratio ? std::optional(ratio->value) : std::nullopt;
}

/// One variant against the block; the model is asked where it may be.
VariantFigures variantFigures(const WhatIf& whatIf, std::size_t variant, const VariantFigures& plan,
                              FatigueMemory* memory)
{
    VariantFigures result;
    const SettingsCase own = caseOf(whatIf, whatIf.variants[variant]);
    result.judgement = judgementOf(whatIf.planned(), own.settings, whatIf.unit.rampHabit);
    FatigueMemory* asked = asksModel(result.judgement) ? memory : nullptr;
    const auto both =
        plan.figures ? compared({caseOf(whatIf, whatIf.plan), own}, asked) : compared({own}, asked);
    if (both) {
        result.figures = both->back();
    } else {
        result.judgement.missing = NotCompared::cannotRun;
    }
    if (!plan.figures) {
        result.judgement.missing = NotCompared::planCannotRun;
    }
    if (asked != nullptr && !result.judgement.missing &&
        (!ratioOf(both->front()) || !ratioOf(both->back()))) {
        result.judgement.missing = NotCompared::outsideModel;
    }
    if (result.figures && result.judgement.missing) {
        takeModelFiguresFrom(*result.figures);
    }
    result.findings = findingsOf(whatIf, own.settings, result.figures);
    return result;
}

} // namespace

Block withSetting(Block block, std::size_t site, Field field, std::optional<std::int64_t> count)
{
    for (std::size_t i = 0; i < block.sites.size(); ++i) {
        if (!isAmplitude(field) || i == site) {
            setCount(block.sites[i].settings, field, count);
        }
    }
    return block;
}

Block withRest(Block block, const Settings& found)
{
    for (Site& site : block.sites) {
        site.settings.offTime = found.offTime;
        site.settings.sessionLength = found.sessionLength;
    }
    return block;
}

Judgement judgementOf(const Settings& planned, const Settings& varied, RampHabit habit)
{
    Judgement judgement;
    judgement.differs =
        planned.offTime != varied.offTime || planned.sessionLength != varied.sessionLength;
    judgement.refusals = modelComparability(planned, habit, varied, habit).refusals;
    if (!judgement.refusals.empty()) {
        judgement.missing = NotCompared::modelMisleads;
    } else if (planned.phaseDuration != varied.phaseDuration) {
        judgement.missing = NotCompared::phaseDurationDiffers;
    } else if (planned.amplitude != varied.amplitude) {
        judgement.missing = NotCompared::amplitudeDiffers;
    }
    return judgement;
}

bool VariantFigures::isShownByModel() const
{
    return figures && ratioOf(*figures).has_value();
}

WhatIfFigures whatIfFigures(const WhatIf& whatIf, FatigueMemory* memory)
{
    WhatIfFigures result;
    bool asks = false;
    for (std::size_t i = 0; i < whatIf.variants.size(); ++i) {
        asks = asks ||
               asksModel(judgementOf(whatIf.planned(), whatIf.varied(i), whatIf.unit.rampHabit));
    }
    FatigueMemory* asked = asks ? memory : nullptr;
    const auto plan = compared({caseOf(whatIf, whatIf.plan)}, asked);
    if (plan) {
        result.plan.figures = plan->front();
    }
    result.plan.findings = findingsOf(whatIf, whatIf.planned(), result.plan.figures);
    bool compares = false;
    for (std::size_t i = 0; i < whatIf.variants.size(); ++i) {
        result.variants.push_back(variantFigures(whatIf, i, result.plan, memory));
        compares = compares || result.variants.back().isShownByModel();
    }
    if (!result.plan.figures) {
        result.noneCompared = NotCompared::planCannotRun;
    } else if (asked != nullptr && !ratioOf(*result.plan.figures)) {
        result.noneCompared = NotCompared::outsideModel;
    }
    if (result.plan.figures && !compares) {
        takeModelFiguresFrom(*result.plan.figures);
    }
    return result;
}

WishAnswer grant(const WhatIf& whatIf, std::size_t variant, const Wish& wish, FatigueMemory& memory,
                 const std::stop_token& stop)
{
    const Settings& from = whatIf.varied(variant);
    const Stimulator& unit = whatIf.unit;
    if (!sessionTiming(from, unit.rampHabit, unit.cycleStart)) {
        return Judgement{NotCompared::cannotRun};
    }
    Result<SearchAnswer> answer = SearchAnswer(SearchRefusal{});
    if (const auto* ratio = std::get_if<KeepRatio>(&wish)) {
        const Judgement judgement = judgementOf(whatIf.planned(), from, unit.rampHabit);
        if (judgement.missing) {
            return judgement;
        }
        answer = smallestOffTime(from, unit, ratio->ratio, ratio->kept, memory, {}, stop);
    } else if (const auto* length = std::get_if<FitLength>(&wish)) {
        answer = longestOffTime(from, unit, length->kept, length->longest);
    } else if (const auto* give = std::get_if<GiveContractions>(&wish)) {
        answer = sessionForContractions(from, unit, give->contractions);
    }
    if (!answer) { // it runs, so only the model can have refused it
        return Judgement{NotCompared::outsideModel};
    }
    if (const auto* refusal = std::get_if<SearchRefusal>(&*answer)) {
        return *refusal;
    }
    return std::get<SearchFound>(*answer);
}

} // namespace quadrille
