// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QString>

#include <vector>

namespace quadrille::app
{

/// Every act that a menu or a key starts.
enum class Act {
    newPractice,
    openPractice,
    openDemo,
    practiceDetails,
    practitioners,
    stimulators,
    practiceQuestions,
    screeningTerm,
    padLife,
    copyFolder,
    quit,
    newPatient,
    findPatient,
    backToCaseload,
    patientDetails,
    erasePatient,
    newCourse,
    pauseCourse,
    goOnWithCourse,
    endCourse,
    reopenCourse,
    screening,
    enterMeasurements,
    issuePads,
    importDiary,
    diary,
    history,
    newBlock,
    undo,
    redo,
    saveDraft,
    revertDraft,
    startingPoints,
    whatIf,
    clinicSession,
    issuePlan,
    plansIssued,
    print,
    nextPage,
    previousPage,
    nextArea,
    schemeAsDesktop,
    schemeLight,
    schemeDark,
    text100,
    text125,
    text150,
    text200,
    keys,
    about,
};

/// Which menu an act stands in.
enum class MenuPlace { practice, patient, plan, view, help };

struct ActFacts {
    Act act;
    MenuPlace place;
    QString text;      ///< with its mnemonic
    QKeySequence keys; ///< empty: menu only
    QString tip;       ///< one sentence for the status line
    bool startsGroup = false;
    bool needsRecord = false; ///< only while a record is open
};

/// All acts in the order of the menus. No key stands twice.
std::vector<ActFacts> allActs();

} // namespace quadrille::app
