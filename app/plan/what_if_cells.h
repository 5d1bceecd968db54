// SPDX-License-Identifier: GPL-3.0-or-later
// The cells of a variant: a setting to try, and a figure with its difference.
#pragma once

#include "app/plan/quantity_box.h"
#include "app/words/quantity_text.h"

#include <QFrame>
#include <QWidget>

#include <optional>

class QLabel;

namespace quadrille::app
{

/// Widths of the columns at 100 %.
namespace what_if_width
{
inline constexpr int name = 130;
inline constexpr int plan = 88;
inline constexpr int field = 100;
inline constexpr int variant = 176;
} // namespace what_if_width

/// A box for a setting of a variant, with the value of the block beside it where it differs: bar,
/// tint and words say so.
class SettingCell : public QFrame
{
    Q_OBJECT

public:
    SettingCell(Field field, const QuantityText& text, QWidget* parent);

    QuantityBox& box() { return *m_box; }
    const QuantityBox& box() const { return *m_box; }
    /// `planned`: what the block has.
    void show(std::optional<std::int64_t> count, std::optional<std::int64_t> planned);
    /// Lets go of text that is no value, so that the next value is shown.
    void dropText();

private:
    const QuantityText& m_text;
    QuantityBox* m_box;
    QLabel* m_was;
};

/// A figure, and how it differs from the block's.
class FigureCell : public QWidget
{
    Q_OBJECT

public:
    /// `name`: for a voice, "Pulses, variant A".
    FigureCell(const QString& name, QWidget* parent);

    /// `outside`: a limit speaks against it.
    void show(const QString& value, const QString& difference, bool outside);
    QString value() const;
    QString difference() const;

private:
    QString m_name;
    QLabel* m_value;
    QLabel* m_difference;
};

} // namespace quadrille::app
