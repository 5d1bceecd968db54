// SPDX-License-Identifier: GPL-3.0-or-later
// The diary of a course as it is written down, apart from how it is stored: what a page holds while
// it is copied, what of it is new, and what two people made of the same page.
#pragma once

#include "core/lived_days.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// One line of a day. What is empty was not written.
struct WrittenSession {
    std::optional<Milliseconds> time = std::nullopt; ///< 0: not done
    std::optional<int> comfort = std::nullopt;
    std::map<std::int64_t, Amplitude> amplitudes = {}; ///< by SiteAmplitude::site
    bool isEmpty() const { return !time && !comfort && amplitudes.empty(); }
    friend bool operator==(const WrittenSession&, const WrittenSession&) = default;
};

/// What belongs to the day.
struct WrittenDay {
    std::map<int, WrittenSession> sessions = {}; ///< by session number, none of them empty
    std::optional<Skin> skin = std::nullopt;
    std::string skinPad = {}; ///< only where skin is more than nothing
    std::string remark = {};
    bool isEmpty() const { return sessions.empty() && !skin && skinPad.empty() && remark.empty(); }
    friend bool operator==(const WrittenDay&, const WrittenDay&) = default;
};

/// The whole diary. A day that is not in it says nothing.
struct WrittenDiary {
    std::map<Date, WrittenDay> days = {}; ///< none of them empty
    std::optional<Date> receivedThrough = std::nullopt;

    /// An empty one where nothing is written.
    const WrittenDay& on(Date day) const;
    /// Puts a day into its place; what is empty in it goes.
    void put(Date day, WrittenDay written);
    friend bool operator==(const WrittenDiary&, const WrittenDiary&) = default;
};

/// What is on record, withdrawn entries and receipts left out.
WrittenDiary writtenDiaryOf(const CourseRecords& records);

/// `records` as they would be with `diary` saved, for figures and the grid. A session without
/// minutes is left out.
CourseRecords withDiary(CourseRecords records, const WrittenDiary& diary);

/// What saving writes. Entries keep id, version, contractions and source of the row they change.
struct DiaryChanges {
    std::vector<DiaryEntry> added = {};
    std::vector<DiaryEntry> corrected = {}; ///< also those withdrawn, and withdrawn ones taken up
    std::vector<DiaryDay> days = {};        ///< new and changed
    std::vector<DiaryReceived> receiptsWithdrawn = {};
    std::optional<DiaryReceived> receiptAdded = std::nullopt;
    bool isEmpty() const;
};

/// `records` hold every row of the course, withdrawn ones too. What is new was copied from paper. A
/// session without minutes is not saved. A through-date that moves back withdraws the receipts that
/// reach beyond it. `today`: the day on which the diary came.
DiaryChanges diaryChanges(const CourseRecords& records, const WrittenDiary& diary, Date today);

/// What of a diary two people can change apart from one another.
enum class DiaryPart { session, skin, remark, receivedThrough };

/// Two changes of one part since both were read.
struct DiaryClash {
    DiaryPart part = DiaryPart::session;
    Date day;
    int session = 0; ///< of a session
    friend bool operator==(const DiaryClash&, const DiaryClash&) = default;
};

/// Two diaries that began as `base`, put together.
struct MergedDiary {
    WrittenDiary diary; ///< both changes; mine where they clash
    std::vector<DiaryClash> clashes = {};
};
MergedDiary mergeDiaries(const WrittenDiary& base, const WrittenDiary& mine,
                         const WrittenDiary& theirs);

/// Takes one part over from another diary.
void takePart(WrittenDiary& diary, const DiaryClash& part, const WrittenDiary& from);

} // namespace quadrille
