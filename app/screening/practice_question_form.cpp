// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/practice_question_form.h"

#include "app/look/tokens.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"
#include "app/words/screening_text.h"

#include "db/practice_questions.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 560;

QString formName(const PracticeQuestion& question)
{
    return question.id ? QStringLiteral("practice_question/%1").arg(question.id->key())
                       : QStringLiteral("practice_question/new");
}

std::string lineOf(const QLineEdit& field)
{
    return field.text().simplified().toStdString();
}

template <class Choice>
void choose(QComboBox& list, Choice choice)
{
    list.setCurrentIndex(list.findData(static_cast<int>(choice)));
}

template <class Choice>
Choice chosen(const QComboBox& list)
{
    return static_cast<Choice>(list.currentData().toInt());
}

} // namespace

PracticeQuestionForm::PracticeQuestionForm(const Services& services,
                                           const PracticeQuestion& question, QWidget* parent)
    : EntryDialog(services, formName(question),
                  question.id ? tr("Question of the practice") : tr("New question"), parent)
    , m_question(question)
    , m_wording(new QLineEdit(body()))
    , m_class(new QComboBox(body()))
    , m_reach(new QComboBox(body()))
    , m_reason(new QLineEdit(body()))
    , m_advice(new QLineEdit(body()))
    , m_advicePlace(new QComboBox(body()))
    , m_archived(new QCheckBox(tr("No longer &asked"), body()))
{
    layOut();
    setMinimumWidth(leastWidth);
    fill();
    m_archived->setVisible(question.id.has_value());
    restoreKept();
    startKeeping();
    m_wording->setFocus();
}

void PracticeQuestionForm::layOut()
{
    for (const QuestionClass weight :
         {QuestionClass::precaution, QuestionClass::localContraindication,
          QuestionClass::contraindication}) {
        m_class->addItem(questionClassName(weight), static_cast<int>(weight));
    }
    m_reach->addItem(tr("sites in that part"), static_cast<int>(Reach::region));
    m_reach->addItem(tr("sites on that limb"), static_cast<int>(Reach::limb));
    m_advicePlace->addItem(tr("before a session"), static_cast<int>(AdvicePlace::before));
    m_advicePlace->addItem(tr("during a session"), static_cast<int>(AdvicePlace::during));
    m_advicePlace->addItem(tr("after a session"), static_cast<int>(AdvicePlace::after));
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    const auto add = [&](const char* name, const QString& label, QWidget* field) {
        field->setObjectName(QLatin1String(name));
        field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
        form->addRow(label, field);
    };
    add("wording", tr("&Question, a yes is the answer that weighs"), m_wording);
    add("class", tr("A yes &is a"), m_class);
    add("reach", tr("It &blocks, if local"), m_reach);
    add("why", tr("&Why it is asked"), m_reason);
    add("advice", tr("Ad&vice printed for the patient"), m_advice);
    add("advicePlace", tr("W&here it stands"), m_advicePlace);
    m_archived->setObjectName(QStringLiteral("archived"));
    form->addRow(QString(), m_archived);
    m_wording->setPlaceholderText(tr("for example: Afraid of electricity?"));
    m_advice->setPlaceholderText(tr("empty: nothing is printed"));
    const auto follow = [this] {
        m_reach->setEnabled(chosen<QuestionClass>(*m_class) ==
                            QuestionClass::localContraindication);
    };
    connect(m_class, &QComboBox::currentIndexChanged, this, follow);
    follow();
}

void PracticeQuestionForm::fill()
{
    m_wording->setText(QString::fromStdString(m_question.wording));
    choose(*m_class, m_question.questionClass);
    choose(*m_reach, m_question.reach);
    m_reason->setText(QString::fromStdString(m_question.reason));
    m_advice->setText(QString::fromStdString(m_question.advice));
    choose(*m_advicePlace, m_question.adviceAt);
    m_archived->setChecked(m_question.archived);
}

Result<void> PracticeQuestionForm::readAgain()
{
    const auto all = services().store.read(db::practiceQuestions);
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_question.id, &PracticeQuestion::id);
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_question.wording, .detail = {}};
    }
    m_question = *stored;
    fill();
    return {};
}

std::optional<EntryDialog::Problem> PracticeQuestionForm::problem() const
{
    if (m_wording->text().trimmed().isEmpty()) {
        return Problem{m_wording, tr("The question is empty. Word it so that a yes weighs.")};
    }
    return std::nullopt;
}

Result<void> PracticeQuestionForm::save()
{
    PracticeQuestion question = m_question;
    question.wording = lineOf(*m_wording);
    question.questionClass = chosen<QuestionClass>(*m_class);
    question.reach = chosen<Reach>(*m_reach);
    question.reason = lineOf(*m_reason);
    question.advice = lineOf(*m_advice);
    question.adviceAt = chosen<AdvicePlace>(*m_advicePlace);
    question.archived = m_archived->isChecked();
    const auto saved = services().store.write(services().author,
                                              question.id ? "change a question of the practice"
                                                          : "add a question of the practice",
                                              [&](db::Writing& writing) {
                                                  if (question.id) {
                                                      db::changePracticeQuestion(writing, question);
                                                  } else {
                                                      db::addPracticeQuestion(writing, question);
                                                  }
                                              });
    if (!saved) {
        return saved.error();
    }
    emit services().events.practiceChanged();
    return {};
}

} // namespace quadrille::app
