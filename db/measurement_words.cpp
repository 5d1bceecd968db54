// SPDX-License-Identifier: GPL-3.0-or-later
// The words under which choices of measurements and pads are stored. A word that was released is
// never changed.
#include "db/codec.h"
#include "db/word_list.h"

#include <array>

namespace quadrille::db
{

namespace
{

constexpr std::array treatedSides{
    Word<TreatedSide>{TreatedSide::left, "left"},
    Word<TreatedSide>{TreatedSide::right, "right"},
    Word<TreatedSide>{TreatedSide::both, "both"},
};
constexpr std::array countings{
    Word<Counted>{Counted::one, "one"},
    Word<Counted>{Counted::best, "best"},
    Word<Counted>{Counted::mean, "mean"},
};
constexpr std::array electrodeTypes{
    Word<ElectrodeType>{ElectrodeType::selfAdhesive, "self_adhesive"},
    Word<ElectrodeType>{ElectrodeType::carbonRubberSponge, "carbon_rubber_sponge"},
    Word<ElectrodeType>{ElectrodeType::carbonRubberGel, "carbon_rubber_gel"},
};

} // namespace

std::string_view wordOf(TreatedSide choice)
{
    return wordIn(treatedSides, choice);
}
std::string_view wordOf(Counted choice)
{
    return wordIn(countings, choice);
}
std::string_view wordOf(ElectrodeType choice)
{
    return wordIn(electrodeTypes, choice);
}

template <>
std::optional<TreatedSide> choiceOf(std::string_view word)
{
    return choiceIn(treatedSides, word);
}
template <>
std::optional<Counted> choiceOf(std::string_view word)
{
    return choiceIn(countings, word);
}
template <>
std::optional<ElectrodeType> choiceOf(std::string_view word)
{
    return choiceIn(electrodeTypes, word);
}

} // namespace quadrille::db
