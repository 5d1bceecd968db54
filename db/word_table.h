// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of choices and the words under which they are stored.
#pragma once

#include <algorithm>
#include <array>
#include <cassert>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

namespace quadrille::db
{

template <class Choice>
using Word = std::pair<Choice, std::string_view>;

template <class Choice, std::size_t Count>
std::string_view wordIn(const std::array<Word<Choice>, Count>& words, Choice choice)
{
    const auto found = std::ranges::find(words, choice, &Word<Choice>::first);
    assert(found != words.end());
    return found->second;
}

template <class Choice, std::size_t Count>
std::optional<Choice> choiceIn(const std::array<Word<Choice>, Count>& words, std::string_view word)
{
    const auto found = std::ranges::find(words, word, &Word<Choice>::second);
    return found == words.end() ? std::nullopt : std::optional(found->first);
}

} // namespace quadrille::db
