// SPDX-License-Identifier: GPL-3.0-or-later
// What an import of a diary did or would do, for people and for programs.
#pragma once

#include "app/diary_import/diary_file.h"

#include "core/diary_import.h"

#include <QByteArray>
#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

struct ImportReport {
    const DiaryFile& file;
    const std::vector<ReportedRow>& rows;
    const DiaryImport& import;
    QString patient; ///< the reference
    int course = 1;
    bool isDone = false; ///< else nothing was saved
    std::optional<Date> through = std::nullopt;
};

QString importReportText(const ImportReport& report);
QByteArray importReportJson(const ImportReport& report);
/// What stands in the JSON, for --help.
QString importReportHelp();

} // namespace quadrille::app
