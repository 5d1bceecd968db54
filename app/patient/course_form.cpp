// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/course_form.h"

#include "app/patient/course_on_file.h"
#include "app/patient/treated_side_box.h"
#include "app/window/store_events.h"
#include "ui_course_form.h"

#include "db/courses.h"

namespace quadrille::app
{

namespace
{

QString formName(const Course& course)
{
    return course.id
               ? QStringLiteral("course/%1").arg(course.id->key())
               : QStringLiteral("course/new/%1").arg(course.patient ? course.patient->key() : 0);
}

} // namespace

CourseForm::CourseForm(const Services& services, const Course& course, QWidget* parent)
    : EntryDialog(services, formName(course),
                  course.id ? tr("Course %1").arg(course.number) : tr("New course"), parent)
    , m_ui(std::make_unique<Ui::CourseFields>())
    , m_course(course)
{
    m_ui->setupUi(body());
    setMinimumWidth(420);
    fillTreatedSides(*m_ui->treatedSide);
    fill();
    m_ui->formLayout->setRowVisible(m_ui->endDate, course.id.has_value());
    restoreKept();
    startKeeping();
}

CourseForm::~CourseForm() = default;

void CourseForm::fill()
{
    m_ui->problem->setText(QString::fromStdString(m_course.problem));
    m_ui->startDate->setText(services().text.date(m_course.startDate));
    m_ui->endDate->setText(m_course.endDate ? services().text.date(*m_course.endDate) : QString());
    setTreatedSide(*m_ui->treatedSide, m_course.treatedSide);
}

Result<void> CourseForm::readAgain()
{
    const auto stored = courseOnFile(services(), m_course);
    if (!stored) {
        return stored.error();
    }
    m_course = *stored;
    fill();
    return {};
}

std::optional<EntryDialog::Problem> CourseForm::problem() const
{
    if (m_ui->problem->text().trimmed().isEmpty()) {
        return Problem{m_ui->problem, tr("The problem is empty. Enter what the course is for.")};
    }
    const auto start = services().text.dateFrom(m_ui->startDate->text());
    const auto notADate = tr("“%1” is no date. Enter day, month and year, for example %2.");
    if (!start) {
        return Problem{m_ui->startDate,
                       notADate.arg(m_ui->startDate->text(), services().text.dateExample())};
    }
    if (m_ui->endDate->text().trimmed().isEmpty()) {
        return m_course.endDate
                   ? std::optional(Problem{m_ui->endDate,
                                           tr("The last day is empty. Cancel and choose Reopen in "
                                              "the menu Patient, so that the days since then "
                                              "never count as missed.")})
                   : std::nullopt;
    }
    const auto end = services().text.dateFrom(m_ui->endDate->text());
    if (!end) {
        return Problem{m_ui->endDate,
                       notADate.arg(m_ui->endDate->text(), services().text.dateExample())};
    }
    if (*end < *start) {
        return Problem{m_ui->endDate, tr("The last day lies before the start. Enter a later day.")};
    }
    return std::nullopt;
}

Result<void> CourseForm::save()
{
    Course course = m_course;
    course.problem = m_ui->problem->text().simplified().toStdString();
    course.startDate = *services().text.dateFrom(m_ui->startDate->text());
    course.endDate = services().text.dateFrom(m_ui->endDate->text());
    course.treatedSide = treatedSideIn(*m_ui->treatedSide);
    const auto saved = services().store.write(
        services().author, course.id ? "change course" : "add course", [&](db::Writing& writing) {
            if (!course.id) {
                return db::addCourse(writing, course);
            }
            db::changeCourse(writing, course);
            return *course.id;
        });
    if (!saved) {
        return saved.error();
    }
    m_saved = *saved;
    emit services().events.patientChanged(*course.patient);
    return {};
}

} // namespace quadrille::app
