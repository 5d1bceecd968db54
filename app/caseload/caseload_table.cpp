// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_table.h"

#include "app/caseload/caseload_delegate.h"
#include "app/look/look.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace quadrille::app
{

namespace
{

// Widths of columns that do not stretch, px at 100 %.
constexpr int nameWidth = 184;
constexpr int weekWidth = 124;
constexpr int gridWidth = 66;
constexpr int planWidth = 140;
constexpr int leastStretched = 120;
/// Of the width that is left, so many percent go to Course and the rest to Attention.
constexpr int coursePercent = 52;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

int columnIndex(CaseloadColumn column)
{
    return static_cast<int>(column);
}

} // namespace

CaseloadHeader::CaseloadHeader(QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent)
{
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(1);
    setSectionsClickable(false);
}

void CaseloadHeader::paintSection(QPainter* painter, const QRect& rect, int section) const
{
    const Tokens tokens = tokensOf(palette());
    painter->save();
    painter->fillRect(rect, tokens.band);
    painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), stroke::line), tokens.line);
    painter->setFont(fontOf(TextStyle::secondLine, appliedFactor()));
    painter->setPen(tokens.ink2);
    painter->drawText(rect.adjusted(px(CaseloadDelegate::cellPadding), 0, 0, -stroke::line),
                      Qt::AlignLeft | Qt::AlignVCenter,
                      model()->headerData(section, Qt::Horizontal).toString());
    painter->restore();
}

QSize CaseloadHeader::sectionSizeFromContents(int) const
{
    return {px(size::marginColumn), px(size::tableHead)};
}

CaseloadTable::CaseloadTable(CaseloadModel& model, const QuantityText& text, QWidget* parent)
    : QTableView(parent)
    , m_model(model)
{
    setHorizontalHeader(new CaseloadHeader(this));
    setModel(&m_model);
    setItemDelegate(new CaseloadDelegate(text, this));
    verticalHeader()->hide();
    verticalHeader()->setMinimumSectionSize(1);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setWordWrap(false);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalScrollBar()->setSingleStep(px(size::listRow) / 2);
    setAccessibleName(tr("Caseload"));
    setAccessibleDescription(tr("Enter opens the record"));
    connect(&m_model, &QAbstractItemModel::modelReset, this, &CaseloadTable::layOutRows);
    connect(this, &QAbstractItemView::activated, this, [this](const QModelIndex& index) {
        if (const CaseloadLine* line = m_model.lineAt(index.row())) {
            emit opened(*line);
        }
    });
    layOutRows();
    layOutColumns();
}

const CaseloadLine* CaseloadTable::currentLine() const
{
    return m_model.lineAt(currentIndex().row());
}

bool CaseloadTable::chooseFirst()
{
    for (int row = 0; row < m_model.rowCount(); ++row) {
        if (m_model.lineAt(row)) {
            setCurrentIndex(m_model.index(row, columnIndex(CaseloadColumn::name)));
            scrollToTop();
            return true;
        }
    }
    return false;
}

void CaseloadTable::choosePatient(PatientId patient)
{
    if (const auto row = m_model.rowOf(patient)) {
        setCurrentIndex(m_model.index(*row, columnIndex(CaseloadColumn::name)));
    }
}

void CaseloadTable::layOutRows()
{
    clearSpans();
    verticalHeader()->setDefaultSectionSize(CaseloadDelegate::rowHeight(false));
    for (int row = 0; row < m_model.rowCount(); ++row) {
        if (m_model.isGroupHead(row)) {
            setRowHeight(row, CaseloadDelegate::rowHeight(true));
            setSpan(row, 0, 1, caseloadColumns);
        }
    }
}

void CaseloadTable::layOutColumns()
{
    const auto width = [this](CaseloadColumn column, int pixels) {
        setColumnWidth(columnIndex(column), pixels);
    };
    width(CaseloadColumn::margin, px(size::marginColumn));
    width(CaseloadColumn::name, px(nameWidth));
    width(CaseloadColumn::week, px(weekWidth));
    width(CaseloadColumn::grid, px(gridWidth));
    width(CaseloadColumn::plan, px(planWidth));
    const int fixed =
        px(size::marginColumn) + px(nameWidth) + px(weekWidth) + px(gridWidth) + px(planWidth);
    const int left = std::max(viewport()->width() - fixed, 2 * px(leastStretched));
    const int course = left * coursePercent / 100;
    width(CaseloadColumn::course, course);
    width(CaseloadColumn::attention, left - course);
}

void CaseloadTable::changeEvent(QEvent* event)
{
    QTableView::changeEvent(event);
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange) {
        layOutRows();
        layOutColumns();
    }
}

void CaseloadTable::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Up) {
        int above = currentIndex().row() - 1;
        while (above >= 0 && !m_model.lineAt(above)) {
            --above;
        }
        if (above < 0) {
            scrollToTop();
            emit leftUpwards();
            return;
        }
    }
    QTableView::keyPressEvent(event);
}

void CaseloadTable::resizeEvent(QResizeEvent* event)
{
    QTableView::resizeEvent(event);
    layOutColumns();
}

} // namespace quadrille::app
