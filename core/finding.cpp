// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/finding.h"

#include <algorithm>

namespace quadrille
{

bool hasStop(const std::vector<Finding>& findings)
{
    return std::ranges::any_of(findings,
                               [](const Finding& f) { return f.severity == Severity::stop; });
}

void sortBySeverity(std::vector<Finding>& findings)
{
    std::ranges::stable_sort(findings, std::ranges::greater{}, &Finding::severity);
}

} // namespace quadrille
