// SPDX-License-Identifier: GPL-3.0-or-later
// What the printed diary asks for, day by day: which sessions, how long, on which channels, and how
// far the unit goes. Pages are course weeks 1–4, 5–8 …, whatever the blocks.
#pragma once

#include "core/day_sites.h"
#include "core/lived_days.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace quadrille
{

inline constexpr int weeksOfDiaryPage = 4;

/// A site on which an amplitude can be reported.
struct DiarySite {
    std::int64_t key = 0; ///< SiteAmplitude::site
    int channel = 1;
    std::optional<Amplitude> ceiling = std::nullopt; ///< never above this at home
    friend bool operator==(const DiarySite&, const DiarySite&) = default;
};

/// One day of the form.
struct DiaryFormDay {
    Date day;
    bool isOfCourse = true; ///< false after the last day of an ended course
    bool isPaused = false;
    bool anyDay = false; ///< one of several days of the week, the patient's choice
    int sessions = 0;    ///< asked for; 0: a rest day
    std::optional<Milliseconds> length = std::nullopt;     ///< of one whole session
    std::optional<Milliseconds> longest = std::nullopt;    ///< that the unit's timer allows
    std::optional<Amplitude> mostAmplitude = std::nullopt; ///< of the unit
    std::vector<DiarySite> sites = {};                     ///< see blockReportedOn()
    friend bool operator==(const DiaryFormDay&, const DiaryFormDay&) = default;
};

/// All pages of a course: every day from its start on, in whole pages.
struct DiaryForm {
    Date startDate;
    Date today;
    std::vector<DiaryFormDay> days = {};

    int pages() const;
    /// The page of a day, from 0; the first before the start, the last after the end.
    int pageOf(Date day) const;
    Date firstDayOfPage(int page) const;
    /// Nothing outside the pages.
    const DiaryFormDay* find(Date day) const;
    friend bool operator==(const DiaryForm&, const DiaryForm&) = default;
};

/// The form of a course: as far as a plan reaches, something is reported or `today` lies. `keys`
/// has an entry for each of the plans of `records`; sites without a key are left out.
DiaryForm diaryFormOf(const CourseRecords& records, const SiteKeys& keys, Date today);

} // namespace quadrille
