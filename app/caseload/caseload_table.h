// SPDX-License-Identifier: GPL-3.0-or-later
// The table of the caseload: columns, heights of rows and keys.
#pragma once

#include "app/caseload/caseload_model.h"

#include <QHeaderView>
#include <QTableView>

namespace quadrille::app
{

/// The head of the table: a band with the names of the columns.
class CaseloadHeader : public QHeaderView
{
    Q_OBJECT

public:
    explicit CaseloadHeader(QWidget* parent = nullptr);

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;
    QSize sectionSizeFromContents(int section) const override;
};

/// Whole rows are chosen; heads of groups are stepped over. Course and Attention take what width
/// there is.
class CaseloadTable : public QTableView
{
    Q_OBJECT

public:
    CaseloadTable(CaseloadModel& model, const QuantityText& text, QWidget* parent = nullptr);

    /// The patient of the current row; nothing when there is none.
    const CaseloadLine* currentLine() const;
    /// Makes the first patient current; false when there is none.
    bool chooseFirst();
    void choosePatient(PatientId patient);

signals:
    /// Enter or a double click on a patient.
    void opened(const CaseloadLine& line);
    /// Up on the first patient.
    void leftUpwards();

protected:
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void layOutRows();
    void layOutColumns();

    CaseloadModel& m_model;
};

} // namespace quadrille::app
