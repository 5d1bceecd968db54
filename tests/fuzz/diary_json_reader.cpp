// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that comes as JSON.
#include "tests/fuzz/diaries.h"

void quadrille::test::readInput(std::string_view input)
{
    const auto file = app::readDiary(bytesOf(input), QStringLiteral("diary.json"));
    if (!file) {
        requireSentence(file.error(), "diary.json");
        return;
    }
    requirePlan(*file);
}
