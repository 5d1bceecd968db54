// SPDX-License-Identifier: GPL-3.0-or-later
// Digests worked out with sha256sum (coreutils) from the encoding in db/change_chain.h.
#include "db/change_chain.h"

#include <gtest/gtest.h>
#include <set>

namespace quadrille::db
{
namespace
{

TEST(ChangeChain, TheDigestOfAFieldIsSha256OfSaltOldAndNew)
{
    // printf '32:000102030405060708090a0b0c0d0e0f11:Agnes Thrly13:Agnes Thorley' | sha256sum
    EXPECT_EQ(digestOf({.field = "name",
                        .salt = "000102030405060708090a0b0c0d0e0f",
                        .from = std::string("Agnes Thrly"),
                        .to = std::string("Agnes Thorley")}),
              "10a32f605ff683b0ece295bae9c30f8a09cd8c9ceb71d6dd2df94a9a76db08e4");
}

TEST(ChangeChain, NothingIsNotAnEmptyText)
{
    const std::string salt = "000102030405060708090a0b0c0d0e0f";
    // printf '32:000102030405060708090a0b0c0d0e0f-0:' | sha256sum
    EXPECT_EQ(digestOf({.field = {}, .salt = salt, .from = {}, .to = std::string()}),
              "a1a1ac498ad66c549039bb7abdc0633f46a1bf2367164b0fbe0e8bf62d7474ee");
    EXPECT_NE(digestOf({.field = {}, .salt = salt, .from = std::string(), .to = {}}),
              "a1a1ac498ad66c549039bb7abdc0633f46a1bf2367164b0fbe0e8bf62d7474ee");
}

TEST(ChangeChain, ARowIsDigestedWithTheChainBeforeIt)
{
    const Columns row{{"id", std::int64_t(1)},
                      {"made_at", std::string("2026-03-12T10:42:00Z")},
                      {"practitioner", Value()},
                      {"practitioner_name", std::string("Set-up")}};
    // printf '64:%064d1:120:2026-03-12T10:42:00Z-6:Set-up' 0 | sha256sum
    EXPECT_EQ(chainAfter(std::string(64, '0'), row),
              "776d3a20d2c3979936128487d46436693e52d4f8c702bc3086b39819674d7e1f");
}

TEST(ChangeChain, ASaltHas128BitsAndIsNeverTheSame)
{
    std::set<std::string> salts;
    for (int i = 0; i < 100; ++i) {
        salts.insert(freshSalt());
    }
    EXPECT_EQ(salts.size(), 100U);
    EXPECT_EQ(salts.begin()->size(), 32U);
    EXPECT_EQ(salts.begin()->find_first_not_of("0123456789abcdef"), std::string::npos);
}

} // namespace
} // namespace quadrille::db
