// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QFormLayout;
class QString;
class QWidget;

namespace quadrille::app
{

/// No margin, and the distances between rows and columns that all forms have.
void spaceOut(QFormLayout& form);
/// A row whose field is spoken as its label says; `name` finds the field again.
void addNamedRow(QFormLayout& form, const QString& label, QWidget* field, const char* name);

} // namespace quadrille::app
