// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_page.h"

#include "app/caseload/caseload_head.h"
#include "app/caseload/caseload_model.h"
#include "app/caseload/caseload_notice.h"
#include "app/caseload/caseload_table.h"
#include "app/caseload/desk_sheet.h"
#include "app/caseload/search_field.h"
#include "app/look/look.h"
#include "app/look/margin_line.h"
#include "app/look/roles.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QResizeEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int leastWidthWithSide = 1200;
constexpr int tableToSide = 16;
constexpr int pageEnd = 12;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

/// The frame of the table: lines above and at the right, as a sheet that runs out of the window.
QFrame* makeTableFrame(QWidget* table, QWidget* parent)
{
    auto* frame = new QFrame(parent);
    setRole(*frame, Role::sheet);
    auto* column = new QVBoxLayout(frame);
    column->setContentsMargins(0, stroke::line, stroke::line, 0);
    column->addWidget(table);
    return frame;
}

} // namespace

CaseloadPage::CaseloadPage(CaseloadSource& source, const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_source(source)
    , m_text(text)
    , m_model(new CaseloadModel(source, text, this))
    , m_head(new CaseloadHead(this))
    , m_table(new CaseloadTable(*m_model, text, this))
    , m_notice(new CaseloadNotice(m_table->viewport()))
    , m_desk(new DeskSheet(text, this))
    , m_side(makeSide())
{
    auto* body = new QHBoxLayout;
    body->setSpacing(px(tableToSide));
    body->setContentsMargins(0, 0, 0, 0);
    body->addWidget(makeTableFrame(m_table, this), 1);
    body->addWidget(m_side);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_head);
    column->addLayout(body, 1);
    auto* overTable = new QVBoxLayout(m_table->viewport());
    overTable->setContentsMargins(px(size::marginColumn), 0, 0, 0);
    overTable->addWidget(m_notice);
    new MarginLine(this);
    connectParts();
    m_head->showCounts(m_model->arrangement());
    showNotice();
}

QWidget* CaseloadPage::makeSide()
{
    auto* side = new QWidget(this);
    side->setFixedWidth(px(size::sideSheet + pageEnd));
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, px(pageEnd), 0);
    column->addWidget(m_desk);
    column->addStretch();
    return side;
}

void CaseloadPage::connectParts()
{
    SearchField& search = m_head->search();
    connect(&search, &QLineEdit::textChanged, this, [this](const QString& text) {
        CaseloadWish wish = m_model->wish();
        wish.search = text;
        applyWish(wish);
    });
    connect(&search, &SearchField::leftDownwards, this, &CaseloadPage::focusList);
    connect(&search, &QLineEdit::returnPressed, this, &CaseloadPage::focusList);
    connect(m_table, &CaseloadTable::leftUpwards, this, &CaseloadPage::focusSearch);
    connect(m_head, &CaseloadHead::filterChosen, this, [this](CaseloadFilter filter) {
        CaseloadWish wish = m_model->wish();
        wish.filter = filter;
        wish.topic.reset();
        m_desk->choose(std::nullopt);
        applyWish(wish);
    });
    connect(m_head, &CaseloadHead::sortChosen, this, [this](CaseloadSort sort) {
        CaseloadWish wish = m_model->wish();
        wish.sort = sort;
        applyWish(wish);
    });
    connect(m_desk, &DeskSheet::topicChosen, this, [this](std::optional<DeskTopic> topic) {
        CaseloadWish wish = m_model->wish();
        wish.topic = topic;
        applyWish(wish);
    });
    connect(m_table, &CaseloadTable::opened, this, [this](const CaseloadLine& line) {
        // The line dies when the caseload is read anew while the record is open.
        const PatientId patient = line.patient;
        const auto course = line.course;
        emit openRequested(patient, course);
    });
    connect(m_head, &CaseloadHead::newPatientRequested, this, &CaseloadPage::newPatientRequested);
    connect(m_notice, &CaseloadNotice::newPatientRequested, this,
            &CaseloadPage::newPatientRequested);
    connect(m_notice, &CaseloadNotice::demoRequested, this, &CaseloadPage::demoRequested);
    connect(m_notice, &CaseloadNotice::clearRequested, m_head, &CaseloadHead::clearSearch);
}

std::optional<PatientId> CaseloadPage::chosenPatient() const
{
    const CaseloadLine* line = m_table->currentLine();
    return line ? std::optional(line->patient) : std::nullopt;
}

void CaseloadPage::reload()
{
    const auto patient = chosenPatient();
    m_model->reload();
    m_desk->setLines(m_model->currentLines(), m_source.today());
    dropEmptyTopic();
    if (patient) {
        choosePatient(*patient);
    }
    m_head->showCounts(m_model->arrangement());
    showNotice();
    emit statusChanged();
}

void CaseloadPage::dropEmptyTopic()
{
    CaseloadWish wish = m_model->wish();
    if (wish.topic && m_model->rowCount() == 0) {
        // What lay under the line has been dealt with; the line is gone.
        wish.topic.reset();
        m_desk->choose(std::nullopt);
        m_model->setWish(wish);
    }
}

void CaseloadPage::applyWish(const CaseloadWish& wish)
{
    const auto patient = chosenPatient();
    m_model->setWish(wish);
    if (patient) {
        choosePatient(*patient);
    }
    m_head->showCounts(m_model->arrangement());
    showNotice();
}

void CaseloadPage::showNotice()
{
    const CaseloadWish& wish = m_model->wish();
    m_notice->setVisible(m_model->rowCount() == 0);
    if (m_model->currentLines().empty() && m_model->endedInAll() == 0) {
        m_notice->showNoPatients();
    } else if (!wish.search.trimmed().isEmpty()) {
        m_notice->showNoMatch(wish.search.trimmed());
    } else if (wish.filter == CaseloadFilter::needsAttention) {
        m_notice->showNobody(tr("Nobody needs attention."));
    } else if (wish.filter == CaseloadFilter::ended) {
        m_notice->showNobody(tr("No course has ended yet."));
    } else {
        m_notice->showNobody(tr("No course is running."));
    }
}

void CaseloadPage::choosePatient(PatientId patient)
{
    m_table->choosePatient(patient);
}

void CaseloadPage::focusList()
{
    if (m_table->currentLine() || m_table->chooseFirst()) {
        m_table->setFocus(Qt::ShortcutFocusReason);
    }
}

void CaseloadPage::focusSearch()
{
    m_head->focusSearch();
}

QString CaseloadPage::statusText() const
{
    const auto& lines = m_model->currentLines();
    const auto running = static_cast<int>(std::ranges::count_if(
        lines, [](const CaseloadLine& line) { return line.course.has_value(); }));
    const int ended = m_model->endedInAll();
    if (running + ended == 0) {
        return tr("No courses yet");
    }
    return tr("%1 running · %2 ended", "courses")
        .arg(running == 1 ? tr("1 course") : tr("%n courses", nullptr, running),
             m_text.count(ended));
}

void CaseloadPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const bool room = width() >= px(leastWidthWithSide);
    m_side->setVisible(room);
    m_head->setSideWidth(room ? px(size::sideSheet + tableToSide) : 0);
}

} // namespace quadrille::app
