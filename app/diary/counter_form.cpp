// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/counter_form.h"

#include "app/diary/diary_words.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"

#include "db/course_events.h"

#include "core/typed_number.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr NumberForm usesForm{.digits = 6, .decimals = 0, .scale = 1};
constexpr NumberForm minutesForm{.digits = 6, .decimals = 2, .scale = 60'000};

QString formName(const Course& course, const CounterReading& reading)
{
    const QString place = QStringLiteral("counter/%1/").arg(course.id ? course.id->key() : 0);
    return place + (reading.id ? QString::number(reading.id->key()) : QStringLiteral("new"));
}

std::optional<std::int64_t> numberIn(const QLineEdit& field, const NumberForm& form)
{
    QString text = field.text().simplified();
    text.remove(QLatin1Char(' ')).remove(QChar::Nbsp);
    return numberFrom(text.replace(QLatin1Char(','), QLatin1Char('.')).toStdString(), form);
}

bool isEmpty(const QLineEdit& field)
{
    return field.text().trimmed().isEmpty();
}

} // namespace

CounterForm::CounterForm(const Services& services, const Course& course,
                         const CounterReading& reading, const QString& compared, QWidget* parent)
    : EntryDialog(services, formName(course, reading),
                  reading.id ? tr("Correct a reading") : tr("Reading of the counter"), parent)
    , m_course(course)
    , m_before(reading)
    , m_day(new QLineEdit(body()))
    , m_uses(new QLineEdit(body()))
    , m_minutes(new QLineEdit(body()))
    , m_explanation(new QComboBox(body()))
    , m_words(new QLineEdit(body()))
{
    layOut(compared);
    fill();
    restoreKept();
    startKeeping();
    QLineEdit* first = reading.id ? m_day : m_uses;
    first->setFocus();
    first->selectAll();
}

void CounterForm::layOut(const QString& compared)
{
    m_explanation->addItem(tr("none"), -1);
    for (const CounterExplanation explanation :
         {CounterExplanation::unitSwapped, CounterExplanation::counterReset,
          CounterExplanation::anotherUser, CounterExplanation::other}) {
        m_explanation->addItem(explanationName(explanation), static_cast<int>(explanation));
    }
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    const auto row = [&](const QString& label, QWidget* field, const char* name) {
        addNamedRow(*form, label, field, name);
    };
    row(tr("&Read on"), m_day, "readOn");
    row(tr("Total &uses"), m_uses, "totalUses");
    row(tr("Total &minutes"), m_minutes, "totalMinutes");
    if (!compared.isEmpty()) {
        auto* sentence = new QLabel(compared, body());
        sentence->setWordWrap(true);
        setRole(*sentence, Role::secondLineText);
        form->addRow(QString(), sentence);
    }
    row(tr("E&xplanation of a difference"), m_explanation, "explanation");
    row(tr("In &words"), m_words, "explanationWords");
    setMinimumWidth(460);
}

void CounterForm::fill()
{
    m_day->setText(services().text.date(m_before.readOn));
    m_uses->setText(m_before.totalUses ? services().text.count(*m_before.totalUses) : QString());
    m_minutes->setText(m_before.totalTime ? minutesNumber(*m_before.totalTime, services().text)
                                          : QString());
    const int explanation = m_before.explanation ? static_cast<int>(*m_before.explanation) : -1;
    m_explanation->setCurrentIndex(std::max(0, m_explanation->findData(explanation)));
    m_words->setText(QString::fromStdString(m_before.explanationWords));
}

Result<void> CounterForm::readAgain()
{
    const auto all = services().store.read(
        [&](db::Reading& reading) { return db::counterReadingsOf(reading, *m_course.id); });
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_before.id, &CounterReading::id);
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = "reading", .detail = {}};
    }
    m_before = *stored;
    fill();
    return {};
}

std::optional<EntryDialog::Problem> CounterForm::problem() const
{
    const auto day = services().text.dateFrom(m_day->text());
    if (!day) {
        return Problem{m_day, tr("“%1” is no date. Enter day, month and year, for example %2.")
                                  .arg(m_day->text(), services().text.dateExample())};
    }
    if (*day > services().clock.today()) {
        return Problem{m_day, tr("%1 is still to come. Enter the day on which the unit was read.")
                                  .arg(services().text.date(*day))};
    }
    if (*day < m_course.startDate) {
        return Problem{m_day, tr("The course starts on %1. Enter a day from then on.")
                                  .arg(services().text.date(m_course.startDate))};
    }
    if (isEmpty(*m_uses) && isEmpty(*m_minutes)) {
        return Problem{m_uses, tr("Uses and minutes are empty. Enter what the unit shows, at least "
                                  "one of them.")};
    }
    if (!isEmpty(*m_uses) && !numberIn(*m_uses, usesForm)) {
        return Problem{m_uses, tr("“%1” is no number of uses. Enter a whole number up to %2.")
                                   .arg(m_uses->text(), services().text.count(999'999))};
    }
    if (!isEmpty(*m_minutes) && !numberIn(*m_minutes, minutesForm)) {
        return Problem{m_minutes, tr("“%1” are no minutes. Enter a number up to %2.")
                                      .arg(m_minutes->text(), services().text.count(999'999))};
    }
    const bool other =
        m_explanation->currentData().toInt() == static_cast<int>(CounterExplanation::other);
    if (other && isEmpty(*m_words)) {
        return Problem{m_words, tr("The words are empty. Say in a few words what explains the "
                                   "difference.")};
    }
    return std::nullopt;
}

CounterReading CounterForm::entered() const
{
    CounterReading reading = m_before;
    reading.readOn = services().text.dateFrom(m_day->text()).value_or(m_before.readOn);
    const auto uses = numberIn(*m_uses, usesForm);
    const auto minutes = numberIn(*m_minutes, minutesForm);
    reading.totalUses = uses ? std::optional(static_cast<int>(*uses)) : std::nullopt;
    reading.totalTime = minutes ? std::optional(Milliseconds(*minutes)) : std::nullopt;
    const int explanation = m_explanation->currentData().toInt();
    reading.explanation = explanation >= 0
                              ? std::optional(static_cast<CounterExplanation>(explanation))
                              : std::nullopt;
    reading.explanationWords =
        reading.explanation ? m_words->text().simplified().toStdString() : std::string();
    return reading;
}

Result<void> CounterForm::save()
{
    const CounterReading reading = entered();
    const auto saved =
        services().store.write(services().author, reading.id ? "correct reading" : "enter reading",
                               [&](db::Writing& writing) {
                                   if (reading.id) {
                                       db::changeCounterReading(writing, reading);
                                   } else {
                                       db::addCounterReading(writing, reading);
                                   }
                               });
    if (!saved) {
        return saved.error();
    }
    emit services().events.diaryChanged(*m_course.id);
    return {};
}

} // namespace quadrille::app
