// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_stimulators.h"

namespace quadrille::app
{

namespace
{

using namespace literals;
using namespace std::chrono_literals;

Stimulator twoChannelA()
{
    Stimulator unit = commonStimulator();
    unit.name = "Two-channel unit, white";
    unit.onTime = {2s, 30s, 1s, 6s};
    unit.offTime = {2s, 60s, 1s, 18s};
    unit.rampUp.preset = 2s;
    unit.phaseDuration.preset = 300_us;
    unit.sessionLength = {5min, 60min, 1min, 16min};
    unit.askingOrder = {Field::pulseFrequency, Field::phaseDuration, Field::onTime,
                        Field::offTime,        Field::rampUp,        Field::rampDown,
                        Field::sessionLength};
    unit.mostOutput = 100_mA;
    unit.usageCounter = UsageCounter::usesAndTime;
    unit.memories = 3;
    unit.ownWords = {{Field::pulseFrequency, "Rate"}, {Field::phaseDuration, "Width"},
                     {Field::onTime, "Work"},         {Field::offTime, "Rest"},
                     {Field::sessionLength, "Timer"}, {Field::amplitudeCeiling, "Level"}};
    return unit;
}

/// Asks for the session length first, and offers an asymmetric pulse.
Stimulator twoChannelB()
{
    Stimulator unit = commonStimulator();
    unit.name = "Two-channel unit, grey";
    unit.waveforms = {Waveform::symmetricBiphasic, Waveform::asymmetricBalancedBiphasic};
    unit.pulseFrequency = {2_Hz, 100_Hz, 1_Hz, 50_Hz};
    unit.phaseDuration = {50_us, 350_us, 25_us, 250_us};
    unit.secondPhaseDuration = {50_us, 2000_us, 50_us, 900_us};
    unit.amplitude = {0_mA, 80_mA, 1_mA, 0_mA};
    unit.onTime = {1s, 20s, 1s, 5s};
    unit.offTime = {1s, 50s, 1s, 15s};
    unit.rampUp = {0s, 4s, 1s, 2s};
    unit.rampDown = {0s, 4s, 1s, 1s};
    unit.sessionLength = {5min, 60min, 5min, 20min};
    unit.mostOutput = 80_mA;
    unit.usageCounter = UsageCounter::time;
    unit.ownWords = {{Field::sessionLength, "Treatment time"},
                     {Field::onTime, "Contraction"},
                     {Field::offTime, "Relaxation"}};
    unit.askingOrder = {Field::sessionLength, Field::onTime,         Field::offTime,
                        Field::rampUp,        Field::pulseFrequency, Field::phaseDuration};
    return unit;
}

/// Its ramps come on top of the on time; it is weak for large muscles.
Stimulator rampsAdded()
{
    Stimulator unit = commonStimulator();
    unit.name = "Two-channel unit, blue";
    unit.rampHabit = RampHabit::addedToOnTime;
    unit.phaseDuration = {50_us, 300_us, 10_us, 200_us};
    unit.amplitude = {0_uA, 60_mA, 500_uA, 0_uA};
    unit.pulseFrequency = {10_Hz, 80_Hz, 5_Hz, 35_Hz};
    unit.askingOrder = {Field::pulseFrequency, Field::phaseDuration, Field::rampUp,
                        Field::onTime,         Field::rampDown,      Field::offTime};
    return unit;
}

Stimulator fourChannel()
{
    Stimulator unit = commonStimulator();
    unit.name = "Four-channel unit";
    unit.channels = 4;
    unit.channelsShareTiming = false;
    unit.mostOutput = 120_mA;
    unit.usageCounter = UsageCounter::uses;
    unit.memories = 10;
    unit.phaseDuration = {50_us, 450_us, 10_us, 300_us};
    unit.interphaseGap = {0_us, 200_us, 50_us, 0_us};
    unit.amplitude = {0_mA, 120_mA, 1_mA, 0_mA};
    return unit;
}

Stimulator bursts()
{
    Stimulator unit = commonStimulator();
    unit.name = "Two-channel burst unit";
    unit.waveforms = {Waveform::kilohertzBursts};
    unit.pulseFrequency = {10_Hz, 100_Hz, 5_Hz, 50_Hz};
    unit.phaseDuration = {200_us, 200_us, 1_us, 200_us}; // half a cycle of the carrier
    unit.carrierFrequency = {2500_Hz_carrier, 2500_Hz_carrier, 100_Hz_carrier, 2500_Hz_carrier};
    unit.burstDuty = {20_percent_burst, 50_percent_burst, 10_percent_burst, 50_percent_burst};
    unit.cycleStart = CycleStart::withOff;
    unit.onTime.preset = 10s;
    unit.offTime.preset = 50s;
    return unit;
}

Stimulator relief()
{
    Stimulator unit = commonStimulator();
    unit.name = "Pain-relief unit, continuous";
    unit.hasWorkRestCycles = false;
    unit.phaseDuration = {50_us, 250_us, 10_us, 150_us};
    unit.amplitude = {0_mA, 60_mA, 1_mA, 0_mA};
    return unit;
}

Stimulator galvanic()
{
    Stimulator unit = commonStimulator();
    unit.name = "Direct-current unit";
    unit.waveforms = {Waveform::directCurrent};
    unit.channels = 1;
    unit.hasWorkRestCycles = false;
    unit.amplitude = {0_uA, 20_mA, 100_uA, 0_uA};
    return unit;
}

} // namespace

std::vector<Stimulator> demoStimulators()
{
    return {twoChannelA(), twoChannelB(), rampsAdded(), fourChannel(),
            bursts(),      relief(),      galvanic()};
}

} // namespace quadrille::app
