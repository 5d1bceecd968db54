// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/starting_point_text.h"

#include "app/words/fit_text.h"
#include "app/words/trade_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>
#include <variant>

namespace quadrille::app
{

namespace
{

struct PointTextWords {
    Q_DECLARE_TR_FUNCTIONS(PointTextWords)
};

const QString& dash()
{
    static const QString sign = QStringLiteral("—");
    return sign;
}

bool isPlainCount(Field field)
{
    return field == Field::sessionsPerDay || field == Field::weekdays || field == Field::weeks;
}

QString countText(Field field, std::int64_t count, const QuantityText& text)
{
    return isPlainCount(field) ? text.count(count) : text.setting(field, count);
}

QString citedText(Field field, const CitedCount& cited, const QuantityText& text)
{
    if (!isOffered(cited.standing)) {
        return dash();
    }
    if (!cited.isRange()) {
        return countText(field, cited.least, text);
    }
    return isPlainCount(field)
               ? PointTextWords::tr("%1 to %2").arg(text.count(cited.least), text.count(cited.most))
               : text.range(field, cited.least, cited.most);
}

/// The standing, and what else the source says.
QString standingWithNote(Standing standing, const std::string& note)
{
    return note.empty() ? standingText(standing)
                        : PointTextWords::tr("%1; %2", "standing, note")
                              .arg(standingText(standing), QString::fromStdString(note));
}

QString withUnitText(const AppliedFigure& figure, const CitedCount& cited, const QuantityText& text)
{
    QString value = pointValueText(figure.field, figure.becomes, text);
    switch (figure.outcome) {
    case Outcome::taken:
        return value;
    case Outcome::unitGivesOther:
        return figure.why ? PointTextWords::tr("%1: %2", "value, reason")
                                .arg(value, fitReasonText(*figure.why))
                          : value;
    case Outcome::choose: {
        const auto* count = std::get_if<std::int64_t>(&figure.becomes);
        const bool inside = count != nullptr && *count >= cited.least && *count <= cited.most;
        return (inside ? PointTextWords::tr("%1 stands, inside the range")
                       : PointTextWords::tr("%1 stands: choose within the range"))
            .arg(value);
    }
    case Outcome::leftEmpty:
        return std::holds_alternative<std::monostate>(figure.becomes)
                   ? QString()
                   : PointTextWords::tr("%1 stays as it stands").arg(value);
    }
    return {};
}

const AppliedFigure* figureOf(const AppliedPoint* applied, Field field)
{
    if (applied == nullptr) {
        return nullptr;
    }
    const auto found = std::ranges::find(applied->figures, field, &AppliedFigure::field);
    return found == applied->figures.end() ? nullptr : &*found;
}

/// The columns that hang on the standing and on what the unit makes of it.
PointRow rowOf(const QString& what, const QString& cited, const CitedCount& count,
               const AppliedFigure* figure, const QuantityText& text)
{
    PointRow row{what, cited, standingWithNote(count.standing, count.note), {}};
    row.unsure = needsConfirming(count.standing) || count.standing == Standing::doubtful;
    if (figure != nullptr) {
        row.withUnit = withUnitText(*figure, count, text);
        row.differs = figure->outcome == Outcome::unitGivesOther;
    }
    return row;
}

QString waveformText(const CitedWaveform& cited)
{
    if (!isOffered(cited.standing) || cited.any.empty()) {
        return dash();
    }
    return cited.any.size() > 1 ? PointTextWords::tr("biphasic") : waveformName(cited.any.front());
}

PointRow waveformRow(const StartingPoint& point, const AppliedPoint* applied,
                     const QuantityText& text)
{
    const CitedCount standing{0, 0, point.waveform.standing, point.waveform.note};
    return rowOf(fieldName(Field::waveform), waveformText(point.waveform), standing,
                 figureOf(applied, Field::waveform), text);
}

PointRow rampRuleRow(const StartingPoint& point, const AppliedPoint* applied,
                     const QuantityText& text)
{
    const CitedRampRule& rule = point.rampRule;
    const bool said = rule.habit && isOffered(rule.standing);
    PointRow row{PointTextWords::tr("Ramps"),
                 said ? rampHabitName(*rule.habit) : dash(),
                 standingText(rule.standing),
                 {}};
    row.unsure = said && needsConfirming(rule.standing);
    if (applied != nullptr && applied->plateauMeant && applied->plateauGiven) {
        row.differs = true;
        row.withUnit = applied->plateauMeant == applied->plateauGiven
                           ? PointTextWords::tr("counted otherwise; the plateau stays %1")
                                 .arg(text.setting(Field::onTime, applied->plateauGiven->count()))
                           : PointTextWords::tr("counted otherwise; plateau %1 in place of %2")
                                 .arg(text.setting(Field::onTime, applied->plateauGiven->count()),
                                      text.setting(Field::onTime, applied->plateauMeant->count()));
    } else if (applied != nullptr && said) {
        row.withUnit = PointTextWords::tr("counted the same way");
    } else if (applied != nullptr) {
        row.withUnit = PointTextWords::tr("as this unit counts them");
    }
    return row;
}

PointRow contractionsRow(const StartingPoint& point, const AppliedPoint* applied,
                         const QuantityText& text)
{
    const CitedCount& cited = point.contractions;
    const AppliedFigure* figure = figureOf(applied, Field::sessionLength);
    const QString count =
        cited.isRange()
            ? PointTextWords::tr("%1 to %2").arg(text.count(cited.least), text.count(cited.most))
            : text.count(cited.least);
    PointRow row = rowOf(PointTextWords::tr("Contractions a session"), count, cited, figure, text);
    if (figure != nullptr && cited.figure()) {
        const QString length = pointValueText(Field::sessionLength, figure->becomes, text);
        row.withUnit =
            applied->contractions
                ? PointTextWords::tr("%1 in a session of %2", "contractions, length")
                      .arg(text.count(*applied->contractions), length)
                : PointTextWords::tr("not in a session of this unit; %1 stays").arg(length);
    }
    return row;
}

/// True of "Am J Sports Med 2011;39:1238".
bool namesVolume(const QString& citation)
{
    static const QRegularExpression volumeAndPage(QStringLiteral(";\\d+:"));
    return citation.contains(volumeAndPage);
}

void appendWords(std::vector<PointRow>& rows, const QString& what, const CitedWords& words)
{
    if (!words.text.empty()) {
        PointRow row{what, QString::fromStdString(words.text), standingText(words.standing), {}};
        row.unsure = needsConfirming(words.standing);
        rows.push_back(row);
    }
}

} // namespace

QString pointFieldName(Field field)
{
    return field == Field::weekdays ? PointTextWords::tr("Days a week") : fieldName(field);
}

QString pointValueText(Field field, const FitValue& value, const QuantityText& text)
{
    if (const auto* count = std::get_if<std::int64_t>(&value)) {
        return countText(field, *count, text);
    }
    if (const auto* waveform = std::get_if<Waveform>(&value)) {
        return waveformName(*waveform);
    }
    return dash();
}

QString standingText(Standing standing)
{
    switch (standing) {
    case Standing::read:
        return PointTextWords::tr("read in the source");
    case Standing::readElsewhere:
        return PointTextWords::tr("read in a text that quotes it");
    case Standing::fromMemory:
        return PointTextWords::tr("not confirmed against the paper");
    case Standing::assumed:
        return PointTextWords::tr("assumed, the paper does not say");
    case Standing::own:
        return PointTextWords::tr("kept by the practice");
    case Standing::doubtful:
        return PointTextWords::tr("doubtful: left empty");
    case Standing::notSaid:
        return PointTextWords::tr("not said");
    }
    return {};
}

QString carePlaceText(CarePlace place)
{
    switch (place) {
    case CarePlace::home:
        return PointTextWords::tr("at home");
    case CarePlace::clinic:
        return PointTextWords::tr("in the clinic");
    case CarePlace::intensiveCare:
        return PointTextWords::tr("in intensive care");
    case CarePlace::notSaid:
        return {};
    }
    return {};
}

QString citationText(const StartingPoint& point)
{
    QString citation = QString::fromStdString(point.citation);
    switch (point.citationStanding) {
    case Standing::readElsewhere:
    case Standing::fromMemory:
        return namesVolume(citation)
                   ? PointTextWords::tr("%1 (volume and page from memory)").arg(citation)
                   : citation;
    case Standing::own:
        return PointTextWords::tr("Kept by the practice");
    default:
        return citation;
    }
}

QString cannotApplyText(CannotApply why)
{
    switch (why) {
    case CannotApply::noUnit:
        return PointTextWords::tr("No stimulator is chosen. Choose the patient’s unit on the plan "
                                  "page: it decides which figures can be set.");
    case CannotApply::unitWillNotDo:
        return PointTextWords::tr("The chosen stimulator will not do for muscle exercise. Choose "
                                  "another unit on the plan page.");
    case CannotApply::noSite:
        return PointTextWords::tr("The plan has no block with a site yet. Add the muscle to be "
                                  "exercised, then come back.");
    case CannotApply::subTetanic:
        return PointTextWords::tr("Below tetany: continuous single twitches without on and off "
                                  "times. It can’t be a plan of contractions and is shown to be "
                                  "read.");
    case CannotApply::citationOnly:
        return PointTextWords::tr("No settings are published with it. It is shown to be read.");
    }
    return {};
}

std::vector<PointRow> pointRows(const StartingPoint& point, const AppliedPoint* applied,
                                const QuantityText& text)
{
    std::vector<PointRow> rows{waveformRow(point, applied, text)};
    const auto add = [&](Field field) {
        const auto found = point.figures.find(field);
        const AppliedFigure* figure = figureOf(applied, field);
        if (found != point.figures.end() || figure != nullptr) {
            const CitedCount cited = citedIn(point, field);
            rows.push_back(
                rowOf(pointFieldName(field), citedText(field, cited, text), cited, figure, text));
        }
    };
    for (const Field field : {Field::pulseFrequency, Field::phaseDuration, Field::interphaseGap,
                              Field::secondPhaseDuration, Field::carrierFrequency, Field::burstDuty,
                              Field::onTime, Field::offTime, Field::rampUp, Field::rampDown}) {
        add(field);
    }
    if (point.use == PointUse::plan) {
        rows.push_back(rampRuleRow(point, applied, text));
    }
    if (isOffered(point.contractions.standing)) {
        rows.push_back(contractionsRow(point, applied, text));
    } else {
        add(Field::sessionLength);
    }
    for (const Field field : {Field::sessionsPerDay, Field::weekdays, Field::weeks}) {
        add(field);
    }
    appendWords(rows, PointTextWords::tr("Intensity"), point.intensity);
    appendWords(rows, PointTextWords::tr("Position and pads"), point.position);
    return rows;
}

} // namespace quadrille::app
