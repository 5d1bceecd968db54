// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/quantity_box.h"

#include "app/look/roles.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QWheelEvent>

#include <algorithm>

namespace quadrille::app
{

QuantityBox::QuantityBox(Field field, const QuantityText& text, QWidget* parent)
    : QAbstractSpinBox(parent)
    , m_field(field)
    , m_text(text)
{
    setFocusPolicy(Qt::StrongFocus); // the wheel alone gives no focus
    setAlignment(Qt::AlignRight);
    connect(lineEdit(), &QLineEdit::textEdited, this, &QuantityBox::readText);
}

void QuantityBox::setRange(const std::optional<CountRange>& range)
{
    m_range = range;
    setReadOnly(range && range->isFixed() && m_count == range->least);
    update();
}

void QuantityBox::setCount(std::optional<std::int64_t> count)
{
    if (count == m_count && m_shown) {
        return; // what is being typed stays as it is
    }
    m_count = count;
    m_shown = true;
    setProblem(false);
    showCount();
}

void QuantityBox::stepBy(int steps)
{
    if (!m_range || isReadOnly()) {
        return;
    }
    const std::int64_t step = std::max<std::int64_t>(1, m_range->step);
    std::int64_t next = m_count.value_or(m_range->preset);
    if (m_count) {
        const bool onStep = m_range->contains(next) && (next - m_range->least) % step == 0;
        // From between two steps, the first turn goes to the next one.
        const std::int64_t below =
            m_range->least +
            (std::clamp(next, m_range->least, m_range->most) - m_range->least) / step * step;
        const std::int64_t from = onStep || steps > 0 ? below : below + step;
        next = std::clamp(from + steps * step, m_range->least, m_range->most);
    }
    enter(next);
    showCount();
    selectAll();
}

QValidator::State QuantityBox::validate(QString& input, int& position) const
{
    Q_UNUSED(input)
    Q_UNUSED(position)
    return QValidator::Acceptable; // nothing typed is thrown away; readText() judges it
}

QSize QuantityBox::sizeHint() const
{
    const int digits = fontMetrics().horizontalAdvance(QStringLiteral("1 000.0 min"));
    return {digits + 34, 26};
}

QAbstractSpinBox::StepEnabled QuantityBox::stepEnabled() const
{
    if (!m_range || isReadOnly()) {
        return StepNone;
    }
    StepEnabled enabled = StepNone;
    if (!m_count || *m_count < m_range->most) {
        enabled |= StepUpEnabled;
    }
    if (!m_count || *m_count > m_range->least) {
        enabled |= StepDownEnabled;
    }
    return enabled;
}

void QuantityBox::keyPressEvent(QKeyEvent* event)
{
    const bool shift = event->modifiers().testFlag(Qt::ShiftModifier);
    const bool control = event->modifiers().testFlag(Qt::ControlModifier);
    switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Down:
        stepBy((event->key() == Qt::Key_Up ? 1 : -1) * (shift ? 10 : 1));
        return;
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        if (control) {
            break; // pages of the record
        }
        // An amplitude never jumps: a leap to the end of the range hurts.
        if (m_range && !isAmplitude() && !isReadOnly()) {
            enter(event->key() == Qt::Key_PageUp ? m_range->most : m_range->least);
            showCount();
            selectAll();
        }
        return;
    case Qt::Key_Escape:
        if (m_problem || m_count != m_countAtFocus) {
            setProblem(false);
            enter(m_countAtFocus);
            showCount();
            selectAll();
            return;
        }
        break;
    case Qt::Key_Backspace:
        if (control && m_earlier) {
            setProblem(false);
            enter(m_earlier);
            showCount();
            selectAll();
            return;
        }
        break;
    default:
        break;
    }
    QAbstractSpinBox::keyPressEvent(event);
}

void QuantityBox::wheelEvent(QWheelEvent* event)
{
    if (!hasFocus() || isAmplitude()) {
        event->ignore(); // the page scrolls; no value changes by accident
        return;
    }
    QAbstractSpinBox::wheelEvent(event);
}

void QuantityBox::focusInEvent(QFocusEvent* event)
{
    m_countAtFocus = m_count;
    QAbstractSpinBox::focusInEvent(event);
    selectAll();
    emit entered();
}

void QuantityBox::focusOutEvent(QFocusEvent* event)
{
    QAbstractSpinBox::focusOutEvent(event);
    if (!m_problem) {
        showCount();
    }
    emit left();
}

void QuantityBox::readText(const QString& text)
{
    if (text.trimmed().isEmpty() && m_mayBeEmpty) {
        setProblem(false);
        enter(std::nullopt);
        return;
    }
    const auto count = m_text.settingFrom(m_field, text);
    setProblem(!count);
    if (count) {
        enter(count);
    }
}

void QuantityBox::enter(std::optional<std::int64_t> count)
{
    if (count == m_count) {
        return;
    }
    m_count = count;
    emit countEntered(count);
}

void QuantityBox::showCount()
{
    const QString shown = m_count ? m_text.setting(m_field, *m_count) : QString();
    if (lineEdit()->text() != shown) {
        lineEdit()->setText(shown);
    }
    lineEdit()->setPlaceholderText(m_count ? QString() : QStringLiteral("—"));
}

void QuantityBox::setProblem(bool problem)
{
    if (!m_problem && !problem) {
        return;
    }
    m_problem = problem;
    setOutOfRange(*this, problem);
    emit problemChanged(problem); // also while it goes on: the sentence quotes the text
}

bool QuantityBox::isAmplitude() const
{
    return m_field == Field::lastToleratedAmplitude || m_field == Field::amplitudeCeiling;
}

} // namespace quadrille::app
