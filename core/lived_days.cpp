// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/lived_days.h"

#include <algorithm>
#include <functional>
#include <span>
#include <tuple>
#include <utility>

namespace quadrille
{

namespace
{

/// Places among the entries of the record.
using Entries = std::span<const std::size_t>;

/// A day with its entries in the order of their session numbers.
struct OpenDay {
    LivedDay* day = nullptr;
    Entries entries;
};

/// A reported session that may fill a prescribed one.
struct Candidate {
    std::size_t entry = 0;
    Milliseconds counted{}; ///< at most a whole session
};

/// The longest first; those alike stay in their order.
void sortLongestFirst(std::vector<Candidate>& candidates)
{
    std::ranges::stable_sort(candidates, std::ranges::greater(), &Candidate::counted);
}

DayStanding standingOf(const LivedDay& day)
{
    const SessionCounts& counts = day.counts;
    if (counts.toCome > 0) {
        return DayStanding::toCome;
    }
    if (counts.notKnownYet > 0) {
        return DayStanding::notKnownYet;
    }
    if (counts.prescribed() > 0) {
        return counts.done == counts.prescribed() ? DayStanding::done
               : counts.done + counts.partly == 0 ? DayStanding::missed
                                                  : DayStanding::partly;
    }
    if (counts.extra > 0) {
        return DayStanding::extra;
    }
    return day.asked && day.asked->isPaused ? DayStanding::paused : DayStanding::notPrescribed;
}

/// Holds the diary of one course against its plans.
class DiaryReader
{
public:
    DiaryReader(const CourseRecords& records, const AdherenceRules& rules, Date asOf)
        : m_records(records)
        , m_rules(rules)
        , m_fills(records.entries.size(), false)
    {
        m_lived.startDate = records.course.startDate;
        m_lived.asOf = asOf;
    }

    CourseAsLived read()
    {
        readReceipts();
        readSittings();
        orderEntries();
        layOutDays();
        layOutRemarks();
        judgeDays();
        return std::move(m_lived);
    }

private:
    void readReceipts()
    {
        for (const DiaryReceived& receipt : m_records.receipts) {
            const Date through = std::min(receipt.throughDate, m_lived.asOf);
            if (!receipt.withdrawn && !m_lived.isKnown(through)) {
                m_lived.knownThrough = through;
            }
        }
    }

    void readSittings()
    {
        for (const Plan& plan : m_records.plans) {
            std::vector<std::optional<Sitting>>& sittings = m_sittings.emplace_back();
            for (const Block& block : plan.blocks) {
                sittings.push_back(
                    Sitting::of(block, plan.stimulator.rampHabit, plan.stimulator.cycleStart));
            }
        }
    }

    void orderEntries()
    {
        const std::vector<DiaryEntry>& entries = m_records.entries;
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (!entries[i].withdrawn && entries[i].day <= m_lived.asOf) {
                m_entries.push_back(i);
            }
        }
        std::ranges::sort(m_entries, {}, [&](std::size_t i) {
            return std::tuple(entries[i].day, entries[i].sessionNumber, i);
        });
    }

    void layOutDays()
    {
        const auto asked = prescribedDays(m_records.course, m_records.plans, m_records.pauses);
        std::vector<Date> dates;
        dates.reserve(asked.size() + m_entries.size() + m_records.days.size());
        for (const PrescribedDay& day : asked) {
            dates.push_back(day.day);
        }
        for (const std::size_t entry : m_entries) {
            dates.push_back(m_records.entries[entry].day);
        }
        for (const DiaryDay& day : m_records.days) {
            if (day.day <= m_lived.asOf) {
                dates.push_back(day.day);
            }
        }
        std::ranges::sort(dates);
        dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
        auto next = asked.begin();
        for (const Date date : dates) {
            LivedDay& day = m_lived.days.emplace_back();
            day.day = date;
            if (next != asked.end() && next->day == date) {
                day.asked = *next++;
            }
        }
    }

    void layOutRemarks()
    {
        for (const DiaryDay& reported : m_records.days) {
            const auto day =
                std::ranges::lower_bound(m_lived.days, reported.day, {}, &LivedDay::day);
            if (day != m_lived.days.end() && day->day == reported.day) {
                day->skin = reported.skin;
                day->skinPad = reported.skinPad;
                day->remark = reported.remark;
            }
        }
    }

    void judgeDays()
    {
        std::vector<OpenDay> week;
        auto next = m_entries.begin();
        for (LivedDay& day : m_lived.days) {
            const auto first = next;
            next = std::find_if(first, m_entries.end(), [&](std::size_t entry) {
                return m_records.entries[entry].day != day.day;
            });
            const OpenDay open{&day, Entries(first, next)};
            if (!day.asked || !day.asked->anyDay || day.asked->isPaused) {
                judgeDay(open);
                continue;
            }
            if (!week.empty() && !sameWeek(*week.front().day->asked, *day.asked)) {
                judgeWeek(week);
                week.clear();
            }
            week.push_back(open);
        }
        judgeWeek(week);
    }

    static bool sameWeek(const PrescribedDay& a, const PrescribedDay& b)
    {
        return a.week == b.week && a.block == b.block;
    }

    /// Null where no block is in force or its settings give no length.
    const Sitting* sittingOf(const LivedDay& day) const
    {
        if (!day.asked) {
            return nullptr;
        }
        const auto& sitting = m_sittings[day.asked->block.plan][day.asked->block.block];
        return sitting ? &*sitting : nullptr;
    }

    /// The sessions of a day that may fill prescribed ones: the longest, so many.
    std::vector<Candidate> candidatesOf(const OpenDay& open, int sessions) const
    {
        const Sitting* sitting = sittingOf(*open.day);
        std::vector<Candidate> candidates;
        for (const std::size_t entry : open.entries) {
            const Milliseconds time = m_records.entries[entry].duration;
            if (time > Milliseconds(0)) {
                candidates.push_back(
                    {entry, sitting ? std::min(time, sitting->whole().time) : time});
            }
        }
        sortLongestFirst(candidates);
        if (candidates.size() > static_cast<std::size_t>(sessions)) {
            candidates.resize(static_cast<std::size_t>(sessions));
        }
        return candidates;
    }

    void judgeDay(const OpenDay& open)
    {
        LivedDay& day = *open.day;
        const int asked = day.asked ? day.asked->sessions : 0;
        const auto filling = candidatesOf(open, asked);
        for (const Candidate& candidate : filling) {
            m_fills[candidate.entry] = true;
        }
        takeReported(open, asked - static_cast<int>(filling.size()));
        const SessionState rest = stateWithoutEntry(day.day);
        while (day.counts.prescribed() < asked) {
            day.sessions.push_back({rest});
            day.counts.add(rest);
        }
        day.standing = standingOf(day);
        countDose(day);
    }

    SessionState stateWithoutEntry(Date day) const
    {
        return m_lived.isKnown(day) ? SessionState::missed
               : day < m_lived.asOf ? SessionState::notKnownYet
                                    : SessionState::toCome;
    }

    /// A whole week of a block that leaves the days to the patient, or the part of it in which the
    /// block is in force.
    void judgeWeek(const std::vector<OpenDay>& week)
    {
        if (week.empty()) {
            return;
        }
        const PrescribedDay& asked = *week.front().day->asked;
        const Block& block = m_records.plans[asked.block.plan].blocks[asked.block.block];
        const int sessions = asked.sessions * daysOfPartWeek(std::get<DaysPerWeek>(block.schedule),
                                                             static_cast<int>(week.size()));
        std::vector<Candidate> filling;
        for (const OpenDay& open : week) {
            const auto candidates = candidatesOf(open, asked.sessions);
            filling.insert(filling.end(), candidates.begin(), candidates.end());
        }
        sortLongestFirst(filling);
        const auto filled = std::min(filling.size(), static_cast<std::size_t>(sessions));
        for (std::size_t i = 0; i < filled; ++i) {
            m_fills[filling[i].entry] = true;
        }
        const int lacking = sessions - static_cast<int>(filled);
        const Date last = week.back().day->day;
        for (const OpenDay& open : week) {
            takeReported(open, 0);
            open.day->standing = standingInWeek(*open.day, lacking, last);
        }
        week.back().day->counts.add(stateWithoutEntry(last), lacking);
        for (const OpenDay& open : week) {
            countDose(*open.day);
        }
    }

    DayStanding standingInWeek(const LivedDay& day, int lacking, Date last) const
    {
        if (day.counts.delivered() > 0) {
            return standingOf(day);
        }
        const bool weekIsOver = last < m_lived.asOf || m_lived.isKnown(last);
        if (lacking == 0 || (m_lived.isKnown(day.day) && weekIsOver)) {
            return DayStanding::notPrescribed;
        }
        return m_lived.isKnown(day.day) || day.day >= m_lived.asOf ? DayStanding::toCome
                                                                   : DayStanding::notKnownYet;
    }

    /// Gives a day its reported sessions. Of those of nought minutes so many are prescribed ones.
    void takeReported(const OpenDay& open, int prescribedNought)
    {
        LivedDay& day = *open.day;
        for (const std::size_t i : open.entries) {
            const DiaryEntry& entry = m_records.entries[i];
            SessionState state = SessionState::extra;
            if (m_fills[i]) {
                state = isDone(entry, sittingOf(day)) ? SessionState::done : SessionState::partly;
                takeDose(day, entry);
            } else if (entry.duration > Milliseconds(0)) {
                day.dose.overUse += entry.duration;
            } else if (prescribedNought > 0) {
                --prescribedNought;
                state = SessionState::missed;
            } else {
                continue;
            }
            day.sessions.push_back({state, i});
            day.counts.add(state);
        }
    }

    bool isDone(const DiaryEntry& entry, const Sitting* sitting) const
    {
        return sitting == nullptr ||
               entry.duration * 100 >= sitting->whole().time * m_rules.sessionDonePercent;
    }

    void takeDose(LivedDay& day, const DiaryEntry& entry) const
    {
        const Sitting* sitting = sittingOf(day);
        if (sitting == nullptr) {
            return;
        }
        const SittingDose delivered = deliveredBy(entry, *sitting);
        if (entry.contractions) {
            ++day.dose.contractionsReported;
        } else {
            ++day.dose.contractionsComputed;
        }
        day.dose.delivered += delivered;
        day.dose.overUse += entry.duration - delivered.time;
    }

    void countDose(LivedDay& day) const
    {
        const int known = day.counts.known();
        if (const Sitting* sitting = sittingOf(day)) {
            day.dose.prescribed = sitting->whole() * known;
        } else {
            day.dose.sessionsWithoutDose = known;
        }
    }

    const CourseRecords& m_records;
    const AdherenceRules& m_rules;
    CourseAsLived m_lived;
    std::vector<std::vector<std::optional<Sitting>>> m_sittings; ///< by plan and block
    std::vector<std::size_t> m_entries; ///< that count, by day and session number
    std::vector<bool> m_fills;          ///< of each entry: it fills a prescribed session
};

} // namespace

SittingDose deliveredBy(const DiaryEntry& entry, const Sitting& sitting)
{
    SittingDose delivered = sitting.after(entry.duration);
    if (entry.contractions) {
        delivered.contractions =
            std::clamp<std::int64_t>(*entry.contractions, 0, sitting.whole().contractions);
    }
    return delivered;
}

const LivedDay* CourseAsLived::find(Date day) const
{
    const auto found = std::ranges::lower_bound(days, day, {}, &LivedDay::day);
    return found != days.end() && found->day == day ? &*found : nullptr;
}

CourseAsLived courseAsLived(const CourseRecords& records, const AdherenceRules& rules, Date asOf)
{
    return DiaryReader(records, rules, asOf).read();
}

} // namespace quadrille
