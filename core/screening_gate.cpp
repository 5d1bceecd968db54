// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/screening_gate.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace quadrille
{

namespace
{

const SkinTest* skinTestOf(const Screening& screening, const std::string& muscle, Side side)
{
    const auto found = std::ranges::find_if(screening.skin, [&](const SkinTest& test) {
        return isSameMuscle(test.muscle, muscle) && test.side == side;
    });
    return found != screening.skin.end() ? &*found : nullptr;
}

bool finds(const SkinTest& test, Sensation sensation)
{
    return test.sharpBlunt == sensation || test.warmCold == sensation;
}

bool isTested(const SkinTest& test)
{
    const auto done = [](const std::optional<Sensation>& found) {
        return found && *found != Sensation::notTested;
    };
    return done(test.sharpBlunt) || done(test.warmCold);
}

/// Whether sensation is absent under another site of the same part and side: the skin of one that
/// nobody tested is then taken to be as numb.
bool isNumbBeside(const Screening& screening, const GateSite& site)
{
    return std::ranges::any_of(screening.skin, [&](const SkinTest& test) {
        const auto region = test.region ? test.region : regionOfMuscle(test.muscle);
        const PlaceSide side = test.side == Side::left    ? PlaceSide::left
                               : test.side == Side::right ? PlaceSide::right
                                                          : PlaceSide::both;
        return finds(test, Sensation::absent) && region &&
               reaches({*region, side}, Reach::region, site.region, site.side);
    });
}

std::vector<std::size_t> allOf(const std::vector<GateSite>& sites)
{
    std::vector<std::size_t> all(sites.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

/// Sites that a local contraindication reaches; all of them where nobody said where it lies.
std::vector<std::size_t> sitesReached(const ScreeningAnswer& answer, Reach reach,
                                      const std::vector<GateSite>& sites)
{
    if (answer.places.empty()) {
        return allOf(sites);
    }
    std::vector<std::size_t> reached;
    for (std::size_t i = 0; i < sites.size(); ++i) {
        if (std::ranges::any_of(answer.places, [&](const BodyPlace& place) {
                return reaches(place, reach, sites[i].region, sites[i].side);
            })) {
            reached.push_back(i);
        }
    }
    return reached;
}

class Judgement
{
public:
    explicit Judgement(const GateFacts& facts)
        : m_facts(facts)
    {
        m_gate.blocks.clear();
    }

    ScreeningGate gate()
    {
        // One that asked nothing was signed by a version that did not demand it.
        if (!m_facts.latest ||
            (m_facts.latest->questions.empty() && m_facts.latest->answers.empty())) {
            shut(GateReason::notScreened);
            return std::move(m_gate);
        }
        const Screening& screening = *m_facts.latest;
        if (!screening.signedOn || *screening.signedOn > m_facts.today) {
            shut(GateReason::notSigned);
        } else {
            m_gate.validThrough = monthsLater(*screening.signedOn, m_facts.validity);
            if (m_facts.today > *m_gate.validThrough) {
                shut(GateReason::tooOld);
            }
        }
        for (const QuestionClass weight :
             {QuestionClass::contraindication, QuestionClass::localContraindication,
              QuestionClass::precaution}) {
            judgeAnswers(screening, weight);
        }
        judgeSkin(screening);
        return std::move(m_gate);
    }

private:
    void shut(GateReason reason)
    {
        m_gate.blocks.push_back({.reason = reason, .sites = allOf(m_facts.sites)});
    }

    void judgeAnswers(const Screening& screening, QuestionClass weight)
    {
        for (const ScreeningAnswer& answer : screening.answers) {
            const ScreeningQuestion* found = questionOf(screening, answer.question);
            // An answer whose question is not kept with it weighs as much as any could.
            const ScreeningQuestion question =
                found != nullptr
                    ? *found
                    : ScreeningQuestion{.name = answer.question, .wording = answer.question};
            if (question.questionClass == weight) {
                judge(question, answer);
            }
        }
        if (!screening.signedOn) {
            return; // it is still being taken down
        }
        // What was signed without an answer is not known.
        for (const ScreeningQuestion& question : screening.questions) {
            if (question.questionClass == weight &&
                std::ranges::find(screening.answers, question.name, &ScreeningAnswer::question) ==
                    screening.answers.end()) {
                judge(question, {question.name, Answer::notKnown, {}, {}});
            }
        }
    }

    void judge(const ScreeningQuestion& question, const ScreeningAnswer& answer)
    {
        if (answer.answer == Answer::no) {
            return;
        }
        GateBlock block{.question = question.name,
                        .wording = question.wording,
                        .answer = answer.answer,
                        .sites = {}};
        bool blocks = false;
        if (question.questionClass == QuestionClass::contraindication) {
            block.reason = GateReason::contraindication;
            block.sites = allOf(m_facts.sites);
            blocks = true;
        } else if (question.questionClass == QuestionClass::localContraindication) {
            block.reason = GateReason::localContraindication;
            block.everywhere = false;
            block.sites = sitesReached(answer, question.reach, m_facts.sites);
            blocks = !block.sites.empty();
        }
        if (blocks) {
            blockUnlessLifted(std::move(block));
        }
        if (answer.answer == Answer::yes) {
            advise(question);
        }
    }

    void judgeSkin(const Screening& screening)
    {
        GateBlock absent{.reason = GateReason::sensationAbsent,
                         .question = std::string(skinSensation),
                         .sites = {},
                         .everywhere = false};
        bool dulled = false;
        for (std::size_t i = 0; i < m_facts.sites.size(); ++i) {
            const GateSite& site = m_facts.sites[i];
            const SkinTest* test = skinTestOf(screening, site.muscle, site.side);
            if (test == nullptr || !isTested(*test)) {
                m_gate.untested.push_back(i);
                if (isNumbBeside(screening, site)) {
                    absent.sites.push_back(i);
                    dulled = true;
                }
            } else if (finds(*test, Sensation::absent)) {
                absent.sites.push_back(i);
                dulled = true;
            } else if (finds(*test, Sensation::reduced)) {
                dulled = true;
            }
        }
        if (!absent.sites.empty()) {
            blockUnlessLifted(std::move(absent));
        }
        if (const ScreeningQuestion* question = questionOf(screening, skinSensation);
            dulled && question != nullptr) {
            advise(*question);
        }
    }

    void advise(const ScreeningQuestion& question)
    {
        if (std::ranges::find(m_gate.advice, question.name, &GateAdvice::question) ==
            m_gate.advice.end()) {
            m_gate.advice.push_back(
                {question.name, question.wording, question.advice, question.adviceAt});
        }
    }

    void blockUnlessLifted(GateBlock block)
    {
        const auto reason =
            std::ranges::find_if(m_facts.overrides, [&](const ScreeningOverride& override) {
                return override.screening == m_facts.latest->id &&
                       override.question == block.question;
            });
        if (reason == m_facts.overrides.end()) {
            m_gate.blocks.push_back(std::move(block));
        } else {
            m_gate.lifted.push_back(
                {std::move(block), reason->practitionerName, reason->reason, reason->madeAt});
        }
    }

    const GateFacts& m_facts;
    ScreeningGate m_gate;
};

Error errorOf(const GateBlock& block, const ScreeningGate& gate)
{
    switch (block.reason) {
    case GateReason::notScreened:
        return {.code = ErrorCode::notScreened, .subject = {}, .detail = {}};
    case GateReason::notSigned:
        return {.code = ErrorCode::screeningNotSigned, .subject = {}, .detail = {}};
    case GateReason::tooOld:
        return {.code = ErrorCode::screeningTooOld,
                .subject = {},
                .detail = isoDate(gate.validThrough.value_or(Date{}))};
    case GateReason::sensationAbsent:
        return {.code = ErrorCode::screeningBlocks, .subject = {}, .detail = "absent"};
    case GateReason::contraindication:
    case GateReason::localContraindication:
        break;
    }
    return {.code = ErrorCode::screeningBlocks,
            .subject = block.wording,
            .detail = block.answer == Answer::yes ? "yes" : "not_known"};
}

bool concerns(const GateBlock& block, std::size_t site)
{
    return block.everywhere || std::ranges::find(block.sites, site) != block.sites.end();
}

} // namespace

std::vector<GateSite> gateSites(const std::vector<Block>& blocks,
                                const std::optional<Screening>& screening)
{
    std::vector<GateSite> sites;
    for (const Block& block : blocks) {
        for (const Site& site : block.sites) {
            GateSite found{site.muscle, site.side, regionOfMuscle(site.muscle)};
            const SkinTest* test =
                screening ? skinTestOf(*screening, site.muscle, site.side) : nullptr;
            if (test != nullptr && test->region) {
                found.region = test->region;
            }
            if (std::ranges::none_of(sites, [&](const GateSite& one) {
                    return isSameMuscle(one.muscle, found.muscle) && one.side == found.side;
                })) {
                sites.push_back(std::move(found));
            }
        }
    }
    return sites;
}

bool ScreeningGate::isOpenFor(std::size_t site) const
{
    return std::ranges::none_of(blocks,
                                [&](const GateBlock& block) { return concerns(block, site); });
}

ScreeningGate screeningGate(const GateFacts& facts)
{
    return Judgement(facts).gate();
}

Result<void> passGate(const ScreeningGate& gate)
{
    return gate.isOpen() ? Result<void>() : errorOf(gate.blocks.front(), gate);
}

Result<void> passGate(const ScreeningGate& gate, std::size_t site)
{
    const auto block = std::ranges::find_if(
        gate.blocks, [&](const GateBlock& candidate) { return concerns(candidate, site); });
    return block == gate.blocks.end() ? Result<void>() : errorOf(*block, gate);
}

Result<void> passGate(const ScreeningGate& gate, const std::vector<GateSite>& asked,
                      const Site& site)
{
    const auto found = std::ranges::find_if(asked, [&](const GateSite& one) {
        return isSameMuscle(one.muscle, site.muscle) && one.side == site.side;
    });
    return found == asked.end() ? passGate(gate)
                                : passGate(gate, static_cast<std::size_t>(found - asked.begin()));
}

} // namespace quadrille
