// SPDX-License-Identifier: GPL-3.0-or-later
// The rows below a plan or a draft: blocks, their sites with settings, and the pads.
#pragma once

#include "db/rows.h"
#include "db/sql.h"

#include "core/plan.h"

#include <cstdint>
#include <vector>

namespace quadrille::db
{

/// What blocks belong to; names their column too.
enum class BlockOwner { plan, draft };

std::vector<Block> blocksOf(const Connection& connection, BlockOwner owner, std::int64_t id);
/// Failure outOfRange where a value lies outside what the arithmetic allows (core/settings.h); its
/// figures are the value, the least and the most.
void addBlocks(const Connection& connection, BlockOwner owner, std::int64_t id,
               const std::vector<Block>& blocks);

/// All blocks as one flat list of columns, "blocks.1.sites.2.on_time_ms", for the change record.
Columns columnsOf(const std::vector<Block>& blocks);

/// The columns of a block from `weeks` on, in the order in which takeBlock reads them.
inline constexpr const char* blockColumns =
    "block.weeks, block.weekdays, block.days_per_week, block.sessions_per_day, block.site_order, "
    "block.starting_point, block.changed_since";
Block takeBlock(Statement& row);

Columns columnsOf(const Settings& settings);
/// In the order of columnsOf(Settings).
Settings takeSettings(Statement& row);
/// Failure outOfRange where a setting lies outside what the arithmetic allows.
void requirePossible(const Settings& settings);

/// A site without its pads.
inline constexpr const char* siteColumns =
    "site.muscle, site.side, site.channel, site.position, site.instruction, site.waveform, "
    "site.pulse_frequency_mhz, site.phase_duration_us, site.interphase_gap_us, "
    "site.second_phase_duration_us, site.carrier_frequency_mhz, site.burst_duty_permille, "
    "site.on_time_ms, site.off_time_ms, site.ramp_up_ms, site.ramp_down_ms, "
    "site.session_length_ms, site.last_tolerated_amplitude_ua, site.amplitude_ceiling_ua";
Site takeSite(Statement& row);

} // namespace quadrille::db
