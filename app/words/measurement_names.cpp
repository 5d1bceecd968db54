// SPDX-License-Identifier: GPL-3.0-or-later
// What kinds, subjects and published thresholds are called.
#include "app/words/measurement_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace quadrille::app
{

namespace
{

struct MeasurementNames {
    Q_DECLARE_TR_FUNCTIONS(MeasurementNames)
};

struct Name {
    std::string_view kind;
    const char* name;
    const char* method;
};

constexpr std::array names{
    Name{"isometric_torque", QT_TRANSLATE_NOOP("MeasurementNames", "Torque, voluntary"),
         QT_TRANSLATE_NOOP("MeasurementNames", "joint angle, for example knee at 60°")},
    Name{"isometric_force", QT_TRANSLATE_NOOP("MeasurementNames", "Force, voluntary"),
         QT_TRANSLATE_NOOP("MeasurementNames", "joint angle, place of the gauge")},
    Name{"stimulated_torque", QT_TRANSLATE_NOOP("MeasurementNames", "Torque under stimulation"),
         QT_TRANSLATE_NOOP("MeasurementNames", "joint angle, as for the voluntary torque")},
    Name{"extensor_lag", QT_TRANSLATE_NOOP("MeasurementNames", "Extensor lag"),
         QT_TRANSLATE_NOOP("MeasurementNames", "position")},
    Name{"range_of_motion", QT_TRANSLATE_NOOP("MeasurementNames", "Range of motion"),
         QT_TRANSLATE_NOOP("MeasurementNames", "active or passive, position")},
    Name{"girth", QT_TRANSLATE_NOOP("MeasurementNames", "Girth"),
         QT_TRANSLATE_NOOP("MeasurementNames", "position")},
    Name{"grip_force", QT_TRANSLATE_NOOP("MeasurementNames", "Grip force"),
         QT_TRANSLATE_NOOP("MeasurementNames", "elbow, handle")},
    Name{"pain_at_rest", QT_TRANSLATE_NOOP("MeasurementNames", "Pain at rest"),
         QT_TRANSLATE_NOOP("MeasurementNames", "0 none, 10 worst")},
    Name{"pain_under_load", QT_TRANSLATE_NOOP("MeasurementNames", "Pain under load"),
         QT_TRANSLATE_NOOP("MeasurementNames", "which load; 0 none, 10 worst")},
    Name{"timed_up_and_go", QT_TRANSLATE_NOOP("MeasurementNames", "Timed up and go"),
         QT_TRANSLATE_NOOP("MeasurementNames", "walking aid")},
    Name{"chair_stands_30_s", QT_TRANSLATE_NOOP("MeasurementNames", "Chair stands in 30 s"),
         QT_TRANSLATE_NOOP("MeasurementNames", "seat height, arms")},
    Name{"five_times_sit_to_stand",
         QT_TRANSLATE_NOOP("MeasurementNames", "Five times sit to stand"),
         QT_TRANSLATE_NOOP("MeasurementNames", "seat height, arms")},
    Name{"walk_10_m", QT_TRANSLATE_NOOP("MeasurementNames", "Walk of 10 m"),
         QT_TRANSLATE_NOOP("MeasurementNames", "usual or fast pace, flying start")},
    Name{"own", QT_TRANSLATE_NOOP("MeasurementNames", "Another kind"),
         QT_TRANSLATE_NOOP("MeasurementNames", "how it was measured")},
};

const Name* nameOf(std::string_view kind)
{
    const auto found = std::ranges::find(names, kind, &Name::kind);
    return found == names.end() ? nullptr : &*found;
}

QString groupName(ThresholdGroup group)
{
    using G = ThresholdGroup;
    switch (group) {
    case G::anybody:
        return MeasurementNames::tr("anybody");
    case G::musculoskeletalPain:
        return MeasurementNames::tr("musculoskeletal pain");
    case G::kneeArthritisSameRater:
        return MeasurementNames::tr("knee arthritis, same rater");
    case G::kneeArthritisTwoRaters:
        return MeasurementNames::tr("knee arthritis, two raters");
    case G::earlyKneeArthritis:
        return MeasurementNames::tr("early knee arthritis");
    case G::kneeReplacement:
        return MeasurementNames::tr("around knee replacement");
    case G::hipOrKneeReplacement:
        return MeasurementNames::tr("around hip or knee replacement");
    case G::strokeLimitedCommunity:
        return MeasurementNames::tr("stroke, walking outside with limits");
    case G::strokeHouseholdFourWeeks:
        return MeasurementNames::tr("stroke, walking at home, after 4 weeks");
    case G::strokeHouseholdEightWeeks:
        return MeasurementNames::tr("stroke, walking at home, weeks 4 to 8");
    case G::lungDisease:
        return MeasurementNames::tr("chronic lung disease");
    case G::kneeOrHipArthritisLeast:
        return MeasurementNames::tr("arthritis, lower estimate");
    case G::kneeOrHipArthritisMost:
        return MeasurementNames::tr("arthritis, upper estimate");
    case G::olderSmall:
        return MeasurementNames::tr("older adults, small");
    case G::olderSubstantial:
        return MeasurementNames::tr("older adults, substantial");
    case G::stroke:
        return MeasurementNames::tr("stroke");
    }
    return {};
}

QString thresholdSentence(const MeasurementKind& kind, const ChangeThreshold& threshold,
                          std::optional<std::int64_t> change, const QuantityText& text)
{
    QString amount = text.shortNumber(static_cast<double>(threshold.thousandths) / 1e3, 3);
    const QString unit = measuredUnit(kind.key, std::string(kind.unit));
    if (!isScoreOfTen(kind.key, kind.unit)) {
        amount += unit == QStringLiteral("°") ? unit : noBreakSpace() + unit;
    }
    const QString meaning = threshold.meaning == ThresholdMeaning::detectable
                                ? MeasurementNames::tr("detectable")
                            : threshold.meaning == ThresholdMeaning::muchBetter
                                ? MeasurementNames::tr("called much better")
                                : MeasurementNames::tr("important");
    const auto name = QString::fromUtf8(threshold.source.name.data(),
                                        static_cast<qsizetype>(threshold.source.name.size()));
    const QString source =
        threshold.source.fromMemory
            ? MeasurementNames::tr("%1; value from memory, not checked against the text").arg(name)
            : name;
    QString sentence = MeasurementNames::tr("%1 %2, %3 (%4)", "1.1 s detectable, group (source)")
                           .arg(amount, meaning, groupName(threshold.group), source);
    if (!change) {
        return sentence;
    }
    return std::abs(*change) >= threshold.thousandths
               ? MeasurementNames::tr("reached: %1").arg(sentence)
               : MeasurementNames::tr("not reached: %1").arg(sentence);
}

} // namespace

QString measurementKindName(std::string_view kind)
{
    const Name* known = nameOf(kind);
    return known != nullptr ? QCoreApplication::translate("MeasurementNames", known->name)
                            : QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size()));
}

QString measurementName(std::string_view kind, const std::string& subject)
{
    QString what = QString::fromStdString(subject);
    if (kind == ownKind && !what.isEmpty()) {
        return what;
    }
    const QString name = measurementKindName(kind);
    return what.isEmpty() ? name
                          : MeasurementNames::tr("%1: %2", "what is measured, of which muscle")
                                .arg(name, what);
}

QString seriesName(const MeasurementSeries& series)
{
    const QString name = measurementName(series.kind, series.subject);
    const QString method = QString::fromStdString(series.method);
    return method.isEmpty()
               ? name
               : MeasurementNames::tr("%1 · %2", "what is measured, how").arg(name, method);
}

QString subjectLabel(SubjectOf subject)
{
    switch (subject) {
    case SubjectOf::nothing:
        return {};
    case SubjectOf::muscle:
        return MeasurementNames::tr("Muscle");
    case SubjectOf::movement:
        return MeasurementNames::tr("Movement");
    case SubjectOf::place:
        return MeasurementNames::tr("Distance from a landmark");
    case SubjectOf::name:
        return MeasurementNames::tr("Name");
    }
    return {};
}

QStringList usualSubjects(SubjectOf subject)
{
    switch (subject) {
    case SubjectOf::muscle:
        return {MeasurementNames::tr("quadriceps"),
                MeasurementNames::tr("hamstrings"),
                MeasurementNames::tr("hip abductors"),
                MeasurementNames::tr("ankle dorsiflexors"),
                MeasurementNames::tr("ankle plantarflexors"),
                MeasurementNames::tr("shoulder abductors"),
                MeasurementNames::tr("elbow flexors"),
                MeasurementNames::tr("wrist extensors")};
    case SubjectOf::movement:
        return {
            MeasurementNames::tr("knee flexion"),     MeasurementNames::tr("knee extension"),
            MeasurementNames::tr("hip flexion"),      MeasurementNames::tr("ankle dorsiflexion"),
            MeasurementNames::tr("shoulder flexion"), MeasurementNames::tr("shoulder abduction"),
            MeasurementNames::tr("elbow extension"),  MeasurementNames::tr("wrist extension")};
    case SubjectOf::place:
        return {MeasurementNames::tr("10 cm above the kneecap"),
                MeasurementNames::tr("middle of the kneecap"),
                MeasurementNames::tr("18 cm above the inner joint line"),
                MeasurementNames::tr("10 cm below the tibial tuberosity")};
    case SubjectOf::name:
    case SubjectOf::nothing:
        break;
    }
    return {};
}

QString methodHint(std::string_view kind)
{
    const Name* known = nameOf(kind);
    return known != nullptr ? QCoreApplication::translate("MeasurementNames", known->method)
                            : QString();
}

QStringList thresholdSentences(const MeasurementKind& kind, std::optional<std::int64_t> change,
                               const QuantityText& text)
{
    QStringList sentences;
    const bool worse = change && judgeChange(kind, *change).better == false;
    for (const ChangeThreshold& threshold : thresholdsOf(kind.key)) {
        if (worse && threshold.improvementOnly) {
            continue;
        }
        sentences.append(thresholdSentence(kind, threshold, change, text));
    }
    if (sentences.isEmpty()) {
        sentences.append(
            worse && !thresholdsOf(kind.key).empty()
                ? MeasurementNames::tr("Thresholds were published for getting better only.")
                : MeasurementNames::tr("No published threshold is on record for this kind, so "
                                       "none is claimed."));
    }
    return sentences;
}

} // namespace quadrille::app
