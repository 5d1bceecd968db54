// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/question_row.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/shapes.h"
#include "app/look/tokens.h"
#include "app/screening/class_sign.h"
#include "app/screening/places_field.h"
#include "app/words/screening_text.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QRadioButton>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

int wide(int width)
{
    return scaled(width, appliedFactor());
}

QLabel* cell(const QString& text, int width, Role role, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setFixedWidth(wide(width));
    setRole(*label, role);
    return label;
}

} // namespace

QuestionRow::QuestionRow(std::size_t index, const ScreeningQuestion& question, QWidget* parent)
    : QFrame(parent)
    , m_question(question)
    , m_index(index)
    , m_number(cell(QString::number(index + 1), question_column::number, Role::captionText, this))
    , m_wording(new QLabel(QString::fromStdString(question.wording), this))
    , m_last(new QLabel(this))
    , m_answers(new QButtonGroup(this))
    , m_note(new QLineEdit(this))
    , m_places(new PlacesField(this))
    , m_blocks(cell(blocksText(question), question_column::blocks, Role::secondLineText, this))
{
    setObjectName(QStringLiteral("question%1").arg(index + 1));
    setFocusPolicy(Qt::ClickFocus);
    m_wording->setWordWrap(true);
    m_wording->setTextFormat(Qt::PlainText);
    setRole(*m_last, Role::captionText);
    m_note->setObjectName(QStringLiteral("note"));
    m_note->setPlaceholderText(tr("note"));
    m_note->setAccessibleName(tr("Note to question %1").arg(index + 1));
    layOut();
    connectParts();
    show({});
}

QAbstractButton* QuestionRow::answerButton(Answer answer, const QString& name, int width)
{
    auto* button = new QRadioButton(this);
    button->setObjectName(name);
    button->setAccessibleName(answerName(answer));
    button->setToolTip(answerName(answer));
    button->setFocusPolicy(Qt::NoFocus); // the row answers with Y, N and K
    button->setFixedSize(wide(width), wide(size::hitArea));
    m_answers->addButton(button, static_cast<int>(answer));
    return button;
}

QWidget* QuestionRow::classCell()
{
    auto* box = new QWidget(this);
    box->setFixedWidth(wide(question_column::weight));
    box->setToolTip(tr("%1; yes blocks: %2")
                        .arg(questionClassName(m_question.questionClass), blocksText(m_question)));
    auto* name = new QLabel(questionClassName(m_question.questionClass), box);
    name->setWordWrap(true);
    setRole(*name, Role::secondLineText);
    m_class = box;
    m_className = name;
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::tiny);
    row->addWidget(new ClassSign(m_question.questionClass, box));
    row->addWidget(name, 1);
    return box;
}

void QuestionRow::layOut()
{
    auto* text = new QVBoxLayout;
    text->setSpacing(space::hair);
    text->addWidget(m_wording);
    text->addWidget(m_last);
    text->addWidget(m_note);
    text->addWidget(m_places);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(space::close, space::small, space::close, space::small);
    row->setSpacing(space::small);
    row->addWidget(m_number);
    row->addLayout(text, 1);
    row->addWidget(answerButton(Answer::yes, QStringLiteral("yes"), question_column::answer));
    row->addWidget(answerButton(Answer::no, QStringLiteral("no"), question_column::answer));
    row->addWidget(
        answerButton(Answer::notKnown, QStringLiteral("notKnown"), question_column::notKnown));
    row->addWidget(classCell());
    row->addWidget(m_blocks);
}

void QuestionRow::connectParts()
{
    connect(m_answers, &QButtonGroup::idClicked, this, [this](int id) {
        setFocus(Qt::MouseFocusReason);
        emit answered(static_cast<Answer>(id));
    });
    connect(m_note, &QLineEdit::editingFinished, this, [this] {
        if (m_shown.answer && m_note->text().toStdString() != m_shown.answer->note) {
            emit noteChanged(m_note->text());
        }
    });
    connect(m_note, &QLineEdit::returnPressed, this, &QuestionRow::goOn);
    connect(m_places, &PlacesField::placesChanged, this,
            [this] { emit placesChanged(m_places->places()); });
}

bool QuestionRow::needsPlaces() const
{
    return m_question.questionClass == QuestionClass::localContraindication &&
           m_question.regions.empty() && m_shown.answer && m_shown.answer->answer != Answer::no;
}

void QuestionRow::show(const Shown& shown)
{
    m_shown = shown;
    const auto& answer = shown.answer;
    m_answers->setExclusive(false);
    for (QAbstractButton* button : m_answers->buttons()) {
        button->setChecked(answer && m_answers->id(button) == static_cast<int>(answer->answer));
    }
    m_answers->setExclusive(true);
    const bool weighs = answer && answer->answer != Answer::no;
    setRole(*m_wording, weighs ? Role::strongText : Role::none);
    m_note->setVisible(answer && (weighs || !answer->note.empty()));
    m_note->setReadOnly(!shown.editable);
    if (!m_note->hasFocus() || !answer) {
        m_note->setText(answer ? QString::fromStdString(answer->note) : QString());
    }
    m_places->setVisible(needsPlaces());
    m_places->setEnabled(shown.editable);
    m_places->setPlaces(needsPlaces() ? answer->places : std::vector<BodyPlace>());
    const bool changed = shown.changed && answer;
    const bool waits = shown.compares && !answer && shown.last;
    m_last->setVisible(changed || waits);
    m_last->setText(
        !shown.last ? tr("not asked last time")
        : shown.last->note.empty()
            ? tr("last time: %1").arg(answerName(shown.last->answer))
            : tr("last time: %1, %2")
                  .arg(answerName(shown.last->answer), QString::fromStdString(shown.last->note)));
    setAccessibleName(spokenName());
    update();
}

QString QuestionRow::spokenName() const
{
    return tr("Question %1: %2 %3. Answer: %4")
        .arg(m_index + 1)
        .arg(QString::fromStdString(m_question.wording),
             questionClassName(m_question.questionClass),
             m_shown.answer ? answerName(m_shown.answer->answer) : tr("none yet"));
}

void QuestionRow::setCurrent(bool current)
{
    setFocusPolicy(current ? Qt::StrongFocus : Qt::ClickFocus);
}

void QuestionRow::setNarrow(bool narrow)
{
    m_blocks->setVisible(!narrow);
    m_className->setVisible(!narrow);
    m_class->setFixedWidth(wide(narrow ? question_column::sign : question_column::weight));
}

QWidget* QuestionRow::lastStop() const
{
    return m_places->lastStop();
}

void QuestionRow::goOn()
{
    if (m_note->isVisible() && m_shown.editable && m_note->text().trimmed().isEmpty() &&
        m_shown.answer && m_shown.answer->answer == Answer::yes && !m_note->hasFocus()) {
        m_note->setFocus(Qt::TabFocusReason);
    } else if (m_places->isVisible() && m_shown.editable && m_places->places().empty()) {
        m_places->focusFirst();
    } else {
        emit nextRequested();
    }
}

void QuestionRow::keyPressEvent(QKeyEvent* event)
{
    const auto others = Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier;
    if (event->modifiers() & others) {
        return QFrame::keyPressEvent(event);
    }
    switch (event->key()) {
    case Qt::Key_Y:
        return emit answered(Answer::yes);
    case Qt::Key_N:
        return emit answered(Answer::no);
    case Qt::Key_K:
        return emit answered(Answer::notKnown);
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return goOn();
    case Qt::Key_Down:
        return emit nextRequested();
    case Qt::Key_Up:
        return emit previousRequested();
    default:
        QFrame::keyPressEvent(event);
    }
}

void QuestionRow::focusInEvent(QFocusEvent* event)
{
    QFrame::focusInEvent(event);
    emit focused();
    update();
}

void QuestionRow::focusOutEvent(QFocusEvent* event)
{
    QFrame::focusOutEvent(event);
    update();
}

void QuestionRow::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    QFrame::mousePressEvent(event);
}

void QuestionRow::paintEvent(QPaintEvent*)
{
    const Tokens tokens = tokensOf(palette());
    QPainter painter(this);
    const auto& answer = m_shown.answer;
    painter.fillRect(rect(), !answer                              ? tokens.sheet
                             : answer->answer == Answer::notKnown ? tokens.warnBand
                             : answer->answer == Answer::yes      ? tokens.tint
                                                                  : tokens.sheet);
    painter.fillRect(QRect(0, height() - 1, width(), 1), tokens.rule);
    if (m_shown.changed && answer) {
        painter.fillRect(QRect(0, 0, stroke::changedBar, height() - 1), tokens.mark);
    }
    if (hasFocus()) {
        drawFocusRing(painter, rect(), tokens.mark);
    }
}

} // namespace quadrille::app
