// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/file_system.h"

#include <QDir>
#include <QFile>

#include <array>
#include <cerrno>
#include <sys/stat.h>
#include <sys/statfs.h>

namespace quadrille::db
{

namespace
{

struct NetworkFileSystem {
    std::uint32_t number;
    const char* name;
};
// linux/magic.h and statfs(2).
constexpr std::array networkFileSystems{
    NetworkFileSystem{0x6969, "NFS"},      NetworkFileSystem{0x517B, "SMB"},
    NetworkFileSystem{0xFF534D42, "CIFS"}, NetworkFileSystem{0xFE534D42, "SMB2"},
    NetworkFileSystem{0x564C, "NCP"},      NetworkFileSystem{0x73757245, "Coda"},
    NetworkFileSystem{0x5346414F, "AFS"},  NetworkFileSystem{0x01021997, "9P"},
    NetworkFileSystem{0x00C36400, "Ceph"},
};

} // namespace

std::optional<std::uint32_t> systemFileSystem(const QString& folder)
{
    struct statfs facts {
    };
    if (statfs(QFile::encodeName(folder).constData(), &facts) != 0) {
        return std::nullopt;
    }
    return static_cast<std::uint32_t>(facts.f_type);
}

std::optional<std::string> networkShareName(std::optional<std::uint32_t> fileSystem)
{
    for (const NetworkFileSystem& share : networkFileSystems) {
        if (fileSystem == share.number) {
            return share.name;
        }
    }
    return std::nullopt;
}

bool makePrivateFolder(const QString& folder)
{
    if (QDir(folder).exists()) {
        return true;
    }
    const QString above = QDir::cleanPath(folder + QStringLiteral("/.."));
    if (!QDir(above).exists() && !QDir().mkpath(above)) {
        return false;
    }
    constexpr mode_t ownerOnlyFolder = 0700;
    // EEXIST: another program made it in the meantime.
    return ::mkdir(QFile::encodeName(folder).constData(), ownerOnlyFolder) == 0 ||
           (errno == EEXIST && QDir(folder).exists());
}

} // namespace quadrille::db
