// SPDX-License-Identifier: GPL-3.0-or-later
// Words about the sites of a card that its list and its steps share.
#pragma once

#include "app/words/quantity_text.h"

#include "core/handout_content.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// What stands for a value that is not known.
QString dash();
QString orDash(const QString& text);
/// What a practitioner typed, as a sentence.
QString sentence(const QString& typed);
/// "Vastus lateralis, right".
QString whereOf(const HandoutSite& site);
/// "50 × 90 mm" for the usual pair; what differs is told by lead.
QString padsOf(const std::vector<Pad>& pads, const QuantityText& text);
/// Pads of one size everywhere are said once.
bool samePads(const HandoutCard& card, const QuantityText& text);
/// Several sites, one after another.
bool inTurn(const HandoutCard& card);

} // namespace quadrille::app
