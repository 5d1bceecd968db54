// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/record_page.h"

#include "app/diary/diary_page.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/measurements_page.h"
#include "app/measurements/pads_page.h"
#include "app/patient/course_form.h"
#include "app/patient/history_page.h"
#include "app/patient/patient_form.h"
#include "app/patient/record_header.h"
#include "app/patient/time_column.h"
#include "app/plan/plan_page.h"
#include "app/print/handout_page.h"
#include "app/screening/screening_page.h"
#include "app/screening/screening_record.h"
#include "app/window/margin_column.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/course_records.h"
#include "db/courses.h"
#include "db/people.h"

#include "core/course_acts.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>
#include <numeric>

namespace quadrille::app
{

RecordPage::RecordPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_header(new RecordHeader(services, this))
    , m_pages(new QStackedWidget(this))
    , m_screeningPage(new ScreeningPage(services, this))
    , m_planPage(new PlanPage(services, this))
    , m_handoutPage(new HandoutPage(services, this))
    , m_historyPage(new HistoryPage(services, this))
    , m_measurementsPage(new MeasurementsPage(services, this))
    , m_padsPage(new PadsPage(services, this))
    , m_diaryPage(new DiaryPage(services, this))
    , m_noCourse(new QWidget(this))
    , m_time(new TimeColumn(services, this))
    , m_save(new QPushButton(tr("Save draft"), this))
    , m_revert(new QPushButton(tr("Revert"), this))
    , m_clinic(new QPushButton(tr("Session in the clinic…"), this))
    , m_issue(new QPushButton(tr("Issue plan…"), this))
{
    layOut();
    connectAll();
}

bool RecordPage::open(PatientId id, std::optional<CourseId> course)
{
    struct Content {
        std::optional<Patient> patient;
        std::vector<Course> courses;
    };
    const auto content = m_services.store.read([&](db::Reading& reading) {
        return Content{db::patient(reading, id), db::coursesOf(reading, id)};
    });
    if (!content) {
        emit said(errorText(content.error(), m_services.text));
        return false;
    }
    if (!content->patient) {
        emit said(tr("This patient is no longer in the practice file."));
        return false;
    }
    m_patient = content->patient;
    m_courses = content->courses;
    if (course) {
        showCourse(courseOf(*course));
    } else {
        showCourse(m_courses.empty() ? std::nullopt : std::optional(m_courses.front()));
    }
    return true;
}

void RecordPage::close()
{
    m_patient.reset();
    m_course.reset();
    m_courses.clear();
    m_planPage->closeCourse();
    m_diaryPage->closeCourse();
    m_handoutPage->setContent(std::nullopt);
}

std::optional<Course> RecordPage::courseOf(CourseId id) const
{
    const auto found = std::ranges::find(m_courses, std::optional(id), &Course::id);
    return found != m_courses.end() ? std::optional(*found) : std::nullopt;
}

void RecordPage::showCourse(const std::optional<Course>& course)
{
    m_course = course;
    readDiary();
    readLoans();
    if (course) {
        m_planPage->setCourse(*course);
        m_screeningPage->setCourse(*course);
        m_diaryPage->setCourse(*course);
    } else {
        m_diaryPage->closeCourse();
    }
    refreshMeasured();
    showPageAt(currentPage());
    if (currentPage() == historyIndex) {
        m_historyPage->open(*m_patient->id);
    }
    refreshFrame();
    refreshHandout();
    refreshActs();
}

void RecordPage::readDiary()
{
    m_diary = {};
    if (!m_course) {
        return;
    }
    const auto read = m_services.store.read([&](db::Reading& reading) {
        m_rules = db::adherenceRules(reading);
        m_diary = db::courseRecords(reading, *m_course);
    });
    if (!read) {
        emit said(errorText(read.error(), m_services.text));
    }
}

void RecordPage::readLoans()
{
    m_lent.clear();
    if (!m_course) {
        return;
    }
    const auto lent = m_services.store.read(
        [&](db::Reading& reading) { return db::unitsLentTo(reading, *m_course->id); });
    if (!lent) {
        emit said(errorText(lent.error(), m_services.text));
        return;
    }
    m_lent = *lent;
}

void RecordPage::showHeader()
{
    if (!m_patient) {
        return;
    }
    const PlanDraft& draft = m_planPage->draft();
    RecordHeader::Facts facts;
    facts.patient = *m_patient;
    facts.courses = m_courses;
    facts.course = m_course;
    if (m_course) {
        facts.plans = m_planPage->plans();
        facts.draftStimulator = draft.stimulator();
        facts.lent = m_lent;
        facts.draftChanged = draft.isChanged();
        const ScreeningRecord& screening = m_screeningPage->record();
        facts.screening =
            screeningHeadline(screening.gate(), screening.facts().latest, m_services.text);
        const auto stands = standingPause(m_diary.pauses, m_services.clock.today());
        facts.pause = stands && contains(*stands, m_services.clock.today()) ? stands : std::nullopt;
        for (const CourseAct act :
             {CourseAct::pause, CourseAct::goOn, CourseAct::end, CourseAct::reopen}) {
            if (canCarryOut(act)) {
                facts.acts.append(act);
            }
        }
    }
    m_header->show(facts);
    emit courseShown();
}

void RecordPage::refreshFrame()
{
    if (!m_patient) {
        return;
    }
    if (!m_course) {
        showHeader();
        m_time->show(std::nullopt);
        return;
    }
    const PlanDraft& draft = m_planPage->draft();
    // The gate is asked for what is planned next and for what the patient follows now.
    std::vector<Block> blocks = draft.draft().blocks;
    if (!m_planPage->plans().empty()) {
        const std::vector<Block>& issued = m_planPage->plans().back().blocks;
        blocks.insert(blocks.end(), issued.begin(), issued.end());
    }
    m_screeningPage->setBlocks(blocks);
    showHeader();
    m_time->show(TimeColumn::Content{*m_course, m_planPage->plans(), m_diary, m_rules,
                                     draft.draft(), draft.stimulator(), draft.currentBlock(),
                                     m_services.clock.today()});
    refreshActs();
}

/// Where the window is narrow the tabs need the room; the menu has all acts.
QList<QWidget*> RecordPage::planActs() const
{
    const QList<QWidget*> all{m_clinic, m_revert, m_save, m_issue};
    const int needed = std::accumulate(all.begin(), all.end(), 0, [](int sum, const QWidget* act) {
        return sum + act->sizeHint().width() + space::close;
    });
    return needed <= m_header->roomForActs() ? all : QList<QWidget*>{m_save, m_issue};
}

void RecordPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    refreshActs();
}

void RecordPage::refreshActs()
{
    const PlanDraft& draft = m_planPage->draft();
    m_save->setEnabled(draft.isChanged() && m_services.store.isWritable());
    m_revert->setEnabled(draft.isChanged());
    m_clinic->setEnabled(draft.block() != nullptr && !draft.block()->sites.empty());
    m_issue->setEnabled(!draft.draft().blocks.empty() && m_services.store.isWritable());
    const bool onPlan = m_course && m_header->tabs().currentIndex() == planIndex;
    const bool onHandout = m_course && m_header->tabs().currentIndex() == handoutIndex;
    const bool onMeasurements = m_course && m_header->tabs().currentIndex() == measurementsIndex;
    const bool onDiary = m_course && m_header->tabs().currentIndex() == diaryIndex;
    const bool onPads = m_course && m_header->tabs().currentIndex() == padsIndex;
    const bool onHistory = m_header->tabs().currentIndex() == historyIndex;
    const QList<QWidget*> acts = onPlan           ? planActs()
                                 : onHandout      ? m_handoutPage->acts()
                                 : onMeasurements ? m_measurementsPage->acts()
                                 : onDiary        ? m_diaryPage->acts()
                                 : onPads         ? m_padsPage->acts()
                                 : onHistory      ? m_historyPage->acts()
                                                  : QList<QWidget*>{};
    if (acts != m_acts) {
        m_acts = acts;
        m_header->setActs(acts);
    }
}

void RecordPage::refreshMeasured()
{
    if (m_course) {
        m_measurementsPage->open(*m_course, m_planPage->plans());
        m_padsPage->open(*m_course, m_planPage->plans());
    } else {
        m_header->nameTab(padsIndex, tr("Pads")); // not what the last patient’s need
    }
}

void RecordPage::enterMeasurements()
{
    if (m_course) {
        showPage(measurementsIndex);
        m_measurementsPage->enter();
    }
}

void RecordPage::issuePads()
{
    if (m_course) {
        showPage(padsIndex);
        m_padsPage->issue();
    }
}

void RecordPage::showPageAt(int index)
{
    m_time->showSheets(m_course && index == screeningIndex ? m_screeningPage->side()
                       : m_course && index == diaryIndex   ? m_diaryPage->side()
                                                           : nullptr);
    m_time->showTally(m_course && index == diaryIndex);
    // The history is of the patient; the other pages are of a course.
    if (m_course || index == historyIndex) {
        m_pages->setCurrentIndex(index);
    } else {
        m_pages->setCurrentWidget(m_noCourse);
    }
}

void RecordPage::showPage(int index)
{
    m_header->tabs().setCurrentIndex(index);
}

void RecordPage::focusFirst()
{
    switch (currentPage()) {
    case screeningIndex:
        return m_screeningPage->focusFirst();
    case measurementsIndex:
        return m_measurementsPage->focusFirst();
    case padsIndex:
        return m_padsPage->focusFirst();
    case handoutIndex:
        return m_handoutPage->focusFirst();
    case diaryIndex:
        return m_diaryPage->focusFirst();
    default:
        return m_planPage->focusFirst();
    }
}

int RecordPage::pageCount() const
{
    return m_header->tabs().count();
}

int RecordPage::currentPage() const
{
    return m_header->tabs().currentIndex();
}

void RecordPage::newCourse()
{
    if (!m_patient) {
        return;
    }
    Course course;
    course.patient = m_patient->id;
    course.startDate = m_services.clock.today();
    CourseForm form(m_services, course, this);
    if (form.exec() == QDialog::Accepted) {
        open(*m_patient->id, form.savedCourse());
    }
}

void RecordPage::changeCourse()
{
    if (!m_patient || !m_course) {
        return;
    }
    CourseForm form(m_services, *m_course, this);
    if (form.exec() == QDialog::Accepted) {
        open(*m_patient->id, form.savedCourse());
    }
}

void RecordPage::changePatient()
{
    if (!m_patient) {
        return;
    }
    PatientForm form(m_services, *m_patient, this);
    if (form.exec() == QDialog::Accepted) {
        open(*m_patient->id, m_course ? m_course->id : std::nullopt);
    }
}

} // namespace quadrille::app
