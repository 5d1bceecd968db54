// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/handout_words.h"
#include "app/print/paper_format.h"
#include "app/window/services.h"

#include "core/follow_up.h"
#include "core/handout_content.h"

#include <QList>
#include <QWidget>

#include <optional>

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QStackedLayout;

namespace quadrille::app
{

class PaperView;
class SegmentRow;

/// The Handout page of a patient's record: the pages as they will be printed, the paper and size of
/// print, and the acts Save PDF and Print.
class HandoutPage : public QWidget
{
    Q_OBJECT

public:
    HandoutPage(const Services& services, QWidget* parent);

    /// The handout of the plan issued last, or why the screening keeps it back; nothing while no
    /// plan is issued.
    void setContent(const std::optional<Result<HandoutContent>>& content);
    /// For the upper right of the record.
    QList<QWidget*> acts() const;
    PaperChoice choice() const;
    void savePdf();
    void print();
    /// Where work on this page begins.
    void focusFirst();

signals:
    void said(const QString& sentence);
    /// Something is about to be printed or saved: whoever listens sets the content as it is now,
    /// before this returns.
    void contentWanted();
    /// Pages left the program.
    void handedOut(quadrille::Medium medium);
    /// The person wants to go to the plan, because there is none to print.
    void planRequested();
    /// The person wants to see what the screening says.
    void screeningRequested();

private:
    QWidget* emptySheet();
    QWidget* paperSheet();
    void layOutPaper();
    void refresh();
    void showPageNumber();
    QString suggestedName() const;

    const Services m_services;
    HandoutWords m_words;
    std::optional<HandoutContent> m_content;
    QString m_blocked; ///< why nothing is printed; empty: nothing is in the way
    QStackedLayout* m_stack;
    QLabel* m_sentence;
    QPushButton* m_plan;
    QPushButton* m_screening;
    QComboBox* m_format;
    QCheckBox* m_large;
    SegmentRow* m_zoom;
    QPushButton* m_previous;
    QPushButton* m_next;
    QLabel* m_pageNumber;
    PaperView* m_view;
    QPushButton* m_savePdf;
    QPushButton* m_print;
};

} // namespace quadrille::app
