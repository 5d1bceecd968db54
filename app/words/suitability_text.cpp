// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/suitability_text.h"

#include "app/words/finding_text.h"

#include "core/suitability.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct SuitabilityWords {
    Q_DECLARE_TR_FUNCTIONS(SuitabilityWords)
};

} // namespace

QString SuitabilityText::whole() const
{
    return reasons.isEmpty() ? SuitabilityWords::tr("%1.").arg(verdict)
                             : SuitabilityWords::tr("%1: %2", "verdict, reasons")
                                   .arg(verdict, reasons.join(QLatin1Char(' ')));
}

SuitabilityText suitabilityText(const Stimulator& stimulator, const QuantityText& text)
{
    const std::vector<Finding> findings = suitabilityFindings(stimulator);
    SuitabilityText words;
    words.willDo = !hasStop(findings);
    words.verdict = !words.willDo      ? SuitabilityWords::tr("Will not do")
                    : findings.empty() ? SuitabilityWords::tr("Will do for muscle exercise")
                                       : SuitabilityWords::tr("Will do, with care");
    for (const Finding& finding : findings) {
        const FindingText sentence = findingText(finding, text);
        words.reasons.append(sentence.what);
        words.sources.append(sentence.source);
    }
    words.sources.removeDuplicates();
    return words;
}

} // namespace quadrille::app
