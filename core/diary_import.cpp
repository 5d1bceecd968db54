// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_import.h"

#include "core/day_sites.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <utility>

namespace quadrille
{

namespace
{

using SessionKey = std::pair<Date, int>;

/// The row that told a value of a day first.
template <class Told>
struct FirstTold {
    Told value;
    std::size_t row;
};

/// What the rows of a day say of it together.
struct DayTold {
    std::optional<FirstTold<Skin>> skin;
    std::optional<FirstTold<std::string>> pad;
    std::string remark;
    std::optional<std::size_t> firstRow;
};

/// Two records are compared where the file tells something.
RowState compared(bool differs)
{
    return differs ? RowState::conflict : RowState::same;
}

class Planning
{
public:
    Planning(const std::vector<ReportedRow>& rows, const ColumnMap& columns,
             const DiaryOnFile& onFile)
        : m_reported(rows)
        , m_columns(columns)
        , m_onFile(onFile)
        , m_sites(onFile.records, onFile.siteKeys)
        , m_numbered(std::ranges::any_of(columns, [](const auto& meaning) {
            return meaning && meaning->column == DiaryColumn::session;
        }))
    {
        m_import.rows.resize(rows.size());
        m_numbers.resize(rows.size());
        m_amplitudes.resize(rows.size());
    }

    DiaryImport plan()
    {
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            judge(i);
        }
        findContradictions();
        gatherDays();
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            if (m_import.rows[i].state == RowState::fresh) {
                hold(i);
            }
        }
        return std::move(m_import);
    }

private:
    /// What a row is by itself; `fresh` until it is held against the rest.
    void judge(std::size_t index)
    {
        const ReportedRow& told = m_reported[index];
        ImportRow& row = m_import.rows[index];
        row.reported = index;
        row.faults = told.faults;
        row.state = RowState::invalid;
        if (!row.faults.empty() || !told.day) {
            if (told.day) {
                ++m_counted[*told.day]; // once it is mended, those behind it keep their numbers
            }
            return;
        }
        const Course& course = m_onFile.records.course;
        if (*told.day < course.startDate) {
            row.state = RowState::beforeStart;
        } else if (course.endDate && *told.day > *course.endDate) {
            row.state = RowState::afterEnd;
        } else if (*told.day > m_onFile.today) {
            row.state = RowState::afterToday;
        } else if (!told.tellsOfSession() && !told.tellsOfDay()) {
            row.state = RowState::saysNothing;
        } else if (isWhole(index, *told.day)) {
            row.state = RowState::fresh;
        }
    }

    /// Gives the session its number and its amplitudes their sites.
    bool isWhole(std::size_t index, Date day)
    {
        const ReportedRow& told = m_reported[index];
        ImportRow& row = m_import.rows[index];
        if (!told.tellsOfSession()) {
            return true;
        }
        if (m_numbered && !told.session) {
            row.faults.push_back({.problem = CellProblem::sessionNotSaid});
            return false;
        }
        m_numbers[index] = m_numbered ? *told.session : ++m_counted[day];
        constexpr int mostSessions = 24;
        if (m_numbers[index] > mostSessions) {
            row.faults.push_back({.problem = CellProblem::sessionUnreadable,
                                  .written = std::to_string(m_numbers[index])});
        }
        for (const auto& [column, amplitude] : told.amplitudes) {
            const auto site = m_sites.siteOf(day, *m_columns[column]);
            if (const auto* key = std::get_if<std::int64_t>(&site)) {
                m_amplitudes[index].push_back({.site = *key, .amplitude = amplitude});
            } else {
                row.faults.push_back({.problem = std::get<CellProblem>(site), .column = column});
            }
        }
        std::ranges::sort(m_amplitudes[index], {}, &SiteAmplitude::site);
        return row.faults.empty();
    }

    void contradict(std::size_t one, std::size_t other, CellProblem problem)
    {
        const auto blame = [&](std::size_t blamed, std::size_t by) {
            ImportRow& row = m_import.rows[blamed];
            row.state = RowState::invalid;
            row.faults.push_back({.problem = problem, .otherLine = m_reported[by].line});
        };
        if (m_import.rows[one].state != RowState::invalid) {
            blame(one, other);
        }
        blame(other, one);
    }

    bool saySame(std::size_t one, std::size_t other) const
    {
        const ReportedRow& a = m_reported[one];
        const ReportedRow& b = m_reported[other];
        return a.duration == b.duration && a.contractions == b.contractions &&
               a.comfort == b.comfort && m_amplitudes[one] == m_amplitudes[other] &&
               a.skin == b.skin && a.pad == b.pad && a.remark == b.remark;
    }

    void findContradictions()
    {
        std::map<SessionKey, std::size_t> firstOf;
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state != RowState::fresh || !told.tellsOfSession()) {
                continue;
            }
            const auto [first, isNew] = firstOf.try_emplace({*told.day, m_numbers[i]}, i);
            if (isNew) {
                continue;
            }
            if (saySame(first->second, i)) {
                m_import.rows[i].state = RowState::repeated;
                m_import.rows[i].otherLine = m_reported[first->second].line;
            } else {
                contradict(first->second, i, CellProblem::contradictsRow);
            }
        }
        findDayContradictions();
    }

    template <class Told>
    void tell(std::optional<FirstTold<Told>>& first, const Told& value, std::size_t row)
    {
        if (!first) {
            first = FirstTold<Told>{value, row};
        } else if (first->value != value) {
            contradict(first->row, row, CellProblem::dayContradictsRow);
        }
    }

    void findDayContradictions()
    {
        std::map<Date, DayTold> days;
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state != RowState::fresh || !told.tellsOfDay()) {
                continue;
            }
            if (told.skin) {
                tell(days[*told.day].skin, *told.skin, i);
            }
            if (!told.pad.empty()) {
                tell(days[*told.day].pad, told.pad, i);
            }
        }
    }

    void gatherDays()
    {
        std::map<Date, std::set<std::string>> remarks;
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state != RowState::fresh || !told.tellsOfDay()) {
                continue;
            }
            DayTold& day = m_days[*told.day];
            day.firstRow = day.firstRow.value_or(i);
            if (told.skin) {
                day.skin = FirstTold<Skin>{*told.skin, i};
            }
            if (!told.pad.empty()) {
                day.pad = FirstTold<std::string>{told.pad, i};
            }
            if (!told.remark.empty() && remarks[*told.day].insert(told.remark).second) {
                day.remark += (day.remark.empty() ? "" : "\n") + told.remark;
            }
        }
        for (const DiaryEntry& entry : m_onFile.records.entries) {
            m_entries[{entry.day, entry.sessionNumber}] = &entry;
        }
        for (const DiaryDay& day : m_onFile.records.days) {
            m_daysOnFile[day.day] = &day;
        }
    }

    void hold(std::size_t index)
    {
        ImportRow& row = m_import.rows[index];
        const Date day = *m_reported[index].day;
        std::vector<RowState> states;
        if (m_reported[index].tellsOfSession()) {
            row.session = m_import.sessions.size();
            m_import.sessions.push_back(sessionItem(index));
            states.push_back(m_import.sessions.back().state);
        }
        const auto told = m_days.find(day);
        if (told != m_days.end() && told->second.firstRow == index) {
            row.day = m_import.days.size();
            m_import.days.push_back(dayItem(day, told->second));
            states.push_back(m_import.days.back().state);
        }
        const auto has = [&](RowState state) {
            return std::ranges::find(states, state) != states.end();
        };
        if (has(RowState::conflict)) {
            row.state = RowState::conflict;
        } else if (has(RowState::fresh)) {
            row.state = RowState::fresh;
        } else if (has(RowState::same)) {
            row.state = RowState::same;
        } else { // its day is told by an earlier row
            row.state = RowState::repeated;
            row.otherLine = m_reported[*told->second.firstRow].line;
        }
    }

    ImportItem<DiaryEntry> sessionItem(std::size_t index) const
    {
        const ReportedRow& told = m_reported[index];
        ImportItem<DiaryEntry> item;
        const auto found = m_entries.find({*told.day, m_numbers[index]});
        if (found != m_entries.end()) {
            item.ours = *found->second;
            item.file = *found->second;
        }
        DiaryEntry& entry = item.file;
        entry.course = m_onFile.records.course.id;
        entry.day = *told.day;
        entry.sessionNumber = m_numbers[index];
        entry.duration = *told.duration;
        entry.contractions = told.contractions ? told.contractions : entry.contractions;
        entry.comfort = told.comfort ? told.comfort : entry.comfort;
        entry.withdrawn = false;
        for (const SiteAmplitude& amplitude : m_amplitudes[index]) {
            const auto same =
                std::ranges::find(entry.amplitudes, amplitude.site, &SiteAmplitude::site);
            if (same != entry.amplitudes.end()) {
                same->amplitude = amplitude.amplitude;
            } else {
                entry.amplitudes.push_back(amplitude);
            }
        }
        std::ranges::sort(entry.amplitudes, {}, &SiteAmplitude::site);
        item.state = item.ours ? compared(entry != *item.ours) : RowState::fresh;
        if (item.state != RowState::same) {
            entry.source = DiarySource::file;
        }
        return item;
    }

    ImportItem<DiaryDay> dayItem(Date date, const DayTold& told) const
    {
        ImportItem<DiaryDay> item;
        if (const auto found = m_daysOnFile.find(date); found != m_daysOnFile.end()) {
            item.ours = *found->second;
            item.file = *found->second;
        }
        DiaryDay& day = item.file;
        day.course = m_onFile.records.course.id;
        day.day = date;
        if (told.skin) {
            const bool stays = day.skin == told.skin->value;
            day.skin = told.skin->value;
            day.skinPad = stays ? day.skinPad : std::string(); // it was about another mark
        }
        day.skinPad = told.pad ? told.pad->value : day.skinPad;
        day.remark = told.remark.empty() ? day.remark : told.remark;
        item.state = item.ours ? compared(day != *item.ours) : RowState::fresh;
        return item;
    }

    const std::vector<ReportedRow>& m_reported;
    const ColumnMap& m_columns;
    const DiaryOnFile& m_onFile;
    DaySites m_sites;
    bool m_numbered;
    DiaryImport m_import;
    std::vector<int> m_numbers; ///< of the sessions, by row
    std::vector<std::vector<SiteAmplitude>> m_amplitudes;
    std::map<Date, int> m_counted;
    std::map<Date, DayTold> m_days;
    std::map<SessionKey, const DiaryEntry*> m_entries;
    std::map<Date, const DiaryDay*> m_daysOnFile;
};

} // namespace

DiaryImport planImport(const std::vector<ReportedRow>& rows, const ColumnMap& columns,
                       const DiaryOnFile& onFile)
{
    return Planning(rows, columns, onFile).plan();
}

} // namespace quadrille
