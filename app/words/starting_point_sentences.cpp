// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences about a starting point: what it amounts to, what to know before, what was done.
#include "app/words/starting_point_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <variant>

namespace quadrille::app
{

namespace
{

struct PointSentences {
    Q_DECLARE_TR_FUNCTIONS(PointSentences)
};

/// Names of the figures of which this is so, in one list.
template <class IsSo>
QStringList namesWhere(const StartingPoint& point, const AppliedPoint& applied, const IsSo& isSo)
{
    QStringList names;
    for (const AppliedFigure& figure : applied.figures) {
        Standing standing = citedIn(point, figure.field).standing;
        if (figure.field == Field::waveform) {
            standing = point.waveform.standing;
        } else if (figure.field == Field::sessionLength && isOffered(point.contractions.standing)) {
            standing = point.contractions.standing;
        }
        if (isSo(figure, standing)) {
            names.append(pointFieldName(figure.field).toLower());
        }
    }
    return names;
}

QString listed(const QStringList& names)
{
    return names.join(QStringLiteral(", "));
}

QStringList unconfirmed(const StartingPoint& point, const AppliedPoint& applied)
{
    QStringList names = namesWhere(point, applied, [](const AppliedFigure&, Standing standing) {
        return needsConfirming(standing);
    });
    if (point.rampRule.habit && needsConfirming(point.rampRule.standing)) {
        names.append(PointSentences::tr("rule of the ramps"));
    }
    return names;
}

QStringList toChoose(const StartingPoint& point, const AppliedPoint& applied)
{
    return namesWhere(point, applied, [](const AppliedFigure& figure, Standing) {
        return figure.outcome == Outcome::choose;
    });
}

QStringList leftEmpty(const StartingPoint& point, const AppliedPoint& applied)
{
    return namesWhere(point, applied, [](const AppliedFigure& figure, Standing) {
        return figure.outcome == Outcome::leftEmpty &&
               !std::holds_alternative<std::monostate>(figure.becomes);
    });
}

} // namespace

QString pointDoseText(const StartingPoint& point, const QuantityText& text)
{
    const bool said = point.rampRule.habit && isOffered(point.rampRule.standing);
    const auto dose = doseOf(point, said ? *point.rampRule.habit : RampHabit::includedInOnTime);
    if (!dose) {
        return {};
    }
    QString shown = PointSentences::tr("It amounts to %1 contractions and %2 of on time a session")
                        .arg(text.count(dose->contractions), text.time(dose->sessionOnTime));
    if (dose->least && dose->most) {
        const bool isOne = dose->least->contractions == dose->most->contractions;
        const QString count = isOne ? text.count(dose->least->contractions)
                                    : PointSentences::tr("%1 to %2")
                                          .arg(text.count(dose->least->contractions),
                                               text.count(dose->most->contractions));
        const QString time =
            isOne ? text.time(dose->least->onTime)
                  : PointSentences::tr("%1 to %2")
                        .arg(text.time(dose->least->onTime), text.time(dose->most->onTime));
        shown = PointSentences::tr("%1, %2 contractions and %3 a week").arg(shown, count, time);
    }
    const bool hasRamps = citedIn(point, Field::rampUp).figure().value_or(0) > 0 ||
                          citedIn(point, Field::rampDown).figure().value_or(0) > 0;
    if (said || !hasRamps) {
        return PointSentences::tr("%1.", "a sentence").arg(shown);
    }
    const auto added = doseOf(point, RampHabit::addedToOnTime);
    if (!added || added->contractions == dose->contractions) {
        return PointSentences::tr("%1, with the ramps inside the on time.").arg(shown);
    }
    return PointSentences::tr("%1, with the ramps inside the on time; with the ramps added to it "
                              "%2 contractions a session. The source does not say which.")
        .arg(shown, text.count(added->contractions));
}

QString beforeApplyingText(const StartingPoint& point, const AppliedPoint& applied)
{
    QStringList sentences;
    if (const QStringList names = unconfirmed(point, applied); !names.isEmpty()) {
        sentences.append(
            PointSentences::tr("Not confirmed against the paper: %1.").arg(listed(names)));
    }
    if (const QStringList names = leftEmpty(point, applied); !names.isEmpty()) {
        sentences.append(PointSentences::tr("Left for you to fill in: %1.").arg(listed(names)));
    }
    if (const QStringList names = toChoose(point, applied); !names.isEmpty()) {
        sentences.append(PointSentences::tr("A range to choose within: %1.").arg(listed(names)));
    }
    return sentences.join(QLatin1Char(' '));
}

QString appliedText(const StartingPoint& point, const AppliedPoint& applied,
                    const QuantityText& text)
{
    QStringList sentences{PointSentences::tr("%1 applied to all sites of the block, without any "
                                             "amplitude.")
                              .arg(QString::fromStdString(point.name))};
    QStringList changed;
    for (const AppliedFigure& figure : applied.figures) {
        if (figure.outcome == Outcome::unitGivesOther) {
            changed.append(PointSentences::tr("%1 %2", "setting, value")
                               .arg(pointFieldName(figure.field).toLower(),
                                    pointValueText(figure.field, figure.becomes, text)));
        }
    }
    if (!changed.isEmpty()) {
        sentences.append(PointSentences::tr("The unit makes it: %1.").arg(listed(changed)));
    }
    if (const QString before = beforeApplyingText(point, applied); !before.isEmpty()) {
        sentences.append(before);
    }
    if (applied.forgotTolerated) {
        sentences.append(PointSentences::tr("What was tolerated was found with another pulse: find "
                                            "it again with the patient."));
    }
    return sentences.join(QLatin1Char(' '));
}

QString originText(const BlockOrigin& origin)
{
    const QString name = QString::fromStdString(origin.name);
    return origin.changedSince ? PointSentences::tr("Started from %1, changed since").arg(name)
                               : PointSentences::tr("Started from %1").arg(name);
}

} // namespace quadrille::app
