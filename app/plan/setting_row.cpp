// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/setting_row.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace quadrille::app
{

SettingRow::SettingRow(const QString& name, QWidget* field, QWidget* parent)
    : QFrame(parent)
    , m_name(new QLabel(name, this))
    , m_hint(new QLabel(this))
    , m_field(field)
    , m_allowed(new QLabel(this))
    , m_before(new QLabel(this))
{
    field->setParent(this);
    m_name->setBuddy(field);
    setRole(*m_hint, Role::captionText);
    setRole(*m_allowed, Role::secondLineText);
    setRole(*m_before, Role::secondLineText);
    m_hint->hide();
    const double factor = appliedFactor();
    auto* names = new QVBoxLayout;
    names->setSpacing(0);
    names->setContentsMargins(0, 0, 0, 0);
    names->addStretch();
    names->addWidget(m_name);
    names->addWidget(m_hint);
    names->addStretch();
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, 0, space::close, 0);
    layout->setSpacing(space::close);
    layout->addLayout(names);
    m_name->setFixedWidth(scaled(nameWidth, factor));
    m_hint->setFixedWidth(scaled(nameWidth, factor));
    field->setFixedWidth(scaled(fieldWidth, factor));
    layout->addWidget(field);
    layout->addWidget(m_allowed);
    m_allowed->setFixedWidth(scaled(allowedWidth, factor));
    layout->addWidget(m_before, 1);
    setFixedHeight(scaled(size::formRow - 4, factor));
}

void SettingRow::giveFieldTheRoom()
{
    m_allowed->hide();
    m_field->setFixedWidth(scaled(fieldWidth + space::close + allowedWidth, appliedFactor()));
}

void SettingRow::setHint(const QString& hint)
{
    m_hint->setText(hint);
    m_hint->setVisible(!hint.isEmpty());
}

void SettingRow::setAllowed(const QString& text, bool outside)
{
    m_allowed->setText(text);
    setRole(*m_allowed, outside ? Role::warnStrongText : Role::secondLineText);
}

void SettingRow::setBefore(const QString& text, bool changed)
{
    m_before->setText(text);
    setRole(*this, changed ? Role::changedRow : Role::none);
    setRole(*m_name, changed ? Role::strongText : Role::none);
}

void SettingRow::setRemark(const QString& remark)
{
    m_field->setToolTip(remark);
    m_field->setAccessibleDescription(remark);
}

} // namespace quadrille::app
