// SPDX-License-Identifier: GPL-3.0-or-later
// Settings, sites and blocks that tests start from. Common practice, no source.
#pragma once

#include "core/plan.h"
#include "core/session_timing.h"

#include <vector>

namespace quadrille::test
{

/// 50 Hz, 300 µs, 4 s on, 12 s off, no ramps, 20 min: 75 contractions.
inline Settings someSettings()
{
    using namespace literals;
    using namespace std::chrono_literals;
    Settings settings;
    settings.pulseFrequency = 50_Hz;
    settings.phaseDuration = 300_us;
    settings.onTime = 4s;
    settings.offTime = 12s;
    settings.sessionLength = 20min;
    return settings;
}

/// A unit that can be set to someSettings().
inline Stimulator someStimulator()
{
    Stimulator unit = commonStimulator();
    unit.name = "Unit A";
    return unit;
}

/// Two pads of 5 × 5 cm, one on each lead.
inline std::vector<Pad> twoSquarePads()
{
    using namespace literals;
    Pad pad;
    pad.width = 50_mm;
    pad.height = 50_mm;
    Pad other = pad;
    other.lead = Lead::b;
    return {pad, other};
}

inline Site someSite(int channel = 1)
{
    Site site;
    site.muscle = "vastus medialis";
    site.channel = channel;
    site.pads = twoSquarePads();
    site.settings = someSettings();
    return site;
}

/// Four weeks, Monday to Friday, once a day, one site.
inline Block someBlock()
{
    Block block;
    block.sites = {someSite()};
    return block;
}

/// The codes of findings, in their order, for comparison with what is expected.
inline std::vector<FindingCode> codesOf(const std::vector<Finding>& findings)
{
    std::vector<FindingCode> codes;
    codes.reserve(findings.size());
    for (const Finding& finding : findings) {
        codes.push_back(finding.code);
    }
    return codes;
}

} // namespace quadrille::test
