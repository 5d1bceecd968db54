// SPDX-License-Identifier: GPL-3.0-or-later
// What each act of the menus does.
#include "app/caseload/caseload_page.h"
#include "app/diary/diary_page.h"
#include "app/patient/record_header.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/practice/pad_life_form.h"
#include "app/practice/practice_form.h"
#include "app/print/handout_page.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_term_form.h"
#include "app/window/main_window.h"
#include "app/window/practice_lists.h"

namespace quadrille::app
{

void MainWindow::carryOut(Act act)
{
    carryOutInPractice(act);
    carryOutInRecord(act);
    carryOutInView(act);
}

void MainWindow::carryOutInPractice(Act act)
{
    switch (act) {
    case Act::newPractice:
        return emit newPracticeRequested();
    case Act::openPractice:
        return emit openPracticeRequested();
    case Act::openDemo:
        return emit demoRequested();
    case Act::practiceDetails:
        PracticeForm(m_services, this).exec();
        return;
    case Act::practitioners:
        return showPractitioners(m_services, this);
    case Act::stimulators:
        return showStimulators(m_services, shownCourse(), this);
    case Act::practiceQuestions:
        return showPracticeQuestions(m_services, this);
    case Act::screeningTerm:
        ScreeningTermForm(m_services, this).exec();
        return;
    case Act::padLife:
        PadLifeForm(m_services, this).exec();
        return;
    case Act::copyFolder:
        return emit copyFolderRequested();
    case Act::quit:
        close();
        return;
    case Act::newPatient:
        return newPatient();
    case Act::findPatient:
        showCaseload();
        return m_caseload->focusSearch();
    case Act::backToCaseload:
        return showCaseload();
    default:
        return;
    }
}

void MainWindow::carryOutInRecord(Act act)
{
    switch (act) {
    case Act::patientDetails:
        return m_record->changePatient();
    case Act::erasePatient:
        if (const auto patient = m_record->patient()) {
            emit eraseRequested(*patient);
        }
        return;
    case Act::newCourse:
        return m_record->newCourse();
    case Act::pauseCourse:
        return m_record->carryOut(CourseAct::pause);
    case Act::goOnWithCourse:
        return m_record->carryOut(CourseAct::goOn);
    case Act::endCourse:
        return m_record->carryOut(CourseAct::end);
    case Act::reopenCourse:
        return m_record->carryOut(CourseAct::reopen);
    case Act::screening:
        m_record->showPage(RecordPage::screeningIndex);
        return m_record->screeningPage().focusFirst();
    case Act::diary:
        m_record->showPage(RecordPage::diaryIndex);
        return m_record->diaryPage().focusFirst();
    case Act::history:
        return m_record->showPage(RecordPage::historyIndex);
    case Act::enterMeasurements:
        return m_record->enterMeasurements();
    case Act::issuePads:
        return m_record->issuePads();
    case Act::importDiary:
        return m_record->importDiaryFile();
    default:
        return carryOutInPlan(act);
    }
}

void MainWindow::carryOutInPlan(Act act)
{
    PlanPage& plan = m_record->planPage();
    switch (act) {
    case Act::newBlock:
        m_record->showPage(RecordPage::planIndex);
        return plan.addBlock();
    case Act::undo:
        return m_record->undoStack().undo();
    case Act::redo:
        return m_record->undoStack().redo();
    case Act::saveDraft:
        return m_record->save();
    case Act::revertDraft:
        return plan.revert();
    case Act::startingPoints:
        m_record->showPage(RecordPage::planIndex);
        return plan.showStartingPoints();
    case Act::whatIf:
        m_record->showPage(RecordPage::planIndex);
        return plan.askWhatIf();
    case Act::clinicSession:
        m_record->showPage(RecordPage::planIndex);
        return plan.holdClinicSession();
    case Act::issuePlan:
        return plan.issue();
    case Act::plansIssued:
        return plan.showPlansIssued();
    case Act::print:
        m_record->showPage(RecordPage::handoutIndex);
        return m_record->handoutPage().print();
    case Act::nextPage:
        return turnPage(1);
    case Act::previousPage:
        return turnPage(-1);
    default:
        return;
    }
}

void MainWindow::carryOutInView(Act act)
{
    switch (act) {
    case Act::nextArea:
        return nextArea();
    case Act::schemeAsDesktop:
        return emit schemeChosen(SchemeChoice::asDesktop);
    case Act::schemeLight:
        return emit schemeChosen(SchemeChoice::light);
    case Act::schemeDark:
        return emit schemeChosen(SchemeChoice::dark);
    case Act::text100:
        return emit textPercentChosen(100);
    case Act::text125:
        return emit textPercentChosen(125);
    case Act::text150:
        return emit textPercentChosen(150);
    case Act::text200:
        return emit textPercentChosen(200);
    case Act::keys:
        return showKeys(this);
    case Act::about:
        return showAbout(this);
    default:
        return;
    }
}

} // namespace quadrille::app
