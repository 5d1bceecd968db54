// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/screening_page.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/screening/override_form.h"
#include "app/screening/question_row.h"
#include "app/screening/screening_record.h"
#include "app/screening/screening_side.h"
#include "app/screening/skin_sheet.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/screening_text.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>
#include <initializer_list>
#include <utility>

namespace quadrille::app
{

ScreeningPage::ScreeningPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_record(new ScreeningRecord(services, this))
    , m_notice(new QLabel(this))
    , m_scroll(new QScrollArea(this))
    , m_content(new QWidget(m_scroll))
    , m_rowsLayout(new QVBoxLayout)
    , m_skin(new SkinSheet(m_content))
    , m_side(new ScreeningSide(services, *m_record, this))
{
    layOut();
    m_side->hide();
    connect(m_record, &ScreeningRecord::changed, this, &ScreeningPage::refresh);
    connect(m_record, &ScreeningRecord::said, this, &ScreeningPage::said);
    connect(m_side, &ScreeningSide::againRequested, this, &ScreeningPage::screenAgain);
    connect(m_side, &ScreeningSide::overrideRequested, this, &ScreeningPage::goAhead);
    connect(m_skin, &SkinSheet::testChanged, m_record, &ScreeningRecord::setSkinTest);
    connect(m_skin, &SkinSheet::seenChanged, m_record, &ScreeningRecord::setSkinSeen);
    connect(&services.events, &StoreEvents::practiceChanged, m_record, &ScreeningRecord::reload);
}

void ScreeningPage::layOut()
{
    setRole(*m_notice, Role::warningStrip);
    m_notice->setObjectName(QStringLiteral("screeningNotice"));
    m_notice->setWordWrap(true);
    m_notice->setContentsMargins(space::insideSheet, space::small, space::insideSheet,
                                 space::small);
    m_rowsLayout->setSpacing(0);
    auto* content = new QVBoxLayout(m_content);
    content->setContentsMargins(0, 0, 0, 0);
    content->setSpacing(space::betweenSheets);
    content->addLayout(m_rowsLayout);
    auto* skin = new QHBoxLayout;
    skin->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::insideSheet);
    skin->addWidget(m_skin);
    content->addLayout(skin);
    content->addStretch();
    m_content->setObjectName(QStringLiteral("questions"));
    m_scroll->setWidget(m_content);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded); // very large text
    m_scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_notice);
    layout->addWidget(tableHead());
    layout->addWidget(m_scroll, 1);
}

QWidget* ScreeningPage::tableHead()
{
    auto* head = new QFrame(this);
    setRole(*head, Role::band);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(space::close, space::tiny,
                            space::close + m_scroll->verticalScrollBar()->sizeHint().width(),
                            space::tiny);
    row->setSpacing(space::small);
    const auto add = [&](const QString& text, int width) {
        auto* label = new QLabel(text, head);
        setRole(*label, Role::captionText);
        label->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        if (width > 0) {
            label->setFixedWidth(scaled(width, appliedFactor()));
        }
        row->addWidget(label, width > 0 ? 0 : 1);
        return label;
    };
    add(QString(), question_column::number);
    add(tr("Question, as asked"), 0);
    add(tr("Yes"), question_column::answer);
    add(tr("No"), question_column::answer);
    add(tr("Not known"), question_column::notKnown);
    m_headClass = add(tr("Class"), question_column::weight);
    m_headBlocks = add(tr("“Yes” blocks"), question_column::blocks);
    return head;
}

void ScreeningPage::fitWidth()
{
    const bool narrow = width() < scaled(question_column::leastWhole, appliedFactor());
    m_headBlocks->setVisible(!narrow);
    m_headClass->setText(narrow ? QString() : tr("Class"));
    m_headClass->setFixedWidth(
        scaled(narrow ? question_column::sign : question_column::weight, appliedFactor()));
    for (QuestionRow* row : m_rows) {
        row->setNarrow(narrow);
    }
}

void ScreeningPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fitWidth();
}

void ScreeningPage::setCourse(const Course& course)
{
    m_current = 0;
    m_record->open(course);
}

void ScreeningPage::setBlocks(const std::vector<Block>& blocks)
{
    m_record->setBlocks(blocks);
}

QWidget* ScreeningPage::side() const
{
    return m_side;
}

void ScreeningPage::refresh()
{
    const Screening& screening = m_record->current();
    const bool sameQuestions = std::ranges::equal(
        m_rows, screening.questions, {}, [](const QuestionRow* row) { return row->question(); });
    if (!sameQuestions) {
        rebuildRows();
    }
    const Screening* previous = m_record->previous();
    const auto changed =
        previous != nullptr ? changedSince(screening, *previous) : std::vector<std::string>();
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const auto copyOf = [&](const Screening* from) {
            const ScreeningAnswer* answer =
                from != nullptr ? answerTo(*from, screening.questions[i].name) : nullptr;
            return answer != nullptr ? std::optional(*answer) : std::nullopt;
        };
        m_rows[i]->show(
            {.answer = copyOf(&screening),
             .last = copyOf(previous),
             .compares = previous != nullptr,
             .changed = std::ranges::find(changed, screening.questions[i].name) != changed.end(),
             .editable = !m_record->isSigned()});
    }
    m_skin->show(screening.skin, screening.skinSeen,
                 !m_record->isSigned() && m_services.store.isWritable());
    const bool unsignedNext = !m_record->isSigned() && previous != nullptr;
    m_notice->setVisible(unsignedNext);
    m_notice->setText(tr("Screening %1 is not signed. Until it is, nothing is issued, printed or "
                         "measured. What differs from screening %2 is marked.")
                          .arg(screening.number)
                          .arg(previous != nullptr ? previous->number : 0));
    m_side->refresh();
    orderTabs();
}

void ScreeningPage::rebuildRows()
{
    const QWidget* focus = QApplication::focusWidget();
    const bool hadFocus = focus != nullptr && m_content->isAncestorOf(focus);
    const std::string worked =
        m_current < m_rows.size() ? m_rows[m_current]->question().name : std::string();
    for (QuestionRow* row : std::exchange(m_rows, {})) {
        row->hide();
        row->setObjectName({});
        row->deleteLater();
    }
    const std::vector<ScreeningQuestion>& questions = m_record->current().questions;
    for (std::size_t i = 0; i < questions.size(); ++i) {
        m_rows.push_back(new QuestionRow(i, questions[i], m_content));
        m_rowsLayout->addWidget(m_rows.back());
        m_rows.back()->setVisible(true); // now, so that it can take the focus
        connectRow(i);
    }
    fitWidth();
    const auto same = std::ranges::find_if(
        m_rows, [&](const QuestionRow* row) { return row->question().name == worked; });
    makeCurrent(same != m_rows.end() ? static_cast<std::size_t>(same - m_rows.begin()) : 0);
    if (hadFocus && !m_rows.empty()) {
        m_rows[m_current]->setFocus(Qt::OtherFocusReason);
    }
}

/// Rows and skin tests that are made anew stand at the end of the order; skin and side come after
/// the questions.
void ScreeningPage::orderTabs()
{
    QWidget* before = m_rows.empty() ? nullptr : m_rows.back()->lastStop();
    for (const QWidget* sheet : std::initializer_list<const QWidget*>{m_skin, m_side}) {
        for (QWidget* widget : sheet->findChildren<QWidget*>()) {
            const bool stops = (widget->focusPolicy() & Qt::TabFocus) != 0;
            if (stops && !widget->objectName().isEmpty() && before != nullptr) {
                setTabOrder(before, widget);
                before = widget;
            }
        }
    }
}

void ScreeningPage::connectRow(std::size_t index)
{
    QuestionRow* row = m_rows[index];
    const std::string name = row->question().name;
    connect(row, &QuestionRow::answered, this, [this, name](Answer answer) {
        if (mayChange()) {
            m_record->answerQuestion(name, answer);
        } else {
            refresh(); // the buttons show again what is signed
        }
    });
    connect(row, &QuestionRow::noteChanged, this, [this, name](const QString& note) {
        m_record->setNote(name, note.trimmed().toStdString());
    });
    connect(
        row, &QuestionRow::placesChanged, this,
        [this, name](const std::vector<BodyPlace>& places) { m_record->setPlaces(name, places); });
    connect(row, &QuestionRow::nextRequested, this, [this, index] { goTo(index + 1); });
    connect(row, &QuestionRow::previousRequested, this, [this, index] {
        if (index > 0) {
            goTo(index - 1);
        }
    });
    connect(row, &QuestionRow::focused, this, [this, index] { makeCurrent(index); });
}

void ScreeningPage::makeCurrent(std::size_t index)
{
    if (index >= m_rows.size()) {
        return;
    }
    m_current = index;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        m_rows[i]->setCurrent(i == index);
    }
    m_content->setFocusProxy(m_rows[index]);
    m_side->explain(index, m_rows[index]->question());
}

void ScreeningPage::goTo(std::size_t index)
{
    if (index >= m_rows.size()) {
        m_skin->focusFirst();
        m_scroll->ensureWidgetVisible(m_skin);
        return;
    }
    makeCurrent(index);
    m_rows[index]->setFocus(Qt::TabFocusReason);
    m_scroll->ensureWidgetVisible(m_rows[index], 0, m_rows[index]->height());
}

void ScreeningPage::focusFirst()
{
    const Screening& screening = m_record->current();
    const auto open = std::ranges::find_if(m_rows, [&](const QuestionRow* row) {
        return answerTo(screening, row->question().name) == nullptr;
    });
    goTo(open != m_rows.end() ? static_cast<std::size_t>(open - m_rows.begin()) : 0);
    emit said(tr("Y yes · N no · K not known · Enter next question"));
}

bool ScreeningPage::mayChange()
{
    if (!m_services.store.isWritable()) {
        emit said(tr("The practice file is read only here. Nothing was changed."));
        return false;
    }
    if (!m_record->isSigned()) {
        return true;
    }
    if (!m_services.prompts.confirm(
            this,
            tr("This screening is signed and is never changed. A change begins the next one, with "
               "these answers; it is not signed and blocks until it is."),
            tr("Begin the next screening"))) {
        return false;
    }
    m_record->begin(true);
    return !m_record->isSigned();
}

void ScreeningPage::screenAgain()
{
    if (m_services.prompts.confirm(
            this,
            tr("The next screening asks every question again and shows what was said last time. "
               "It blocks until it is signed."),
            tr("Screen again"))) {
        m_record->begin(false);
        focusFirst();
    }
}

void ScreeningPage::goAhead(const GateBlock& block)
{
    const GateBlockText words = gateBlockText(block, m_record->facts().sites);
    OverrideForm form(m_services, m_record->current(), block.question, words.head, words.sentence,
                      this);
    if (form.exec() == QDialog::Accepted) {
        m_record->reload();
        emit said(tr("Recorded. It stands in the head of the record."));
    }
}

} // namespace quadrille::app
