// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together, and what of it follows the diary.
#include "app/diary/counter_sheet.h"
#include "app/diary/diary_grid.h"
#include "app/diary/diary_page.h"
#include "app/diary/diary_side.h"
#include "app/diary/diary_words.h"
#include "app/look/elided_label.h"
#include "app/look/roles.h"
#include "app/look/segment_row.h"
#include "app/look/tokens.h"
#include "app/words/trade_words.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

void DiaryPage::layOut()
{
    setRole(*m_save, Role::primaryButton);
    m_save->setObjectName(QStringLiteral("saveDiary"));
    m_save->setToolTip(tr("Ctrl S"));
    m_nothing->setObjectName(QStringLiteral("noDiary"));
    m_nothing->setText(tr("No plan issued yet, so there is no diary to copy. Issue the plan first; "
                          "its handout has the pages."));
    m_nothing->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_nothing->setWordWrap(true);
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::close);
    column->addWidget(head());
    m_strip->setObjectName(QStringLiteral("diaryStrip"));
    m_strip->setWordWrap(true);
    m_strip->setContentsMargins(space::medium, space::small, space::medium, space::small);
    setRole(*m_strip, Role::warningStrip);
    m_strip->hide();
    column->addWidget(m_strip);
    auto* sheets = new QWidget;
    auto* below = new QVBoxLayout(sheets);
    below->setContentsMargins(0, 0, 0, 0);
    below->setSpacing(space::betweenSheets);
    below->addWidget(m_grid);
    below->addWidget(received());
    below->addWidget(m_counter);
    below->addStretch();
    m_scroll->setWidget(sheets);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->viewport()->installEventFilter(this);
    connect(m_scroll->verticalScrollBar(), &QScrollBar::valueChanged, m_grid,
            [this] { m_grid->update(); });
    column->addWidget(m_scroll, 1);
    m_stack->addWidget(m_nothing);
    m_stack->addWidget(page);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::betweenSheets, space::medium,
                               space::betweenSheets);
    layout->addLayout(m_stack);
}

QWidget* DiaryPage::head()
{
    auto* head = new QWidget(this);
    const auto turner = [](QPushButton* button, const QString& text, const char* name,
                           const QString& spoken) {
        button->setText(text);
        button->setObjectName(QLatin1String(name));
        button->setAccessibleName(spoken);
        button->setToolTip(spoken);
        button->setFixedWidth(size::button);
    };
    turner(m_before, QStringLiteral("‹"), "pageBefore", tr("Page before, Ctrl Page Up"));
    turner(m_after, QStringLiteral("›"), "pageAfter", tr("Next page, Ctrl Page Down"));
    setRole(*m_page, Role::strongText);
    m_page->setObjectName(QStringLiteral("diaryPageName"));
    m_weeks->setObjectName(QStringLiteral("weeksShown"));
    m_weeks->addSegment(weeksOfDiaryPage, tr("Page of 4"));
    m_weeks->addSegment(1, tr("1 week"));
    m_hint->setObjectName(QStringLiteral("diaryHint"));
    m_hint->setWordWrap(true);
    setRole(*m_hint, Role::secondLineText);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::close);
    row->addWidget(m_before);
    row->addWidget(m_page);
    row->addWidget(m_after);
    row->addSpacing(space::small);
    row->addWidget(m_weeks);
    row->addSpacing(space::small);
    row->addWidget(m_hint, 1);
    auto* import = new QPushButton(tr("Import…"), head);
    setRole(*import, Role::linkButton);
    import->setObjectName(QStringLiteral("importDiary"));
    import->setToolTip(tr("A diary that comes as a file: Ctrl I"));
    import->setEnabled(m_services.store.isWritable());
    connect(import, &QPushButton::clicked, this, &DiaryPage::importRequested);
    row->addWidget(import, 0, Qt::AlignTop);
    return head;
}

QWidget* DiaryPage::received()
{
    auto* line = new QWidget(this);
    m_received->setObjectName(QStringLiteral("receivedThrough"));
    m_received->setWordWrap(true);
    m_receiveHere->setObjectName(QStringLiteral("receiveHere"));
    m_receiveHere->setToolTip(tr("L: the diary has come back up to and with the chosen day"));
    m_withdraw->setObjectName(QStringLiteral("withdrawReceived"));
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::close);
    row->addWidget(m_received, 1);
    row->addWidget(m_receiveHere);
    row->addWidget(m_withdraw);
    return line;
}

void DiaryPage::refresh()
{
    const CourseRecords& records = m_draft.records();
    const bool hasDiary = !records.plans.empty() || !m_draft.sheet().diary().days.empty();
    m_stack->setCurrentIndex(m_course && hasDiary ? 1 : 0);
    m_save->setEnabled(m_draft.isChanged() && m_services.store.isWritable());
    showReceived();
    m_pageShown.reset();
    showPlace();
    emit shown();
}

void DiaryPage::showPlace()
{
    showHead();
    showRemark();
    if (const int page = m_draft.sheet().page(); m_pageShown != page) {
        m_pageShown = page;
        m_side->refresh(m_rules); // the whole course is gone through: not at every arrow key
    }
    const QRect place = m_grid->placeRect();
    const int head = m_grid->geometryOfPage().head(0).height();
    m_scroll->ensureVisible(place.center().x(), place.bottom(), 0, space::wide);
    m_scroll->ensureVisible(place.center().x(), place.top() - head, 0, 0);
}

void DiaryPage::showHead()
{
    const DiarySheet& sheet = m_draft.sheet();
    const int page = sheet.page();
    const int pages = std::max(1, sheet.form().pages());
    m_page->setText(tr("Page %1 of %2, %3", "number, pages, weeks")
                        .arg(QString::number(page + 1), QString::number(pages),
                             weeksName({page * weeksOfDiaryPage + 1}, weeksOfDiaryPage)));
    m_before->setEnabled(page > 0);
    m_after->setEnabled(page + 1 < pages);
    const Date first = sheet.form().firstDayOfPage(page);
    bool asks = false;
    for (int day = 0; day < weeksOfDiaryPage * 7; ++day) {
        const DiaryFormDay* asked = sheet.form().find(first + std::chrono::days(day));
        asks = asks || (asked != nullptr && asked->sessions > 0);
    }
    m_hint->setText(!asks ? tr("Nothing prescribed in these weeks.")
                    : sheet.diary().days.empty()
                        ? tr("No diary copied yet. The printed page 1 is entered here.")
                        : tr("Laid out as the printed page: copy each tick into the same square."));
}

void DiaryPage::showReceived()
{
    const auto& through = m_draft.sheet().diary().receivedThrough;
    m_received->setText(
        through ? tr("Diary received through %1. A day up to then without an entry is missed.")
                      .arg(m_services.text.weekdayDate(*through))
                : tr("Diary not set as received. A day without an entry is not known yet."));
    m_receiveHere->setEnabled(m_services.store.isWritable());
    m_withdraw->setEnabled(through.has_value() && m_services.store.isWritable());
}

/// Why the last key wrote nothing, else the gravest of the day, else what keeps from saving.
void DiaryPage::showRemark()
{
    const DiarySheet& sheet = m_draft.sheet();
    QString sentence;
    if (m_refusal) {
        sentence = refusalText(*m_refusal, sheet, m_services.text);
    } else {
        auto remarks =
            remarksOn(sheet.form(), sheet.place().day, sheet.diary().on(sheet.place().day));
        if (remarks.empty() || !keepsFromSaving(remarks.front().kind)) {
            const auto inTheWay = m_draft.remarksInTheWay();
            remarks.insert(remarks.begin(), inTheWay.begin(), inTheWay.end());
        }
        if (!remarks.empty()) {
            const DiaryRemark& first = remarks.front();
            sentence = remarkText(first, sheet.diary().on(first.place.day), m_services.text);
        }
    }
    m_strip->setText(sentence);
    m_strip->setVisible(!sentence.isEmpty());
}

void DiaryPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_grid->setRoom(m_scroll->viewport()->width());
}

bool DiaryPage::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_scroll->viewport() && event->type() == QEvent::Resize) {
        m_grid->setRoom(m_scroll->viewport()->width());
        m_scroll->verticalScrollBar()->setValue(0); // no further down than the place needs
        showPlace();
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace quadrille::app
