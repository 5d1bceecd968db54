// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/ids.h"

#include <QList>
#include <QWidget>

#include <optional>

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class HistoryModel;

/// Everything that was changed in a patient's record, the latest first: who, when, from what, to
/// what. Nothing here can be edited.
class HistoryPage : public QWidget
{
    Q_OBJECT

public:
    HistoryPage(const Services& services, QWidget* parent);

    /// Reads the latest changes; earlier ones follow as the list is scrolled down.
    void open(PatientId patient);

    /// "Save as CSV…", for the head of the page.
    QList<QWidget*> acts() const;

signals:
    void said(const QString& sentence);

private:
    void saveAsCsv();
    void readEarlier();
    void showCount();
    void showWhole();
    void sizeColumns();
    void resizeEvent(QResizeEvent* event) override;

    const Services m_services;
    HistoryModel* m_model;
    QTableView* m_table;
    QPushButton* m_save;
    QLabel* m_count;
    QPlainTextEdit* m_whole; ///< the chosen change, all of it
    std::optional<PatientId> m_patient;
    bool m_all = false; ///< the first change is in the list
};

} // namespace quadrille::app
