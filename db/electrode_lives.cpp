// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/electrode_lives.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/practice_preferences.h"

#include <array>
#include <charconv>
#include <optional>
#include <string>

namespace quadrille::db
{

namespace
{

constexpr std::array types{ElectrodeType::selfAdhesive, ElectrodeType::carbonRubberSponge,
                           ElectrodeType::carbonRubberGel};

std::string nameOf(const char* measure, ElectrodeType type)
{
    return "pad_life_" + std::string(measure) + "." + std::string(wordOf(type));
}

/// Empty: this measure ends no set.
std::optional<int> numberOf(const std::string& text)
{
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    return whole ? std::optional(number) : std::nullopt;
}

std::string textOf(const std::optional<int>& number)
{
    return number ? std::to_string(*number) : std::string();
}

void takeOver(Reading& reading, const std::string& name, std::optional<int>& number)
{
    if (const auto set = practicePreference(reading, name)) {
        number = numberOf(set->value);
    }
}

void save(Writing& writing, const std::string& name, const std::optional<int>& read,
          const std::optional<int>& number, const std::optional<int>& present)
{
    if (read == number) {
        return;
    }
    if (present != read) {
        throw Failure({.code = ErrorCode::changedElsewhere, .subject = name, .detail = {}});
    }
    const auto set = practicePreference(writing, name);
    setPracticePreference(writing, name, textOf(number), set ? set->version : 0);
}

} // namespace

ElectrodeLives electrodeLives(Reading& reading)
{
    ElectrodeLives lives;
    for (const ElectrodeType type : types) {
        takeOver(reading, nameOf("uses", type), lifeOf(lives, type).uses);
        takeOver(reading, nameOf("months", type), lifeOf(lives, type).months);
    }
    return lives;
}

void saveElectrodeLives(Writing& writing, const ElectrodeLives& read, const ElectrodeLives& lives)
{
    const ElectrodeLives present = electrodeLives(writing);
    for (const ElectrodeType type : types) {
        save(writing, nameOf("uses", type), lifeOf(read, type).uses, lifeOf(lives, type).uses,
             lifeOf(present, type).uses);
        save(writing, nameOf("months", type), lifeOf(read, type).months, lifeOf(lives, type).months,
             lifeOf(present, type).months);
    }
}

} // namespace quadrille::db
