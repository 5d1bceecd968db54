// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/kept_forms.h"

#include "db/codec.h"

#include <QJsonDocument>

namespace quadrille::db
{

void keepForm(Writing& writing, const QString& form, const QJsonObject& fields)
{
    const QByteArray text = QJsonDocument(fields).toJson(QJsonDocument::Compact);
    Statement(writing.connection(),
              "INSERT INTO kept_form (form, fields, kept_at) VALUES (?, ?, ?) ON CONFLICT (form) "
              "DO UPDATE SET fields = excluded.fields, kept_at = excluded.kept_at")
        .bind({valueOf(form.toStdString()), valueOf(text.toStdString()), valueOf(writing.moment())})
        .run();
}

std::optional<QJsonObject> keptForm(Reading& reading, const QString& form)
{
    Statement row(reading.connection(), "SELECT fields FROM kept_form WHERE form = ?");
    row.bind({valueOf(form.toStdString())});
    if (!row.next()) {
        return std::nullopt;
    }
    const std::string text = row.takeText();
    const QJsonDocument document = QJsonDocument::fromJson(QByteArray::fromStdString(text));
    if (!document.isObject()) {
        failOnWord(text);
    }
    return document.object();
}

void dropForm(Writing& writing, const QString& form)
{
    Statement(writing.connection(), "DELETE FROM kept_form WHERE form = ?")
        .bind({valueOf(form.toStdString())})
        .run();
}

} // namespace quadrille::db
