// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_import.h"

#include <algorithm>
#include <iterator>
#include <map>
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
    std::map<std::string, std::size_t> remarks; ///< with the rows that told them first
    std::string remark;
    std::optional<std::size_t> item; ///< its place among the days

    /// False where earlier rows say all of it.
    bool add(const ReportedRow& told, std::size_t row)
    {
        bool isNew = false;
        if (told.skin && !skin) {
            skin = FirstTold<Skin>{*told.skin, row};
            isNew = true;
        }
        if (!told.pad.empty() && !pad) {
            pad = FirstTold<std::string>{told.pad, row};
            isNew = true;
        }
        if (!told.remark.empty() && remarks.emplace(told.remark, row).second) {
            remark += (remark.empty() ? "" : "\n") + told.remark;
            isNew = true;
        }
        return isNew;
    }
    /// The row that said first what a row that adds nothing says.
    std::size_t rowThatSays(const ReportedRow& told) const
    {
        if (!told.remark.empty()) {
            return remarks.at(told.remark);
        }
        return !told.pad.empty() ? pad->row : skin->row;
    }
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
        m_addsToDay.resize(rows.size());
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
                addAmplitude(index, column, {.site = *key, .amplitude = amplitude});
            } else {
                row.faults.push_back({.problem = std::get<CellProblem>(site), .column = column});
            }
        }
        std::ranges::sort(m_amplitudes[index], {}, &SiteAmplitude::site);
        return row.faults.empty();
    }

    /// Two columns may be of one site; none of them is preferred.
    void addAmplitude(std::size_t index, std::size_t column, const SiteAmplitude& told)
    {
        std::vector<SiteAmplitude>& amplitudes = m_amplitudes[index];
        const auto known = std::ranges::find(amplitudes, told.site, &SiteAmplitude::site);
        if (known == amplitudes.end()) {
            amplitudes.push_back(told);
        } else if (*known != told) {
            m_import.rows[index].faults.push_back(
                {.problem = CellProblem::amplitudesDiffer, .column = column});
        }
    }

    /// Where the rows do not all say the same, none of them is taken. False where they do.
    template <class Same>
    bool contradict(const std::vector<std::size_t>& rows, CellProblem problem, Same same)
    {
        const auto asTheFirst = [&](std::size_t row) { return same(rows.front(), row); };
        const auto other = std::ranges::find_if_not(rows, asTheFirst);
        if (other == rows.end()) {
            return false;
        }
        for (const std::size_t blamed : rows) {
            const std::size_t by = asTheFirst(blamed) ? *other : rows.front();
            const CellFault fault{.problem = problem, .otherLine = m_reported[by].line};
            ImportRow& row = m_import.rows[blamed];
            row.state = RowState::invalid;
            if (std::ranges::find(row.faults, fault) == row.faults.end()) {
                row.faults.push_back(fault);
            }
        }
        return true;
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
        std::map<SessionKey, std::vector<std::size_t>> tellers;
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state == RowState::fresh && told.tellsOfSession()) {
                tellers[{*told.day, m_numbers[i]}].push_back(i);
            }
        }
        const auto same = [this](std::size_t a, std::size_t b) { return saySame(a, b); };
        for (const auto& [session, rows] : tellers) {
            if (contradict(rows, CellProblem::contradictsRow, same)) {
                continue;
            }
            for (std::size_t i = 1; i < rows.size(); ++i) {
                m_import.rows[rows[i]].state = RowState::repeated;
                m_import.rows[rows[i]].otherLine = m_reported[rows.front()].line;
            }
        }
        findDayContradictions();
    }

    void findDayContradictions()
    {
        std::map<Date, std::vector<std::size_t>> skins;
        std::map<Date, std::vector<std::size_t>> pads;
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state != RowState::fresh) {
                continue;
            }
            if (told.skin) {
                skins[*told.day].push_back(i);
            }
            if (!told.pad.empty()) {
                pads[*told.day].push_back(i);
            }
        }
        for (const auto& [day, rows] : skins) {
            contradict(rows, CellProblem::dayContradictsRow, [this](std::size_t a, std::size_t b) {
                return m_reported[a].skin == m_reported[b].skin;
            });
        }
        for (const auto& [day, rows] : pads) {
            contradict(rows, CellProblem::dayContradictsRow, [this](std::size_t a, std::size_t b) {
                return m_reported[a].pad == m_reported[b].pad;
            });
        }
    }

    void gatherDays()
    {
        for (std::size_t i = 0; i < m_reported.size(); ++i) {
            const ReportedRow& told = m_reported[i];
            if (m_import.rows[i].state == RowState::fresh && told.tellsOfDay()) {
                m_addsToDay[i] = m_days[*told.day].add(told, i);
            }
        }
        for (const DiaryEntry& entry : m_onFile.records.entries) {
            m_entries[{entry.day, entry.sessionNumber}] = &entry;
        }
        for (const DiaryDay& day : m_onFile.records.days) {
            m_daysOnFile[day.day] = &day;
        }
    }

    /// The place of a day among those of the import.
    std::size_t placeOf(Date date)
    {
        DayTold& told = m_days[date];
        if (!told.item) {
            told.item = m_import.days.size();
            m_import.days.push_back(dayItem(date, told));
        }
        return *told.item;
    }

    void hold(std::size_t index)
    {
        ImportRow& row = m_import.rows[index];
        const ReportedRow& told = m_reported[index];
        std::vector<RowState> states;
        if (told.tellsOfSession()) {
            row.session = m_import.sessions.size();
            m_import.sessions.push_back(sessionItem(index));
            states.push_back(m_import.sessions.back().state);
        }
        if (m_addsToDay[index]) {
            row.day = placeOf(*told.day);
            states.push_back(m_import.days[*row.day].state);
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
        } else { // earlier rows tell all that it tells of the day
            row.state = RowState::repeated;
            row.otherLine = m_reported[m_days[*told.day].rowThatSays(told)].line;
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
        if (entry.withdrawn) { // what it said was taken back; the file alone says it anew
            entry.contractions.reset();
            entry.comfort.reset();
            entry.amplitudes.clear();
        }
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
    std::vector<bool> m_addsToDay; ///< by row
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
