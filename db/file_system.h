// SPDX-License-Identifier: GPL-3.0-or-later
// Which kind of file system a folder lies on: the number that statfs(2) gives.
#pragma once

#include <QString>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace quadrille::db
{

/// Nothing when it can't be told.
using FileSystemOf = std::function<std::optional<std::uint32_t>(const QString& folder)>;
std::optional<std::uint32_t> systemFileSystem(const QString& folder);

/// The name of a network file system; nothing for one that lies on this machine.
std::optional<std::string> networkShareName(std::optional<std::uint32_t> fileSystem);

/// Makes the folder if it is missing, for its owner only. False when that can't be done.
bool makePrivateFolder(const QString& folder);

} // namespace quadrille::db
