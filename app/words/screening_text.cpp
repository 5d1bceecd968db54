// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/screening_text.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct ScreeningWords {
    Q_DECLARE_TR_FUNCTIONS(ScreeningWords)
};

QString joined(const QStringList& parts)
{
    if (parts.size() < 2) {
        return parts.join(QString());
    }
    return ScreeningWords::tr("%1 and %2", "the last two of a list")
        .arg(parts.mid(0, parts.size() - 1).join(QStringLiteral(", ")), parts.last());
}

QString siteNames(const std::vector<std::size_t>& indexes, const std::vector<GateSite>& sites)
{
    QStringList names;
    for (const std::size_t index : indexes) {
        names.append(gateSiteName(sites[index]));
    }
    return joined(names);
}

QString shortWording(const std::string& wording)
{
    QString text = QString::fromStdString(wording).simplified();
    if (text.endsWith(QLatin1Char('?'))) {
        text.chop(1);
    }
    return text;
}

std::vector<std::size_t> indexesOf(const std::vector<ScreeningGap>& gaps, GapKind kind)
{
    std::vector<std::size_t> indexes;
    for (const ScreeningGap& gap : gaps) {
        if (gap.kind == kind) {
            indexes.push_back(gap.index);
        }
    }
    return indexes;
}

QString liftedName(const LiftedBlock& lifted)
{
    return lifted.block.wording.empty() ? ScreeningWords::tr("no sensation")
                                        : shortWording(lifted.block.wording);
}

ScreeningHeadline shutHeadline(const ScreeningGate& gate, const std::optional<Screening>& latest,
                               const QuantityText& text)
{
    const GateBlock& block = gate.blocks.front();
    switch (block.reason) {
    case GateReason::notScreened:
        return {ScreeningWords::tr("Not screened"),
                ScreeningWords::tr("nothing is issued or printed"), true};
    case GateReason::notSigned: {
        const auto missing = static_cast<std::int64_t>(latest ? gapsOf(*latest).size() : 0);
        return {ScreeningWords::tr("Not signed"),
                missing > 0 ? ScreeningWords::tr("still missing: %1").arg(text.count(missing))
                            : ScreeningWords::tr("nothing is issued or printed"),
                true};
    }
    case GateReason::tooOld:
        return {ScreeningWords::tr("Screen again"),
                ScreeningWords::tr("held until %1").arg(text.date(*gate.validThrough)), true};
    case GateReason::sensationAbsent:
        return {ScreeningWords::tr("Blocks"), ScreeningWords::tr("no sensation under pads"), true};
    case GateReason::contraindication:
    case GateReason::localContraindication:
        break;
    }
    return {block.everywhere ? ScreeningWords::tr("Blocks everything")
                             : ScreeningWords::tr("Blocks sites"),
            ScreeningWords::tr("%1: %2").arg(shortWording(block.wording), answerName(block.answer)),
            true};
}

} // namespace

QString answerName(Answer answer)
{
    switch (answer) {
    case Answer::yes:
        return ScreeningWords::tr("yes");
    case Answer::no:
        return ScreeningWords::tr("no");
    case Answer::notKnown:
        break;
    }
    return ScreeningWords::tr("not known");
}

QString questionClassName(QuestionClass weight)
{
    switch (weight) {
    case QuestionClass::contraindication:
        return ScreeningWords::tr("Contraindication");
    case QuestionClass::localContraindication:
        return ScreeningWords::tr("Local contraindication");
    case QuestionClass::precaution:
        break;
    }
    return ScreeningWords::tr("Precaution");
}

QString regionName(BodyRegion region)
{
    switch (region) {
    case BodyRegion::head:
        return ScreeningWords::tr("head");
    case BodyRegion::neck:
        return ScreeningWords::tr("neck");
    case BodyRegion::chest:
        return ScreeningWords::tr("chest");
    case BodyRegion::abdomen:
        return ScreeningWords::tr("abdomen");
    case BodyRegion::upperBack:
        return ScreeningWords::tr("upper back");
    case BodyRegion::lowerBack:
        return ScreeningWords::tr("lower back");
    case BodyRegion::pelvis:
        return ScreeningWords::tr("hip and buttock");
    case BodyRegion::shoulder:
        return ScreeningWords::tr("shoulder");
    case BodyRegion::upperArm:
        return ScreeningWords::tr("upper arm and elbow");
    case BodyRegion::forearm:
        return ScreeningWords::tr("forearm and wrist");
    case BodyRegion::hand:
        return ScreeningWords::tr("hand");
    case BodyRegion::thigh:
        return ScreeningWords::tr("thigh and knee");
    case BodyRegion::lowerLeg:
        return ScreeningWords::tr("lower leg and ankle");
    case BodyRegion::foot:
        break;
    }
    return ScreeningWords::tr("foot");
}

QString placeName(const BodyPlace& place)
{
    switch (place.side) {
    case PlaceSide::left:
        return ScreeningWords::tr("left %1", "part of the body").arg(regionName(place.region));
    case PlaceSide::right:
        return ScreeningWords::tr("right %1", "part of the body").arg(regionName(place.region));
    case PlaceSide::both:
        break;
    }
    return regionName(place.region);
}

QString sensationName(Sensation sensation)
{
    switch (sensation) {
    case Sensation::intact:
        return ScreeningWords::tr("intact");
    case Sensation::reduced:
        return ScreeningWords::tr("reduced");
    case Sensation::absent:
        return ScreeningWords::tr("absent");
    case Sensation::notTested:
        break;
    }
    return ScreeningWords::tr("not tested");
}

QString gateSiteName(const GateSite& site)
{
    Site named;
    named.muscle = site.muscle;
    named.side = site.side;
    return site.muscle.empty() ? ScreeningWords::tr("site without a name") : siteName(named);
}

QString blocksText(const ScreeningQuestion& question)
{
    switch (question.questionClass) {
    case QuestionClass::contraindication:
        return ScreeningWords::tr("the whole course");
    case QuestionClass::localContraindication:
        break;
    case QuestionClass::precaution:
        return question.advice.empty() ? ScreeningWords::tr("nothing; noted")
                                       : ScreeningWords::tr("nothing; advice is printed");
    }
    if (!question.regions.empty()) {
        QStringList names;
        std::ranges::transform(question.regions, std::back_inserter(names), regionName);
        return ScreeningWords::tr("sites at %1").arg(joined(names));
    }
    return question.reach == Reach::limb ? ScreeningWords::tr("sites on that limb")
                                         : ScreeningWords::tr("sites in that part");
}

QString whyText(const ScreeningQuestion& question)
{
    QStringList sentences;
    if (!question.reason.empty()) {
        sentences.append(QString::fromStdString(question.reason));
    }
    sentences.append(question.source.empty()
                         ? ScreeningWords::tr("A question of this practice; so is its class.")
                         : ScreeningWords::tr("Source: %1. The class is our stricter reading for "
                                              "use at home, to be confirmed by a physiotherapist.")
                               .arg(QString::fromStdString(question.source)));
    return sentences.join(QStringLiteral("\n"));
}

GateBlockText gateBlockText(const GateBlock& block, const std::vector<GateSite>& sites)
{
    const QString head = ScreeningWords::tr("%1: %2", "question, answer")
                             .arg(shortWording(block.wording), answerName(block.answer));
    switch (block.reason) {
    case GateReason::notScreened:
        return {ScreeningWords::tr("No screening yet"),
                ScreeningWords::tr("Answer every question and sign.")};
    case GateReason::notSigned:
        return {ScreeningWords::tr("Not signed"),
                ScreeningWords::tr("Until it is signed, nothing is issued, printed or measured.")};
    case GateReason::tooOld:
        return {ScreeningWords::tr("Past its term"), ScreeningWords::tr("Screen again.")};
    case GateReason::contraindication:
        return {head, block.answer == Answer::yes
                          ? ScreeningWords::tr("Blocks the whole course.")
                          : ScreeningWords::tr("Counts as yes until it is known. Blocks the whole "
                                               "course.")};
    case GateReason::localContraindication:
        return {head, (block.answer == Answer::yes
                           ? ScreeningWords::tr("Blocks %1.")
                           : ScreeningWords::tr("Counts as yes until it is known. Blocks %1."))
                          .arg(siteNames(block.sites, sites))};
    case GateReason::sensationAbsent:
        break;
    }
    return {ScreeningWords::tr("Sensation of the skin: absent"),
            ScreeningWords::tr("Blocks %1.").arg(siteNames(block.sites, sites))};
}

ScreeningHeadline screeningHeadline(const ScreeningGate& gate,
                                    const std::optional<Screening>& latest,
                                    const QuantityText& text)
{
    if (!gate.isOpen()) {
        ScreeningHeadline headline = shutHeadline(gate, latest, text);
        for (const LiftedBlock& lifted : gate.lifted) {
            headline.second += ScreeningWords::tr(" · gone ahead: %1").arg(liftedName(lifted));
        }
        return headline;
    }
    if (!gate.lifted.empty()) {
        QStringList names;
        QStringList reasons;
        for (const LiftedBlock& lifted : gate.lifted) {
            names.append(liftedName(lifted));
            reasons.append(ScreeningWords::tr("%1: %2", "practitioner, reason")
                               .arg(QString::fromStdString(lifted.practitioner),
                                    QString::fromStdString(lifted.reason).simplified()));
        }
        return {ScreeningWords::tr("Gone ahead: %1").arg(names.join(QStringLiteral(" · "))),
                reasons.join(QStringLiteral(" · ")), true};
    }
    const QString until = ScreeningWords::tr("holds until %1").arg(text.date(*gate.validThrough));
    return {ScreeningWords::tr("Signed %1").arg(text.date(*latest->signedOn)),
            gate.advice.empty()
                ? until
                : ScreeningWords::tr("precautions: %1 · %2")
                      .arg(text.count(static_cast<std::int64_t>(gate.advice.size())), until),
            false};
}

QString numbersText(const std::vector<std::size_t>& indexes)
{
    constexpr std::size_t mostListed = 5;
    QStringList numbers;
    for (const std::size_t index : indexes) {
        if (numbers.size() == mostListed) {
            break;
        }
        numbers.append(QString::number(index + 1));
    }
    if (indexes.size() > mostListed) {
        numbers.append(ScreeningWords::tr("%1 more").arg(indexes.size() - mostListed));
    }
    return joined(numbers);
}

QString missingText(const std::vector<ScreeningGap>& gaps)
{
    QStringList parts;
    const auto add = [&](GapKind kind, const QString& sentence) {
        const auto indexes = indexesOf(gaps, kind);
        if (!indexes.empty()) {
            parts.append(sentence.contains(QStringLiteral("%1"))
                             ? sentence.arg(numbersText(indexes))
                             : sentence);
        }
    };
    add(GapKind::notAnswered, ScreeningWords::tr("answer %1"));
    add(GapKind::noNote, ScreeningWords::tr("add a note to %1"));
    add(GapKind::noPlace, ScreeningWords::tr("say where for %1"));
    add(GapKind::siteNotTested, ScreeningWords::tr("fill in the skin tests"));
    add(GapKind::skinNotSeen, ScreeningWords::tr("look at the skin"));
    if (parts.isEmpty()) {
        return {};
    }
    QString sentence =
        ScreeningWords::tr("Before signing: %1.").arg(parts.join(QStringLiteral("; ")));
    return sentence;
}

} // namespace quadrille::app
