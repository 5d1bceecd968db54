// SPDX-License-Identifier: GPL-3.0-or-later
// The steps that make the schema and bring older files forward. Only steps make a schema; a
// released step is never edited.
#pragma once

#include "db/sql.h"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille::db
{

/// One step: db/migrations/NNNN_what_and_why.sql.
struct MigrationStep {
    int version = 0; ///< NNNN; what the file's schema version is after it
    std::string name;
    std::string text; ///< single statements, with the marker line between them
    /// What SQL alone can't do, after the statements and in their transaction; mostly nothing.
    std::function<void(const Connection&)> completion = {};
};

/// The line between two statements of a step. A trigger has semicolons inside, so those can't part
/// statements.
inline constexpr std::string_view statementMarker = "-- next statement\n";
std::vector<std::string> statementsOf(const MigrationStep& step);

/// The steps that are built into the program, in order, without a gap from 1 on.
std::vector<MigrationStep> builtInSteps();

int newestVersion(const std::vector<MigrationStep>& steps);
int schemaVersion(const Connection& connection);

/// Applies what is missing, all of it in one transaction, or nothing. Foreign keys are not enforced
/// while the steps run; broken ones are looked for before the end. Failure migrationFailed names
/// the step.
void applyMissing(const Connection& connection, const std::vector<MigrationStep>& steps);

} // namespace quadrille::db
