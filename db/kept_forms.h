// SPDX-License-Identifier: GPL-3.0-or-later
// Forms that were open and not saved when the program ended.
#pragma once

#include "db/store.h"

#include <QJsonObject>
#include <QString>

#include <optional>

namespace quadrille::db
{

/// What a form held: its fields by name. `form` names the form and the record it edits
/// ("patient/12", "patient/new").
void keepForm(Writing& writing, const QString& form, const QJsonObject& fields);
std::optional<QJsonObject> keptForm(Reading& reading, const QString& form);
void dropForm(Writing& writing, const QString& form);

} // namespace quadrille::db
