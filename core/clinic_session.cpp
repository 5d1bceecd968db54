// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/clinic_session.h"

#include "core/limits.h"

#include <algorithm>

namespace quadrille
{

namespace
{

Finding remark(FindingCode code, Advice advice)
{
    return {.code = code,
            .severity = Severity::attention,
            .field = Field::threshold,
            .source = limits::commonPractice,
            .advice = advice};
}

/// `lower` should not lie above `upper`.
void addIfReversed(std::vector<Finding>& findings, FindingCode code,
                   const std::optional<Amplitude>& lower, const std::optional<Amplitude>& upper)
{
    if (lower && upper && *upper < *lower) {
        Finding finding = remark(code, Advice::checkThresholds);
        finding.figure = amountOf(*upper);
        finding.limit = amountOf(*lower);
        findings.push_back(finding);
    }
}

} // namespace

std::vector<ThresholdPoint> thresholdPoints(const ClinicSite& site, ThresholdKind kind)
{
    std::vector<ThresholdPoint> points;
    for (const ClinicThreshold& threshold : site.thresholds) {
        const auto& found = kind == ThresholdKind::sensory ? threshold.sensory : threshold.motor;
        if (found) {
            points.push_back({.phaseDuration = threshold.phaseDuration, .threshold = *found});
        }
    }
    return points;
}

std::optional<Amplitude> toleratedAt(const ClinicSite& site, PhaseDuration phaseDuration)
{
    const auto found =
        std::ranges::find(site.thresholds, phaseDuration, &ClinicThreshold::phaseDuration);
    return found != site.thresholds.end() ? found->tolerated : std::nullopt;
}

std::vector<Finding> clinicSiteFindings(const ClinicSite& site)
{
    std::vector<Finding> findings;
    if (site.skinBefore == SkinLook::broken) {
        findings.push_back(remark(FindingCode::skinBrokenBefore, Advice::moveOrPostpone));
    }
    if (site.skinAfter == SkinLook::broken) {
        findings.push_back(remark(FindingCode::skinBrokenAfter, Advice::stopAndExamine));
    }
    for (const ClinicThreshold& threshold : site.thresholds) {
        addIfReversed(findings, FindingCode::motorBelowSensory, threshold.sensory, threshold.motor);
        addIfReversed(findings, FindingCode::toleratedBelowMotor, threshold.motor,
                      threshold.tolerated);
    }
    if (site.contractionSeen == false) {
        findings.push_back(remark(FindingCode::noContractionSeen, Advice::checkPlacement));
    }
    return findings;
}

} // namespace quadrille
