// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/course.h"
#include "core/plan.h"
#include "core/screening_gate.h"

#include <QWidget>

#include <vector>

class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace quadrille::app
{

class QuestionRow;
class ScreeningRecord;
class ScreeningSide;
class SkinSheet;

/// The Screening page of a patient's record: the questions one below the other, the skin, and
/// beside them what follows from the answers.
class ScreeningPage : public QWidget
{
    Q_OBJECT

public:
    ScreeningPage(const Services& services, QWidget* parent);

    void setCourse(const Course& course);
    /// The blocks whose sites the gate is asked for: the draft's, else the plan's.
    void setBlocks(const std::vector<Block>& blocks);
    ScreeningRecord& record() { return *m_record; }
    /// The sheets that stand in the column at the right while this page is shown.
    QWidget* side() const;
    /// Where work begins: the first question without an answer, else the first.
    void focusFirst();

protected:
    void resizeEvent(QResizeEvent* event) override;

signals:
    void said(const QString& sentence);

private:
    void layOut();
    QWidget* tableHead();
    void fitWidth();
    void refresh();
    void rebuildRows();
    void orderTabs();
    void connectRow(std::size_t index);
    void makeCurrent(std::size_t index);
    void goTo(std::size_t index);
    /// False when the screening is signed and the person does not want the next one.
    bool mayChange();
    void screenAgain();
    void goAhead(const GateBlock& block);

    const Services m_services;
    ScreeningRecord* m_record;
    QLabel* m_notice;
    QLabel* m_headClass = nullptr;
    QLabel* m_headBlocks = nullptr;
    QScrollArea* m_scroll;
    QWidget* m_content;
    QVBoxLayout* m_rowsLayout;
    std::vector<QuestionRow*> m_rows;
    std::size_t m_current = 0;
    SkinSheet* m_skin;
    ScreeningSide* m_side;
};

} // namespace quadrille::app
