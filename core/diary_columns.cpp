// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_columns.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <initializer_list>
#include <utility>

namespace quadrille
{

namespace
{

constexpr std::string_view amplitudeName = "amplitude_ma";
constexpr std::string_view channelName = "amplitude_ma_channel_";
constexpr std::string_view siteName = "amplitude_ma_site_";

/// The first word of each column is its name in our own files.
struct Words {
    DiaryColumn column;
    std::array<std::string_view, 9> words;
};

constexpr std::array columnWords{
    Words{DiaryColumn::date, {"date", "day", "session date", "date of session"}},
    Words{DiaryColumn::session,
          {"session", "session number", "session no", "session of day", "no", "number", "sitting"}},
    Words{DiaryColumn::minutes,
          {"minutes", "min", "mins", "duration", "time", "length", "session length", "minutes used",
           "time used"}},
    Words{DiaryColumn::contractions, {"contractions", "number of contractions", "repetitions"}},
    Words{DiaryColumn::comfort, {"comfort", "comfort 0 10"}},
    Words{DiaryColumn::skin, {"skin", "skin 0 3", "skin mark"}},
    Words{DiaryColumn::pad, {"pad", "skin pad", "pad concerned", "electrode"}},
    Words{DiaryColumn::remark, {"remark", "remarks", "note", "notes", "comment", "comments"}},
};

bool isWordSign(char c)
{
    const auto byte = static_cast<unsigned char>(c);
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || byte >= 0x80U;
}

char small(char c)
{
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::vector<std::string_view> split(std::string_view words)
{
    std::vector<std::string_view> all;
    while (!words.empty()) {
        const auto end = std::min(words.find(' '), words.size());
        all.push_back(words.substr(0, end));
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return all;
}

/// 1 … 99; 0 for anything else.
int channelIn(std::string_view word)
{
    int number = 0;
    for (const char c : word) {
        if (c < '0' || c > '9' || word.size() > 2) {
            return 0;
        }
        number = number * 10 + (c - '0');
    }
    return number;
}

std::string joined(const std::vector<std::string_view>& words)
{
    std::string text;
    for (const std::string_view word : words) {
        text += text.empty() ? "" : " ";
        text += word;
    }
    return text;
}

/// "amplitude", "amplitude 1", "ma channel 2", "channel 1", "amplitude vastus lateralis right".
std::optional<ColumnMeaning> amplitudeIn(std::string_view heading,
                                         const std::vector<std::string>& sites)
{
    std::vector<std::string_view> rest = split(heading);
    const auto drop = [&](std::string_view word) { return std::erase(rest, word) > 0; };
    const auto dropAny = [&](std::initializer_list<std::string_view> words) {
        return std::ranges::count_if(words, drop) > 0;
    };
    const bool says = dropAny({"amplitude", "intensity", "ma", "current"});
    const bool channel = dropAny({"channel", "ch", "chan"});
    if (!says && !channel) {
        return std::nullopt;
    }
    ColumnMeaning meaning{.column = DiaryColumn::amplitude};
    if (rest.empty() && says && !channel) {
        return meaning;
    }
    if (rest.size() == 1 && channelIn(rest.front()) > 0) {
        meaning.channel = channelIn(rest.front());
        return meaning;
    }
    drop("site");
    const std::string place = joined(rest);
    if (std::ranges::find(sites, place) == sites.end()) {
        return std::nullopt;
    }
    meaning.site = place;
    return meaning;
}

} // namespace

std::string headingWords(std::string_view heading)
{
    std::string words;
    bool gap = false;
    for (const char original : heading) {
        const char c = small(original);
        if (!isWordSign(c)) {
            gap = !words.empty();
            continue;
        }
        if (std::exchange(gap, false)) {
            words += ' ';
        }
        words += c;
    }
    return words;
}

std::optional<ColumnMeaning> meaningOfHeading(std::string_view heading,
                                              const std::vector<std::string>& sites)
{
    std::string words = headingWords(heading);
    const std::string whole = words;
    for (const std::string_view form : {" h mm", " hh mm", " mm ss", " min"}) {
        if (words.size() > form.size() && words.ends_with(form)) {
            words.resize(words.size() - form.size());
        }
    }
    const bool isTime = words != whole;
    for (const Words& known : columnWords) {
        const auto* const found = std::ranges::find(known.words, std::string_view(words));
        if (!words.empty() && found != known.words.end() &&
            (!isTime || known.column == DiaryColumn::minutes)) {
            return ColumnMeaning{.column = known.column};
        }
    }
    return amplitudeIn(whole, sites);
}

std::optional<DurationForm> durationFormInHeading(std::string_view heading)
{
    const std::string words = headingWords(heading);
    if (words.ends_with("h mm") || words.ends_with("hh mm")) {
        return DurationForm::hoursMinutes;
    }
    return words.ends_with("mm ss") ? std::optional(DurationForm::minutesSeconds) : std::nullopt;
}

std::string nameOf(const ColumnMeaning& meaning)
{
    if (meaning.column == DiaryColumn::amplitude) {
        if (meaning.channel > 0) {
            return std::string(channelName) + std::to_string(meaning.channel);
        }
        return meaning.site.empty() ? std::string(amplitudeName)
                                    : std::string(siteName) + meaning.site;
    }
    const auto* const found = std::ranges::find(columnWords, meaning.column, &Words::column);
    return std::string(found->words.front());
}

std::optional<ColumnMeaning> columnNamed(std::string_view name)
{
    for (const Words& known : columnWords) {
        if (known.words.front() == name) {
            return ColumnMeaning{.column = known.column};
        }
    }
    ColumnMeaning amplitude{.column = DiaryColumn::amplitude};
    if (name == amplitudeName) {
        return amplitude;
    }
    if (name.starts_with(channelName)) {
        amplitude.channel = channelIn(name.substr(channelName.size()));
        return amplitude.channel > 0 ? std::optional(amplitude) : std::nullopt;
    }
    if (name.starts_with(siteName) && name.size() > siteName.size()) {
        amplitude.site = std::string(name.substr(siteName.size()));
        return amplitude;
    }
    return std::nullopt;
}

} // namespace quadrille
