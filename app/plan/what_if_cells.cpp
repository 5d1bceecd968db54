// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/what_if_cells.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QHBoxLayout>
#include <QLabel>

namespace quadrille::app
{

namespace
{

/// Field at the left, what it was at the right; figures stand under the fields.
QHBoxLayout* rowIn(QWidget& cell)
{
    auto* row = new QHBoxLayout(&cell);
    row->setContentsMargins(space::small, stroke::line, 0, stroke::line);
    row->setSpacing(space::small);
    cell.setFixedWidth(scaled(what_if_width::variant, appliedFactor()));
    return row;
}

} // namespace

SettingCell::SettingCell(Field field, const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_box(new QuantityBox(field, text, this))
    , m_was(new QLabel(this))
{
    setRole(*m_was, Role::secondLineText);
    m_box->setFixedWidth(scaled(what_if_width::field, appliedFactor()));
    QHBoxLayout* row = rowIn(*this);
    row->addWidget(m_box);
    row->addWidget(m_was, 1);
}

void SettingCell::show(std::optional<std::int64_t> count, std::optional<std::int64_t> planned)
{
    m_box->setCount(count);
    m_box->setEarlierCount(planned);
    const bool changed = count != planned;
    m_was->setText(!changed  ? QString()
                   : planned ? tr("was %1").arg(m_text.setting(m_box->field(), *planned))
                             : tr("was —"));
    setRole(*this, changed ? Role::changedRow : Role::none);
    m_box->setAccessibleDescription(m_was->text());
}

void SettingCell::dropText()
{
    if (m_box->hasProblem()) {
        m_box->setCount(m_box->count() ? std::nullopt : std::optional<std::int64_t>(0));
    }
}

FigureCell::FigureCell(const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_name(name)
    , m_value(new QLabel(this))
    , m_difference(new QLabel(this))
{
    setRole(*m_value, Role::strongText);
    setRole(*m_difference, Role::secondLineText);
    m_value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_value->setFixedWidth(scaled(what_if_width::field, appliedFactor()));
    QHBoxLayout* row = rowIn(*this);
    row->addWidget(m_value);
    row->addWidget(m_difference, 1);
}

void FigureCell::show(const QString& value, const QString& difference, bool outside)
{
    m_value->setText(value);
    m_difference->setText(difference);
    setRole(*m_value, outside ? Role::warnStrongText : Role::strongText);
    m_value->setAccessibleName(
        tr("%1: %2 %3", "figure, value, difference").arg(m_name, value, difference).trimmed());
}

QString FigureCell::value() const
{
    return m_value->text();
}

QString FigureCell::difference() const
{
    return m_difference->text();
}

} // namespace quadrille::app
