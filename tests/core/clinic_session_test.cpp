// SPDX-License-Identifier: GPL-3.0-or-later
// Rules of the session in the clinic: common practice, no source.
#include "core/clinic_session.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;

PhaseDuration microseconds(std::int64_t count)
{
    return PhaseDuration::fromCount(count);
}

Amplitude milliamperes(std::int64_t count)
{
    return Amplitude::fromCount(1000 * count);
}

ClinicSite tried()
{
    ClinicSite site;
    site.muscle = "Quadriceps";
    site.thresholds = {{microseconds(100), milliamperes(12), milliamperes(20), milliamperes(46)},
                       {microseconds(300), milliamperes(7), std::nullopt, milliamperes(30)}};
    site.contractionSeen = true;
    site.skinBefore = SkinLook::clear;
    site.skinAfter = SkinLook::pink;
    return site;
}

std::vector<FindingCode> codesOf(const ClinicSite& site)
{
    std::vector<FindingCode> codes;
    for (const Finding& finding : clinicSiteFindings(site)) {
        codes.push_back(finding.code);
    }
    return codes;
}

TEST(ClinicSession, GivesThresholdsThatAreKnownToTheFit)
{
    EXPECT_THAT(thresholdPoints(tried(), ThresholdKind::sensory),
                ElementsAre(ThresholdPoint{microseconds(100), milliamperes(12)},
                            ThresholdPoint{microseconds(300), milliamperes(7)}));
    EXPECT_THAT(thresholdPoints(tried(), ThresholdKind::motor),
                ElementsAre(ThresholdPoint{microseconds(100), milliamperes(20)}));
}

TEST(ClinicSession, TakesWhatWasToleratedAtTheSamePhaseDurationOnly)
{
    EXPECT_EQ(toleratedAt(tried(), microseconds(300)), milliamperes(30));
    EXPECT_EQ(toleratedAt(tried(), microseconds(200)), std::nullopt) << "never in between";
}

TEST(ClinicSession, ThatWentWellHasNoRemark)
{
    EXPECT_THAT(codesOf(tried()), IsEmpty());
}

TEST(ClinicSession, RemarksOnBrokenSkinBeforeAndAfter)
{
    ClinicSite site = tried();
    site.skinBefore = SkinLook::broken;
    site.skinAfter = SkinLook::broken;
    EXPECT_THAT(codesOf(site),
                ElementsAre(FindingCode::skinBrokenBefore, FindingCode::skinBrokenAfter));
    site.skinBefore = SkinLook::pink;
    site.skinAfter = std::nullopt;
    EXPECT_THAT(codesOf(site), IsEmpty());
}

TEST(ClinicSession, RemarksOnThresholdsInTheWrongOrder)
{
    ClinicSite site = tried();
    site.thresholds[0].motor = milliamperes(11);
    EXPECT_THAT(codesOf(site), ElementsAre(FindingCode::motorBelowSensory));
    site.thresholds[0].motor = milliamperes(50);
    EXPECT_THAT(codesOf(site), ElementsAre(FindingCode::toleratedBelowMotor));
    site.thresholds[0].motor = milliamperes(46);
    EXPECT_THAT(codesOf(site), IsEmpty()) << "equal is in order";
}

TEST(ClinicSession, RemarksWhereNoContractionWasSeen)
{
    ClinicSite site = tried();
    site.contractionSeen = false;
    EXPECT_THAT(codesOf(site), ElementsAre(FindingCode::noContractionSeen));
    site.contractionSeen = std::nullopt;
    EXPECT_THAT(codesOf(site), IsEmpty());
}

} // namespace
} // namespace quadrille
