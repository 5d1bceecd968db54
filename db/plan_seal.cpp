// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/plan_seal.h"

#include "db/change_chain.h"
#include "db/migrations.h"

namespace quadrille::db
{

namespace
{

constexpr const char* parts[] = {
    "SELECT id, course, number, issued_on, issued_by, issued_by_name, from_date, reason, "
    "stimulator, limits_version, atlas_version FROM plan WHERE id = ?",
    "SELECT segment, side, length_mm FROM plan_segment_length WHERE plan = ? "
    "ORDER BY segment, side",
    "SELECT id, ordinal, weeks, weekdays, days_per_week, sessions_per_day, site_order FROM block "
    "WHERE plan = ? ORDER BY ordinal",
    "SELECT site.id, site.block, site.ordinal, muscle, side, channel, position, instruction, "
    "waveform, pulse_frequency_mhz, phase_duration_us, interphase_gap_us, "
    "second_phase_duration_us, carrier_frequency_mhz, burst_duty_permille, on_time_ms, "
    "off_time_ms, ramp_up_ms, ramp_down_ms, session_length_ms, last_tolerated_amplitude_ua, "
    "amplitude_ceiling_ua FROM site JOIN block ON block.id = site.block WHERE block.plan = ? "
    "ORDER BY block.ordinal, site.ordinal",
    "SELECT pad.site, pad.ordinal, material, shape, width_mm, height_mm, lead FROM pad "
    "JOIN site ON site.id = pad.site JOIN block ON block.id = site.block WHERE block.plan = ? "
    "ORDER BY block.ordinal, site.ordinal, pad.ordinal",
    "SELECT name, channels, channels_share_timing, has_work_rest_cycles, ramp_habit "
    "FROM stimulator WHERE id = (SELECT stimulator FROM plan WHERE id = ?)",
    "SELECT ordinal, waveform FROM stimulator_waveform "
    "WHERE stimulator = (SELECT stimulator FROM plan WHERE id = ?) ORDER BY ordinal",
    "SELECT field, least, most, step, preset FROM stimulator_range "
    "WHERE stimulator = (SELECT stimulator FROM plan WHERE id = ?) ORDER BY field",
    "SELECT ordinal, field FROM stimulator_asking_order "
    "WHERE stimulator = (SELECT stimulator FROM plan WHERE id = ?) ORDER BY ordinal",
};

/// What a later step added. Plans that were issued before say nothing here, and keep their seal.
struct LaterPart {
    int step;
    const char* statement;
};
constexpr LaterPart laterParts[] = {
    {6, "SELECT 'traits', cycle_start, usage_counter, memories, most_output_ua FROM stimulator "
        "WHERE id = (SELECT stimulator FROM plan WHERE id = ?) AND (cycle_start <> 'with_on' OR "
        "usage_counter <> 'none' OR memories <> 0 OR most_output_ua IS NOT NULL)"},
    {6, "SELECT 'own word', field, word FROM stimulator_own_word "
        "WHERE stimulator = (SELECT stimulator FROM plan WHERE id = ?) ORDER BY field"},
    {10, "SELECT 'starting point', ordinal, starting_point, changed_since FROM block "
         "WHERE plan = ? AND starting_point IS NOT NULL ORDER BY ordinal"},
};

/// Appends all values of a part; gives the number of its rows.
std::int64_t appendPart(Columns& values, const Connection& connection, const char* part,
                        std::int64_t plan)
{
    std::int64_t count = 0;
    Statement rows(connection, part);
    rows.bind({plan});
    while (rows.next()) {
        ++count;
        const int columns = rows.columnCount();
        for (int i = 0; i < columns; ++i) {
            values.push_back({{}, rows.takeValue()});
        }
    }
    return count;
}

} // namespace

std::string planSeal(const Connection& connection, std::int64_t plan)
{
    Columns values;
    for (const char* part : parts) {
        const std::int64_t count = appendPart(values, connection, part, plan);
        values.push_back({{}, count});
    }
    // An earlier step seals plans on its way, on a schema that has not come so far.
    const int present = schemaVersion(connection);
    for (const LaterPart& part : laterParts) {
        if (present >= part.step) {
            appendPart(values, connection, part.statement, plan);
        }
    }
    return chainAfter("plan", values);
}

} // namespace quadrille::db
