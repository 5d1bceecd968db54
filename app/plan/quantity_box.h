// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/stimulator.h"

#include <QAbstractSpinBox>

#include <optional>

namespace quadrille::app
{

/// The one box for a quantity. It holds base units, shows them with their unit and reads them in
/// the locale's way. What is typed is kept as it is: a value outside the range is a finding of the
/// form, text that is no value stays in the box until it is mended. Turning stays inside the range
/// and on the unit's steps.
class QuantityBox : public QAbstractSpinBox
{
    Q_OBJECT

public:
    QuantityBox(Field field, const QuantityText& text, QWidget* parent = nullptr);

    Field field() const { return m_field; }
    /// What turning may reach; nothing leaves only typing.
    void setRange(const std::optional<CountRange>& range);
    /// Shows a value without announcing it; keeps text that is being typed and means the same.
    void setCount(std::optional<std::int64_t> count);
    std::optional<std::int64_t> count() const { return m_count; }
    /// May the box be empty ("not known")?
    void setMayBeEmpty(bool mayBeEmpty) { m_mayBeEmpty = mayBeEmpty; }
    /// The value to return to with Ctrl Backspace: the one of the block before.
    void setEarlierCount(std::optional<std::int64_t> count) { m_earlier = count; }
    /// True while the text in the box is no value.
    bool hasProblem() const { return m_problem; }

    void stepBy(int steps) override;
    QValidator::State validate(QString& input, int& position) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    /// The person entered another value.
    void countEntered(std::optional<std::int64_t> count);
    /// The text became, still is (and changed), or is no longer something that is no value.
    void problemChanged(bool problem);
    /// The box was left: the next change is another step.
    void left();
    /// The box was entered.
    void entered();

protected:
    StepEnabled stepEnabled() const override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void readText(const QString& text);
    void enter(std::optional<std::int64_t> count);
    void showCount();
    void setProblem(bool problem);
    bool isAmplitude() const;

    Field m_field;
    const QuantityText& m_text;
    std::optional<CountRange> m_range;
    std::optional<std::int64_t> m_count;
    std::optional<std::int64_t> m_earlier;
    std::optional<std::int64_t> m_countAtFocus;
    bool m_shown = false; ///< a value was put in from outside
    bool m_mayBeEmpty = false;
    bool m_problem = false;
};

} // namespace quadrille::app
