// SPDX-License-Identifier: GPL-3.0-or-later
// Screenings and their gate in words.
#pragma once

#include "app/words/quantity_text.h"

#include "core/screening.h"
#include "core/screening_gate.h"

#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

QString answerName(Answer answer);
QString questionClassName(QuestionClass weight);
QString regionName(BodyRegion region);
/// "left thigh and knee", "abdomen".
QString placeName(const BodyPlace& place);
QString sensationName(Sensation sensation);
/// "Quadriceps, right".
QString gateSiteName(const GateSite& site);
/// What a yes to this question blocks: "sites on that limb".
QString blocksText(const ScreeningQuestion& question);
/// Why it is asked, from where that is known, and that the class is our reading.
QString whyText(const ScreeningQuestion& question);

/// What is in the way, a head and a sentence.
struct GateBlockText {
    QString head;
    QString sentence;
};
GateBlockText gateBlockText(const GateBlock& block, const std::vector<GateSite>& sites);

/// The screening in the head of a record: two lines, and whether they warn.
struct ScreeningHeadline {
    QString text;
    QString second;
    bool warns = false;
};
ScreeningHeadline screeningHeadline(const ScreeningGate& gate,
                                    const std::optional<Screening>& latest,
                                    const QuantityText& text);
/// Questions by number, as a person counts them: "2, 5 and 13".
QString numbersText(const std::vector<std::size_t>& indexes);
/// What is missing before it can be signed, one sentence; empty when nothing is.
QString missingText(const std::vector<ScreeningGap>& gaps);

} // namespace quadrille::app
