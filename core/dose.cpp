// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/dose.h"

#include <cmath>
#include <numbers>

namespace quadrille
{

namespace
{

double seconds(PhaseDuration duration)
{
    return static_cast<double>(duration.count()) * 1e-6;
}

double hertz(PulseFrequency frequency)
{
    return static_cast<double>(frequency.count()) * 1e-3;
}

/// I1² t1 + I2² t2 in mA² s; balanced charge gives the second phase's amplitude.
double squareTimesTime(const Settings& settings, double peakMilliamperes)
{
    const double first = peakMilliamperes * peakMilliamperes * seconds(settings.phaseDuration);
    if (settings.waveform == Waveform::symmetricBiphasic) {
        return 2.0 * first;
    }
    if (settings.waveform == Waveform::asymmetricBalancedBiphasic && settings.secondPhaseDuration) {
        const double secondPeak = peakMilliamperes *
                                  static_cast<double>(settings.phaseDuration.count()) /
                                  static_cast<double>(settings.secondPhaseDuration->count());
        return first + secondPeak * secondPeak * seconds(*settings.secondPhaseDuration);
    }
    return first;
}

ChargePerPhase chargeOfOnePhase(const Settings& settings, Amplitude amplitude)
{
    if (settings.waveform == Waveform::kilohertzBursts && settings.carrierFrequency) {
        // Half a sine: the mean of |sin| is 2/π, half a period is 1 / (2 × carrier).
        const double carrierHertz = static_cast<double>(settings.carrierFrequency->count()) * 1e-3;
        const double halfPeriodMicroseconds = 0.5e6 / carrierHertz;
        return ChargePerPhase(amplitude.shown() * halfPeriodMicroseconds * 2.0 / std::numbers::pi /
                              1e3);
    }
    const auto charge = phaseCharge(amplitude, settings.phaseDuration);
    return ChargePerPhase(charge ? charge->shown()
                                 : amplitude.shown() * settings.phaseDuration.shown() / 1e3);
}

} // namespace

RmsCurrent rmsWithinTrain(const Settings& settings, Amplitude amplitude)
{
    const double peak = amplitude.shown();
    switch (settings.waveform) {
    case Waveform::directCurrent:
        return RmsCurrent(peak);
    case Waveform::kilohertzBursts: {
        const double duty = settings.burstDuty ? settings.burstDuty->shown() / 100.0 : 1.0;
        return RmsCurrent(peak / std::numbers::sqrt2 * std::sqrt(duty));
    }
    case Waveform::symmetricBiphasic:
    case Waveform::asymmetricBalancedBiphasic:
    case Waveform::unbalancedPulses:
        break;
    }
    return RmsCurrent(std::sqrt(hertz(settings.pulseFrequency) * squareTimesTime(settings, peak)));
}

Dose doseOf(const Settings& settings, Amplitude amplitude, PadArea smallerPad,
            const SessionTiming& timing)
{
    const double area = smallerPad.shown();
    Dose dose;
    dose.amplitude = amplitude;
    dose.phaseCharge = chargeOfOnePhase(settings, amplitude);
    dose.chargeDensity = ChargeDensity(dose.phaseCharge.shown() / area);
    dose.rmsTrain = rmsWithinTrain(settings, amplitude);
    dose.rmsCycle = RmsCurrent(dose.rmsTrain.shown() * std::sqrt(timing.dutyCycle()));
    dose.currentDensity = CurrentDensity(dose.rmsTrain.shown() / area);
    // mA² × ohm = µW
    const double trainPower =
        dose.rmsTrain.shown() * dose.rmsTrain.shown() * referenceLoadOhm / 1e3;
    dose.powerTrain = Power(trainPower);
    dose.powerDensityTrain = PowerDensity(trainPower / area);
    dose.powerDensityCycle = PowerDensity(trainPower * timing.dutyCycle() / area);
    if (settings.waveform != Waveform::kilohertzBursts &&
        settings.waveform != Waveform::directCurrent) {
        // mA² s × ohm = µJ
        dose.pulseEnergy =
            PulseEnergy(squareTimesTime(settings, amplitude.shown()) * referenceLoadOhm / 1e3);
    }
    return dose;
}

TotalCharge totalCharge(std::int64_t pulses, ChargePerPhase phaseCharge)
{
    return TotalCharge(static_cast<double>(pulses) * phaseCharge.shown() / 1e3);
}

} // namespace quadrille
