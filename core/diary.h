// SPDX-License-Identifier: GPL-3.0-or-later
// What comes back from home. What the patient did not report stays unknown.
#pragma once

#include "core/people.h"
#include "core/units.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

enum class DiarySource { paper, file, counter, clinic };

/// How strong one site was set.
struct SiteAmplitude {
    std::int64_t site = 0; ///< key of a site of a plan of the course
    Amplitude amplitude;
    friend bool operator==(const SiteAmplitude&, const SiteAmplitude&) = default;
};

/// One session as reported.
struct DiaryEntry {
    std::optional<DiaryEntryId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date day;
    int sessionNumber = 1; ///< of that day, 1 … 24
    Milliseconds duration{};
    std::optional<int> contractions = std::nullopt;
    std::optional<int> comfort = std::nullopt; ///< 0 unbearable … 10 no discomfort
    std::vector<SiteAmplitude> amplitudes = {};
    DiarySource source = DiarySource::paper;
    std::optional<PractitionerId> enteredBy = std::nullopt; ///< filled in by the store
    std::string enteredByName = {};                         ///< likewise
    Moment enteredAt{};                                     ///< likewise
    bool withdrawn = false;                                 ///< entered by mistake
    Version version = 1;
    friend bool operator==(const DiaryEntry&, const DiaryEntry&) = default;
};

/// How the skin under the pads was on a day.
enum class Skin {
    nothing = 0,
    goneWithinTheHour = 1,
    thereNextDay = 2,
    blisterOrBurn = 3,
};

/// What belongs to the day and not to one session.
struct DiaryDay {
    std::optional<DiaryDayId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date day;
    std::optional<Skin> skin = std::nullopt;
    std::string skinPad; ///< which pad; only where skin is more than nothing
    std::string remark;
    Version version = 1;
    friend bool operator==(const DiaryDay&, const DiaryDay&) = default;
};

/// The diary of a course is known up to and with a day.
struct DiaryReceived {
    std::optional<DiaryReceivedId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date throughDate;
    Date receivedOn;
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const DiaryReceived&, const DiaryReceived&) = default;
};

/// Why a unit has counted something else than the diary says, as a person chose it.
enum class CounterExplanation { unitSwapped, counterReset, anotherUser, other };

/// What the unit itself has counted.
struct CounterReading {
    std::optional<CounterReadingId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date readOn;
    std::optional<int> totalUses = std::nullopt;
    std::optional<Milliseconds> totalTime = std::nullopt;
    /// Of the difference from the diary since the reading before.
    std::optional<CounterExplanation> explanation = std::nullopt;
    std::string explanationWords = {}; ///< never empty where the explanation is another one
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const CounterReading&, const CounterReading&) = default;
};

} // namespace quadrille
