// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/passing_file.h"

#include "db/failure.h"

#include <QFileInfo>
#include <QUuid>

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <unistd.h>

namespace quadrille::db
{

namespace
{

[[noreturn]] void failAt(const QString& place, const std::string& reason)
{
    throw Failure(
        {.code = ErrorCode::cannotWrite, .subject = place.toStdString(), .detail = reason});
}

} // namespace

void syncFolderOf(const QString& place)
{
    const QByteArray folder = QFile::encodeName(QFileInfo(place).absolutePath());
    const int opened = ::open(folder.constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (opened < 0) {
        failAt(place, qt_error_string().toStdString());
    }
    const bool isSafe = ::fsync(opened) == 0 || errno == EINVAL; // folders that know no sync
    const int reason = errno;
    ::close(opened);
    if (!isSafe) {
        failAt(place, qt_error_string(reason).toStdString());
    }
}

PassingFile::PassingFile(const QString& place)
    : m_file(place + QStringLiteral(".part-") + QUuid::createUuid().toString(QUuid::Id128))
{
    if (!m_file.isMade()) {
        failAt(place, m_file.reason());
    }
}

void PassingFile::takePlace(const QString& place)
{
    // A second name, not a new one: it fails where somebody made the place in the meantime.
    if (::link(QFile::encodeName(path()).constData(), QFile::encodeName(place).constData()) == 0) {
        syncFolderOf(place);
        return;
    }
    const bool noSecondNames = errno == EPERM || errno == EOPNOTSUPP || errno == ENOSYS;
    if (!noSecondNames) { // memory sticks have none
        failAt(place, qt_error_string().toStdString());
    }
    requireFree(place);
    replace(place);
}

void PassingFile::replace(const QString& place)
{
    if (std::rename(QFile::encodeName(path()).constData(), QFile::encodeName(place).constData()) !=
        0) {
        failAt(place, qt_error_string().toStdString());
    }
    m_file.keep();
    syncFolderOf(place);
}

void requireFree(const QString& place)
{
    if (QFileInfo::exists(place)) {
        failAt(place, "there is a file of that name already");
    }
}

} // namespace quadrille::db
