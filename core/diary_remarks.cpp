// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_remarks.h"

#include <algorithm>

namespace quadrille
{

namespace
{

constexpr Milliseconds wholeDay = std::chrono::hours(24);
constexpr int mostComfort = 10;

class DayReader
{
public:
    DayReader(const DiaryForm& form, const DiaryFormDay& asked, const WrittenDay& written)
        : m_form(form)
        , m_asked(asked)
        , m_written(written)
    {
    }

    std::vector<DiaryRemark> read()
    {
        for (const auto& [number, session] : m_written.sessions) {
            readMinutes(number, session);
            readAmplitudes(number, session);
            if (session.comfort && *session.comfort > mostComfort) {
                add(DiaryRemarkKind::comfortOutside, {m_asked.day, number, DiaryField::comfort, 0},
                    *session.comfort, mostComfort);
            }
        }
        if (m_written.skin >= Skin::thereNextDay) {
            add(DiaryRemarkKind::skinMark, {m_asked.day, 1, DiaryField::skin, 0},
                static_cast<int>(*m_written.skin));
        }
        std::ranges::stable_sort(m_remarks, {}, &DiaryRemark::kind);
        return std::move(m_remarks);
    }

private:
    void add(DiaryRemarkKind kind, const DiaryPlace& place, std::int64_t figure = 0,
             std::int64_t limit = 0)
    {
        m_remarks.push_back({kind, place, figure, limit});
    }

    void readMinutes(int number, const WrittenSession& session)
    {
        const DiaryPlace place{.day = m_asked.day, .session = number};
        if (m_asked.day > m_form.today) {
            add(DiaryRemarkKind::dayToCome, place);
        }
        if (!m_asked.isOfCourse) {
            add(DiaryRemarkKind::outsideCourse, place);
        }
        if (!session.time) {
            return add(DiaryRemarkKind::minutesMissing, place);
        }
        const Milliseconds time = *session.time;
        if (time > m_asked.longest.value_or(wholeDay)) {
            add(m_asked.longest ? DiaryRemarkKind::overTimer : DiaryRemarkKind::overDay, place,
                time.count(), m_asked.longest.value_or(wholeDay).count());
        } else if (number > m_asked.sessions && time > Milliseconds(0)) {
            add(DiaryRemarkKind::extraSession, place, number, m_asked.sessions);
        } else if (m_asked.length && time > *m_asked.length) {
            add(DiaryRemarkKind::overUse, place, time.count(), m_asked.length->count());
        }
    }

    void readAmplitudes(int number, const WrittenSession& session)
    {
        for (std::size_t i = 0; i < m_asked.sites.size(); ++i) {
            const DiarySite& site = m_asked.sites[i];
            const auto written = session.amplitudes.find(site.key);
            if (written == session.amplitudes.end()) {
                continue;
            }
            const DiaryPlace place{m_asked.day, number, DiaryField::amplitude, i};
            const Amplitude amplitude = written->second;
            if (m_asked.mostAmplitude && amplitude > *m_asked.mostAmplitude) {
                add(DiaryRemarkKind::overUnit, place, amplitude.count(),
                    m_asked.mostAmplitude->count());
            } else if (site.ceiling && amplitude > *site.ceiling) {
                add(DiaryRemarkKind::overCeiling, place, amplitude.count(), site.ceiling->count());
            }
        }
    }

    const DiaryForm& m_form;
    const DiaryFormDay& m_asked;
    const WrittenDay& m_written;
    std::vector<DiaryRemark> m_remarks;
};

/// Whether a session is written and was so before.
bool standsAsIs(int session, const WrittenDay& before, const WrittenDay& now)
{
    const auto was = before.sessions.find(session);
    const auto is = now.sessions.find(session);
    return was != before.sessions.end() && is != now.sessions.end() && was->second == is->second;
}

} // namespace

std::vector<DiaryRemark> remarksOn(const DiaryForm& form, Date day, const WrittenDay& written)
{
    const DiaryFormDay* asked = form.find(day);
    return asked != nullptr ? DayReader(form, *asked, written).read() : std::vector<DiaryRemark>();
}

std::vector<DiaryRemark> remarksInTheWay(const DiaryForm& form, const WrittenDiary& base,
                                         const WrittenDiary& diary)
{
    std::vector<DiaryRemark> found;
    for (const auto& [day, written] : diary.days) {
        const WrittenDay& before = base.on(day);
        const WrittenDay& now = written;
        if (now == before) {
            continue;
        }
        const std::vector<DiaryRemark> remarks = remarksOn(form, day, now);
        const auto inTheWay = std::ranges::find_if(remarks, [&](const DiaryRemark& remark) {
            return keepsFromSaving(remark.kind) && !standsAsIs(remark.place.session, before, now);
        });
        if (inTheWay != remarks.end()) {
            found.push_back(*inTheWay);
        }
    }
    return found;
}

} // namespace quadrille
