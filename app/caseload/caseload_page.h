// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: every patient of the practice, those first who wait for something.
#pragma once

#include "app/caseload/caseload_order.h"
#include "app/caseload/caseload_source.h"
#include "app/words/quantity_text.h"

#include <QWidget>

#include <optional>

namespace quadrille::app
{

class CaseloadHead;
class CaseloadModel;
class CaseloadNotice;
class CaseloadTable;
class DeskSheet;

/// Shows what its source gives and tells what the person wants. Search and filters stay as they are
/// when it is read anew.
class CaseloadPage : public QWidget
{
    Q_OBJECT

public:
    /// `source` outlives the page. Empty until reload().
    CaseloadPage(CaseloadSource& source, const QuantityText& text, QWidget* parent = nullptr);

    void reload();
    /// Makes a patient's row the current one, if it is shown.
    void choosePatient(PatientId patient);
    /// The list takes the focus, its first patient if none is current.
    void focusList();
    void focusSearch();
    /// "14 courses running · 23 ended", for the status bar.
    QString statusText() const;

signals:
    void openRequested(PatientId patient, std::optional<CourseId> course);
    void newPatientRequested();
    void demoRequested();
    /// statusText() changed.
    void statusChanged();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeSide();
    void connectParts();
    void dropEmptyTopic();
    void applyWish(const CaseloadWish& wish);
    void showNotice();
    std::optional<PatientId> chosenPatient() const;

    CaseloadSource& m_source;
    QuantityText m_text;
    CaseloadModel* m_model;
    CaseloadHead* m_head;
    CaseloadTable* m_table;
    CaseloadNotice* m_notice;
    DeskSheet* m_desk;
    QWidget* m_side;
};

} // namespace quadrille::app
