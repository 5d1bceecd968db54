// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/new_file.h"

#include <QString>

namespace quadrille::db
{

/// A file under a passing name beside its later place, for its owner only; gone again unless it
/// takes that place. Failure cannotWrite.
class PassingFile
{
public:
    explicit PassingFile(const QString& place);
    QString path() const { return m_file.path(); }
    /// Never over a file that is there.
    void takePlace(const QString& place);
    /// Also over a file that is there, in one step.
    void replace(const QString& place);

private:
    NewFile m_file;
};

/// Makes a new name in the folder of `place` safe on the disk. Failure cannotWrite.
void syncFolderOf(const QString& place);

/// Failure cannotWrite when a file of that name is there.
void requireFree(const QString& place);

} // namespace quadrille::db
