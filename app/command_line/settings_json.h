// SPDX-License-Identifier: GPL-3.0-or-later
// Settings as a JSON object (RFC 8259), with the names and units of the columns of
// `quadrille figures`.
#pragma once

#include "core/result.h"
#include "core/settings_comparison.h"

#include <QByteArray>
#include <QString>

namespace quadrille::app
{

/// Settings to compare, as a file gives them.
struct GivenSettings {
    SettingsCase settings; ///< the name is that in the file, or `name` below
    bool phaseDurationRecruits = false;
};

/// One line a member: its name, what it is, what may stand in it.
QString settingsJsonHelp();
/// Reads one object. `name` is what errors call it. Error `badFormat`: not JSON, not an object, a
/// member that is missing, not known, no number or out of range, in one sentence.
Result<GivenSettings> settingsFromJson(const QByteArray& bytes, const QString& name);
/// The same from a file; error `cannotRead`.
Result<GivenSettings> settingsFromJsonFile(const QString& file);

} // namespace quadrille::app
