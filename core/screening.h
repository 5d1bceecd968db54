// SPDX-License-Identifier: GPL-3.0-or-later
// The record of a screening: the questions as they were asked, the answers, the skin, and who
// signed. What a signed record blocks stands in core/screening_gate.h.
#pragma once

#include "core/body_region.h"
#include "core/people.h"
#include "core/placement.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille
{

/// Not known is an answer and can be signed.
enum class Answer { yes, no, notKnown };

/// What a yes means for unsupervised use at home.
enum class QuestionClass {
    contraindication,      ///< nowhere on this person
    localContraindication, ///< not where it lies; elsewhere allowed
    precaution,            ///< allowed, with advice
};

/// Where on the handout an advice stands.
enum class AdvicePlace { before, during, after };

/// One question with its class, why it is asked and from where that is known. A screening keeps
/// the questions as they were asked, so that it can be read and judged in later years.
struct ScreeningQuestion {
    std::string name; ///< never changes; answers are kept under it
    std::string wording;
    QuestionClass questionClass = QuestionClass::contraindication;
    Reach reach = Reach::region; ///< of a local contraindication
    /// Where a local contraindication always lies (pregnancy: the trunk); empty: it is asked for.
    std::vector<BodyRegion> regions = {};
    std::string reason = {}; ///< why it is asked; not kept with a screening
    std::string source = {}; ///< from where that is known; not kept with a screening
    std::string advice = {}; ///< to the patient, printed when a yes allows treatment; may be empty
    AdvicePlace adviceAt = AdvicePlace::before;
    friend bool operator==(const ScreeningQuestion&, const ScreeningQuestion&) = default;
};

/// A question that a practice adds to the built-in ones; asked in every screening begun while it is
/// not archived. It may name no fixed regions.
struct PracticeQuestion {
    std::optional<PracticeQuestionId> id = std::nullopt;
    std::string wording;
    QuestionClass questionClass = QuestionClass::precaution;
    Reach reach = Reach::region;
    std::string reason = {};
    std::string advice = {};
    AdvicePlace adviceAt = AdvicePlace::before;
    bool archived = false;
    Version version = 1;
    friend bool operator==(const PracticeQuestion&, const PracticeQuestion&) = default;
};
/// As it is asked; its name is "own_" and the key. `question.id` must be filled.
ScreeningQuestion asked(const PracticeQuestion& question);

struct ScreeningAnswer {
    std::string question; ///< the question's name, never its wording
    Answer answer = Answer::notKnown;
    std::string note; ///< needed with a yes
    /// Where it lies, of a local contraindication. Needed with a yes; with not known, none means
    /// everywhere.
    std::vector<BodyPlace> places = {};
    friend bool operator==(const ScreeningAnswer&, const ScreeningAnswer&) = default;
};

/// What a test of the skin's sensation found.
enum class Sensation { intact, reduced, absent, notTested };

/// The skin under the pads of one site, both tests compared with the other side.
struct SkinTest {
    std::string muscle;
    std::optional<BodyRegion> region = std::nullopt; ///< where the muscle's name does not tell
    Side side = Side::right;
    std::optional<Sensation> sharpBlunt = std::nullopt; ///< nothing: not filled in yet
    std::optional<Sensation> warmCold = std::nullopt;
    friend bool operator==(const SkinTest&, const SkinTest&) = default;
};

/// Dated, signed answers for one course. A change makes a new, unsigned screening; the old one
/// stays.
struct Screening {
    std::optional<ScreeningId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    int number = 1; ///< 1, 2, 3 … within the course
    int questionsVersion = 1;
    std::vector<ScreeningAnswer> answers; ///< by question; each once
    std::optional<Date> signedOn = std::nullopt;
    std::optional<PractitionerId> signedBy = std::nullopt;
    std::string signedByName; ///< as it was on the day
    Version version = 1;
    std::vector<ScreeningQuestion> questions = {}; ///< as they were asked, in that order
    bool skinSeen = false;                         ///< looked at where the pads will lie
    std::vector<SkinTest> skin = {};
    friend bool operator==(const Screening&, const Screening&) = default;
};

/// Why a named practitioner goes ahead in spite of an answer. Permanent.
struct ScreeningOverride {
    std::optional<ScreeningOverrideId> id = std::nullopt;
    std::optional<ScreeningId> screening = std::nullopt;
    std::string question;
    std::optional<PractitionerId> practitioner = std::nullopt;
    std::string practitionerName;
    std::string reason;
    Moment madeAt;
    friend bool operator==(const ScreeningOverride&, const ScreeningOverride&) = default;
};

/// The question under which an absent sensation blocks its site, and is gone ahead of.
inline constexpr std::string_view skinSensation = "skin_sensation";

const ScreeningAnswer* answerTo(const Screening& screening, std::string_view question);
const ScreeningQuestion* questionOf(const Screening& screening, std::string_view name);
/// Answers a question of the screening in place of an earlier answer; nothing where it asks no such
/// question. A local contraindication of fixed regions gets them; a note that was there stays.
void giveAnswer(Screening& screening, std::string_view question, Answer answer);

/// What is in the way of a signature.
enum class GapKind { notAnswered, noNote, noPlace, skinNotSeen, siteNotTested };
struct ScreeningGap {
    GapKind kind = GapKind::notAnswered;
    std::size_t index = 0; ///< of the question, or of the skin test
    friend bool operator==(const ScreeningGap&, const ScreeningGap&) = default;
};
/// All gaps, by question, then the skin. Empty: it can be signed.
std::vector<ScreeningGap> gapsOf(const Screening& screening);

/// Names of the questions whose answer, note or place differs from the earlier screening, those it
/// did not have among them.
std::vector<std::string> changedSince(const Screening& screening, const Screening& earlier);

/// An unsigned screening that asks `questions`. With `last`, answers to the same questions are
/// taken over, not to those whose wording, class or regions have changed; the skin is always looked
/// at again.
Screening newScreening(CourseId course, std::vector<ScreeningQuestion> questions,
                       int questionsVersion, const Screening* last = nullptr);

} // namespace quadrille
