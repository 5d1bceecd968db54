// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_records.h"

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

Site siteAt(const Place& place, const Dosage& dosage)
{
    Site site;
    site.muscle = place.muscle;
    site.side = place.side;
    site.channel = place.channel;
    site.position = place.position;
    site.instruction = place.instruction;
    for (const Lead lead : {Lead::a, Lead::b}) {
        Pad pad;
        pad.width = place.padWidth;
        pad.height = place.padHeight;
        pad.lead = lead;
        site.pads.push_back(pad);
    }
    Settings& settings = site.settings;
    settings.pulseFrequency = dosage.pulseFrequency;
    settings.phaseDuration = dosage.phaseDuration;
    settings.onTime = dosage.onTime;
    settings.offTime = dosage.offTime;
    settings.rampUp = dosage.rampUp;
    settings.rampDown = dosage.rampDown;
    settings.sessionLength = dosage.sessionLength;
    settings.amplitude = {.lastTolerated = place.lastTolerated, .ceiling = place.ceiling};
    return site;
}

} // namespace

Block demoBlock(int weeks, const Dosage& dosage, const std::vector<Place>& places)
{
    Block block;
    block.weeks = weeks;
    block.schedule = dosage.schedule;
    block.sessionsPerDay = dosage.sessionsPerDay;
    std::ranges::transform(places, std::back_inserter(block.sites),
                           [&](const Place& place) { return siteAt(place, dosage); });
    return block;
}

std::vector<Place> bothSides(Place right)
{
    right.side = Side::right;
    right.channel = 1;
    Place left = right;
    left.side = Side::left;
    left.channel = 2;
    return {right, left};
}

std::vector<Place> stronger(std::vector<Place> places, Amplitude more)
{
    const auto raise = [&](std::optional<Amplitude>& amplitude) {
        if (amplitude) {
            amplitude = *amplitude + more;
        }
    };
    for (Place& place : places) {
        raise(place.lastTolerated);
        raise(place.ceiling);
    }
    return places;
}

Block asymmetric(Block block, PhaseDuration secondPhase)
{
    for (Site& site : block.sites) {
        site.settings.waveform = Waveform::asymmetricBalancedBiphasic;
        site.settings.secondPhaseDuration = secondPhase;
    }
    return block;
}

Block inBursts(Block block)
{
    using namespace literals;
    for (Site& site : block.sites) {
        site.settings.waveform = Waveform::kilohertzBursts;
        site.settings.carrierFrequency = 2500_Hz_carrier;
        site.settings.burstDuty = 50_percent_burst;
    }
    return block;
}

WeekdaySet everyOtherDay()
{
    return WeekdaySet()
        .with(std::chrono::Monday)
        .with(std::chrono::Wednesday)
        .with(std::chrono::Friday);
}

} // namespace quadrille::app
