// SPDX-License-Identifier: GPL-3.0-or-later
// Acts on the course as a whole: pause, go on, end, reopen.
#include "app/diary/diary_page.h"
#include "app/diary_import/import_dialog.h"
#include "app/patient/course_act_forms.h"
#include "app/patient/record_header.h"
#include "app/patient/record_page.h"
#include "app/patient/time_column.h"
#include "app/plan/plan_page.h"
#include "app/words/error_text.h"

#include "db/courses.h"

#include "core/course_acts.h"

#include <memory>

namespace quadrille::app
{

bool RecordPage::canCarryOut(CourseAct act) const
{
    if (!m_course || !m_services.store.isWritable()) {
        return false;
    }
    const Date today = m_services.clock.today();
    switch (act) {
    case CourseAct::pause:
        return isRunning(*m_course, today);
    case CourseAct::goOn:
        return isRunning(*m_course, today) && standingPause(m_diary.pauses, today).has_value();
    case CourseAct::end:
        return isRunning(*m_course, today);
    case CourseAct::reopen:
        return m_course->endDate.has_value();
    }
    return false;
}

void RecordPage::carryOut(CourseAct act)
{
    if (!canCarryOut(act)) {
        return;
    }
    std::unique_ptr<EntryDialog> form;
    QString sentence;
    switch (act) {
    case CourseAct::pause:
        form = std::make_unique<PauseForm>(m_services, *m_course, m_diary.pauses, this);
        sentence = tr("The course is paused. Its days in the pause are not prescribed.");
        break;
    case CourseAct::goOn:
        form = std::make_unique<GoOnForm>(
            m_services, *m_course, *standingPause(m_diary.pauses, m_services.clock.today()), this);
        sentence = tr("The course goes on.");
        break;
    case CourseAct::end:
        form = std::make_unique<EndCourseForm>(m_services, *m_course, this);
        sentence = tr("The last day of the course is set.");
        break;
    case CourseAct::reopen:
        form = std::make_unique<ReopenForm>(m_services, *m_course, this);
        sentence = isRunning(*m_course, m_services.clock.today())
                       ? tr("The course runs on.")
                       : tr("The course is reopened. Issue a new plan: until then nothing is "
                            "prescribed.");
        break;
    }
    if (form->exec() == QDialog::Accepted) {
        refreshCourse();
        emit said(sentence);
    }
}

void RecordPage::importDiaryFile()
{
    if (m_course && importDiary(m_services, *m_course, this)) {
        emit said(tr("The diary is taken over."));
    }
}

QUndoStack& RecordPage::undoStack()
{
    return currentPage() == diaryIndex ? m_diaryPage->draft().undoStack()
                                       : m_planPage->draft().undoStack();
}

void RecordPage::save()
{
    if (currentPage() == diaryIndex) {
        m_diaryPage->save();
    } else {
        m_planPage->saveDraft();
    }
}

void RecordPage::keepNow()
{
    m_planPage->keepNow();
    m_diaryPage->keepNow();
}

void RecordPage::showDiary()
{
    if (!m_course) {
        return;
    }
    const CourseRecords shown = m_diaryPage->draft().preview();
    m_diary.entries = shown.entries;
    m_diary.days = shown.days;
    m_diary.receipts = shown.receipts;
    m_time->showDiary(m_diary);
    m_header->nameTab(diaryIndex,
                      m_diaryPage->draft().isChanged() ? tr("Diary: not saved") : tr("Diary"));
    refreshActs();
}

void RecordPage::refreshCourse()
{
    if (!m_patient || !m_course) {
        return;
    }
    const auto courses = m_services.store.read(
        [&](db::Reading& reading) { return db::coursesOf(reading, *m_patient->id); });
    if (!courses) {
        emit said(errorText(courses.error(), m_services.text));
        return;
    }
    m_courses = *courses;
    m_course = courseOf(*m_course->id);
    if (m_course) {
        m_planPage->courseChanged(*m_course);
        m_diaryPage->courseChanged(*m_course);
    }
    readDiary();
    showDiary();
    refreshMeasured();
    refreshFrame();
    refreshHandout();
}

} // namespace quadrille::app
