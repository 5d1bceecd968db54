// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "db/loans.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class InventoryModel;

/// The practice's single units: who has which since when, what is due back and what is to be
/// checked, the most overdue first; lending and taking back.
class InventoryPage : public QWidget
{
    Q_OBJECT

public:
    /// `preferred`: the course that lending begins with.
    InventoryPage(const Services& services, std::optional<CourseId> preferred, QWidget* parent);

    void refresh();

private:
    void layOut();
    QPushButton* act(const QString& text, const QString& name, const QString& tip,
                     void (InventoryPage::*what)());
    void addUnit();
    void changeUnit();
    void lendUnit();
    void changeDue();
    void takeUnitBack();
    void showCurrent();
    const db::InventoryRow* current() const;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void sizeColumns();

    const Services m_services;
    std::optional<CourseId> m_preferred;
    InventoryModel* m_model;
    QTableView* m_table;
    QLabel* m_empty;
    QPlainTextEdit* m_past; ///< all loans of the chosen unit
    QPushButton* m_add = nullptr;
    QPushButton* m_change = nullptr;
    QPushButton* m_lend = nullptr;
    QPushButton* m_due = nullptr;
    QPushButton* m_takeBack = nullptr;
};

} // namespace quadrille::app
