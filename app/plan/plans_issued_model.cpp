// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plans_issued_model.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QFontMetrics>
#include <QPainter>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

void PlansIssuedModel::show(std::vector<PlanRow> rows, const QString& leftHead,
                            const QString& rightHead)
{
    beginResetModel();
    m_rows = std::move(rows);
    m_heads[left] = leftHead;
    m_heads[right] = rightHead;
    refill();
    endResetModel();
}

void PlansIssuedModel::showDifferencesOnly(bool only)
{
    beginResetModel();
    m_onlyDifferences = only;
    refill();
    endResetModel();
}

void PlansIssuedModel::refill()
{
    m_lines.clear();
    QString section;
    for (const PlanRow& row : m_rows) {
        if (m_onlyDifferences && !row.differs()) {
            continue;
        }
        if (row.section != section) {
            section = row.section;
            m_lines.push_back({true, {section, section, {}, {}}});
        }
        m_lines.push_back({false, row});
    }
}

int PlansIssuedModel::differences() const
{
    return static_cast<int>(std::ranges::count_if(m_rows, &PlanRow::differs));
}

bool PlansIssuedModel::isSection(int row) const
{
    return m_lines[static_cast<std::size_t>(row)].isSection;
}

int PlansIssuedModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int PlansIssuedModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString PlansIssuedModel::spoken(const Line& line, int column) const
{
    const PlanRow& row = line.row;
    if (line.isSection) {
        return row.section;
    }
    if (column == what) {
        return (row.differs() ? tr("%1, %2, differs: %3 and %4") : tr("%1, %2: %3"))
            .arg(row.section, row.label, row.left, row.right);
    }
    return tr("%1: %2", "plan, value").arg(m_heads[column], column == left ? row.left : row.right);
}

QVariant PlansIssuedModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const Line& line = m_lines[static_cast<std::size_t>(index.row())];
    const QString texts[columnsInAll] = {line.row.label, line.row.left, line.row.right};
    switch (role) {
    case Qt::DisplayRole:
        return QString(texts[index.column()]).replace(QLatin1Char('\n'), QLatin1Char(' '));
    case Qt::ToolTipRole:
        return texts[index.column()];
    case Qt::AccessibleTextRole:
        return spoken(line, index.column());
    case sectionRole:
        return line.isSection;
    case differsRole:
        return !line.isSection && line.row.differs();
    default:
        return {};
    }
}

QVariant PlansIssuedModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 ||
        section >= columnsInAll) {
        return {};
    }
    return m_heads[section];
}

void PlansIssuedDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                                const QModelIndex& index) const
{
    const Tokens tokens = tokensOf(option.palette);
    const bool isSection = index.data(PlansIssuedModel::sectionRole).toBool();
    const bool differs = index.data(PlansIssuedModel::differsRole).toBool();
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool isName = index.column() == PlansIssuedModel::what;
    painter->save();
    const QRect rect = option.rect;
    painter->fillRect(rect, isSection           ? tokens.band
                            : differs || chosen ? tokens.tint
                                                : tokens.sheet);
    painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), tokens.rule);
    if (differs && isName) {
        painter->fillRect(QRect(rect.left(), rect.top(), stroke::changedBar, rect.height()),
                          tokens.mark);
    }
    const bool bold = isSection || (differs && index.column() != PlansIssuedModel::left);
    painter->setFont(fontOf(bold ? TextStyle::strong : TextStyle::text, appliedFactor()));
    painter->setPen(tokens.ink);
    const int before = isSection ? space::close : isName ? space::insideSheet : space::small;
    const QRect room = rect.adjusted(before, 0, -space::small, 0);
    painter->drawText(
        room, Qt::AlignLeft | Qt::AlignVCenter,
        painter->fontMetrics().elidedText(index.data().toString(), Qt::ElideRight, room.width()));
    if (chosen && option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(tokens.mark, stroke::focus));
        painter->drawLine(rect.topLeft() + QPoint(0, 1), rect.topRight() + QPoint(0, 1));
        painter->drawLine(rect.bottomLeft() - QPoint(0, 1), rect.bottomRight() - QPoint(0, 1));
    }
    painter->restore();
}

QSize PlansIssuedDelegate::sizeHint(const QStyleOptionViewItem& option,
                                    const QModelIndex& index) const
{
    return {QStyledItemDelegate::sizeHint(option, index).width(),
            scaled(size::figureRow, appliedFactor())};
}

} // namespace quadrille::app
