// SPDX-License-Identifier: GPL-3.0-or-later
// What writes; what moves is in diary_sheet_moves.cpp.
#include "core/diary_sheet.h"

#include "core/typed_number.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

constexpr std::int64_t millisecondsOfMinute = 60'000;
constexpr std::int64_t microamperesOfMilliampere = 1000;

/// How many digits a field takes.
NumberForm numberFormOf(DiaryField field)
{
    switch (field) {
    case DiaryField::minutes:
        return {.digits = 4, .decimals = 2, .scale = millisecondsOfMinute};
    case DiaryField::amplitude:
        return {.digits = 3, .decimals = 3, .scale = microamperesOfMilliampere};
    default:
        return {.digits = 2, .decimals = 0, .scale = 1};
    }
}

} // namespace

DiarySheet::DiarySheet(DiaryForm form, WrittenDiary diary)
    : m_form(std::move(form))
    , m_diary(std::move(diary))
{
    m_place.day = m_form.startDate;
    for (const DiaryFormDay& day : m_form.days) {
        if (whyNotOn(day.day)) {
            break;
        }
        m_place = {.day = day.day};
        const bool isNew = !m_diary.receivedThrough || day.day > *m_diary.receivedThrough;
        for (int session = 1; isNew && session <= day.sessions; ++session) {
            if (canBeFilled(day.day, session)) {
                m_place.session = session;
                return;
            }
        }
    }
}

const DiaryFormDay& DiarySheet::formDay(Date day) const
{
    static const DiaryFormDay outside{.day = {}, .isOfCourse = false};
    const DiaryFormDay* found = m_form.find(day);
    return found != nullptr ? *found : outside;
}

DiaryAnswer DiarySheet::whyNotOn(Date day) const
{
    if (!formDay(day).isOfCourse) {
        return DiaryRefusal::outsideCourse;
    }
    return day > m_form.today ? DiaryAnswer(DiaryRefusal::dayToCome) : std::nullopt;
}

DiaryRun DiarySheet::run() const
{
    const Date other = m_anchor.value_or(m_place.day);
    return {std::min(m_place.day, other), std::max(m_place.day, other)};
}

int DiarySheet::linesOf(Date day) const
{
    const auto& sessions = m_diary.on(day).sessions;
    const int written = sessions.empty() ? 0 : sessions.rbegin()->first;
    const bool isOpen = day == m_place.day && belongsToSession(m_place.field);
    return std::max({formDay(day).sessions, written, isOpen ? m_place.session : 0});
}

std::optional<Milliseconds> DiarySheet::offeredIn(Date day, int session) const
{
    return canBeFilled(day, session) && !whyNotOn(day) ? formDay(day).length : std::nullopt;
}

bool DiarySheet::canBeFilled(Date day, int session) const
{
    if (session > formDay(day).sessions) {
        return false;
    }
    const auto& sessions = m_diary.on(day).sessions;
    const auto found = sessions.find(session);
    return found == sessions.end() || !found->second.time;
}

void DiarySheet::setDiary(WrittenDiary diary)
{
    m_diary = std::move(diary);
    m_typed.clear();
}

void DiarySheet::setForm(DiaryForm form)
{
    m_form = std::move(form);
    moveTo(m_place);
}

void DiarySheet::write(Date day, int session, Milliseconds time)
{
    WrittenDay written = m_diary.on(day);
    written.sessions[session].time = time;
    m_diary.put(day, std::move(written));
}

DiaryAnswer DiarySheet::asPrescribed()
{
    if (const DiaryAnswer refusal = whyNotOn(m_place.day)) {
        return refusal;
    }
    const DiaryFormDay& day = formDay(m_place.day);
    if (!belongsToSession(m_place.field) || m_place.session > day.sessions) {
        return DiaryRefusal::nothingPrescribed;
    }
    if (!day.length) {
        return DiaryRefusal::lengthNotKnown;
    }
    m_typed.clear();
    write(m_place.day, m_place.session, *day.length);
    return std::nullopt;
}

DiaryAnswer DiarySheet::fill(Date from, int session, Date to)
{
    DiaryAnswer refusal = whyNotOn(from);
    std::optional<DiaryPlace> last;
    for (Date day = from; day <= to && !whyNotOn(day); day += std::chrono::days(1)) {
        const DiaryFormDay& asked = formDay(day);
        for (int line = day == from ? session : 1; line <= asked.sessions; ++line) {
            if (!asked.length) {
                refusal = DiaryRefusal::lengthNotKnown;
            } else if (canBeFilled(day, line)) {
                write(day, line, *asked.length);
                last = {.day = day, .session = line};
            }
        }
    }
    if (!last) {
        return refusal ? refusal : DiaryRefusal::nothingToFill;
    }
    moveTo(*last);
    return std::nullopt;
}

DiaryAnswer DiarySheet::fillRun()
{
    const DiaryRun marked = run();
    return fill(marked.from, 1, marked.to);
}

DiaryAnswer DiarySheet::restOfWeek()
{
    const auto dayOfWeek = (m_place.day - m_form.startDate).count() % 7;
    const Date last = m_place.day + std::chrono::days(6 - dayOfWeek);
    for (Date day = m_place.day; day <= last; day += std::chrono::days(1)) {
        if (formDay(day).anyDay) {
            return DiaryRefusal::daysAreFree;
        }
    }
    return fill(m_place.day, belongsToSession(m_place.field) ? m_place.session : 1, last);
}

DiaryAnswer DiarySheet::copyAbove()
{
    if (const DiaryAnswer refusal = whyNotOn(m_place.day)) {
        return refusal;
    }
    const bool isFirstOfWeek = (m_place.day - m_form.startDate).count() % 7 == 0;
    const WrittenDay above =
        isFirstOfWeek ? WrittenDay() : m_diary.on(m_place.day - std::chrono::days(1));
    WrittenDay written = m_diary.on(m_place.day);
    int last = 0;
    bool hasMinutes = false;
    for (const auto& [number, session] : above.sessions) {
        hasMinutes = hasMinutes || session.time.has_value();
        if (session.time && !written.sessions[number].time) {
            written.sessions[number].time = session.time;
            last = number;
        }
    }
    if (last == 0) {
        return hasMinutes ? DiaryRefusal::nothingToFill : DiaryRefusal::nothingAbove;
    }
    m_diary.put(m_place.day, std::move(written));
    moveTo({.day = m_place.day, .session = last});
    return std::nullopt;
}

DiaryAnswer DiarySheet::type(char sign)
{
    if (const DiaryAnswer refusal = whyNotOn(m_place.day)) {
        return refusal;
    }
    if (m_place.field == DiaryField::skin && sign >= '0' && sign <= '3') {
        WrittenDay written = m_diary.on(m_place.day);
        written.skin = static_cast<Skin>(sign - '0');
        m_diary.put(m_place.day, std::move(written));
        if (sign > '0') {
            goToField(DiaryField::pad);
        }
        return std::nullopt;
    }
    if (!belongsToSession(m_place.field)) {
        return std::nullopt;
    }
    if (m_place.session > mostSessionsOfDay) {
        return DiaryRefusal::sessionsFull;
    }
    const std::string typed = m_typed + sign;
    if (!numberFrom(typed, numberFormOf(m_place.field))) {
        return std::nullopt;
    }
    m_typed = typed;
    return typeNumber();
}

DiaryAnswer DiarySheet::typeNumber()
{
    WrittenDay written = m_diary.on(m_place.day);
    WrittenSession& session = written.sessions[m_place.session];
    const auto number = numberFrom(m_typed, numberFormOf(m_place.field));
    switch (m_place.field) {
    case DiaryField::minutes:
        session.time = number ? std::optional(Milliseconds(*number)) : std::nullopt;
        break;
    case DiaryField::comfort:
        session.comfort = number ? std::optional(static_cast<int>(*number)) : std::nullopt;
        break;
    default: {
        const auto& sites = formDay(m_place.day).sites;
        if (m_place.site < sites.size()) {
            session.amplitudes.erase(sites[m_place.site].key);
            if (number) {
                session.amplitudes.emplace(sites[m_place.site].key, Amplitude::fromCount(*number));
            }
        }
    }
    }
    m_diary.put(m_place.day, std::move(written));
    return std::nullopt;
}

DiaryAnswer DiarySheet::backspace()
{
    if (!isTouched()) {
        return empty();
    }
    m_typed.pop_back();
    return typeNumber();
}

DiaryAnswer DiarySheet::empty()
{
    m_typed.clear();
    WrittenDay written = m_diary.on(m_place.day);
    switch (m_place.field) {
    case DiaryField::minutes:
        written.sessions.erase(m_place.session);
        break;
    case DiaryField::amplitude:
    case DiaryField::comfort:
        return typeNumber();
    case DiaryField::skin:
        written.skin.reset();
        break;
    case DiaryField::pad:
        written.skinPad.clear();
        break;
    case DiaryField::remark:
        written.remark.clear();
        break;
    }
    m_diary.put(m_place.day, std::move(written));
    return std::nullopt;
}

DiaryAnswer DiarySheet::setPad(const std::string& pad)
{
    WrittenDay written = m_diary.on(m_place.day);
    written.skinPad = pad;
    m_diary.put(m_place.day, std::move(written));
    return std::nullopt;
}

DiaryAnswer DiarySheet::setRemark(const std::string& remark)
{
    if (const DiaryAnswer refusal = whyNotOn(m_place.day)) {
        return refusal;
    }
    WrittenDay written = m_diary.on(m_place.day);
    written.remark = remark;
    m_diary.put(m_place.day, std::move(written));
    return std::nullopt;
}

DiaryAnswer DiarySheet::receivedThroughHere()
{
    if (m_place.day > m_form.today) {
        return DiaryRefusal::dayToCome;
    }
    m_diary.receivedThrough = m_place.day;
    return std::nullopt;
}

DiaryAnswer DiarySheet::withdrawReceived()
{
    if (!m_diary.receivedThrough) {
        return DiaryRefusal::nothingReceived;
    }
    m_diary.receivedThrough.reset();
    return std::nullopt;
}

} // namespace quadrille
