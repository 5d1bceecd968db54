// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <array>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace quadrille::test
{

inline constexpr std::array<const char*, 7> weekdayNames{"Mon", "Tue", "Wed", "Thu",
                                                         "Fri", "Sat", "Sun"};

/// "Mon" … "Sun"
inline std::string weekdayName(Weekday day)
{
    return weekdayNames[day.iso_encoding() - 1];
}

/// A line of a picture, read word by word; the signs , : ; are words of their own. What is not
/// understood throws std::invalid_argument with the line.
class PictureLine
{
public:
    explicit PictureLine(const std::string& text)
        : m_text(text)
    {
        std::string spaced;
        for (const char c : text) {
            spaced += std::string(",:;").find(c) == std::string::npos ? std::string(1, c)
                                                                      : std::string{' ', c, ' '};
        }
        std::istringstream words(spaced);
        for (std::string word; words >> word;) {
            m_words.push_back(word);
        }
    }
    [[noreturn]] void fail(const std::string& why) const
    {
        throw std::invalid_argument("“" + m_text + "”: " + why);
    }
    bool atEnd() const { return m_next == m_words.size(); }
    std::string next() { return atEnd() ? std::string() : m_words[m_next++]; }
    bool take(const std::string& word)
    {
        const bool is = !atEnd() && m_words[m_next] == word;
        m_next += is ? 1 : 0;
        return is;
    }
    void require(const std::string& word)
    {
        if (!take(word)) {
            fail("“" + word + "” is missing");
        }
    }
    void requireEnd()
    {
        if (!atEnd()) {
            fail("“" + next() + "” is not understood");
        }
    }
    int number()
    {
        const std::string word = next();
        if (word.empty() || word.find_first_not_of("0123456789") != std::string::npos) {
            fail("“" + word + "” is no number");
        }
        return std::stoi(word);
    }
    bool isNumber() const
    {
        return !atEnd() && m_words[m_next].find_first_not_of("0123456789") == std::string::npos;
    }
    /// "Mon 2026-03-02"
    Date date()
    {
        const std::string weekday = next();
        const auto date = dateFromIso(next());
        if (!date) {
            fail("no date");
        }
        if (weekdayName(Weekday(*date)) != weekday) {
            fail("that day is a " + weekdayName(Weekday(*date)));
        }
        return *date;
    }

private:
    std::string m_text;
    std::vector<std::string> m_words;
    std::size_t m_next = 0;
};

} // namespace quadrille::test
