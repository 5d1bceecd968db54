// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_side.h"

#include "app/diary/diary_words.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QFrame>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <utility>
#include <vector>

namespace quadrille::app
{

namespace
{

QLabel* sheetHead(const QString& text, QWidget* parent)
{
    auto* head = new QLabel(text, parent);
    setRole(*head, Role::strongText);
    head->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    return head;
}

QFrame* sheetOf(QWidget* parent)
{
    auto* sheet = new QFrame(parent);
    setRole(*sheet, Role::sheet);
    return sheet;
}

} // namespace

DiarySide::DiarySide(DiaryDraft& draft, const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_draft(draft)
    , m_text(text)
    , m_head(nullptr)
    , m_totals(new QLabel(this))
    , m_skin(new QLabel(this))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::betweenSheets);
    QFrame* totals = sheetOf(this);
    m_head = sheetHead({}, totals);
    m_totals->setObjectName(QStringLiteral("diaryTotals"));
    m_skin->setObjectName(QStringLiteral("diarySkin"));
    auto* lines = new QVBoxLayout(totals);
    lines->setContentsMargins(1, 1, 1, space::close);
    lines->setSpacing(0);
    lines->addWidget(m_head);
    for (QLabel* label : {m_totals, m_skin}) {
        label->setWordWrap(true);
        label->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::tiny);
        lines->addWidget(label);
    }
    setRole(*m_skin, Role::strongText);
    column->addWidget(totals);
    column->addWidget(keys());
}

QWidget* DiarySide::keys()
{
    QFrame* sheet = sheetOf(this);
    auto* column = new QVBoxLayout(sheet);
    column->setContentsMargins(1, 1, 1, space::close);
    column->setSpacing(0);
    column->addWidget(sheetHead(tr("Keys"), sheet));
    auto* grid = new QGridLayout;
    grid->setContentsMargins(space::insideSheet, 0, space::insideSheet, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(space::hair);
    const std::vector<std::pair<QString, QString>> all{
        {tr("Space"), tr("minutes as prescribed, no more")},
        {tr("0 … 9"), tr("other minutes; 0 is not done")},
        {tr("Enter"), tr("next session, then the next day")},
        {tr("Arrows"), tr("by day and week; Shift marks")},
        {tr("F"), tr("the same on all marked days")},
        {tr("Ctrl D"), tr("the same for the rest of the week")},
        {tr("U"), tr("minutes of the day above")},
        {tr("Tab"), tr("next field")},
        {tr("S, N"), tr("skin 0 to 3, note")},
        {tr("+"), tr("one more session on this day")},
        {tr("Del"), tr("empty the field")},
        {tr("L"), tr("diary received through this day")},
        {tr("Ctrl PgUp, PgDn"), tr("other page")}};
    int row = 0;
    for (const auto& [key, act] : all) {
        auto* name = new QLabel(key, sheet);
        auto* what = new QLabel(act, sheet);
        setRole(*name, Role::strongText);
        setRole(*what, Role::secondLineText);
        what->setWordWrap(true);
        grid->addWidget(name, row, 0, Qt::AlignTop);
        grid->addWidget(what, row++, 1);
    }
    grid->setColumnStretch(1, 1);
    column->addLayout(grid);
    return sheet;
}

void DiarySide::refresh(const AdherenceRules& rules)
{
    const DiarySheet& sheet = m_draft.sheet();
    const Date first = sheet.form().firstDayOfPage(sheet.page());
    const Date last = first + std::chrono::days(weeksOfDiaryPage * 7 - 1);
    const CourseAsLived lived = courseAsLived(m_draft.preview(), rules, sheet.form().today);
    m_head->setText(tr("Page %1, as reported", "number").arg(sheet.page() + 1));
    m_totals->setText(
        totalsText(figuresBetween(lived, first, last), m_text).join(QLatin1Char('\n')));
    QStringList marks;
    for (Date day = first; day <= last; day += std::chrono::days(1)) {
        const WrittenDay& written = sheet.diary().on(day);
        for (const DiaryRemark& remark : remarksOn(sheet.form(), day, written)) {
            if (remark.kind == DiaryRemarkKind::skinMark) {
                marks << remarkText(remark, written, m_text);
            }
        }
    }
    m_skin->setText(marks.join(QLatin1Char('\n')));
    m_skin->setVisible(!marks.isEmpty());
}

} // namespace quadrille::app
