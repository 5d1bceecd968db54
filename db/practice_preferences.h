// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the practice's preferences: thresholds and habits that belong to the practice, not
// to a machine. Names are words of the program, values text.
#pragma once

#include "db/store.h"

#include "core/ids.h"

#include <optional>
#include <string>

namespace quadrille::db
{

struct PracticePreference {
    std::string value;
    Version version = 0; ///< 0: never set
};
/// Nothing until it is set.
std::optional<PracticePreference> practicePreference(Reading& reading, const std::string& name);
/// The whole number that a value says; nothing where it says anything else than one from `least` to
/// `most`.
std::optional<int> wholeNumberIn(const std::string& value, int least, int most);
/// The whole number that it holds; nothing until it is set. Error badFormat when it holds none
/// such.
std::optional<int> wholeNumberPreference(Reading& reading, const std::string& name, int least,
                                         int most);
/// Over the version that was read (0: it was not set). Error changedElsewhere.
void setPracticePreference(Writing& writing, const std::string& name, const std::string& value,
                           Version read);

} // namespace quadrille::db
