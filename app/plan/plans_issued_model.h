// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/plan_rows.h"

#include <QAbstractTableModel>
#include <QStyledItemDelegate>

#include <vector>

namespace quadrille::app
{

/// Two plans as a table: what, the one, the other. Each block and site has a line of its own above
/// its values.
class PlansIssuedModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { what, left, right, columnsInAll };
    enum Part {
        sectionRole = Qt::UserRole + 1, ///< the line names a block or a site
        differsRole,
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<PlanRow> rows, const QString& leftHead, const QString& rightHead);
    /// Leaves out what both have in common.
    void showDifferencesOnly(bool only);
    int differences() const;
    bool isSection(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Line {
        bool isSection = false;
        PlanRow row;
    };
    void refill();
    QString spoken(const Line& line, int column) const;

    std::vector<PlanRow> m_rows;
    std::vector<Line> m_lines;
    QString m_heads[columnsInAll];
    bool m_onlyDifferences = false;
};

/// Draws its lines: a bar, a tint and a bold name where the plans differ.
class PlansIssuedDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

} // namespace quadrille::app
