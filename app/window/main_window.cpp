// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/main_window.h"

#include "app/caseload/caseload_page.h"
#include "app/diary/diary_page.h"
#include "app/look/roles.h"
#include "app/patient/patient_form.h"
#include "app/patient/record_header.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/practice/pad_life_form.h"
#include "app/practice/practice_form.h"
#include "app/print/handout_page.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_term_form.h"
#include "app/window/practice_lists.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/people.h"

#include <QAction>
#include <QCloseEvent>
#include <QLabel>
#include <QMenuBar>
#include <QRegularExpression>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolButton>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

MainWindow::MainWindow(const Services& services, QWidget* parent)
    : QMainWindow(parent)
    , m_services(services)
    , m_stack(new QStackedWidget(this))
    , m_source(services, [this](const Error& error) { say(errorText(error, m_services.text)); })
    , m_caseload(new CaseloadPage(m_source, services.text, this))
    , m_record(new RecordPage(services, this))
    , m_said(new QLabel(this))
    , m_identity(new QToolButton(this))
{
    layOut();
    buildMenus();
    connectPages();
    m_caseload->reload();
    showIdentity();
    showCaseload();
}

void MainWindow::layOut()
{
    setMinimumSize(size::leastWindowWidth, size::leastWindowHeight);
    m_stack->addWidget(m_caseload);
    m_stack->addWidget(m_record);
    setCentralWidget(m_stack);
    m_said->setObjectName(QStringLiteral("said"));
    m_said->setContentsMargins(size::marginColumn + space::medium, 0, 0, 0);
    m_identity->setObjectName(QStringLiteral("identity"));
    m_identity->setPopupMode(QToolButton::InstantPopup);
    m_identity->setMenu(new QMenu(m_identity));
    m_identity->setAccessibleName(tr("Who is working now"));
    m_identity->setToolTip(tr("Who is working now: changes are signed with this name"));
    statusBar()->setSizeGripEnabled(false);
    statusBar()->addWidget(m_said, 1);
    statusBar()->addPermanentWidget(m_identity);
}

void MainWindow::buildMenus()
{
    const std::vector<std::pair<MenuPlace, QString>> menus{{MenuPlace::practice, tr("&Practice")},
                                                           {MenuPlace::patient, tr("Pa&tient")},
                                                           {MenuPlace::plan, tr("P&lan")},
                                                           {MenuPlace::view, tr("&View")},
                                                           {MenuPlace::help, tr("&Help")}};
    const std::vector<ActFacts> acts = allActs();
    for (const auto& [place, name] : menus) {
        QMenu* menu = menuBar()->addMenu(name);
        for (const ActFacts& facts : acts) {
            if (facts.place == place) {
                addAct(*menu, facts);
            }
        }
    }
    for (const Act act : {Act::schemeAsDesktop, Act::schemeLight, Act::schemeDark, Act::text100,
                          Act::text125, Act::text150, Act::text200}) {
        m_acts[static_cast<int>(act)]->setCheckable(true);
    }
}

void MainWindow::addAct(QMenu& menu, const ActFacts& facts)
{
    if (facts.startsGroup) {
        menu.addSeparator();
    }
    QAction* action = menu.addAction(facts.text);
    action->setShortcut(facts.keys);
    action->setStatusTip(facts.tip);
    action->setProperty("needsRecord", facts.needsRecord);
    const Act act = facts.act;
    connect(action, &QAction::triggered, this, [this, act] { carryOut(act); });
    m_acts.insert(static_cast<int>(act), action);
}

void MainWindow::connectPages()
{
    connect(m_caseload, &CaseloadPage::openRequested, this, &MainWindow::openPatient);
    connect(m_caseload, &CaseloadPage::newPatientRequested, this, &MainWindow::newPatient);
    connect(m_caseload, &CaseloadPage::demoRequested, this, &MainWindow::demoRequested);
    connectRecord();
    const StoreEvents& events = m_services.events;
    connect(&events, &StoreEvents::patientChanged, m_caseload, &CaseloadPage::reload);
    connect(&events, &StoreEvents::planChanged, m_caseload, &CaseloadPage::reload);
    connect(&events, &StoreEvents::screeningChanged, m_caseload, &CaseloadPage::reload);
    connect(&events, &StoreEvents::diaryChanged, m_caseload, &CaseloadPage::reload);
    connect(&events, &StoreEvents::practiceChanged, m_caseload, &CaseloadPage::reload);
    connect(&events, &StoreEvents::practiceChanged, this, &MainWindow::showIdentity);
}

void MainWindow::connectRecord()
{
    connect(m_record, &RecordPage::said, this, &MainWindow::say);
    connect(m_record, &RecordPage::backRequested, this, &MainWindow::showCaseload);
    connect(m_record, &RecordPage::courseShown, this, &MainWindow::updateActs);
    connect(m_record, &RecordPage::pageShown, this, &MainWindow::updateActs);
    connect(&m_record->diaryPage().draft().undoStack(), &QUndoStack::indexChanged, this,
            &MainWindow::updateActs);
    connect(&m_record->planPage().draft().undoStack(), &QUndoStack::indexChanged, this,
            &MainWindow::updateActs);
}

void MainWindow::setScheme(SchemeChoice scheme, int textPercent)
{
    const auto check = [this](Act act, bool on) { m_acts[static_cast<int>(act)]->setChecked(on); };
    check(Act::schemeAsDesktop, scheme == SchemeChoice::asDesktop);
    check(Act::schemeLight, scheme == SchemeChoice::light);
    check(Act::schemeDark, scheme == SchemeChoice::dark);
    check(Act::text100, textPercent == 100);
    check(Act::text125, textPercent == 125);
    check(Act::text150, textPercent == 150);
    check(Act::text200, textPercent == 200);
}

void MainWindow::say(const QString& sentence)
{
    m_said->setText(sentence);
    m_said->setToolTip(sentence);
}

void MainWindow::showIdentity()
{
    const auto practice = m_services.store.read(db::practice);
    const auto practitioners = m_services.store.read(db::practitioners);
    const QString name = practice && practice->has_value()
                             ? QString::fromStdString((*practice)->name)
                             : tr("Practice without a name");
    const QString who = m_services.author.name.empty()
                            ? tr("nobody signed in")
                            : QString::fromStdString(m_services.author.name);
    m_identity->setText(m_services.store.isWritable() ? tr("%1 · %2").arg(name, who)
                                                      : tr("%1 · %2 · read only").arg(name, who));
    setWindowTitle(tr("%1 – Quadrille").arg(name));
    QMenu* menu = m_identity->menu();
    menu->clear();
    for (const Practitioner& practitioner :
         practitioners ? *practitioners : std::vector<Practitioner>{}) {
        if (practitioner.archived) {
            continue;
        }
        QAction* action = menu->addAction(QString::fromStdString(practitioner.name));
        action->setCheckable(true);
        action->setChecked(practitioner.id == m_services.author.practitioner);
        const PractitionerId id = *practitioner.id;
        connect(action, &QAction::triggered, this, [this, id] { emit workingChosen(id); });
    }
    menu->addSeparator();
    connect(menu->addAction(tr("Practitioners…")), &QAction::triggered, this,
            [this] { carryOut(Act::practitioners); });
}

std::optional<CourseId> MainWindow::shownCourse() const
{
    return m_stack->currentWidget() == m_record ? m_record->course() : std::nullopt;
}

void MainWindow::askForPractice()
{
    const auto practice = m_services.store.read(db::practice);
    const auto practitioners = m_services.store.read(db::practitioners);
    const bool complete =
        practice && practice->has_value() && practitioners && !practitioners->empty();
    if (complete || !m_services.store.isWritable()) {
        return;
    }
    PracticeForm form(m_services, this);
    if (form.exec() == QDialog::Accepted && form.firstPractitioner()) {
        emit workingChosen(*form.firstPractitioner());
    }
}

void MainWindow::leaveErased(PatientId patient)
{
    if (m_record->patient() == patient) {
        // Fields, texts and pages that showed the person go too.
        RecordPage* erased = m_record;
        erased->close();
        m_record = new RecordPage(m_services, this);
        m_stack->addWidget(m_record);
        connectRecord();
        m_stack->removeWidget(erased);
        erased->deleteLater();
    }
    showCaseload();
    m_caseload->reload();
}

void MainWindow::openPatient(PatientId patient, std::optional<CourseId> course)
{
    if (m_record->open(patient, course)) {
        m_stack->setCurrentWidget(m_record);
        say({});
        m_record->focusFirst();
    }
    updateActs();
}

void MainWindow::showCaseload()
{
    m_record->keepNow();
    m_stack->setCurrentWidget(m_caseload);
    say(tr("For licensed practitioners: the program calculates and records, you decide. Local "
           "rules and the "
           "stimulator’s own instructions come first."));
    m_caseload->focusList();
    updateActs();
}

void MainWindow::newPatient()
{
    PatientForm form(m_services, this);
    if (form.exec() == QDialog::Accepted && form.savedPatient()) {
        openPatient(*form.savedPatient(), form.savedCourse());
        say(tr("Patient added. Choose the stimulator, then add the first block."));
    }
}

void MainWindow::nextArea()
{
    // The areas of the page: its lists, its form, the time column. Tab goes on inside an area.
    const QList<QWidget*> areas = m_stack->currentWidget()->findChildren<QWidget*>(
        QRegularExpression(QStringLiteral("^(search|caseloadList|pages|stimulator|blocks|sites|"
                                          "questions|signScreening|screenAgain|"
                                          "waveform|courseGrid|paper|history|measurements|"
                                          "measuredValues|pads|diaryGrid|counters)$")));
    QList<QWidget*> reachable;
    std::ranges::copy_if(areas, std::back_inserter(reachable), [](const QWidget* area) {
        return area->isVisible() && area->isEnabled();
    });
    if (reachable.isEmpty()) {
        return;
    }
    const auto current = reachable.indexOf(focusWidget());
    reachable[(current + 1) % reachable.size()]->setFocus(Qt::TabFocusReason);
}

void MainWindow::turnPage(int by)
{
    const int count = m_record->pageCount();
    m_record->showPage((m_record->currentPage() + by + count) % count);
}

void MainWindow::updateActs()
{
    const bool record = m_stack->currentWidget() == m_record;
    for (QAction* action : std::as_const(m_acts)) {
        if (action->property("needsRecord").toBool()) {
            action->setEnabled(record);
        }
    }
    for (const auto& [act, courseAct] : {std::pair(Act::pauseCourse, CourseAct::pause),
                                         std::pair(Act::goOnWithCourse, CourseAct::goOn),
                                         std::pair(Act::endCourse, CourseAct::end),
                                         std::pair(Act::reopenCourse, CourseAct::reopen)}) {
        m_acts[static_cast<int>(act)]->setEnabled(record && m_record->canCarryOut(courseAct));
    }
    m_acts[static_cast<int>(Act::importDiary)]->setEnabled(record && m_record->course() &&
                                                           m_services.store.isWritable());
    const QUndoStack& undo = m_record->undoStack();
    QAction* undoAct = m_acts[static_cast<int>(Act::undo)];
    QAction* redoAct = m_acts[static_cast<int>(Act::redo)];
    QAction* saveAct = m_acts[static_cast<int>(Act::saveDraft)];
    const bool diary = m_record->currentPage() == RecordPage::diaryIndex;
    saveAct->setText(diary ? tr("&Save diary") : tr("&Save draft"));
    saveAct->setStatusTip(diary ? tr("All that was copied, in one change")
                                : tr("A draft is in force on no day"));
    undoAct->setEnabled(record && undo.canUndo());
    redoAct->setEnabled(record && undo.canRedo());
    undoAct->setText(undo.canUndo() ? tr("&Undo: %1").arg(undo.undoText()) : tr("&Undo"));
    redoAct->setText(undo.canRedo() ? tr("&Redo: %1").arg(undo.redoText()) : tr("&Redo"));
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (QWidget* field = focusWidget()) {
        field->clearFocus(); // a note is saved as it is left
    }
    m_record->keepNow();
    event->accept();
}

} // namespace quadrille::app
