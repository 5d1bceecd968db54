// SPDX-License-Identifier: GPL-3.0-or-later
// The settings of `quadrille compare`: each input is held against itself.
#include "app/command_line/comparison_text.h"
#include "app/command_line/settings_json.h"
#include "tests/fuzz/tables.h"

#include <QJsonDocument>

#include <cmath>

using namespace quadrille;
using namespace quadrille::app;
using quadrille::test::require;

void quadrille::test::readInput(std::string_view input)
{
    const auto given = settingsFromJson(bytesOf(input), QStringLiteral("settings.json"));
    if (!given) {
        requireSentence(given.error(), "settings.json");
        return;
    }
    FatigueOptions options;
    options.phaseDurationRecruits = given->phaseDurationRecruits;
    FatigueMemory memory;
    const auto compared = compareSettings({given->settings, given->settings}, memory, options);
    if (!compared) {
        require(false); // what cannot run was refused while it was read
        return;
    }
    for (const ComparedValue& value : compared->back().values) {
        require(!value.value || std::isfinite(value.value->value));
        require(!value.difference || *value.difference == 0.0);
    }
    const QuantityText text(QLocale::c());
    require(!comparisonTable(*compared, text).isEmpty());
    require(QJsonDocument::fromJson(comparisonJson(*compared, text)).isObject());
}
