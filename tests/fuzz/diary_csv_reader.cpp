// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that comes as a table.
#include "tests/fuzz/diaries.h"

void quadrille::test::readInput(std::string_view input)
{
    const auto file = app::readDiary(bytesOf(input), QStringLiteral("table.csv"));
    if (!file) {
        requireSentence(file.error());
        return;
    }
    requirePlan(*file);
}
