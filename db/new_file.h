// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/dialect.h"

#include <QFile>
#include <QString>

#include <string>

namespace quadrille::db
{

inline constexpr auto ownerOnly = QFileDevice::ReadOwner | QFileDevice::WriteOwner;

/// Makes an empty file that only its owner can read, whatever the umask allows, and takes it away
/// again unless it is kept.
class NewFile
{
public:
    explicit NewFile(const QString& path)
        : m_file(path)
        , m_made(m_file.open(QIODevice::NewOnly | QIODevice::WriteOnly, ownerOnly))
        , m_reason(m_made ? QString() : m_file.errorString())
    {
        m_file.close();
    }
    ~NewFile()
    {
        if (m_made && !m_kept) {
            m_file.remove();
            // What the database had beside it when writing failed holds as much as the file.
            QFile::remove(path() + QLatin1String(dialect::rollbackJournalEnding));
        }
    }
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;

    bool isMade() const { return m_made; }
    std::string reason() const { return m_reason.toStdString(); }
    QString path() const { return m_file.fileName(); }
    void keep() { m_kept = true; }

private:
    QFile m_file;
    bool m_made;
    bool m_kept = false;
    QString m_reason;
};

} // namespace quadrille::db
