// SPDX-License-Identifier: GPL-3.0-or-later
// How a file becomes an open store: made, refused, copied aside and brought forward.
#pragma once

#include "db/file_system.h"
#include "db/migrations.h"
#include "db/sql.h"
#include "db/store.h"

#include <QString>

#include <chrono>
#include <memory>
#include <vector>

namespace quadrille::db
{

struct OpenedFile {
    std::unique_ptr<Connection> connection;
    bool writable = false;
};

/// Throws SqlError or Failure where the file can't be used; see Store::open. A file made here is
/// removed again, an older one left as it was.
///
///     file       createIfMissing   existing        readOnly
///     missing    made              cannotOpen      cannotOpen
///     empty      made              notAStore       notAStore
///     older      brought forward   brought forward readOnly
///     ours       opened            opened          opened
///     newer      newerStore        newerStore      newerStore
///     other      notAStore         notAStore       notAStore
///
/// On a network share: readOnly opens as above, the others are refused as onNetworkShare.
OpenedFile openFile(const QString& file, Opening opening, const Clock& clock,
                    std::chrono::milliseconds patience, const std::vector<MigrationStep>& steps,
                    const FileSystemOf& fileSystemOf = systemFileSystem);

} // namespace quadrille::db
