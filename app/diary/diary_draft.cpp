// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_draft.h"

#include "app/diary/diary_commands.h"

#include <utility>

namespace quadrille::app
{

DiaryDraft::DiaryDraft(QObject* parent)
    : QObject(parent)
{
}

DiaryDraft::~DiaryDraft()
{
    // The stack announces that it empties while it goes, when those who listen are going too.
    m_undo.disconnect();
}

void DiaryDraft::load(CourseRecords records, DiaryForm form, const std::optional<Unsaved>& unsaved)
{
    m_undo.clear();
    m_records = std::move(records);
    m_base = writtenDiaryOf(m_records);
    m_sheet = DiarySheet(std::move(form), m_base);
    if (unsaved && unsaved->mine != m_base) {
        const WrittenDiary both = putTogether(unsaved->base, unsaved->mine);
        apply(tr("Unsaved entries of last time"), {}, [&](DiarySheet& sheet) {
            sheet.setDiary(both);
            return DiaryAnswer();
        });
    }
    emit changed();
    emit moved();
}

void DiaryDraft::setForm(DiaryForm form)
{
    m_sheet.setForm(std::move(form));
    emit changed();
    emit moved();
}

void DiaryDraft::setRecords(CourseRecords records)
{
    m_records = std::move(records);
    show(putTogether(m_base, m_sheet.diary()));
    emit changed();
}

WrittenDiary DiaryDraft::putTogether(const WrittenDiary& base, const WrittenDiary& mine)
{
    WrittenDiary fresh = writtenDiaryOf(m_records);
    MergedDiary merged = mergeDiaries(base, mine, fresh);
    // What both changed stays changed against what was read first, so that saving shows both.
    for (const DiaryClash& part : merged.clashes) {
        takePart(fresh, part, base);
    }
    m_base = std::move(fresh); // not before: `base` may be this very one
    return std::move(merged.diary);
}

void DiaryDraft::markSaved(CourseRecords records)
{
    m_records = std::move(records);
    m_base = writtenDiaryOf(m_records);
    show(m_base);
    emit changed();
}

void DiaryDraft::goOnFrom(const WrittenDiary& theirs, const WrittenDiary& diary)
{
    m_base = theirs;
    show(diary);
    emit changed();
    emit moved();
}

void DiaryDraft::show(const WrittenDiary& diary)
{
    if (m_sheet.diary() != diary) {
        // A step back would take somebody else's entries out.
        m_undo.clear();
    }
    m_sheet.setDiary(diary);
}

std::vector<DiaryRemark> DiaryDraft::remarksInTheWay() const
{
    return quadrille::remarksInTheWay(m_sheet.form(), m_base, m_sheet.diary());
}

DiaryAnswer DiaryDraft::write(const QString& verb, const Act& act)
{
    ++m_turn;
    return apply(verb, {}, act);
}

DiaryAnswer DiaryDraft::typeSign(const QString& verb, const Act& act)
{
    if (!m_sheet.isTouched()) {
        ++m_turn;
    }
    return apply(verb, QString::number(m_turn), act);
}

DiaryAnswer DiaryDraft::move(const Act& act)
{
    ++m_turn;
    const DiaryAnswer answer = act(m_sheet);
    emit moved();
    return answer;
}

DiaryAnswer DiaryDraft::apply(const QString& verb, const QString& step, const Act& act)
{
    const DiarySheet before = m_sheet;
    DiarySheet after = m_sheet;
    const DiaryAnswer answer = act(after);
    if (after.diary() == before.diary()) {
        m_sheet = after; // the place or what was typed may be another
        emit moved();
        return answer;
    }
    m_undo.push(new ReplaceDiary(verb, step, before, after, [this](const DiarySheet& sheet) {
        const DiaryForm form = m_sheet.form(); // a step may be older than a plan issued since
        m_sheet = sheet;
        if (m_sheet.form() != form) {
            m_sheet.setForm(form);
        }
        emit changed();
        emit moved();
    }));
    return answer;
}

} // namespace quadrille::app
