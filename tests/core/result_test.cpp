// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/result.h"

#include <gtest/gtest.h>
#include <memory>
#include <string>

using namespace quadrille;

namespace
{

Result<std::string> reference(bool known)
{
    if (!known) {
        return Error{ErrorCode::notFound, "1001", {}, Field::reference, {}};
    }
    return std::string("1001");
}

Result<void> act(bool allowed)
{
    if (!allowed) {
        return Error{ErrorCode::refused, "plan", "plans are not changed", Field::none, {}};
    }
    return {};
}

} // namespace

TEST(Result, HoldsTheValueOrTheReason)
{
    const Result<std::string> known = reference(true);
    ASSERT_TRUE(known);
    EXPECT_EQ(*known, "1001");
    EXPECT_EQ(known->size(), 4U);

    const Result<std::string> unknown = reference(false);
    ASSERT_FALSE(unknown);
    EXPECT_EQ(unknown.error().code, ErrorCode::notFound);
    EXPECT_EQ(unknown.error().subject, "1001");
    EXPECT_EQ(unknown.error().field, Field::reference);
}

TEST(Result, OfAnActHoldsNothingOrTheReason)
{
    EXPECT_TRUE(act(true));
    const Result<void> refused = act(false);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::refused);
}

TEST(Result, HandsOverWhatCannotBeCopied)
{
    Result<std::unique_ptr<int>> made = std::make_unique<int>(7);
    ASSERT_TRUE(made);
    const std::unique_ptr<int> taken = *std::move(made);
    EXPECT_EQ(*taken, 7);
}

TEST(Result, AnEmptyAnswerIsNoFailure)
{
    const Result<std::optional<int>> nobody = std::optional<int>();
    ASSERT_TRUE(nobody);
    EXPECT_FALSE(*nobody);
}
