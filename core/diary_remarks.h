// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be said of what was copied from a diary: what cannot be saved as it is, and what a
// person should see at once.
#pragma once

#include "core/diary_sheet.h"

#include <cstdint>
#include <vector>

namespace quadrille
{

enum class DiaryRemarkKind {
    // can't be saved
    dayToCome,
    outsideCourse,  ///< after the last day of the course
    minutesMissing, ///< amplitude or comfort without minutes
    overTimer,      ///< longer than the unit runs; figures in ms
    overDay,        ///< longer than a day; figures in ms
    overUnit,       ///< more than the unit gives; figures in µA
    comfortOutside, ///< not 0 to 10
    // to be seen
    skinMark,     ///< skin 2 or 3
    overCeiling,  ///< above what was set for home; figures in µA
    overUse,      ///< longer than prescribed; figures in ms
    extraSession, ///< more than prescribed
};

/// Whether it has to be put right before the diary can be saved.
inline bool keepsFromSaving(DiaryRemarkKind kind)
{
    return kind <= DiaryRemarkKind::comfortOutside;
}

struct DiaryRemark {
    DiaryRemarkKind kind = DiaryRemarkKind::minutesMissing;
    DiaryPlace place;
    std::int64_t figure = 0; ///< what is written
    std::int64_t limit = 0;  ///< what it is held against
    friend bool operator==(const DiaryRemark&, const DiaryRemark&) = default;
};

/// All remarks on a day, the gravest first.
std::vector<DiaryRemark> remarksOn(const DiaryForm& form, Date day, const WrittenDay& written);

/// The first remark on each day that keeps `diary` from being saved. Sessions that were so in
/// `base` are not looked at: what is on record stays, whatever else is said of their day.
std::vector<DiaryRemark> remarksInTheWay(const DiaryForm& form, const WrittenDiary& base,
                                         const WrittenDiary& diary);

} // namespace quadrille
