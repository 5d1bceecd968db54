// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/caseload/store_caseload.h"
#include "app/look/tokens.h"
#include "app/window/actions.h"
#include "app/window/services.h"

#include "core/ids.h"

#include <QHash>
#include <QMainWindow>

#include <optional>

class QLabel;
class QMenu;
class QStackedWidget;
class QToolButton;

namespace quadrille::app
{

class CaseloadPage;
class RecordPage;

/// The window on one practice: caseload and record, menus and status line. What concerns more than
/// this practice it asks of the program by signals.
class MainWindow : public QMainWindow
{
    Q_OBJECT

public:
    MainWindow(const Services& services, QWidget* parent = nullptr);

    /// A sentence in the status line, until the next one.
    void say(const QString& sentence);
    /// Whose name signs changes, and the practice's, at the right of the status line.
    void showIdentity();
    void setScheme(SchemeChoice scheme, int textPercent);
    RecordPage& recordPage() { return *m_record; }
    CaseloadPage& caseloadPage() { return *m_caseload; }
    void openPatient(PatientId patient, std::optional<CourseId> course);
    void showCaseload();
    /// Closes a record that was erased.
    void leaveErased(PatientId patient);
    /// The first entries of an empty practice: its name and who works here. Does nothing where they
    /// exist.
    void askForPractice();

signals:
    void newPracticeRequested();
    void openPracticeRequested();
    void demoRequested();
    void copyFolderRequested();
    void eraseRequested(quadrille::PatientId patient);
    void schemeChosen(quadrille::app::SchemeChoice scheme);
    void textPercentChosen(int percent);
    void workingChosen(quadrille::PractitionerId practitioner);

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    void layOut();
    void buildMenus();
    void addAct(QMenu& menu, const ActFacts& facts);
    void connectPages();
    void connectRecord();
    void carryOut(Act act);
    void carryOutInPractice(Act act);
    void carryOutInRecord(Act act);
    void carryOutInPlan(Act act);
    void carryOutInView(Act act);
    /// Of the record that is open.
    std::optional<CourseId> shownCourse() const;
    void newPatient();
    void nextArea();
    void turnPage(int by);
    void updateActs();

    const Services m_services;
    QStackedWidget* m_stack;
    StoreCaseload m_source;
    CaseloadPage* m_caseload;
    RecordPage* m_record;
    QLabel* m_said;
    QToolButton* m_identity;
    QHash<int, QAction*> m_acts;
};

} // namespace quadrille::app
