// SPDX-License-Identifier: GPL-3.0-or-later
// A course day by day: what was asked for, what the diary says of it, and what nobody knows yet.
#pragma once

#include "core/course_state.h"
#include "core/diary.h"
#include "core/follow_up.h"
#include "core/plan.h"
#include "core/prescribed_days.h"
#include "core/session_counts.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// What is on record of one course. Every list is the course's own, in any order; what is withdrawn
/// counts nowhere.
struct CourseRecords {
    Course course;
    std::vector<Plan> plans = {};
    std::vector<Pause> pauses = {};
    std::vector<DiaryEntry> entries = {};
    std::vector<DiaryDay> days = {};
    std::vector<DiaryReceived> receipts = {};
    std::vector<FollowUp> followUps = {};
};

/// Thresholds of the practice, percent. Common practice, no source.
struct AdherenceRules {
    int sessionDonePercent = 90; ///< of the prescribed length, from which a session counts as done
    int weekPercent = 80;        ///< session adherence from which a week counts
    friend bool operator==(const AdherenceRules&, const AdherenceRules&) = default;
};

/// A session that is prescribed, reported or both.
struct SessionOfDay {
    SessionState state = SessionState::toCome;
    std::optional<std::size_t> entry = std::nullopt; ///< its place among the entries
    friend bool operator==(const SessionOfDay&, const SessionOfDay&) = default;
};

/// What a reported session delivered, at most a whole sitting: contractions as the patient reported
/// them, else from the minutes.
SittingDose deliveredBy(const DiaryEntry& entry, const Sitting& sitting);

/// How a day as a whole stands. One session that is to come or not known leaves the day open.
enum class DayStanding {
    notPrescribed,
    toCome,
    notKnownYet,
    done,
    partly,
    missed,
    extra, ///< something was done, nothing was asked for
    paused,
};

/// One day as it was lived.
struct LivedDay {
    Date day;
    std::optional<PrescribedDay> asked = std::nullopt; ///< none where no block is in force
    DayStanding standing = DayStanding::notPrescribed;
    /// Reported ones in the order of their numbers, then those that were not.
    std::vector<SessionOfDay> sessions = {};
    SessionCounts counts = {};
    DoseCounts dose = {};
    std::optional<Skin> skin = std::nullopt;
    std::string skinPad = {};
    std::string remark = {};
};

/// A course as it stands on a day.
///
/// An entry makes its session known, whenever it comes. Without one a prescribed session is missed
/// on or before the day through which the diary was received, not known yet after it, and to come
/// from `asOf` on. Where several sessions of a day are reported, the longest fill the prescribed
/// ones and the others are extra; two short ones never make a whole one.
///
/// A block with a number of days a week is counted by the week: up to its sessions a day count on
/// any day, the longest first, until the week's sessions are full. What is reported counts on its
/// day, what the week lacks on its last day, and missed only once the diary is known up to that.
struct CourseAsLived {
    Date startDate;
    Date asOf;
    /// The diary is known up to and with this day, at most `asOf`; none before the first receipt.
    std::optional<Date> knownThrough = std::nullopt;
    /// Days on which a block is in force and those with an entry or a remark; the earliest first.
    std::vector<LivedDay> days = {};

    bool isKnown(Date day) const { return knownThrough && day <= *knownThrough; }
    /// Nothing where no block is in force and nothing is on record.
    const LivedDay* find(Date day) const;
};

/// `asOf` is taken for today: what is on record of later days does not count yet. What has come
/// back since counts: this is how it was, not what was known then.
CourseAsLived courseAsLived(const CourseRecords& records, const AdherenceRules& rules, Date asOf);

} // namespace quadrille
