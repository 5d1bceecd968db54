// SPDX-License-Identifier: GPL-3.0-or-later
// The title line of the caseload: search, filters, order, and the page's one main act.
#pragma once

#include "app/caseload/caseload_order.h"

#include <QWidget>

class QComboBox;
class QGridLayout;
class QPushButton;

namespace quadrille::app
{

class SearchField;
class SegmentRow;

/// One line, or two where large text or a narrow window leaves no room for one.
class CaseloadHead : public QWidget
{
    Q_OBJECT

public:
    explicit CaseloadHead(QWidget* parent = nullptr);

    SearchField& search() { return *m_search; }
    void showCounts(const CaseloadArrangement& arrangement);
    void clearSearch();
    void focusSearch();
    /// Width at the end of the line that lies above the side sheet, px; 0 without one.
    void setSideWidth(int width);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void filterChosen(CaseloadFilter filter);
    void sortChosen(CaseloadSort sort);
    void newPatientRequested();

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeChoices();
    bool needsTwoLines() const;
    void layOut();

    SearchField* m_search;
    SegmentRow* m_filter;
    QComboBox* m_sort;
    QPushButton* m_new;
    QWidget* m_title;
    QWidget* m_choices;
    QGridLayout* m_grid;
    int m_sideWidth = 0;
};

} // namespace quadrille::app
