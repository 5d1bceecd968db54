// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/patient_search.h"

#include "db/caseload_key.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

bool finds(const QString& name, const QString& typed)
{
    return matches(db::foldedWords(name), wantedWords(typed));
}

} // namespace

TEST(PatientSearch, AccentsAndCapitalsDoNotMatter)
{
    EXPECT_TRUE(finds(QStringLiteral("Lucía Fernvale"), QStringLiteral("lucia")));
    EXPECT_TRUE(finds(QStringLiteral("Lucia Fernvale"), QStringLiteral("LUCÍA")));
    EXPECT_TRUE(finds(QStringLiteral("Édouard Quillan"), QStringLiteral("edouard")));
    EXPECT_TRUE(finds(QStringLiteral("Zoë Ångström"), QStringLiteral("zoe angstrom")));
}

TEST(PatientSearch, LettersThatNoAccentMakesAreFoundAsTheyAreTyped)
{
    EXPECT_TRUE(finds(QStringLiteral("Solveig Dunmøre"), QStringLiteral("dunmore")));
    EXPECT_TRUE(finds(QStringLiteral("Łucja"), QStringLiteral("lucja")));
    EXPECT_TRUE(finds(QStringLiteral("Groß"), QStringLiteral("gross")));
    EXPECT_TRUE(finds(QStringLiteral("Sæbø"), QStringLiteral("saebo")));
}

TEST(PatientSearch, WordsMayComeInAnyOrderAndBeCutShort)
{
    const QString row = QStringLiteral("Wanda Isley-Croft 1014 Patellar pain");
    EXPECT_TRUE(finds(row, QStringLiteral("croft wanda")));
    EXPECT_TRUE(finds(row, QStringLiteral("pain 1014")));
    EXPECT_TRUE(finds(row, QStringLiteral("isley croft")));
    EXPECT_TRUE(finds(row, QStringLiteral("pat wan")));
    EXPECT_FALSE(finds(row, QStringLiteral("wanda knee")));
}

TEST(PatientSearch, NothingTypedFindsEverybody)
{
    EXPECT_TRUE(finds(QStringLiteral("Tom Everling"), QString()));
    EXPECT_TRUE(finds(QStringLiteral("Tom Everling"), QStringLiteral("  -  ")));
}
