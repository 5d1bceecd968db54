// SPDX-License-Identifier: GPL-3.0-or-later
// The gate that every act on a person's body passes: issuing a plan, printing, reprinting and
// saving a handout, measuring a threshold, running the work and rest cue. A pure function of the
// record; it decides nothing that the rules below do not say.
//
//   no screening, an unsigned latest one, one signed only after
//   the day, or one past its term                                shut; no reason opens it
//   contraindication answered yes or not known                   shut, everywhere
//   local contraindication answered yes or not known             shut for the sites it reaches
//   sensation of the skin absent under a site's pads             shut for that site, and for one
//                                                                beside it that was not tested
//   skin of a site not tested                                    open; the gate names the site
//   precaution answered yes                                      open; its advice is printed
//   precaution answered not known, any answer no                 open
//   an override by a named practitioner with a reason            lifts the one question's block
//
// How to use it: read the facts (db::gateFacts reads them of a course), ask screeningGate(), then
// pass it with passGate(gate) for an act on all sites, passGate(gate, site) for an act on one. An
// act that takes a ScreeningGate can't forget it; db::issuePlan and db::addClinicSession ask by
// themselves.
#pragma once

#include "core/body_region.h"
#include "core/calendar.h"
#include "core/plan.h"
#include "core/result.h"
#include "core/screening.h"

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// A site, as far as the gate asks.
struct GateSite {
    std::string muscle;
    Side side = Side::right;
    std::optional<BodyRegion> region = std::nullopt; ///< nothing: counted in every part
    friend bool operator==(const GateSite&, const GateSite&) = default;
};

/// The sites of all blocks, each muscle and side once. The region is what the skin test of
/// `screening` says, else what the muscle's name tells.
std::vector<GateSite> gateSites(const std::vector<Block>& blocks,
                                const std::optional<Screening>& screening);

/// How long a signature holds (through the day monthsLater() gives), unless the practice says
/// otherwise: *common practice, no source*.
inline constexpr std::chrono::months usualValidity{6};
/// What a practice may say.
inline constexpr std::chrono::months leastValidity{1};
inline constexpr std::chrono::months mostValidity{24};

struct GateFacts {
    std::optional<Screening> latest = std::nullopt; ///< of the course, signed or not
    std::vector<ScreeningOverride> overrides = {};  ///< of that screening; others are passed over
    std::vector<GateSite> sites = {};
    Date today;
    std::chrono::months validity = usualValidity;
};

enum class GateReason {
    notScreened,
    notSigned,
    tooOld,
    contraindication,
    localContraindication,
    sensationAbsent,
};

/// One thing that is in the way, or was until a practitioner went ahead.
struct GateBlock {
    GateReason reason = GateReason::notScreened;
    std::string question = {}; ///< its name; skinSensation; empty for the first three reasons
    std::string wording = {};  ///< as it was asked
    Answer answer = Answer::yes;
    std::vector<std::size_t> sites = {}; ///< places in the facts' sites that are blocked
    bool everywhere = true;              ///< false: the listed sites only
    friend bool operator==(const GateBlock&, const GateBlock&) = default;
};

/// A block that a practitioner lifted.
struct LiftedBlock {
    GateBlock block;
    std::string practitioner;
    std::string reason;
    Moment madeAt;
    friend bool operator==(const LiftedBlock&, const LiftedBlock&) = default;
};

/// What an answer asks of the patient.
struct GateAdvice {
    std::string question;
    std::string wording;
    std::string advice; ///< may be empty: the precaution is known, the patient needs no word
    AdvicePlace place = AdvicePlace::before;
    friend bool operator==(const GateAdvice&, const GateAdvice&) = default;
};

/// The verdict on a day. One that nobody gave is shut.
struct ScreeningGate {
    std::vector<GateBlock> blocks = {GateBlock{}};   ///< what holds it shut, the gravest first
    std::vector<LiftedBlock> lifted = {};            ///< what would, had nobody gone ahead
    std::vector<GateAdvice> advice = {};             ///< of every yes, and of dulled sensation
    std::vector<std::size_t> untested = {};          ///< sites whose skin was not tested
    std::optional<Date> validThrough = std::nullopt; ///< of a signed screening
    bool isOpen() const { return blocks.empty(); }
    bool isOpenFor(std::size_t site) const;
    friend bool operator==(const ScreeningGate&, const ScreeningGate&) = default;
};

ScreeningGate screeningGate(const GateFacts& facts);

/// Nothing where the gate is open for all sites; else why it is not, as an error of its own code:
/// notScreened, screeningNotSigned, screeningTooOld (detail: the last day), or screeningBlocks
/// (subject: the question as asked; detail: "yes" or "not_known", or "absent" for the skin).
Result<void> passGate(const ScreeningGate& gate);
/// The same for one site.
Result<void> passGate(const ScreeningGate& gate, std::size_t site);
/// The same for a site of a plan. `asked`: the sites of the facts that gave the gate, in their
/// order; a site that is not among them passes only where the gate is open for all.
Result<void> passGate(const ScreeningGate& gate, const std::vector<GateSite>& asked,
                      const Site& site);

} // namespace quadrille
