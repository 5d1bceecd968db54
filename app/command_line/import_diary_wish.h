// SPDX-License-Identifier: GPL-3.0-or-later
// What the command `import-diary` is asked for.
#pragma once

#include "core/calendar.h"
#include "core/diary_columns.h"
#include "core/diary_rows.h"

#include <QString>

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

class QCommandLineParser;

namespace quadrille::app
{

struct ImportWish {
    QString store;
    QString patient;
    QString file;
    std::optional<int> course;
    QString mapping;  ///< name of what is remembered; empty: recognised
    QString remember; ///< under which name to remember the columns; empty: not at all
    QString by;       ///< name of a practitioner; empty: nobody is named
    std::vector<std::pair<std::string, ColumnMeaning>> columns; ///< headings and what they hold
    ReadingRules rules;
    std::optional<bool> takeFile; ///< of every conflict; nothing: not decided
    std::optional<Date> through;
    bool isDryRun = false;
    bool asJson = false;
};

void addImportOptions(QCommandLineParser& parser);
/// Or why the line can't be understood, in one sentence.
std::variant<ImportWish, QString> importWishOf(const QCommandLineParser& parser);

} // namespace quadrille::app
