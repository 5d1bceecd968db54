// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/result.h"

#include <QByteArray>
#include <QString>

namespace quadrille::app
{

/// Writes a file that only its owner can read, whole or not at all; one that was there is replaced.
/// Error cannotWrite.
Result<void> writePrivateFile(const QString& file, const QByteArray& content);

} // namespace quadrille::app
