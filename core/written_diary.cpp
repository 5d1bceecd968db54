// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/written_diary.h"

#include <algorithm>
#include <functional>
#include <set>
#include <tuple>
#include <utility>

namespace quadrille
{

namespace
{

WrittenSession sessionOf(const DiaryEntry& entry)
{
    WrittenSession session{.time = entry.duration, .comfort = entry.comfort};
    for (const SiteAmplitude& amplitude : entry.amplitudes) {
        session.amplitudes[amplitude.site] = amplitude.amplitude;
    }
    return session;
}

void write(DiaryEntry& entry, const WrittenSession& session)
{
    entry.duration = session.time.value_or(Milliseconds());
    entry.comfort = session.comfort;
    entry.amplitudes.clear();
    for (const auto& [site, amplitude] : session.amplitudes) {
        entry.amplitudes.push_back({site, amplitude});
    }
}

const WrittenSession* find(const WrittenDiary& diary, Date day, int number)
{
    const auto& sessions = diary.on(day).sessions;
    const auto session = sessions.find(number);
    return session != sessions.end() && session->second.time ? &session->second : nullptr;
}

DiaryEntry newEntry(const CourseRecords& records, Date day, int number,
                    const WrittenSession& session)
{
    DiaryEntry entry;
    entry.course = records.course.id;
    entry.day = day;
    entry.sessionNumber = number;
    write(entry, session);
    return entry;
}

/// A row that says something else than the diary, as it is to be.
std::optional<DiaryEntry> correctionOf(const DiaryEntry& row, const WrittenDiary& diary)
{
    const WrittenSession* session = find(diary, row.day, row.sessionNumber);
    DiaryEntry entry = row;
    if (session == nullptr) {
        entry.withdrawn = true;
    } else {
        if (row.withdrawn) { // another entry in the same place
            entry.withdrawn = false;
            entry.contractions.reset();
            entry.source = DiarySource::paper;
        }
        if (sessionOf(row) != *session) {
            write(entry, *session);
        }
    }
    return entry != row ? std::optional(entry) : std::nullopt;
}

void changeEntries(DiaryChanges& changes, const CourseRecords& records, const WrittenDiary& diary)
{
    std::set<std::pair<Date, int>> known;
    for (const DiaryEntry& row : records.entries) {
        known.emplace(row.day, row.sessionNumber);
        if (auto changed = correctionOf(row, diary)) {
            changes.corrected.push_back(std::move(*changed));
        }
    }
    for (const auto& [day, written] : diary.days) {
        for (const auto& [number, session] : written.sessions) {
            if (session.time && !known.contains({day, number})) {
                changes.added.push_back(newEntry(records, day, number, session));
            }
        }
    }
}

/// The row of a day as it is to be; nothing where it says that already.
std::optional<DiaryDay> changedDay(const DiaryDay& row, const WrittenDay& written)
{
    DiaryDay day = row;
    day.skin = written.skin;
    day.skinPad = written.skinPad;
    day.remark = written.remark;
    return day != row ? std::optional(day) : std::nullopt;
}

void changeDays(DiaryChanges& changes, const CourseRecords& records, const WrittenDiary& diary)
{
    std::set<Date> known;
    for (const DiaryDay& row : records.days) {
        known.insert(row.day);
        if (auto day = changedDay(row, diary.on(row.day))) {
            changes.days.push_back(std::move(*day));
        }
    }
    for (const auto& [date, written] : diary.days) {
        DiaryDay empty;
        empty.course = records.course.id;
        empty.day = date;
        if (auto day = known.contains(date) ? std::nullopt : changedDay(empty, written)) {
            changes.days.push_back(std::move(*day));
        }
    }
}

void changeReceipts(DiaryChanges& changes, const CourseRecords& records,
                    const std::optional<Date>& through, Date today)
{
    bool stands = !through;
    for (const DiaryReceived& row : records.receipts) {
        if (row.withdrawn) {
            continue;
        }
        stands = stands || row.throughDate == through;
        if (!through || row.throughDate > *through) {
            changes.receiptsWithdrawn.push_back(row);
            changes.receiptsWithdrawn.back().withdrawn = true;
        }
    }
    if (!stands) {
        DiaryReceived receipt;
        receipt.course = records.course.id;
        receipt.throughDate = *through;
        receipt.receivedOn = today;
        changes.receiptAdded = receipt;
    }
}

/// Whether one part says the same in both.
bool saysTheSame(const DiaryClash& part, const WrittenDiary& a, const WrittenDiary& b)
{
    if (part.part == DiaryPart::receivedThrough) {
        return a.receivedThrough == b.receivedThrough;
    }
    const WrittenDay& dayOfA = a.on(part.day);
    const WrittenDay& dayOfB = b.on(part.day);
    switch (part.part) {
    case DiaryPart::skin:
        return dayOfA.skin == dayOfB.skin && dayOfA.skinPad == dayOfB.skinPad;
    case DiaryPart::remark:
        return dayOfA.remark == dayOfB.remark;
    default:
        break;
    }
    const auto inA = dayOfA.sessions.find(part.session);
    const auto inB = dayOfB.sessions.find(part.session);
    const bool isInA = inA != dayOfA.sessions.end();
    const bool isInB = inB != dayOfB.sessions.end();
    return isInA == isInB && (!isInA || inA->second == inB->second);
}

/// Everything that any of them says, part by part.
std::vector<DiaryClash> partsOf(std::initializer_list<const WrittenDiary*> diaries)
{
    std::set<Date> days;
    std::set<std::pair<Date, int>> sessions;
    for (const WrittenDiary* diary : diaries) {
        for (const auto& [date, day] : diary->days) {
            days.insert(date);
            for (const auto& [number, session] : day.sessions) {
                sessions.emplace(date, number);
            }
        }
    }
    std::vector<DiaryClash> parts;
    parts.reserve(sessions.size() + 2 * days.size());
    for (const auto& [date, number] : sessions) {
        parts.push_back({DiaryPart::session, date, number});
    }
    for (const Date date : days) {
        parts.push_back({DiaryPart::skin, date, 0});
        parts.push_back({DiaryPart::remark, date, 0});
    }
    std::ranges::stable_sort(parts, {}, &DiaryClash::day);
    parts.push_back({DiaryPart::receivedThrough, {}, 0});
    return parts;
}

} // namespace

const WrittenDay& WrittenDiary::on(Date day) const
{
    static const WrittenDay nothing;
    const auto found = days.find(day);
    return found != days.end() ? found->second : nothing;
}

void WrittenDiary::put(Date day, WrittenDay written)
{
    std::erase_if(written.sessions, [](const auto& session) { return session.second.isEmpty(); });
    if (!written.skin || *written.skin == Skin::nothing) {
        written.skinPad.clear();
    }
    if (written.isEmpty()) {
        days.erase(day);
    } else {
        days[day] = std::move(written);
    }
}

bool DiaryChanges::isEmpty() const
{
    return added.empty() && corrected.empty() && days.empty() && receiptsWithdrawn.empty() &&
           !receiptAdded;
}

WrittenDiary writtenDiaryOf(const CourseRecords& records)
{
    WrittenDiary diary;
    for (const DiaryEntry& entry : records.entries) {
        if (!entry.withdrawn) {
            diary.days[entry.day].sessions[entry.sessionNumber] = sessionOf(entry);
        }
    }
    for (const DiaryDay& row : records.days) {
        WrittenDay day = diary.on(row.day);
        day.skin = row.skin;
        day.skinPad = row.skinPad;
        day.remark = row.remark;
        diary.put(row.day, std::move(day));
    }
    for (const DiaryReceived& receipt : records.receipts) {
        if (!receipt.withdrawn &&
            (!diary.receivedThrough || *diary.receivedThrough < receipt.throughDate)) {
            diary.receivedThrough = receipt.throughDate;
        }
    }
    return diary;
}

CourseRecords withDiary(CourseRecords records, const WrittenDiary& diary)
{
    const DiaryChanges changes = diaryChanges(records, diary, records.course.startDate);
    for (const DiaryEntry& changed : changes.corrected) {
        *std::ranges::find_if(records.entries, [&](const DiaryEntry& row) {
            return row.day == changed.day && row.sessionNumber == changed.sessionNumber;
        }) = changed;
    }
    records.entries.insert(records.entries.end(), changes.added.begin(), changes.added.end());
    for (const DiaryDay& changed : changes.days) {
        const auto row = std::ranges::find(records.days, changed.day, &DiaryDay::day);
        if (row != records.days.end()) {
            *row = changed;
        } else {
            records.days.push_back(changed);
        }
    }
    records.receipts.clear();
    if (diary.receivedThrough) {
        DiaryReceived receipt;
        receipt.throughDate = *diary.receivedThrough;
        records.receipts.push_back(receipt);
    }
    return records;
}

DiaryChanges diaryChanges(const CourseRecords& records, const WrittenDiary& diary, Date today)
{
    DiaryChanges changes;
    changeEntries(changes, records, diary);
    changeDays(changes, records, diary);
    changeReceipts(changes, records, diary.receivedThrough, today);
    return changes;
}

MergedDiary mergeDiaries(const WrittenDiary& base, const WrittenDiary& mine,
                         const WrittenDiary& theirs)
{
    MergedDiary merged{.diary = theirs};
    for (const DiaryClash& part : partsOf({&base, &mine, &theirs})) {
        if (saysTheSame(part, mine, base)) {
            continue; // theirs, changed or not
        }
        if (!saysTheSame(part, theirs, base) && !saysTheSame(part, theirs, mine)) {
            merged.clashes.push_back(part);
        }
        takePart(merged.diary, part, mine);
    }
    return merged;
}

void takePart(WrittenDiary& diary, const DiaryClash& part, const WrittenDiary& from)
{
    if (part.part == DiaryPart::receivedThrough) {
        diary.receivedThrough = from.receivedThrough;
        return;
    }
    WrittenDay day = diary.on(part.day);
    const WrittenDay& other = from.on(part.day);
    switch (part.part) {
    case DiaryPart::skin:
        day.skin = other.skin;
        day.skinPad = other.skinPad;
        break;
    case DiaryPart::remark:
        day.remark = other.remark;
        break;
    default:
        day.sessions.erase(part.session);
        if (const auto session = other.sessions.find(part.session);
            session != other.sessions.end()) {
            day.sessions[part.session] = session->second;
        }
    }
    diary.put(part.day, std::move(day));
}

} // namespace quadrille
