// SPDX-License-Identifier: GPL-3.0-or-later
// Invented plans to print, for tests of paper and for pictures of it.
#pragma once

#include "core/handout_content.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::tests
{

/// A Monday.
inline constexpr Date sampleStart{std::chrono::year(2026) / 3 / 2};

Practice samplePractice();
Patient samplePatient();
Course sampleCourse();
/// Two self-adhesive pads on a thigh muscle; 50 Hz, 10 s on, 25 s off, 20 min.
Site sampleSite(int channel, const std::string& muscle);
/// Weekdays, twice a day.
Block sampleBlock(int weeks, std::vector<Site> sites);
/// Sites on channels 1 … `sites`, each with its own muscle, position and instruction where
/// `differing`.
Block blockWithSites(int sites, bool differing);
Plan samplePlan(std::vector<Block> blocks);
HandoutContent sampleContent(const Plan& plan, Date printedOn = sampleStart);

} // namespace quadrille::tests
