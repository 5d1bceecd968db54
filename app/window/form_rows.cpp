// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/form_rows.h"

#include "app/look/tokens.h"

#include <QFormLayout>
#include <QString>
#include <QWidget>

namespace quadrille::app
{

void spaceOut(QFormLayout& form)
{
    form.setContentsMargins(0, 0, 0, 0);
    form.setHorizontalSpacing(space::insideSheet);
    form.setVerticalSpacing(space::close);
}

void addNamedRow(QFormLayout& form, const QString& label, QWidget* field, const char* name)
{
    field->setObjectName(QLatin1String(name));
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    form.addRow(label, field);
}

} // namespace quadrille::app
