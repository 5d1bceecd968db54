// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/loan_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/stimulator/inventory_text.h"
#include "app/window/store_events.h"
#include "app/words/finding_text.h"

#include "db/stimulators.h"

#include <QComboBox>
#include <QCompleter>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

QString noDate(const Services& services, const QString& typed)
{
    return LoanForm::tr("“%1” is no date. Enter day, month and year, for example %2.")
        .arg(typed, services.text.dateExample());
}

QFormLayout* formIn(QWidget* body)
{
    auto* form = new QFormLayout;
    form->setHorizontalSpacing(space::insideSheet);
    form->setVerticalSpacing(space::close);
    auto* layout = new QVBoxLayout(body);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::insideSheet);
    layout->addLayout(form);
    return form;
}

} // namespace

LoanForm::LoanForm(const Services& services, const db::InventoryRow& row,
                   std::optional<CourseId> preferred, QWidget* parent)
    : EntryDialog(services, {},
                  tr("Unit %1, %2", "number, stimulator")
                      .arg(QString::fromStdString(row.unit.inventoryNumber),
                           QString::fromStdString(row.stimulatorName)),
                  parent)
    , m_row(row)
    , m_course(new QComboBox(body()))
    , m_lentOn(new QLineEdit(body()))
    , m_dueOn(new QLineEdit(body()))
    , m_remarks(new QLabel(body()))
{
    setMinimumWidth(480);
    m_course->setObjectName(QStringLiteral("loanCourse"));
    m_lentOn->setObjectName(QStringLiteral("lentOn"));
    m_dueOn->setObjectName(QStringLiteral("dueOn"));
    m_dueOn->setPlaceholderText(tr("not agreed"));
    m_remarks->setObjectName(QStringLiteral("loanRemarks"));
    m_remarks->setWordWrap(true);
    setRole(*m_remarks, Role::warnText);
    QFormLayout* form = formIn(body());
    form->addRow(tr("&Lent to"), m_course);
    form->addRow(tr("&On"), m_lentOn);
    form->addRow(tr("&Due back"), m_dueOn);
    body()->layout()->addWidget(m_remarks);
    if (isLent()) {
        showLoan();
        return;
    }
    setSaveText(tr("Lend"));
    readCourses();
    m_lentOn->setText(services.text.date(services.clock.today()));
    chooseCourse(preferred);
    connect(m_course, &QComboBox::currentIndexChanged, this, &LoanForm::courseChanged);
    courseChanged();
}

void LoanForm::readCourses()
{
    const auto courses = services().store.read([&](db::Reading& reading) {
        return db::coursesToLendTo(reading, services().clock.today());
    });
    const auto stimulator = services().store.read(
        [&](db::Reading& reading) { return db::stimulator(reading, *m_row.unit.stimulator); });
    m_courses = courses ? *courses : std::vector<db::LendingCourse>{};
    m_stimulator = stimulator && *stimulator ? **stimulator : commonStimulator();
    for (const db::LendingCourse& course : m_courses) {
        m_course->addItem(tr("%1 (%2), %3, from %4", "name, reference, problem, day")
                              .arg(QString::fromStdString(course.patientName),
                                   QString::fromStdString(course.patientReference),
                                   QString::fromStdString(course.problem),
                                   services().text.date(course.startDate)));
    }
    // Any part of a name finds its course.
    m_course->setEditable(true);
    m_course->setInsertPolicy(QComboBox::NoInsert);
    m_course->completer()->setCompletionMode(QCompleter::PopupCompletion);
    m_course->completer()->setFilterMode(Qt::MatchContains);
    m_course->lineEdit()->setPlaceholderText(m_courses.empty() ? tr("no course is running")
                                                               : tr("name or reference"));
}

void LoanForm::chooseCourse(std::optional<CourseId> preferred)
{
    const auto found = std::ranges::find_if(
        m_courses, [&](const db::LendingCourse& course) { return course.course == preferred; });
    m_course->setCurrentIndex(
        found == m_courses.end() ? -1 : static_cast<int>(found - m_courses.begin()));
}

void LoanForm::showLoan()
{
    m_course->addItem(holderText(m_row));
    m_course->setEnabled(false);
    m_lentOn->setText(services().text.date(m_row.loan->lentOn));
    m_lentOn->setEnabled(false);
    m_dueOn->setText(m_row.loan->dueOn ? services().text.date(*m_row.loan->dueOn) : QString());
    m_dueOn->setFocus();
    m_remarks->hide();
}

const db::LendingCourse* LoanForm::course() const
{
    // What stands in the field, also where nothing was chosen from the list. Two courses may read
    // alike; then the one that was chosen counts.
    const QString shown = m_course->currentText();
    const int chosen = m_course->currentIndex();
    const bool stands = chosen >= 0 && m_course->itemText(chosen) == shown;
    const int index = stands ? chosen : m_course->findText(shown, Qt::MatchFixedString);
    return index < 0 ? nullptr : &m_courses[static_cast<std::size_t>(index)];
}

std::optional<Date> LoanForm::dateIn(const QLineEdit& field) const
{
    return services().text.dateFrom(field.text());
}

void LoanForm::courseChanged()
{
    if (const auto* chosen = course(); chosen != nullptr && !m_dueOn->isModified()) {
        const bool ahead = chosen->lastDay && *chosen->lastDay >= services().clock.today();
        m_dueOn->setText(ahead ? services().text.date(*chosen->lastDay) : QString());
    }
    judge();
}

void LoanForm::judge()
{
    const auto* chosen = course();
    const auto findings = loanFindings(
        m_row.unit, m_stimulator, chosen != nullptr ? chosen->stimulator : std::nullopt,
        chosen != nullptr ? chosen->unitsLent : 0, services().clock.today());
    QStringList sentences;
    for (const Finding& finding : findings) {
        sentences.append(findingText(finding, services().text).what);
    }
    m_remarks->setText(sentences.isEmpty()
                           ? QString()
                           : tr("Before you lend it: %1").arg(sentences.join(QLatin1Char(' '))));
    m_remarks->setVisible(!sentences.isEmpty());
}

std::optional<EntryDialog::Problem> LoanForm::problem() const
{
    if (!isLent() && course() == nullptr) {
        return Problem{m_course, tr("Nobody of that name has a running course. Choose from the "
                                    "list; a new course begins on the patient’s record.")};
    }
    const auto lentOn = dateIn(*m_lentOn);
    if (!lentOn) {
        return Problem{m_lentOn, noDate(services(), m_lentOn->text())};
    }
    if (!isLent() && *lentOn > services().clock.today()) {
        return Problem{m_lentOn,
                       tr("That day is still to come. Enter the day on which it is handed out.")};
    }
    if (m_dueOn->text().trimmed().isEmpty()) {
        return std::nullopt;
    }
    const auto dueOn = dateIn(*m_dueOn);
    if (!dueOn) {
        return Problem{m_dueOn, noDate(services(), m_dueOn->text())};
    }
    if (*dueOn < *lentOn) {
        return Problem{m_dueOn, tr("It would be due before it is lent. Enter a later day.")};
    }
    return std::nullopt;
}

Result<void> LoanForm::save()
{
    Loan loan = m_row.loan.value_or(Loan{});
    loan.dueOn = dateIn(*m_dueOn);
    if (!isLent()) {
        loan.unit = m_row.unit.id;
        loan.course = course()->course;
        loan.lentOn = *dateIn(*m_lentOn);
    }
    const auto saved = services().store.write(
        services().author, isLent() ? "change a loan" : "lend a unit", [&](db::Writing& writing) {
            if (isLent()) {
                db::changeLoan(writing, loan);
            } else {
                db::lend(writing, loan);
            }
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.loansChanged();
    return {};
}

TakeBackForm::TakeBackForm(const Services& services, const db::InventoryRow& row, QWidget* parent)
    : EntryDialog(services, {},
                  tr("Take back unit %1").arg(QString::fromStdString(row.unit.inventoryNumber)),
                  parent)
    , m_row(row)
    , m_day(new QLineEdit(body()))
{
    setMinimumWidth(420);
    setSaveText(tr("Take back"));
    m_day->setObjectName(QStringLiteral("givenBackOn"));
    m_day->setText(services.text.date(services.clock.today()));
    QFormLayout* form = formIn(body());
    form->addRow(tr("From"), new QLabel(holderText(row), body()));
    form->addRow(tr("Lent on"), new QLabel(services.text.date(row.loan->lentOn), body()));
    form->addRow(tr("&Given back on"), m_day);
    m_day->setFocus();
    m_day->selectAll();
}

std::optional<EntryDialog::Problem> TakeBackForm::problem() const
{
    const auto day = services().text.dateFrom(m_day->text());
    if (!day) {
        return Problem{m_day, noDate(services(), m_day->text())};
    }
    if (*day < m_row.loan->lentOn) {
        return Problem{m_day, tr("That is before it was lent. Enter a later day.")};
    }
    if (*day > services().clock.today()) {
        return Problem{m_day,
                       tr("That day is still to come. Enter the day on which it came back.")};
    }
    return std::nullopt;
}

Result<void> TakeBackForm::save()
{
    const Date day = *services().text.dateFrom(m_day->text());
    const auto saved =
        services().store.write(services().author, "take a unit back", [&](db::Writing& writing) {
            db::takeBack(writing, *m_row.loan, day);
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.loansChanged();
    return {};
}

} // namespace quadrille::app
