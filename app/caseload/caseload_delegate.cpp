// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_delegate.h"

#include "app/caseload/attention_sign.h"
#include "app/grid/grid_painter.h"
#include "app/look/look.h"

#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

// px at 100 %, from the top of a row of 64.
constexpr int firstLineMiddle = 23;
constexpr int secondLineMiddle = 42;
constexpr int weekLineMiddle = 26;
constexpr int weekSquaresTop = 41;
constexpr int signSide = 16;
constexpr int weekSquare = 5;
constexpr int weekPitch = 6;
constexpr int weekHeight = 4;
constexpr int currentWeekHeight = 8;
constexpr int mostWeekSquares = 16;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

/// One line of text whose middle lies `middle` px below the top of the cell.
void writeLine(QPainter& painter, const QRect& cell, int middle, const QString& text,
               const QFont& font, const QColor& ink)
{
    const QFontMetrics metrics(font);
    const int left = cell.left() + px(CaseloadDelegate::cellPadding);
    const QRect line(left, cell.top() + px(middle) - metrics.height() / 2,
                     cell.right() + 1 - left - space::tiny, metrics.height());
    painter.setFont(font);
    painter.setPen(ink);
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                     metrics.elidedText(text, Qt::ElideRight, line.width()));
}

void writeTwoLines(QPainter& painter, const QRect& cell, const TwoLines& lines, TextStyle first,
                   const Tokens& tokens)
{
    const double factor = appliedFactor();
    const bool alone = lines.second.isEmpty();
    const int middle = alone ? size::listRow / 2 : firstLineMiddle;
    writeLine(painter, cell, middle, lines.first, fontOf(first, factor), tokens.ink);
    writeLine(painter, cell, secondLineMiddle, lines.second, fontOf(TextStyle::text, factor),
              tokens.ink2);
}

/// Rows and heads have a line below; the table's first row has the header's line above.
void paintRowLine(QPainter& painter, const QRect& cell, const Tokens& tokens)
{
    painter.fillRect(QRect(cell.left(), cell.bottom(), cell.width(), stroke::line), tokens.rule);
}

/// The focus goes round the whole row, drawn cell by cell.
void paintFocus(QPainter& painter, const QRect& cell, CaseloadColumn column, const Tokens& tokens)
{
    const int width = stroke::focus;
    const QRect inner = cell.adjusted(0, 0, 0, -stroke::line);
    painter.fillRect(QRect(inner.left(), inner.top(), inner.width(), width), tokens.mark);
    painter.fillRect(QRect(inner.left(), inner.bottom() + 1 - width, inner.width(), width),
                     tokens.mark);
    if (column == CaseloadColumn::margin) {
        painter.fillRect(QRect(inner.left(), inner.top(), width, inner.height()), tokens.mark);
    } else if (column == CaseloadColumn::attention) {
        painter.fillRect(QRect(inner.right() + 1 - width, inner.top(), width, inner.height()),
                         tokens.mark);
    }
}

} // namespace

CaseloadDelegate::CaseloadDelegate(const QuantityText& text, QObject* parent)
    : QStyledItemDelegate(parent)
    , m_text(text)
{
}

int CaseloadDelegate::rowHeight(bool groupHead)
{
    return px(groupHead ? size::groupHead : size::listRow);
}

void CaseloadDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                             const QModelIndex& index) const
{
    const Tokens tokens = tokensOf(option.palette);
    painter->save();
    painter->setClipRect(option.rect);
    const auto entry = index.data(CaseloadModel::EntryRole).value<CaseloadEntryPointer>();
    if (!entry) {
        paintGroupHead(*painter, option, index, tokens);
    } else {
        const bool selected = option.state.testFlag(QStyle::State_Selected);
        const QColor ground = selected ? tokens.tint : tokens.sheet;
        const auto column = static_cast<CaseloadColumn>(index.column());
        painter->fillRect(option.rect, ground);
        paintCell(*painter, option.rect, *entry, column, tokens, ground);
        paintRowLine(*painter, option.rect, tokens);
        if (selected && option.state.testFlag(QStyle::State_Active) && option.widget &&
            option.widget->hasFocus()) {
            paintFocus(*painter, option.rect, column, tokens);
        }
    }
    painter->restore();
}

void CaseloadDelegate::paintGroupHead(QPainter& painter, const QStyleOptionViewItem& option,
                                      const QModelIndex& index, const Tokens& tokens) const
{
    painter.fillRect(option.rect, tokens.band);
    paintRowLine(painter, option.rect, tokens);
    const QRect words =
        option.rect.adjusted(px(size::marginColumn + cellPadding), 0, 0, -stroke::line);
    QFont font = fontOf(TextStyle::secondLine, appliedFactor());
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(tokens.ink2);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, index.data().toString());
}

void CaseloadDelegate::paintCell(QPainter& painter, const QRect& cell, const CaseloadEntry& entry,
                                 CaseloadColumn column, const Tokens& tokens,
                                 const QColor& ground) const
{
    switch (column) {
    case CaseloadColumn::margin:
        if (entry.needsAttention()) {
            const int side = px(signSide);
            QRect box(0, 0, side, side);
            box.moveCenter(cell.center());
            paintAttentionSign(painter, box, entry.reasons.front().reason, tokens.ink);
        }
        break;
    case CaseloadColumn::name:
        writeTwoLines(painter, cell, entry.name, TextStyle::listName, tokens);
        break;
    case CaseloadColumn::course:
        writeTwoLines(painter, cell, entry.courseLines, TextStyle::text, tokens);
        break;
    case CaseloadColumn::week:
        paintWeeks(painter, cell, entry, tokens);
        break;
    case CaseloadColumn::grid:
        if (entry.miniature) {
            const GridSize size = miniatureSize(appliedFactor());
            const int rise = (cell.height() - stroke::line - miniatureExtent(size).height()) / 2;
            paintMiniature(painter, cell.topLeft() + QPoint(px(cellPadding), rise),
                           *entry.miniature, size, tokens, ground);
        }
        break;
    case CaseloadColumn::plan:
        writeTwoLines(painter, cell, entry.plan, TextStyle::text, tokens);
        break;
    case CaseloadColumn::attention:
        if (entry.needsAttention()) {
            writeTwoLines(painter, cell, entry.waiting, TextStyle::strong, tokens);
        } else {
            writeLine(painter, cell, size::listRow / 2, entry.waiting.first,
                      fontOf(TextStyle::secondLine, appliedFactor()), tokens.ink2);
        }
        break;
    }
}

void CaseloadDelegate::paintWeeks(QPainter& painter, const QRect& cell, const CaseloadEntry& entry,
                                  const Tokens& tokens) const
{
    const TwoLines words = weekWords(entry, m_text);
    const QFont bold = fontOf(TextStyle::strong, appliedFactor());
    const QFont plain = fontOf(TextStyle::text, appliedFactor());
    const int middle = entry.weeks ? weekLineMiddle : size::listRow / 2;
    writeLine(painter, cell, middle, words.first, bold, tokens.ink);
    const int width = QFontMetrics(bold).horizontalAdvance(words.first);
    writeLine(painter, cell.adjusted(width, 0, 0, 0), middle, words.second, plain,
              entry.week ? tokens.ink : tokens.ink2);
    if (!entry.weeks) {
        return;
    }
    // More weeks than fit as squares share the same width.
    const int weeks = std::max(1, *entry.weeks);
    const int current = entry.hasEnded ? weeks + 1 : entry.week.value_or(0);
    const double pitch = weeks <= mostWeekSquares
                             ? px(weekPitch)
                             : static_cast<double>(px(weekPitch) * mostWeekSquares) / weeks;
    const bool squares = weeks <= mostWeekSquares;
    const int left = cell.left() + px(cellPadding);
    const int top = cell.top() + px(weekSquaresTop);
    for (int week = 1; week <= weeks; ++week) {
        const int from = left + static_cast<int>((week - 1) * pitch);
        const int to = left + static_cast<int>(week * pitch);
        const int gap = squares ? px(weekPitch) - px(weekSquare) : 0;
        const int height = px(week == current ? currentWeekHeight : weekHeight);
        painter.fillRect(
            QRect(from, top - (height - px(weekHeight)) / 2, std::max(1, to - from - gap), height),
            week <= current ? tokens.mark : tokens.line);
    }
}

QSize CaseloadDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const
{
    const bool head = !index.data(CaseloadModel::EntryRole).isValid();
    return {px(size::marginColumn), rowHeight(head)};
}

} // namespace quadrille::app
