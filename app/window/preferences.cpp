// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/preferences.h"

#include <QCryptographicHash>

#include <algorithm>

namespace quadrille::app
{

namespace
{

namespace key
{
const QString scheme = QStringLiteral("look/scheme");
const QString textPercent = QStringLiteral("look/textPercent");
const QString lastStore = QStringLiteral("practice/last");
const QString geometry = QStringLiteral("window/geometry");
} // namespace key

/// A file's path is not written down beside a person's number; its digest is enough to find it
/// again.
QString keyOf(const QString& what, const QString& store)
{
    const QByteArray digest = QCryptographicHash::hash(store.toUtf8(), QCryptographicHash::Sha256);
    return QStringLiteral("practice/%1/%2").arg(what, QString::fromLatin1(digest.toHex().left(16)));
}

QString workingKey(const QString& store)
{
    return keyOf(QStringLiteral("working"), store);
}

QString copiesKey(const QString& store)
{
    return keyOf(QStringLiteral("copies"), store);
}

} // namespace

Preferences::Preferences(QSettings& settings)
    : m_settings(settings)
{
}

SchemeChoice Preferences::scheme() const
{
    const QString name = m_settings.value(key::scheme).toString();
    if (name == QStringLiteral("light")) {
        return SchemeChoice::light;
    }
    return name == QStringLiteral("dark") ? SchemeChoice::dark : SchemeChoice::asDesktop;
}

void Preferences::setScheme(SchemeChoice scheme)
{
    switch (scheme) {
    case SchemeChoice::light:
        return m_settings.setValue(key::scheme, QStringLiteral("light"));
    case SchemeChoice::dark:
        return m_settings.setValue(key::scheme, QStringLiteral("dark"));
    case SchemeChoice::asDesktop:
        return m_settings.remove(key::scheme);
    }
}

int Preferences::textPercent() const
{
    return std::clamp(m_settings.value(key::textPercent, 100).toInt(), 100, 200);
}

void Preferences::setTextPercent(int percent)
{
    m_settings.setValue(key::textPercent, percent);
}

std::optional<QString> Preferences::lastStore() const
{
    const QString file = m_settings.value(key::lastStore).toString();
    return file.isEmpty() ? std::nullopt : std::optional(file);
}

void Preferences::setLastStore(const QString& file)
{
    m_settings.setValue(key::lastStore, file);
}

QByteArray Preferences::windowGeometry() const
{
    return m_settings.value(key::geometry).toByteArray();
}

void Preferences::setWindowGeometry(const QByteArray& geometry)
{
    m_settings.setValue(key::geometry, geometry);
}

std::optional<PractitionerId> Preferences::workingAt(const QString& store) const
{
    bool valid = false;
    const qlonglong id = m_settings.value(workingKey(store)).toLongLong(&valid);
    return valid ? std::optional(PractitionerId(id)) : std::nullopt;
}

void Preferences::setWorkingAt(const QString& store, PractitionerId practitioner)
{
    m_settings.setValue(workingKey(store), QVariant::fromValue<qlonglong>(practitioner.key()));
}

std::optional<QString> Preferences::copyFolder(const QString& store) const
{
    const QString folder = m_settings.value(copiesKey(store)).toString();
    return folder.isEmpty() ? std::nullopt : std::optional(folder);
}

void Preferences::setCopyFolder(const QString& store, const QString& folder)
{
    m_settings.setValue(copiesKey(store), folder);
}

} // namespace quadrille::app
