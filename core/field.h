// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace quadrille
{

/// The values a person fills in. Findings and errors point to one; forms, handouts and stimulators
/// use the same names, so that a remark always finds its field.
enum class Field {
    none,
    // settings of the stimulator
    waveform,
    pulseFrequency,
    phaseDuration,
    interphaseGap,
    secondPhaseDuration,
    carrierFrequency,
    burstDuty,
    onTime,
    offTime,
    rampUp,
    rampDown,
    sessionLength,
    lastToleratedAmplitude,
    amplitudeCeiling,
    // block
    weeks,
    weekdays,
    sessionsPerDay,
    // site
    muscle,
    side,
    channel,
    padSize,
    position,
    instruction,
    // stimulator
    stimulator,
    outputType,
    channels,
    askingOrder,
    mostOutput,
    memories,
    ownWord,
    // people and courses
    name,
    reference,
    birthDate,
    telephone,
    address,
    registrationNumber,
    initials,
    problem,
    startDate,
    endDate,
    fromDate,
    reason,
    practitioner,
    // what is measured
    threshold,
    // units that are lent
    inventoryNumber,
    dueBack,
    givenBack,
};

} // namespace quadrille
