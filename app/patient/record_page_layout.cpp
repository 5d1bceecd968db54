// SPDX-License-Identifier: GPL-3.0-or-later
// How the record is put together: where its pages stand and who hears whom.
#include "app/diary/diary_page.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/measurements_page.h"
#include "app/measurements/pads_page.h"
#include "app/patient/history_page.h"
#include "app/patient/record_header.h"
#include "app/patient/record_page.h"
#include "app/patient/time_column.h"
#include "app/plan/plan_page.h"
#include "app/print/handout_page.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_record.h"
#include "app/window/margin_column.h"
#include "app/window/store_events.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace quadrille::app
{

void RecordPage::layOut()
{
    auto* margin = new MarginColumn(this);
    connect(margin, &MarginColumn::backRequested, this, &RecordPage::backRequested);
    m_header->tabs().addTab(tr("Screening"));
    m_header->tabs().addTab(tr("Measurements"));
    m_header->tabs().addTab(tr("Plan"));
    m_header->tabs().addTab(tr("Handout"));
    m_header->tabs().addTab(tr("Diary"));
    m_header->tabs().addTab(tr("Pads"));
    m_header->tabs().addTab(tr("History"));
    m_pages->addWidget(m_screeningPage);
    m_pages->addWidget(m_measurementsPage);
    m_pages->addWidget(m_planPage);
    m_pages->addWidget(m_handoutPage);
    m_pages->addWidget(m_diaryPage);
    m_pages->addWidget(m_padsPage);
    m_pages->addWidget(m_historyPage);
    auto* sentence =
        new QLabel(tr("This patient has no course yet. A course is the treatment of one problem."),
                   m_noCourse);
    auto* begin = new QPushButton(tr("New course…"), m_noCourse);
    setRole(*begin, Role::primaryButton);
    connect(begin, &QPushButton::clicked, this, &RecordPage::newCourse);
    auto* empty = new QVBoxLayout(m_noCourse);
    empty->setContentsMargins(space::section, space::section, space::section, space::section);
    empty->setSpacing(space::insideSheet);
    empty->addWidget(sentence);
    empty->addWidget(begin, 0, Qt::AlignLeft);
    empty->addStretch();
    m_pages->addWidget(m_noCourse);
    m_time->addSheets(m_screeningPage->side());
    m_time->addSheets(m_diaryPage->side());
    m_header->tabs().setCurrentIndex(planIndex);
    m_pages->setCurrentIndex(planIndex);
    m_save->setToolTip(tr("Ctrl S"));
    m_save->setObjectName(QStringLiteral("saveDraft"));
    m_revert->setObjectName(QStringLiteral("revertDraft"));
    m_clinic->setObjectName(QStringLiteral("clinicSession"));
    m_clinic->setToolTip(tr("Ctrl K"));
    m_issue->setObjectName(QStringLiteral("issuePlan"));
    setRole(*m_issue, Role::primaryButton);
    for (QPushButton* act : {m_clinic, m_revert, m_save, m_issue}) {
        act->hide(); // the header shows those for which there is room
    }

    auto* left = new QVBoxLayout;
    left->setSpacing(0);
    left->addWidget(m_header);
    auto* rule = new QFrame(this);
    setRole(*rule, Role::pageHead);
    rule->setFixedHeight(1);
    left->addWidget(rule);
    left->addWidget(m_pages, 1);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(margin);
    layout->addLayout(left, 1);
    layout->addWidget(m_time);
}

void RecordPage::connectAll()
{
    connect(&m_header->tabs(), &QTabBar::currentChanged, this, [this](int index) {
        showPageAt(index);
        if (index == handoutIndex) {
            refreshHandout();
        }
        if (index == historyIndex && m_patient) {
            m_historyPage->open(*m_patient->id);
        }
        refreshFrame(); // the charts with what was copied meanwhile
        refreshActs();
        emit pageShown();
    });
    connect(m_header, &RecordHeader::courseChosen, this,
            [this](CourseId id) { showCourse(courseOf(id)); });
    connect(m_header, &RecordHeader::newCourseRequested, this, &RecordPage::newCourse);
    connect(m_header, &RecordHeader::changeCourseRequested, this, &RecordPage::changeCourse);
    connect(m_header, &RecordHeader::changePatientRequested, this, &RecordPage::changePatient);
    connect(m_header, &RecordHeader::courseActRequested, this, &RecordPage::carryOut);
    connect(m_header, &RecordHeader::plansIssuedRequested, m_planPage, &PlanPage::showPlansIssued);
    connect(&m_services.events, &StoreEvents::diaryChanged, this, [this](CourseId changed) {
        if (course() == changed) {
            refreshCourse();
        }
    });
    connectPages();
    connectTime();
}

void RecordPage::connectPages()
{
    connect(m_planPage, &PlanPage::said, this, &RecordPage::said);
    connect(m_planPage, &PlanPage::planIssued, this, [this] {
        refreshCourse(); // a pause may have ended with it
        showPage(handoutIndex);
    });
    connect(m_handoutPage, &HandoutPage::contentWanted, this, &RecordPage::refreshHandout);
    connect(m_handoutPage, &HandoutPage::handedOut, this, &RecordPage::recordHandout);
    connect(m_handoutPage, &HandoutPage::planRequested, this, [this] { showPage(planIndex); });
    connect(m_handoutPage, &HandoutPage::screeningRequested, this, [this] {
        showPage(screeningIndex);
        m_screeningPage->focusFirst();
    });
    connect(m_screeningPage, &ScreeningPage::said, this, &RecordPage::said);
    connect(&m_screeningPage->record(), &ScreeningRecord::changed, this, &RecordPage::showHeader);
    connect(m_handoutPage, &HandoutPage::said, this, &RecordPage::said);
    connect(m_historyPage, &HistoryPage::said, this, &RecordPage::said);
    connect(m_measurementsPage, &MeasurementsPage::said, this, &RecordPage::said);
    connect(m_padsPage, &PadsPage::said, this, &RecordPage::said);
    connect(m_diaryPage, &DiaryPage::said, this, &RecordPage::said);
    connect(m_diaryPage, &DiaryPage::shown, this, &RecordPage::showDiary);
    connect(m_diaryPage, &DiaryPage::importRequested, this, &RecordPage::importDiaryFile);
    // The one mark that is seen from every page.
    connect(m_padsPage, &PadsPage::wearChanged, this, [this] {
        m_header->nameTab(padsIndex,
                          m_padsPage->replacementDue() ? tr("Pads: replace") : tr("Pads"));
        refreshActs();
    });
    connect(&m_planPage->draft(), &PlanDraft::changed, this, &RecordPage::refreshFrame);
    connect(&m_planPage->draft(), &PlanDraft::currentBlockChanged, this, &RecordPage::refreshFrame);
}

void RecordPage::connectTime()
{
    connect(m_time, &TimeColumn::blockChosen, this, [this](std::size_t index) {
        showPage(planIndex);
        m_planPage->draft().setCurrentBlock(index);
    });
    connect(m_time, &TimeColumn::edgePulled, this, [this](std::size_t index, int weeks) {
        showPage(planIndex);
        m_planPage->pullBlock(index, weeks);
    });
    connect(m_time, &TimeColumn::edgeReleased, m_planPage, &PlanPage::endOfPull);
    connect(m_time, &TimeColumn::lengthenRequested, this, [this](int byWeeks) {
        showPage(planIndex);
        m_planPage->lengthenBlock(byWeeks);
    });
    connect(m_time, &TimeColumn::said, this, &RecordPage::said);
    connect(m_planPage, &PlanPage::fatigueByWeek, m_time, &TimeColumn::showFatigue);
    connect(m_save, &QPushButton::clicked, m_planPage, &PlanPage::saveDraft);
    connect(m_revert, &QPushButton::clicked, m_planPage, &PlanPage::revert);
    connect(m_clinic, &QPushButton::clicked, m_planPage, &PlanPage::holdClinicSession);
    connect(m_issue, &QPushButton::clicked, m_planPage, &PlanPage::issue);
    connect(&m_services.events, &StoreEvents::practiceChanged, this, &RecordPage::refreshHandout);
    connect(&m_services.events, &StoreEvents::screeningChanged, this, &RecordPage::refreshHandout);
    connect(&m_services.events, &StoreEvents::loansChanged, this, [this] {
        readLoans();
        refreshFrame();
        refreshHandout();
    });
}

} // namespace quadrille::app
