// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/look/tokens.h"

#include "core/ids.h"

#include <QByteArray>
#include <QSettings>
#include <QString>

#include <optional>

namespace quadrille::app
{

/// What the program remembers on this machine, outside any practice. One typed pair a key; defaults
/// stand here.
class Preferences
{
public:
    /// `settings` outlives this.
    explicit Preferences(QSettings& settings);

    /// Default: as the desktop.
    SchemeChoice scheme() const;
    void setScheme(SchemeChoice scheme);
    /// Text size in percent, 100 to 200; default 100.
    int textPercent() const;
    void setTextPercent(int percent);
    /// The practice opened last.
    std::optional<QString> lastStore() const;
    void setLastStore(const QString& file);
    QByteArray windowGeometry() const;
    void setWindowGeometry(const QByteArray& geometry);
    /// Who worked last on a practice file.
    std::optional<PractitionerId> workingAt(const QString& store) const;
    void setWorkingAt(const QString& store, PractitionerId practitioner);

    /// Where the daily copies of a practice go, if a person has chosen a folder.
    std::optional<QString> copyFolder(const QString& store) const;
    void setCopyFolder(const QString& store, const QString& folder);

private:
    QSettings& m_settings;
};

} // namespace quadrille::app
