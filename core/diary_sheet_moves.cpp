// SPDX-License-Identifier: GPL-3.0-or-later
// What moves the place; what writes is in diary_sheet.cpp.
#include "core/diary_sheet.h"

#include <algorithm>

namespace quadrille
{

void DiarySheet::moveTo(const DiaryPlace& place)
{
    m_typed.clear();
    m_anchor.reset();
    const Date first = m_form.startDate;
    const Date last = m_form.days.empty() ? first : m_form.days.back().day;
    m_place = place;
    m_place.day = std::clamp(place.day, first, last);
    m_place.session = std::clamp(place.session, 1, mostSessionsOfDay);
    const std::size_t sites = formDay(m_place.day).sites.size();
    if (m_place.field == DiaryField::amplitude && m_place.site >= sites) {
        m_place.field = DiaryField::minutes;
    }
    if (m_place.field != DiaryField::amplitude) {
        m_place.site = 0;
    }
}

void DiarySheet::goTo(const DiaryPlace& place)
{
    moveTo(place);
}

void DiarySheet::goToField(DiaryField field)
{
    moveTo({.day = m_place.day, .session = m_place.session, .field = field});
}

DiaryAnswer DiarySheet::goOn()
{
    if (belongsToSession(m_place.field) && m_place.session < linesOf(m_place.day)) {
        moveTo({.day = m_place.day, .session = m_place.session + 1});
        return std::nullopt;
    }
    for (const DiaryFormDay& day : m_form.days) {
        if (day.day <= m_place.day) {
            continue;
        }
        if (whyNotOn(day.day)) {
            break;
        }
        if (linesOf(day.day) > 0) {
            moveTo({.day = day.day});
            return std::nullopt;
        }
    }
    m_typed.clear();
    return DiaryRefusal::lastSession;
}

DiaryAnswer DiarySheet::openExtra()
{
    if (const DiaryAnswer refusal = whyNotOn(m_place.day)) {
        return refusal;
    }
    const auto& sessions = m_diary.on(m_place.day).sessions;
    const int written = sessions.empty() ? 0 : sessions.rbegin()->first;
    const int next = std::max(formDay(m_place.day).sessions, written) + 1;
    if (next > mostSessionsOfDay) {
        return DiaryRefusal::sessionsFull;
    }
    moveTo({.day = m_place.day, .session = next});
    return std::nullopt;
}

std::vector<DiaryPlace> DiarySheet::fieldsOf(Date day) const
{
    std::vector<DiaryPlace> fields;
    for (int session = 1; session <= linesOf(day); ++session) {
        fields.push_back({.day = day, .session = session});
        for (std::size_t site = 0; site < formDay(day).sites.size(); ++site) {
            fields.push_back({day, session, DiaryField::amplitude, site});
        }
        fields.push_back({day, session, DiaryField::comfort, 0});
    }
    if (fields.empty()) { // a rest day: its line opens by typing
        fields.push_back({.day = day});
    }
    const int session = day == m_place.day ? m_place.session : 1;
    fields.push_back({day, session, DiaryField::skin, 0});
    if (m_diary.on(day).skin.value_or(Skin::nothing) != Skin::nothing) {
        fields.push_back({day, session, DiaryField::pad, 0});
    }
    fields.push_back({day, session, DiaryField::remark, 0});
    return fields;
}

bool DiarySheet::nextField(bool forward)
{
    const std::vector<DiaryPlace> fields = fieldsOf(m_place.day);
    const auto here = std::ranges::find(fields, m_place);
    if (forward && here != fields.end() && here + 1 != fields.end()) {
        moveTo(*(here + 1));
        return true;
    }
    if (!forward && here != fields.begin() && here != fields.end()) {
        moveTo(*(here - 1));
        return true;
    }
    const Date other = m_place.day + std::chrono::days(forward ? 1 : -1);
    if (m_form.find(other) == nullptr) {
        return false;
    }
    moveTo(forward ? fieldsOf(other).front() : fieldsOf(other).back());
    return true;
}

void DiarySheet::moveDays(int days)
{
    DiaryPlace place = m_place;
    place.day += std::chrono::days(days);
    if (m_form.find(place.day) == nullptr) {
        place.day = m_place.day;
    }
    if (place.day != m_place.day) {
        place.session = std::clamp(place.session, 1, std::max(1, linesOf(place.day)));
    }
    if (place.field == DiaryField::pad) {
        place.field = DiaryField::skin;
    }
    moveTo(place);
}

void DiarySheet::extendRun(int days)
{
    const Date anchor = m_anchor.value_or(m_place.day);
    moveDays(days);
    m_anchor = anchor;
}

void DiarySheet::turnPage(int by)
{
    const int page = std::clamp(this->page() + by, 0, std::max(0, m_form.pages() - 1));
    if (page == this->page()) {
        return;
    }
    const Date first = m_form.firstDayOfPage(page);
    DiaryPlace place{.day = first};
    for (int i = 0; i < weeksOfDiaryPage * 7; ++i) { // where there is something to copy
        const Date day = first + std::chrono::days(i);
        if (linesOf(day) > 0) {
            place.day = day;
            break;
        }
    }
    moveTo(place);
}

} // namespace quadrille
