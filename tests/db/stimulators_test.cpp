// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/stimulators.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>

namespace quadrille::db
{
namespace
{

using namespace literals;
using tests::aFullUnit;
using tests::aUnit;
using tests::author;
using tests::codeOf;
using tests::must;

class Stimulators : public testing::Test
{
protected:
    Result<StimulatorId> add(const Stimulator& unit)
    {
        return store->write(author(), "add stimulator",
                            [&](Writing& writing) { return addStimulator(writing, unit); });
    }
    Result<void> change(const Stimulator& unit)
    {
        return store->write(author(), "change stimulator",
                            [&](Writing& writing) { changeStimulator(writing, unit); });
    }
    std::optional<Stimulator> read(StimulatorId id)
    {
        return must(store->read([&](Reading& reading) { return stimulator(reading, id); }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
};

TEST_F(Stimulators, ComeBackAsDescribed)
{
    for (Stimulator unit : {aUnit(), aFullUnit()}) {
        unit.id = must(add(unit));
        EXPECT_EQ(read(*unit.id), unit);
    }
    EXPECT_EQ(read(StimulatorId(99)), std::nullopt);
}

TEST_F(Stimulators, OptionalRangesComeAndGo)
{
    Stimulator unit = aFullUnit();
    unit.id = must(add(unit));
    Stimulator plain = aUnit(unit.name);
    plain.id = unit.id;
    must(change(plain));
    plain.version = 2;
    EXPECT_EQ(read(*unit.id), plain);
    EXPECT_EQ(codeOf(change(unit)), ErrorCode::changedElsewhere);
    unit.version = 2;
    must(change(unit));
    unit.version = 3;
    EXPECT_EQ(read(*unit.id), unit);
}

TEST_F(Stimulators, OwnWordsComeAndGo)
{
    Stimulator unit = aUnit();
    unit.ownWords = {{Field::offTime, "Rest"}, {Field::sessionLength, "Timer"}};
    unit.id = must(add(unit));
    EXPECT_EQ(read(*unit.id), unit);
    unit.ownWords = {{Field::offTime, "Pause"}};
    must(change(unit));
    unit.version = 2;
    EXPECT_EQ(read(*unit.id), unit);
    unit.ownWords[Field::onTime] = std::string(longestOwnWord + 1, 'W');
    const auto tooLong = change(unit);
    ASSERT_EQ(codeOf(tooLong), ErrorCode::outOfRange);
    EXPECT_EQ(tooLong.error().field, Field::ownWord);
}

TEST_F(Stimulators, ComeByNameWithTheArchivedOnesLast)
{
    Stimulator archived = aUnit("Four-channel unit");
    archived.archived = true;
    must(add(archived));
    must(add(aUnit("two-channel unit B")));
    must(add(aUnit("Two-channel unit A")));
    const auto all = must(store->read([](Reading& reading) { return stimulators(reading); }));
    std::vector<std::string> names;
    std::ranges::transform(all, std::back_inserter(names), &Stimulator::name);
    EXPECT_THAT(names, testing::ElementsAre("Two-channel unit A", "two-channel unit B",
                                            "Four-channel unit"));
}

TEST_F(Stimulators, ANameBelongsToOneUnitInUse)
{
    Stimulator unit = aUnit();
    unit.id = must(add(unit));
    const auto twice = add(aUnit());
    ASSERT_EQ(codeOf(twice), ErrorCode::notUnique);
    EXPECT_EQ(twice.error().subject, unit.name);
    unit.archived = true;
    must(change(unit));
    must(add(aUnit()));
    unit.archived = false;
    EXPECT_EQ(codeOf(change(unit)), ErrorCode::notUnique);
}

TEST_F(Stimulators, OneThatMakesNoSenseIsNotKept)
{
    Stimulator nameless = aUnit("");
    const auto first = add(nameless);
    ASSERT_EQ(codeOf(first), ErrorCode::notFilled);
    EXPECT_EQ(first.error().field, Field::name);

    Stimulator ninth = aUnit();
    ninth.channels = 9;
    const auto second = add(ninth);
    ASSERT_EQ(codeOf(second), ErrorCode::outOfRange);
    EXPECT_EQ(second.error().field, Field::channels);
    EXPECT_THAT(second.error().figures, testing::ElementsAre(countOf(9), countOf(1), countOf(8)));

    Stimulator upsideDown = aUnit();
    upsideDown.pulseFrequency = {120_Hz, 1_Hz, 1_Hz, 50_Hz};
    const auto third = add(upsideDown);
    ASSERT_EQ(codeOf(third), ErrorCode::outOfRange);
    EXPECT_EQ(third.error().field, Field::pulseFrequency);
}

TEST_F(Stimulators, UnsuitableUnitsAreKeptAllTheSame)
{
    Stimulator unit = aUnit("Direct-current unit");
    unit.waveforms = {Waveform::directCurrent};
    unit.hasWorkRestCycles = false;
    unit.id = must(add(unit));
    EXPECT_EQ(read(*unit.id), unit);
}

TEST_F(Stimulators, AChangeOfAUnitThatIsNotThereIsNotFound)
{
    Stimulator unit = aUnit();
    EXPECT_EQ(codeOf(change(unit)), ErrorCode::notFound);
    unit.id = StimulatorId(3);
    EXPECT_EQ(codeOf(change(unit)), ErrorCode::notFound);
}

} // namespace
} // namespace quadrille::db
