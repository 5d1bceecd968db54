// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string_view>

namespace quadrille::test
{

/// A header may include those that stand before it. A .cpp may include any header of core.
inline constexpr std::array coreOrder = std::to_array<std::string_view>({
    "quantity",
    "units",
    "ids",
    "calendar",
    "backup_retention",
    "field",
    "result",
    "finding",
    "people",
    "course",
    "course_state",
    "diary",
    "waveform",
    "stimulator",
    "settings",
    "placement",
    "body_region",
    "screening",
    "electrode_set",
    "measurement_kinds",
    "measurement",
    "measurement_change",
    "follow_up",
    "plan",
    "screening_gate",
    "unit_fit",
    "session_timing",
    "sitting",
    "prescribed_days",
    "session_counts",
    "lived_days",
    "adherence_figures",
    "adherence",
    "week_doses",
    "dose",
    "limits",
    "suitability",
    "loans",
    "plan_figures",
    "handout_content",
    "lapicque_squares",
    "strength_duration",
    "clinic_session",
    "work_rest_cue",
    "lanes",
    "fatigue_parameters",
    "force_fatigue_model",
    "force_peak",
    "contraction_run",
    "contraction_run_body",
    "cycle_map",
    "model_session",
    "fatigue_prediction",
    "model_comparability",
    "fatigue_memory",
    "settings_search",
    "settings_comparison",
    "course_projection",
    "block_fatigue",
    "caseload_projection",
});

} // namespace quadrille::test
