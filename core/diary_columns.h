// SPDX-License-Identifier: GPL-3.0-or-later
// What the columns of a diary file hold, and the words by which they are known.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille
{

enum class DiaryColumn {
    date,
    session,      ///< number within the day, 1 … 24
    minutes,      ///< 20, 20.5, 20,5, 1:05 (see DurationForm) or 0:20:00
    contractions, ///< counted by the unit
    amplitude,    ///< mA
    comfort,      ///< 0 unbearable … 10 no discomfort
    skin,         ///< 0 nothing, 1 gone within the hour, 2 there next day, 3 blister or burn
    pad,          ///< which one the skin is about
    remark,
};

/// What one column of a file holds. An amplitude belongs to a channel, to a site where a channel
/// has several, or to the only site of the day (neither is given).
struct ColumnMeaning {
    DiaryColumn column = DiaryColumn::date;
    int channel = 0;       ///< 0: not said
    std::string site = {}; ///< siteWords(); empty: not said
    friend auto operator<=>(const ColumnMeaning&, const ColumnMeaning&) = default;
};

/// For each column of a file what it holds; nothing for those that are left aside.
using ColumnMap = std::vector<std::optional<ColumnMeaning>>;

/// How "1:05" is meant.
enum class DurationForm { hoursMinutes, minutesSeconds };

/// A heading as it is compared: small letters, one blank between words, no other signs.
std::string headingWords(std::string_view heading);

/// What a heading says in English or in the names of our own files; `sites` are siteWords() of the
/// sites that an amplitude may belong to.
std::optional<ColumnMeaning> meaningOfHeading(std::string_view heading,
                                              const std::vector<std::string>& sites);
/// "Time (mm:ss)": how times of that column are meant.
std::optional<DurationForm> durationFormInHeading(std::string_view heading);

/// The name of a column in our own files and in stored mappings: "minutes",
/// "amplitude_ma_channel_1".
std::string nameOf(const ColumnMeaning& meaning);
/// The reverse; nothing for other names.
std::optional<ColumnMeaning> columnNamed(std::string_view name);

} // namespace quadrille
