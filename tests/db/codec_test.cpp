// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/codec.h"
#include "db/failure.h"

#include <gtest/gtest.h>
#include <set>

namespace quadrille::db
{
namespace
{

/// Every choice from the first to the last has a word of its own that leads back to it.
template <class Choice>
void expectWordsFor(Choice last)
{
    std::set<std::string_view> words;
    for (int number = 0; number <= static_cast<int>(last); ++number) {
        const auto choice = static_cast<Choice>(number);
        const std::string_view word = wordOf(choice);
        EXPECT_TRUE(words.insert(word).second) << word << " stands for two choices";
        EXPECT_EQ(choiceOf<Choice>(word), choice) << word;
    }
    EXPECT_EQ(choiceOf<Choice>("no such word"), std::nullopt);
}

TEST(Codec, EveryChoiceHasAWordOfItsOwn)
{
    expectWordsFor(Waveform::directCurrent);
    expectWordsFor(RampHabit::addedToOnTime);
    expectWordsFor(Side::middle);
    expectWordsFor(PadMaterial::carbonRubber);
    expectWordsFor(PadShape::round);
    expectWordsFor(Lead::b);
    expectWordsFor(SiteOrder::oneAfterAnother);
    expectWordsFor(Field::practitioner);
}

TEST(Codec, AmountsAreWholeBaseUnits)
{
    using namespace literals;
    EXPECT_EQ(valueOf(50_Hz), Value(std::int64_t(50'000)));
    EXPECT_EQ(valueOf(45500_uA), Value(std::int64_t(45'500)));
    EXPECT_EQ(valueOf(Milliseconds(std::chrono::seconds(8))), Value(std::int64_t(8'000)));
    EXPECT_EQ(valueOf(std::optional<Amplitude>()), Value());
}

TEST(Codec, DatesAreIsoText)
{
    using namespace std::chrono;
    const Date date = sys_days(year(2026) / 3 / 9);
    EXPECT_EQ(valueOf(date), Value(std::string("2026-03-09")));
    EXPECT_EQ(valueOf(Moment(date) + hours(10) + minutes(42)),
              Value(std::string("2026-03-09T10:42:00Z")));
}

TEST(Codec, TextThatNoDatabaseKeepsWholeIsRefused)
{
    EXPECT_THROW(valueOf(std::string("a\0b", 3)), Failure);
    EXPECT_THROW(valueOf(std::string("\xC3\x28")), Failure); // a broken UTF-8 sequence
    EXPECT_NO_THROW(valueOf(std::string("Zoë 🦵 مرحبا")));
}

} // namespace
} // namespace quadrille::db
