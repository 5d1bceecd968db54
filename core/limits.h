// SPDX-License-Identifier: GPL-3.0-or-later
// Published limits of electrical output, as findings. They bind the equipment, not the
// prescription: they are shown as information, not as a licence to treat.
#pragma once

#include "core/dose.h"
#include "core/finding.h"
#include "core/session_timing.h"
#include "core/settings.h"

#include <string_view>
#include <vector>

namespace quadrille
{

/// Version of the table below; a plan keeps it. Raised whenever a limit or its source changes.
inline constexpr int limitsVersion = 1;

namespace limits
{

/// r.m.s. current density above which the operator is asked for special attention; not a ban. The
/// text of the standard does not say over which time the r.m.s. is taken; the larger value, within
/// the train, is used.
inline constexpr CurrentDensity attentionCurrentDensity{2.0};
inline constexpr Source attentionCurrentDensitySource{
    "IEC 60601-2-10, instructions for use, item g (number 201.7.9.2.101 from memory)", false};

/// Energy of one pulse into 500 ohm.
inline constexpr PulseEnergy mostPulseEnergy{300.0};
inline constexpr Source mostPulseEnergySource{
    "IEC 60601-2-10:1987, clause 51.104 (201.12.4.104 in the 2012 edition, number from memory)",
    false};

/// r.m.s. output current into 500 ohm by frequency: 50 mA to 400 Hz, 80 mA to 1500 Hz, 100 mA
/// above.
RmsCurrent mostRmsCurrent(double frequencyHertz);
inline constexpr Source mostRmsCurrentSource{"IEC 60601-2-10, clause 201.12.4.104", true};

/// Average power density of a powered muscle stimulator, taken over the output (250 mW/cm² = 0.25
/// W/cm²).
inline constexpr PowerDensity mostPowerDensity{250.0};
inline constexpr Source mostPowerDensitySource{
    "FDA, Guidance Document for Powered Muscle Stimulator 510(k)s, 9 June 1999", false};

/// Least on and off time where contractions are repeated.
inline constexpr Milliseconds leastOnAndOff{1000};
inline constexpr Source leastOnAndOffSource = mostPowerDensitySource;

inline constexpr Source commonPractice{"common practice, no source", false};

} // namespace limits

/// Holds a dose against the limits above, the gravest first. For kHz bursts the standard does not
/// say whether carrier or burst rate chooses the r.m.s. limit; the lower one is used.
std::vector<Finding> doseFindings(const Settings& settings, const Dose& dose);

/// Timing against usual practice: on or off under 1 s, off shorter than the on phase.
std::vector<Finding> timingFindings(const SessionTiming& timing);

} // namespace quadrille
