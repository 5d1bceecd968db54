// SPDX-License-Identifier: GPL-3.0-or-later
// The words under which choices of a screening are stored. A word that was released is never
// changed.
#include "db/codec.h"
#include "db/word_list.h"

#include <array>

namespace quadrille::db
{

namespace
{

constexpr std::array questionClasses{
    Word<QuestionClass>{QuestionClass::contraindication, "contraindication"},
    Word<QuestionClass>{QuestionClass::localContraindication, "local_contraindication"},
    Word<QuestionClass>{QuestionClass::precaution, "precaution"},
};
constexpr std::array reachWords{
    Word<Reach>{Reach::region, "region"},
    Word<Reach>{Reach::limb, "limb"},
};
constexpr std::array advicePlaces{
    Word<AdvicePlace>{AdvicePlace::before, "before"},
    Word<AdvicePlace>{AdvicePlace::during, "during"},
    Word<AdvicePlace>{AdvicePlace::after, "after"},
};
constexpr std::array bodyRegions{
    Word<BodyRegion>{BodyRegion::head, "head"},
    Word<BodyRegion>{BodyRegion::neck, "neck"},
    Word<BodyRegion>{BodyRegion::chest, "chest"},
    Word<BodyRegion>{BodyRegion::abdomen, "abdomen"},
    Word<BodyRegion>{BodyRegion::upperBack, "upper_back"},
    Word<BodyRegion>{BodyRegion::lowerBack, "lower_back"},
    Word<BodyRegion>{BodyRegion::pelvis, "pelvis"},
    Word<BodyRegion>{BodyRegion::shoulder, "shoulder"},
    Word<BodyRegion>{BodyRegion::upperArm, "upper_arm"},
    Word<BodyRegion>{BodyRegion::forearm, "forearm"},
    Word<BodyRegion>{BodyRegion::hand, "hand"},
    Word<BodyRegion>{BodyRegion::thigh, "thigh"},
    Word<BodyRegion>{BodyRegion::lowerLeg, "lower_leg"},
    Word<BodyRegion>{BodyRegion::foot, "foot"},
};
constexpr std::array placeSides{
    Word<PlaceSide>{PlaceSide::left, "left"},
    Word<PlaceSide>{PlaceSide::right, "right"},
    Word<PlaceSide>{PlaceSide::both, "both"},
};
constexpr std::array sensations{
    Word<Sensation>{Sensation::intact, "intact"},
    Word<Sensation>{Sensation::reduced, "reduced"},
    Word<Sensation>{Sensation::absent, "absent"},
    Word<Sensation>{Sensation::notTested, "not_tested"},
};

} // namespace

std::string_view wordOf(QuestionClass choice)
{
    return wordIn(questionClasses, choice);
}
std::string_view wordOf(Reach choice)
{
    return wordIn(reachWords, choice);
}
std::string_view wordOf(AdvicePlace choice)
{
    return wordIn(advicePlaces, choice);
}
std::string_view wordOf(BodyRegion choice)
{
    return wordIn(bodyRegions, choice);
}
std::string_view wordOf(PlaceSide choice)
{
    return wordIn(placeSides, choice);
}
std::string_view wordOf(Sensation choice)
{
    return wordIn(sensations, choice);
}

template <>
std::optional<QuestionClass> choiceOf(std::string_view word)
{
    return choiceIn(questionClasses, word);
}
template <>
std::optional<Reach> choiceOf(std::string_view word)
{
    return choiceIn(reachWords, word);
}
template <>
std::optional<AdvicePlace> choiceOf(std::string_view word)
{
    return choiceIn(advicePlaces, word);
}
template <>
std::optional<BodyRegion> choiceOf(std::string_view word)
{
    return choiceIn(bodyRegions, word);
}
template <>
std::optional<PlaceSide> choiceOf(std::string_view word)
{
    return choiceIn(placeSides, word);
}
template <>
std::optional<Sensation> choiceOf(std::string_view word)
{
    return choiceIn(sensations, word);
}

} // namespace quadrille::db
