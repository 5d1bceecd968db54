// SPDX-License-Identifier: GPL-3.0-or-later
// What the page reads and saves; how it is put together is in diary_page_layout.cpp.
#include "app/diary/diary_page.h"

#include "app/diary/counter_sheet.h"
#include "app/diary/diary_grid.h"
#include "app/diary/diary_side.h"
#include "app/diary/diary_words.h"
#include "app/diary/kept_diary.h"
#include "app/look/segment_row.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/course_records.h"
#include "db/kept_forms.h"

#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedLayout>

#include <chrono>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr std::chrono::milliseconds keepDelay{500};

} // namespace

DiaryPage::DiaryPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_draft(this)
    , m_grid(new DiaryGrid(m_draft, services.text, this))
    , m_side(new DiarySide(m_draft, services.text, this))
    , m_counter(new CounterSheet(services, this))
    , m_weeks(new SegmentRow(this))
    , m_stack(new QStackedLayout)
    , m_scroll(new QScrollArea(this))
    , m_nothing(new QLabel(this))
    , m_page(new QLabel(this))
    , m_before(new QPushButton(this))
    , m_after(new QPushButton(this))
    , m_hint(new QLabel(this))
    , m_strip(new QLabel(this))
    , m_received(new QLabel(this))
    , m_receiveHere(new QPushButton(tr("Through this day"), this))
    , m_withdraw(new QPushButton(tr("Withdraw the date"), this))
    , m_save(new QPushButton(tr("Save diary"), this))
{
    layOut();
    m_keepSoon.setSingleShot(true);
    m_keepSoon.setInterval(keepDelay);
    connect(&m_keepSoon, &QTimer::timeout, this, &DiaryPage::keepNow);
    connect(&m_draft, &DiaryDraft::changed, this, [this] {
        refresh();
        if (m_course) {
            m_keepSoon.start();
        }
    });
    connect(&m_draft, &DiaryDraft::moved, this, [this] {
        m_refusal.reset(); // it was about the place before; the grid says its own afterwards
        showPlace();
    });
    connect(m_grid, &DiaryGrid::said, this, &DiaryPage::said);
    connect(m_grid, &DiaryGrid::refused, this, [this](const DiaryAnswer& refusal) {
        m_refusal = refusal;
        showRemark();
    });
    connect(m_counter, &CounterSheet::said, this, &DiaryPage::said);
    connect(m_save, &QPushButton::clicked, this, &DiaryPage::save);
    connect(m_weeks, &SegmentRow::chosenChanged, m_grid, &DiaryGrid::setMostWeeks);
    const auto turn = [this](int by) {
        m_draft.move([by](DiarySheet& sheet) {
            sheet.turnPage(by);
            return DiaryAnswer();
        });
    };
    connect(m_before, &QPushButton::clicked, this, [turn] { turn(-1); });
    connect(m_after, &QPushButton::clicked, this, [turn] { turn(1); });
    connect(m_receiveHere, &QPushButton::clicked, this, [this] {
        m_refusal = m_draft.write(tr("Diary received"),
                                  [](DiarySheet& sheet) { return sheet.receivedThroughHere(); });
        showRemark();
    });
    connect(m_withdraw, &QPushButton::clicked, this, [this] {
        m_refusal = m_draft.write(tr("Withdraw what was received"),
                                  [](DiarySheet& sheet) { return sheet.withdrawReceived(); });
        showRemark();
    });
}

std::optional<DiaryPage::Content> DiaryPage::readContent(const Course& course)
{
    const auto content = m_services.store.read([&](db::Reading& reading) {
        Content all{db::courseRecords(reading, course), db::adherenceRules(reading), {}, {}};
        all.form =
            diaryFormOf(all.records, db::siteKeysOf(reading, *course.id), m_services.clock.today());
        if (const auto kept = db::keptForm(reading, keptDiaryName(*course.id))) {
            all.unsaved = unsavedFrom(*kept, writtenDiaryOf(all.records));
        }
        return all;
    });
    if (!content) {
        emit said(errorText(content.error(), m_services.text));
        return std::nullopt;
    }
    return *content;
}

void DiaryPage::setCourse(const Course& course)
{
    if (m_course && m_course->id == course.id) {
        return courseChanged(course);
    }
    keepNow();
    auto content = readContent(course);
    if (!content) {
        return closeCourse(); // never somebody else's diary under this name
    }
    m_course = course;
    m_rules = content->rules;
    m_refusal.reset();
    m_grid->setWritable(m_services.store.isWritable());
    m_grid->setRules(m_rules);
    m_draft.load(std::move(content->records), std::move(content->form), content->unsaved);
    m_counter->open(course, m_draft.records());
    m_keepSoon.stop();
    if (m_draft.isChanged()) {
        emit said(tr("Diary entries that were not saved last time are shown again. Ctrl S saves "
                     "them, Undo drops them."));
    }
}

void DiaryPage::closeCourse()
{
    m_keepSoon.stop();
    m_course.reset();
    m_draft.load({}, {}, std::nullopt);
    m_counter->close();
    m_keepSoon.stop();
}

void DiaryPage::courseChanged(const Course& course)
{
    auto content = readContent(course);
    if (!content) {
        return;
    }
    m_course = course;
    m_rules = content->rules;
    m_grid->setRules(m_rules);
    m_draft.setRecords(std::move(content->records));
    m_draft.setForm(std::move(content->form));
    m_counter->open(course, m_draft.records());
}

void DiaryPage::keepNow()
{
    m_keepSoon.stop();
    if (!m_course || !m_services.store.isWritable()) {
        return;
    }
    m_grid->commitNotes();
    const auto kept =
        m_services.store.write(m_services.author, "keep unsaved diary", [&](db::Writing& writing) {
            const QString form = keptDiaryName(*m_course->id);
            if (m_draft.isChanged()) {
                db::keepForm(writing, form, keptDiary(m_draft.base(), m_draft.sheet().diary()));
            } else {
                db::dropForm(writing, form);
            }
        });
    if (!kept) {
        emit said(errorText(kept.error(), m_services.text));
    }
    m_keepSoon.stop();
}

void DiaryPage::save()
{
    if (!m_course) {
        return;
    }
    m_grid->commitNotes();
    if (!m_draft.isChanged()) {
        emit said(tr("Everything that was copied is saved."));
        return;
    }
    if (const auto remarks = m_draft.remarksInTheWay(); !remarks.empty()) {
        const DiaryRemark& first = remarks.front();
        m_draft.move([&](DiarySheet& sheet) {
            sheet.goTo(first.place);
            return DiaryAnswer();
        });
        m_grid->setFocus(Qt::OtherFocusReason);
        const WrittenDay& day = m_draft.sheet().diary().on(first.place.day);
        emit said(tr("Not saved. %1").arg(remarkText(first, day, m_services.text)));
        return;
    }
    const auto saving =
        m_services.store.write(m_services.author, "enter diary", [&](db::Writing& writing) {
            return db::saveDiary(writing, *m_course, m_draft.base(), m_draft.sheet().diary(),
                                 m_services.clock.today());
        });
    if (!saving) {
        emit said(errorText(saving.error(), m_services.text));
    } else if (!saving->isSaved()) {
        settle(*saving);
    } else {
        showSaved();
    }
}

void DiaryPage::showSaved()
{
    auto content = readContent(*m_course);
    if (!content) {
        return;
    }
    m_draft.markSaved(std::move(content->records));
    keepNow(); // nothing is left to be kept
    emit m_services.events.diaryChanged(*m_course->id);
    emit said(
        m_draft.sheet().diary().receivedThrough
            ? tr("Diary saved, received through %1.")
                  .arg(m_services.text.weekdayAndDay(*m_draft.sheet().diary().receivedThrough))
            : tr("Diary saved. Days without an entry are not known yet: L sets how far it "
                 "has come back."));
}

void DiaryPage::settle(const db::DiarySaving& saving)
{
    std::vector<Difference> differences;
    for (const DiaryClash& clash : saving.clashes) {
        differences.push_back({clashName(clash, m_services.text),
                               clashText(clash, saving.theirs, m_services.text),
                               clashText(clash, m_draft.sheet().diary(), m_services.text)});
    }
    const auto chosen = m_services.prompts.chooseBetween(
        this,
        tr("This diary was changed elsewhere while it was copied here. Choose what shall stand; "
           "what was saved elsewhere stays in the history."),
        differences);
    if (!chosen) {
        emit said(tr("Not saved: this diary was changed elsewhere in the meantime. Your entries "
                     "stay open."));
        return;
    }
    WrittenDiary merged =
        mergeDiaries(m_draft.base(), m_draft.sheet().diary(), saving.theirs).diary;
    for (std::size_t i = 0; i < chosen->size(); ++i) {
        if (!(*chosen)[i]) {
            takePart(merged, saving.clashes[i], saving.theirs);
        }
    }
    m_draft.goOnFrom(saving.theirs, merged);
    save();
}

QList<QWidget*> DiaryPage::acts() const
{
    return {m_save};
}

QWidget* DiaryPage::side() const
{
    return m_side;
}

void DiaryPage::focusFirst()
{
    if (m_stack->currentIndex() == 1) {
        m_grid->setFocus(Qt::OtherFocusReason);
    }
}

} // namespace quadrille::app
