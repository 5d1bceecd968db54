// SPDX-License-Identifier: GPL-3.0-or-later
// One row of a diary file, read cell by cell. Nothing is mended: what can't be read is a fault that
// says where and why.
#pragma once

#include "core/diary.h"
#include "core/diary_columns.h"
#include "core/diary_dates.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quadrille
{

enum class CellProblem {
    // reading
    wrongCellCount, ///< the row has more or fewer cells than there are headings
    dateMissing,
    dateUnreadable,
    noSuchDay,
    twoDigitYear,
    dateOrderNotKnown,
    dateWithZone,
    sessionUnreadable, ///< no whole number from 1 to 24
    minutesMissing,    ///< something else is told of the session
    minutesUnreadable, ///< no number or time from 0 to 24 h
    durationFormNotKnown,
    contractionsUnreadable, ///< no whole number from 0 to 100 000
    amplitudeUnreadable,    ///< no number from 0 to 1000 mA with at most three decimals
    comfortUnreadable,      ///< no whole number from 0 to 10
    skinUnreadable,         ///< no whole number from 0 to 3
    padWithoutSkin,         ///< a pad is named where the skin was nothing or is not told
    textTooLong,            ///< over mostTextBytes
    // holding it against the course and the rest of the file
    sessionNotSaid,    ///< the file numbers sessions, and this row does not
    noSiteOnChannel,   ///< no block in force on the day has a site there
    severalSites,      ///< more than one has
    amplitudesDiffer,  ///< another column says otherwise of the same site
    contradictsRow,    ///< another row says otherwise of the same session
    dayContradictsRow, ///< another row says otherwise of the same day
};

/// What is wrong with a row.
struct CellFault {
    CellProblem problem = CellProblem::dateUnreadable;
    std::optional<std::size_t> column = std::nullopt; ///< its place in the file
    std::string written = {};                         ///< what stands there
    int otherLine = 0;                                ///< of the row that it contradicts
    friend bool operator==(const CellFault&, const CellFault&) = default;
};

inline constexpr std::size_t mostTextBytes = 4000;

/// How cells are read that do not say it themselves.
struct ReadingRules {
    std::optional<DateOrder> dateOrder = std::nullopt;
    std::optional<DurationForm> durationForm = std::nullopt;
};

/// A row as the file tells it. What it does not tell is not known.
struct ReportedRow {
    int line = 0; ///< in the file, from 1
    std::optional<Date> day = std::nullopt;
    std::optional<int> session = std::nullopt;
    std::optional<Milliseconds> duration = std::nullopt;
    std::optional<int> contractions = std::nullopt;
    std::optional<int> comfort = std::nullopt;
    std::optional<Skin> skin = std::nullopt;
    std::vector<std::pair<std::size_t, Amplitude>> amplitudes = {}; ///< with their columns
    std::string pad = {};
    std::string remark = {};
    std::vector<CellFault> faults = {};

    bool tellsOfSession() const { return duration.has_value(); }
    bool tellsOfDay() const { return skin || !pad.empty() || !remark.empty(); }
};

/// Reads one row; `headings` is how many the file has.
ReportedRow reportedRow(int line, std::span<const std::string_view> cells, std::size_t headings,
                        const ColumnMap& columns, const ReadingRules& rules);

/// What the times of a file say about their form.
class DurationEvidence
{
public:
    void note(std::string_view cell);
    /// Some time is written as "1:05", and nothing shows how it is meant.
    bool isOpen() const { return m_needed && !m_overADay; }
    /// Above 24 the first number can't be hours.
    std::optional<DurationForm> form() const;

private:
    bool m_needed = false;
    bool m_overADay = false;
};

} // namespace quadrille
