// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/finding.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;

namespace
{

Finding of(FindingCode code, Severity severity)
{
    return {.code = code, .severity = severity};
}

} // namespace

TEST(Findings, TheGravestComesFirstAndEqualsKeepTheirOrder)
{
    std::vector<Finding> findings{of(FindingCode::lastContractionCut, Severity::note),
                                  of(FindingCode::offStep, Severity::attention),
                                  of(FindingCode::noPads, Severity::stop),
                                  of(FindingCode::outsideStimulator, Severity::attention)};
    sortBySeverity(findings);
    const std::vector expected{FindingCode::noPads, FindingCode::offStep,
                               FindingCode::outsideStimulator, FindingCode::lastContractionCut};
    EXPECT_EQ(codesOf(findings), expected);
}

TEST(Findings, OnlyAStopForbids)
{
    EXPECT_FALSE(hasStop({}));
    EXPECT_FALSE(hasStop({of(FindingCode::offStep, Severity::attention)}));
    EXPECT_TRUE(hasStop(
        {of(FindingCode::offStep, Severity::attention), of(FindingCode::noPads, Severity::stop)}));
}
