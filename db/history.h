// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of what was changed of a patient, for people to read.
#pragma once

#include "db/store.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

enum class ChangeAct { created, changed, removed };

/// One row of the change record. Words are those of the store: table and column names.
struct Change {
    std::int64_t key = 0;
    Moment madeAt;
    std::string practitionerName;
    std::string what; ///< in words of the trade: "change patient"
    std::string recordKind;
    std::int64_t recordId = 0;
    ChangeAct act = ChangeAct::created;
    std::string field; ///< of a changed record
    std::optional<std::string> from = std::nullopt;
    std::optional<std::string> to = std::nullopt;
    friend bool operator==(const Change&, const Change&) = default;
};

/// A patient's changes, the latest first, at most `most`, those before the row `before` if given.
/// The seals of issued plans are left out: they say nothing to a reader.
std::vector<Change> historyOf(Reading& reading, PatientId patient, int most,
                              std::optional<std::int64_t> before = std::nullopt);

/// The changes of one record, the earliest first: what an entry said before it was corrected.
std::vector<Change> historyOfRecord(Reading& reading, const std::string& kind, std::int64_t id);

} // namespace quadrille::db
