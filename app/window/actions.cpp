// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/actions.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct ActWords {
    Q_DECLARE_TR_FUNCTIONS(ActWords)
};

std::vector<ActFacts> practiceActs()
{
    const MenuPlace place = MenuPlace::practice;
    return {
        {Act::newPractice,
         place,
         ActWords::tr("&New practice…"),
         {},
         ActWords::tr("Begin an empty practice in a file of its own")},
        {Act::openPractice, place, ActWords::tr("&Open practice…"),
         QKeySequence(Qt::CTRL | Qt::Key_O), ActWords::tr("Open another practice file")},
        {Act::openDemo,
         place,
         ActWords::tr("Open the &demo practice"),
         {},
         ActWords::tr("Made-up patients in a file of their own, made anew each time")},
        {Act::practiceDetails,
         place,
         ActWords::tr("N&ame and address…"),
         {},
         ActWords::tr("What stands at the head of every handout"),
         true},
        {Act::practitioners,
         place,
         ActWords::tr("&Practitioners…"),
         {},
         ActWords::tr("Who works here and signs")},
        {Act::stimulators,
         place,
         ActWords::tr("&Stimulators and loans…"),
         {},
         ActWords::tr("Who has which unit since when, and what the units can do")},
        {Act::practiceQuestions,
         place,
         ActWords::tr("S&creening questions…"),
         {},
         ActWords::tr("Questions that this practice asks beside the built-in ones")},
        {Act::screeningTerm,
         place,
         ActWords::tr("How long a screening &holds…"),
         {},
         ActWords::tr("After its term a screening blocks until the person is screened again")},
        {Act::padLife,
         place,
         ActWords::tr("&Life of pads…"),
         {},
         ActWords::tr("After how many uses or months a set is to be replaced")},
        {Act::copyFolder,
         place,
         ActWords::tr("&Folder of the daily copies…"),
         {},
         ActWords::tr("Where a copy of this practice goes each day"),
         true},
        {Act::quit, place, ActWords::tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q),
         ActWords::tr("Unsaved work is kept and comes back"), true},
    };
}

std::vector<ActFacts> patientActs()
{
    const MenuPlace place = MenuPlace::patient;
    return {
        {Act::newPatient, place, ActWords::tr("&New patient…"), QKeySequence(Qt::CTRL | Qt::Key_N),
         ActWords::tr("Add a patient and the first course")},
        {Act::findPatient, place, ActWords::tr("&Find a patient"),
         QKeySequence(Qt::CTRL | Qt::Key_F), ActWords::tr("Search the caseload")},
        {Act::backToCaseload, place, ActWords::tr("&Back to the caseload"),
         QKeySequence(Qt::ALT | Qt::Key_Left), ActWords::tr("Unsaved work stays kept"), false,
         true},
    };
}

std::vector<ActFacts> courseActs()
{
    const MenuPlace place = MenuPlace::patient;
    return {
        {Act::patientDetails,
         place,
         ActWords::tr("&Details…"),
         {},
         ActWords::tr("Name, birth date, telephone"),
         true,
         true},
        {Act::erasePatient,
         place,
         ActWords::tr("&Erase…"),
         {},
         ActWords::tr("Remove everything of this person, where the law asks for it"),
         false,
         true},
        {Act::newCourse,
         place,
         ActWords::tr("New &course…"),
         {},
         ActWords::tr("Begin the treatment of another problem"),
         false,
         true},
        {Act::pauseCourse,
         place,
         ActWords::tr("Pa&use the course…"),
         {},
         ActWords::tr("Days of a pause are not prescribed"),
         false,
         true},
        {Act::goOnWithCourse,
         place,
         ActWords::tr("&Go on after the pause…"),
         {},
         ActWords::tr("From which day the course is prescribed again"),
         false,
         true},
        {Act::endCourse,
         place,
         ActWords::tr("End the c&ourse…"),
         {},
         ActWords::tr("Its last day, and why it ends"),
         false,
         true},
        {Act::reopenCourse,
         place,
         ActWords::tr("&Reopen the course…"),
         {},
         ActWords::tr("Take up a course that ended, with a new plan"),
         false,
         true},
    };
}

std::vector<ActFacts> recordActs()
{
    const MenuPlace place = MenuPlace::patient;
    return {
        {Act::screening, place, ActWords::tr("&Screening"), QKeySequence(Qt::CTRL | Qt::Key_E),
         ActWords::tr("What speaks against stimulation, and who signed it"), true, true},
        {Act::enterMeasurements, place, ActWords::tr("Enter &measurements…"),
         QKeySequence(Qt::CTRL | Qt::Key_M), ActWords::tr("All values of a visit in one go"), true,
         true},
        {Act::issuePads,
         place,
         ActWords::tr("Hand out &pads…"),
         {},
         ActWords::tr("A new set of pads for this course"),
         false,
         true},
        {Act::importDiary, place, ActWords::tr("&Import diary…"),
         QKeySequence(Qt::CTRL | Qt::Key_I), ActWords::tr("A diary that comes as a file"), false,
         true},
        {Act::diary, place, ActWords::tr("Diar&y"), QKeySequence(Qt::CTRL | Qt::Key_J),
         ActWords::tr("Copy the diary that came back"), false, true},
        {Act::history, place, ActWords::tr("&History"), QKeySequence(Qt::CTRL | Qt::Key_H),
         ActWords::tr("Who changed what in this record, and when"), false, true},
    };
}

std::vector<ActFacts> planActs()
{
    const MenuPlace place = MenuPlace::plan;
    return {
        {Act::undo,
         place,
         ActWords::tr("&Undo"),
         QKeySequence(Qt::CTRL | Qt::Key_Z),
         {},
         false,
         true},
        {Act::redo,
         place,
         ActWords::tr("&Redo"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z),
         {},
         false,
         true},
        {Act::newBlock, place, ActWords::tr("&New block"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N),
         ActWords::tr("A copy of the last block, to change"), true, true},
        {Act::startingPoints, place, ActWords::tr("Startin&g points…"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
         ActWords::tr("Settings of published protocols, and those that the practice keeps"), false,
         true},
        {Act::saveDraft, place, ActWords::tr("&Save draft"), QKeySequence(Qt::CTRL | Qt::Key_S),
         ActWords::tr("A draft is in force on no day"), true, true},
        {Act::revertDraft, place, ActWords::tr("Re&vert to what was saved"), {}, {}, false, true},
        {Act::whatIf, place, ActWords::tr("&What if…"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_W),
         ActWords::tr("Up to three variants beside the block in work"), true, true},
        {Act::clinicSession, place, ActWords::tr("Session in the &clinic…"),
         QKeySequence(Qt::CTRL | Qt::Key_K),
         ActWords::tr("Practise the rhythm, note thresholds, skin and what was tolerated"), false,
         true},
        {Act::issuePlan, place, ActWords::tr("&Issue plan…"),
         QKeySequence(Qt::CTRL | Qt::Key_Return),
         ActWords::tr("Check list, from-date, reason; a plan is never changed afterwards"), false,
         true},
        {Act::plansIssued, place, ActWords::tr("P&lans issued…"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Return),
         ActWords::tr("Two plans side by side, what differs marked"), false, true},
        {Act::print,
         place,
         ActWords::tr("&Print the handout…"),
         QKeySequence(Qt::CTRL | Qt::Key_P),
         {},
         true,
         true},
    };
}

std::vector<ActFacts> viewActs()
{
    const MenuPlace place = MenuPlace::view;
    return {
        {Act::nextPage,
         place,
         ActWords::tr("&Next page of the record"),
         QKeySequence(Qt::CTRL | Qt::Key_PageDown),
         {},
         false,
         true},
        {Act::previousPage,
         place,
         ActWords::tr("&Previous page of the record"),
         QKeySequence(Qt::CTRL | Qt::Key_PageUp),
         {},
         false,
         true},
        {Act::nextArea, place, ActWords::tr("Next &area"), QKeySequence(Qt::Key_F6), {}},
        {Act::schemeAsDesktop, place, ActWords::tr("As the &desktop"), {}, {}, true},
        {Act::schemeLight, place, ActWords::tr("&Light"), {}, {}},
        {Act::schemeDark, place, ActWords::tr("Dar&k"), {}, {}},
        {Act::text100, place, ActWords::tr("Text &100 %"), {}, {}, true},
        {Act::text125, place, ActWords::tr("Text 1&25 %"), {}, {}},
        {Act::text150, place, ActWords::tr("Text 1&50 %"), {}, {}},
        {Act::text200, place, ActWords::tr("Text 200 %"), {}, {}},
    };
}

std::vector<ActFacts> helpActs()
{
    return {
        {Act::keys, MenuPlace::help, ActWords::tr("&Keys"), QKeySequence(Qt::Key_F1), {}},
        {Act::about, MenuPlace::help, ActWords::tr("&About Quadrille"), {}, {}},
    };
}

} // namespace

std::vector<ActFacts> allActs()
{
    std::vector<ActFacts> acts;
    for (const auto& group : {practiceActs(), patientActs(), courseActs(), recordActs(), planActs(),
                              viewActs(), helpActs()}) {
        acts.insert(acts.end(), group.begin(), group.end());
    }
    return acts;
}

} // namespace quadrille::app
