// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/course_act_forms.h"

#include "app/look/look.h"
#include "app/look/tokens.h"
#include "app/patient/course_on_file.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"

#include "db/course_events.h"
#include "db/courses.h"

#include "core/course_acts.h"

#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 440;
constexpr int reasonLines = 3;

} // namespace

CourseActForm::CourseActForm(const Services& services, const Course& course, const QString& title,
                             const QString& act, QWidget* parent)
    : EntryDialog(services, {}, title, parent)
    , m_course(course)
    , m_form(new QFormLayout(body()))
{
    spaceOut(*m_form);
    setSaveText(act);
    setMinimumWidth(scaled(leastWidth, appliedFactor()));
}

void CourseActForm::addSentence(const QString& sentence)
{
    auto* label = new QLabel(sentence, body());
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    m_form->addRow(label);
}

QLineEdit* CourseActForm::addDay(const QString& label, const QString& name, std::optional<Date> day)
{
    auto* field = new QLineEdit(day ? services().text.date(*day) : QString(), body());
    field->setObjectName(name);
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    m_form->addRow(label, field);
    return field;
}

QPlainTextEdit* CourseActForm::addReason(const QString& hint)
{
    auto* field = new QPlainTextEdit(body());
    field->setObjectName(QStringLiteral("reason"));
    field->setAccessibleName(tr("Reason"));
    field->setPlaceholderText(hint);
    field->setTabChangesFocus(true);
    field->setFixedHeight(reasonLines * field->fontMetrics().lineSpacing() + space::wide);
    m_form->addRow(tr("&Reason"), field);
    return field;
}

std::optional<Date> CourseActForm::dayIn(const QLineEdit& field) const
{
    return services().text.dateFrom(field.text());
}

std::optional<EntryDialog::Problem> CourseActForm::dayProblem(QLineEdit* field,
                                                              bool mayBeEmpty) const
{
    if (dayIn(*field) || (mayBeEmpty && field->text().trimmed().isEmpty())) {
        return std::nullopt;
    }
    return Problem{field, tr("“%1” is no date. Enter day, month and year, for example %2.")
                              .arg(field->text(), services().text.dateExample())};
}

std::optional<EntryDialog::Problem> CourseActForm::reasonProblem(QPlainTextEdit* field,
                                                                 const QString& sentence)
{
    return textIn(*field).empty() ? std::optional(Problem{field, sentence}) : std::nullopt;
}

std::string CourseActForm::textIn(const QPlainTextEdit& field)
{
    return field.toPlainText().trimmed().toStdString();
}

void CourseActForm::announce()
{
    emit services().events.patientChanged(*m_course.patient);
}

Result<void> CourseActForm::readCourse()
{
    const auto stored = courseOnFile(services(), m_course);
    if (!stored) {
        return stored.error();
    }
    m_course = *stored;
    return {};
}

PauseForm::PauseForm(const Services& services, const Course& course, std::vector<Pause> pauses,
                     QWidget* parent)
    : CourseActForm(services, course, tr("Pause the course"), tr("Pause"), parent)
    , m_pauses(std::move(pauses))
{
    addSentence(tr("Days of a pause are not prescribed and never count as missed. The weeks run "
                   "on; only a new plan makes up for them."));
    m_from = addDay(tr("&From"), QStringLiteral("pauseFrom"),
                    std::max(services.clock.today(), course.startDate));
    m_until = addDay(tr("&Last day"), QStringLiteral("pauseUntil"), std::nullopt);
    m_until->setPlaceholderText(tr("empty: until further notice"));
    m_reason = addReason(tr("for example: operation, holiday, skin to heal"));
    m_from->setFocus();
    m_from->selectAll();
}

Pause PauseForm::wanted() const
{
    Pause pause;
    pause.course = m_course.id;
    pause.fromDate = dayIn(*m_from).value_or(Date{});
    pause.toDate = dayIn(*m_until);
    pause.reason = textIn(*m_reason);
    return pause;
}

std::optional<EntryDialog::Problem> PauseForm::daysProblem() const
{
    const QuantityText& text = services().text;
    const Pause pause = wanted();
    if (pause.fromDate < m_course.startDate) {
        return Problem{m_from, tr("The course starts on %1. Enter that day or a later one.")
                                   .arg(text.date(m_course.startDate))};
    }
    if (m_course.endDate && pause.fromDate > *m_course.endDate) {
        return Problem{m_from, tr("The course ends on %1. Enter that day or an earlier one.")
                                   .arg(text.date(*m_course.endDate))};
    }
    if (pause.toDate && *pause.toDate < pause.fromDate) {
        return Problem{m_until,
                       tr("The last day lies before the first. Enter a later day, or none.")};
    }
    if (const auto other = pauseInTheWay(m_pauses, pause)) {
        const QString stands =
            other->toDate
                ? tr("A pause from %1 to %2 stands already. Enter days outside it.")
                      .arg(text.date(other->fromDate), text.date(*other->toDate))
                : tr("A pause from %1 until further notice stands already. Let the course go on "
                     "first, or enter days before it.")
                      .arg(text.date(other->fromDate));
        return Problem{m_from, stands};
    }
    return std::nullopt;
}

std::optional<EntryDialog::Problem> PauseForm::problem() const
{
    if (auto wrong = dayProblem(m_from, false)) {
        return wrong;
    }
    if (auto wrong = dayProblem(m_until, true)) {
        return wrong;
    }
    if (auto wrong = daysProblem()) {
        return wrong;
    }
    return reasonProblem(
        m_reason, tr("The reason is empty. Say in a few words why the course stands still."));
}

Result<void> PauseForm::save()
{
    const auto saved =
        services().store.write(services().author, "pause course", [&](db::Writing& writing) {
            return db::addPause(writing, wanted());
        });
    if (!saved) {
        return saved.error();
    }
    announce();
    return {};
}

GoOnForm::GoOnForm(const Services& services, const Course& course, const Pause& pause,
                   QWidget* parent)
    : CourseActForm(services, course, tr("Go on"), tr("Go on"), parent)
    , m_pause(pause)
{
    const QuantityText& text = services.text;
    addSentence((pause.toDate ? tr("The course is paused from %1 to %2: %3")
                                    .arg(text.date(pause.fromDate), text.date(*pause.toDate))
                              : tr("The course is paused from %1 until further notice: %2")
                                    .arg(text.date(pause.fromDate)))
                    .arg(QString::fromStdString(pause.reason)));
    addSentence(tr("The weeks ran on through the pause; only a new plan makes up for them. A "
                   "pause that goes on from its first day is withdrawn."));
    m_from = addDay(tr("Goes on &from"), QStringLiteral("goesOnFrom"),
                    std::max(services.clock.today(), pause.fromDate));
    m_from->setFocus();
    m_from->selectAll();
}

std::optional<EntryDialog::Problem> GoOnForm::problem() const
{
    if (auto wrong = dayProblem(m_from, false)) {
        return wrong;
    }
    const Date from = *dayIn(*m_from);
    const QuantityText& text = services().text;
    if (from < m_pause.fromDate) {
        return Problem{m_from, tr("The pause begins on %1. Enter that day or a later one.")
                                   .arg(text.date(m_pause.fromDate))};
    }
    if (m_pause.toDate && from > *m_pause.toDate) {
        return Problem{m_from, tr("The pause ends on %1 by itself. Enter that day or an earlier "
                                  "one.")
                                   .arg(text.date(*m_pause.toDate))};
    }
    return std::nullopt;
}

Result<void> GoOnForm::save()
{
    const auto saved =
        services().store.write(services().author, "go on with course", [&](db::Writing& writing) {
            db::changePause(writing, endedBy(m_pause, *dayIn(*m_from)));
        });
    if (!saved) {
        return saved.error();
    }
    announce();
    return {};
}

Result<void> GoOnForm::readAgain()
{
    const auto pauses = services().store.read(
        [&](db::Reading& reading) { return db::pausesOf(reading, *m_course.id); });
    if (!pauses) {
        return pauses.error();
    }
    const auto stored = std::ranges::find(*pauses, m_pause.id, &Pause::id);
    if (stored != pauses->end()) {
        m_pause = *stored;
    }
    return {};
}

EndCourseForm::EndCourseForm(const Services& services, const Course& course, QWidget* parent)
    : CourseActForm(services, course, tr("End the course"), tr("End the course"), parent)
{
    addSentence(tr("After its last day nothing is prescribed. The record stays and can be read; "
                   "the course can be reopened."));
    m_lastDay = addDay(tr("&Last day"), QStringLiteral("lastDay"),
                       course.endDate.value_or(std::max(services.clock.today(), course.startDate)));
    m_reason = addReason(tr("for example: goals reached"));
    m_reason->setPlainText(QString::fromStdString(course.endReason));
    m_lastDay->setFocus();
    m_lastDay->selectAll();
}

std::optional<EntryDialog::Problem> EndCourseForm::problem() const
{
    if (auto wrong = dayProblem(m_lastDay, false)) {
        return wrong;
    }
    if (*dayIn(*m_lastDay) < m_course.startDate) {
        return Problem{m_lastDay, tr("The course starts on %1. Enter that day or a later one.")
                                      .arg(services().text.date(m_course.startDate))};
    }
    return reasonProblem(m_reason,
                         tr("The reason is empty. Say in a few words why the course ends."));
}

Result<void> EndCourseForm::save()
{
    Course ended = m_course;
    ended.endDate = dayIn(*m_lastDay);
    ended.endReason = textIn(*m_reason);
    const auto saved =
        services().store.write(services().author, "end course",
                               [&](db::Writing& writing) { db::changeCourse(writing, ended); });
    if (!saved) {
        return saved.error();
    }
    announce();
    return {};
}

Result<void> EndCourseForm::readAgain()
{
    if (auto read = readCourse(); !read) {
        return read;
    }
    m_lastDay->setText(m_course.endDate ? services().text.date(*m_course.endDate) : QString());
    m_reason->setPlainText(QString::fromStdString(m_course.endReason));
    return {};
}

ReopenForm::ReopenForm(const Services& services, const Course& course, QWidget* parent)
    : CourseActForm(services, course, tr("Reopen the course"), tr("Reopen"), parent)
{
    const QuantityText& text = services.text;
    const QString day = course.endDate ? text.date(*course.endDate) : QString();
    addSentence(
        course.endReason.empty()
            ? tr("The last day is %1.").arg(day)
            : tr("The last day is %1: %2").arg(day, QString::fromStdString(course.endReason)));
    addSentence(isRunning(course, services.clock.today())
                    ? tr("The course has not ended yet. Reopened, it runs on under its plan.")
                    : tr("Reopened, the course stands still from the day after. Nothing is "
                         "prescribed until a new plan is issued, and the days in between never "
                         "count as missed."));
    m_reason = addReason(tr("for example: pain came back"));
    m_reason->setFocus();
}

std::optional<EntryDialog::Problem> ReopenForm::problem() const
{
    return reasonProblem(
        m_reason, tr("The reason is empty. Say in a few words why the course is taken up again."));
}

Result<void> ReopenForm::save()
{
    const auto saved =
        services().store.write(services().author, "reopen course", [&](db::Writing& writing) {
            const Reopening saves = reopened(m_course, db::pausesOf(writing, *m_course.id),
                                             textIn(*m_reason), services().clock.today());
            db::changeCourse(writing, saves.course);
            for (const Pause& pause : saves.changed) {
                db::changePause(writing, pause);
            }
            if (saves.added) {
                db::addPause(writing, *saves.added);
            }
        });
    if (!saved) {
        return saved.error();
    }
    announce();
    return {};
}

} // namespace quadrille::app
