// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/electrode_lives.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/practice_preferences.h"

#include <array>
#include <optional>
#include <string>

namespace quadrille::db
{

namespace
{

constexpr std::array types{ElectrodeType::selfAdhesive, ElectrodeType::carbonRubberSponge,
                           ElectrodeType::carbonRubberGel};

/// One preference.
struct Measure {
    std::string name;
    std::optional<int> ElectrodeLife::*life;
    int most;
};

std::array<Measure, 2> measuresOf(ElectrodeType type)
{
    const std::string word(wordOf(type));
    return {Measure{"pad_life_uses." + word, &ElectrodeLife::uses, mostLifeUses},
            Measure{"pad_life_months." + word, &ElectrodeLife::months, mostLifeMonths}};
}

/// Empty: this measure ends no set.
std::string textOf(const std::optional<int>& number)
{
    return number ? std::to_string(*number) : std::string();
}

void save(Writing& writing, const Measure& measure, const std::string& usual,
          const std::string& read, const std::string& value)
{
    const auto set = practicePreference(writing, measure.name);
    const std::string present = set ? set->value : usual;
    // What says no number could not be read, and is set again.
    if (present.empty() || wholeNumberIn(present, 1, measure.most)) {
        if (read == value) {
            return;
        }
        if (present != read) {
            throw Failure(
                {.code = ErrorCode::changedElsewhere, .subject = measure.name, .detail = {}});
        }
    }
    setPracticePreference(writing, measure.name, value, set ? set->version : 0);
}

} // namespace

ElectrodeLives electrodeLives(Reading& reading)
{
    ElectrodeLives lives;
    for (const ElectrodeType type : types) {
        for (const Measure& measure : measuresOf(type)) {
            const auto set = practicePreference(reading, measure.name);
            if (set) {
                lifeOf(lives, type).*measure.life =
                    set->value.empty()
                        ? std::nullopt
                        : wholeNumberPreference(reading, measure.name, 1, measure.most);
            }
        }
    }
    return lives;
}

void saveElectrodeLives(Writing& writing, const ElectrodeLives& read, const ElectrodeLives& lives)
{
    for (const ElectrodeType type : types) {
        for (const Measure& measure : measuresOf(type)) {
            const auto text = [&](const ElectrodeLife& life) { return textOf(life.*measure.life); };
            save(writing, measure, text(usualLife(type)), text(lifeOf(read, type)),
                 text(lifeOf(lives, type)));
        }
    }
}

} // namespace quadrille::db
