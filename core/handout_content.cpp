// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/handout_content.h"

#include "core/plan_figures.h"
#include "core/session_timing.h"

#include <algorithm>
#include <iterator>

namespace quadrille
{

namespace
{

bool isAmplitude(Field field)
{
    return field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
}

/// Everything a site's settings ask for on this unit, before it is known what the sites share.
HandoutSettings allSettings(const Settings& settings, const Stimulator& stimulator)
{
    HandoutSettings all;
    if (stimulator.waveforms.size() > 1) {
        all.waveform = settings.waveform;
    }
    for (const Field field : askingOrderOf(stimulator)) {
        const auto count = countIn(settings, field);
        if (count && !isAmplitude(field) && appliesTo(field, settings.waveform)) {
            all.inAskingOrder.push_back({field, *count, rangeOf(stimulator, field)->isFixed()});
        }
    }
    if (const auto timing = sessionTiming(settings, stimulator.rampHabit, stimulator.cycleStart)) {
        all.rhythm = HandoutRhythm{timing->onPhase,
                                   timing->offTime,
                                   {timing->contractionsStarted, timing->contractionsCompleted},
                                   timing->lead > Milliseconds(0)};
    }
    return all;
}

bool contains(const HandoutSettings& settings, const HandoutSetting& setting)
{
    return std::ranges::find(settings.inAskingOrder, setting) != settings.inAskingOrder.end();
}

HandoutSettings sharedBy(const std::vector<HandoutSettings>& sites)
{
    if (sites.empty()) {
        return {};
    }
    HandoutSettings shared = sites.front();
    for (const HandoutSettings& site : sites) {
        std::erase_if(shared.inAskingOrder,
                      [&](const HandoutSetting& setting) { return !contains(site, setting); });
        if (shared.waveform != site.waveform) {
            shared.waveform.reset();
        }
        if (shared.rhythm != site.rhythm) {
            shared.rhythm.reset();
        }
    }
    return shared;
}

HandoutSettings withoutShared(HandoutSettings settings, const HandoutSettings& shared)
{
    std::erase_if(settings.inAskingOrder,
                  [&](const HandoutSetting& setting) { return contains(shared, setting); });
    if (shared.waveform) {
        settings.waveform.reset();
    }
    if (shared.rhythm) {
        settings.rhythm.reset();
    }
    return settings;
}

/// In the order in which the patient turns them up.
std::vector<Site> sitesInOrder(const Block& block)
{
    std::vector<Site> sites = block.sites;
    if (block.siteOrder == SiteOrder::together) {
        std::ranges::stable_sort(sites, {}, &Site::channel);
    }
    return sites;
}

HandoutCard cardOf(const Block& block, const Stimulator& stimulator)
{
    HandoutCard card;
    card.schedule = block.schedule;
    card.sessionsPerDay = block.sessionsPerDay;
    card.siteOrder = block.siteOrder;
    card.sitting = blockFigures(block, stimulator).sitting;

    const std::vector<Site> sites = sitesInOrder(block);
    std::vector<HandoutSettings> settings;
    std::ranges::transform(sites, std::back_inserter(settings), [&](const Site& site) {
        return allSettings(site.settings, stimulator);
    });
    card.common = sharedBy(settings);
    for (std::size_t i = 0; i < sites.size(); ++i) {
        const Site& site = sites[i];
        card.sites.push_back({site.muscle, site.side, site.channel, site.pads,
                              withoutShared(settings[i], card.common), site.settings.amplitude,
                              site.position, site.instruction});
    }
    return card;
}

bool anyPadOf(const std::vector<HandoutCard>& cards, PadMaterial material)
{
    return std::ranges::any_of(cards, [&](const HandoutCard& card) {
        return std::ranges::any_of(card.sites, [&](const HandoutSite& site) {
            return std::ranges::any_of(site.pads,
                                       [&](const Pad& pad) { return pad.material == material; });
        });
    });
}

HandoutCautions cautionsFor(const std::vector<HandoutCard>& cards)
{
    HandoutCautions cautions;
    cautions.always = {Caution::onlyAsShownOnThisPerson,
                       Caution::neverHeadFaceOrNeck,
                       Caution::neverAcrossChest,
                       Caution::neverOverBrokenSkin,
                       Caution::stimulatorsOwnInstructionsFirst,
                       Caution::noSubstituteForAdvice,
                       Caution::keepFromChildren};
    cautions.before = {Caution::skinCleanDryWhole};
    if (anyPadOf(cards, PadMaterial::selfAdhesive)) {
        cautions.before.push_back(Caution::padsStillSticky);
    }
    if (anyPadOf(cards, PadMaterial::carbonRubber)) {
        cautions.before.push_back(Caution::padsMoistAndFirm);
    }
    for (const Caution caution :
         {Caution::cablesWhole, Caution::startAtZero, Caution::notWhileDrivingBathingAsleep}) {
        cautions.before.push_back(caution);
    }
    cautions.during = {Caution::strongIsRightSharpIsNot, Caution::turnDownBeforeTouchingPads,
                       Caution::suddenChangeSwitchOff};
    cautions.after = {Caution::pinkFadesWithinHour, Caution::soreForTwoDays, Caution::padsBackAway};
    cautions.stopAndRing = {Caution::skinStillRedOrBlistered,
                            Caution::jointSwollenHotOrWorse,
                            Caution::oneLimbSwollenOrPainful,
                            Caution::faintOrOddHeartbeat,
                            Caution::stillSoreOnThirdDay,
                            Caution::healthChanged,
                            Caution::inDoubt};
    return cautions;
}

/// What will have been tolerated when a later block begins, nobody knows on the day of printing.
void forgetLastTolerated(HandoutCard& card)
{
    for (HandoutSite& site : card.sites) {
        site.amplitude.lastTolerated.reset();
    }
}

/// The blocks with days left to do, from the day of printing or the from-date, whichever is later.
std::vector<HandoutCard> cardsOf(const Course& course, const Plan& plan, Date printedOn)
{
    const Date from = std::max(printedOn, plan.fromDate);
    std::vector<HandoutCard> cards;
    for (std::size_t i = 0; i < plan.blocks.size(); ++i) {
        const CourseWeek firstWeek = firstWeekOf(plan.blocks, i);
        const CourseWeek lastWeek{firstWeek.number + plan.blocks[i].weeks - 1};
        const Date begins = std::max(firstDayOf(course.startDate, firstWeek), plan.fromDate);
        Date ends =
            firstDayOf(course.startDate, CourseWeek{lastWeek.number + 1}) - std::chrono::days(1);
        if (course.endDate) {
            ends = std::min(ends, *course.endDate);
        }
        if (ends < from || ends < begins) {
            continue;
        }
        HandoutCard card = cardOf(plan.blocks[i], plan.stimulator);
        // A plan that starts inside a block leaves the weeks before it to the plan before.
        card.firstWeek = courseWeekOf(course.startDate, begins).value_or(firstWeek);
        card.lastWeek = courseWeekOf(course.startDate, ends).value_or(lastWeek);
        card.firstDay = begins;
        card.lastDay = ends;
        card.weekBegins = Weekday(course.startDate);
        cards.push_back(std::move(card));
        if (cards.size() > 1) {
            forgetLastTolerated(cards.back());
        }
    }
    return cards;
}

std::optional<Date> lastDayOf(const Course& course, const Plan& plan)
{
    if (plan.blocks.empty()) {
        return std::nullopt;
    }
    const Date last = firstDayOf(course.startDate, CourseWeek{totalWeeks(plan.blocks) + 1}) -
                      std::chrono::days(1);
    return course.endDate ? std::min(last, *course.endDate) : last;
}

} // namespace

Result<HandoutContent> handoutContent(const Practice& practice, const Patient& patient,
                                      const Course& course, const Plan& plan,
                                      const ScreeningGate& gate,
                                      const std::optional<std::string>& printedBy, Date printedOn)
{
    if (const auto passed = passGate(gate); !passed) {
        return passed.error();
    }
    HandoutContent content;
    content.practice = practice;
    content.patientName = patient.name;
    content.patientReference = patient.reference;
    content.problem = course.problem;
    content.courseNumber = course.number;
    content.planNumber = plan.number;
    content.planFrom = plan.fromDate;
    content.planIssuedBy = plan.issuedByName;
    content.printedOn = printedOn;
    content.printedBy = printedBy;
    content.stimulatorName = plan.stimulator.name;
    content.ownWords = plan.stimulator.ownWords;
    content.rampHabit = plan.stimulator.rampHabit;
    content.cards = cardsOf(course, plan, printedOn);
    content.lastDay = lastDayOf(course, plan);
    content.cautions = cautionsFor(content.cards);
    std::ranges::copy_if(gate.advice, std::back_inserter(content.advice),
                         [](const GateAdvice& advice) { return !advice.advice.empty(); });
    return content;
}

} // namespace quadrille
