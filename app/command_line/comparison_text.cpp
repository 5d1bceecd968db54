// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/comparison_text.h"

#include "app/command_line/text_table.h"
#include "app/words/finding_text.h"
#include "app/words/model_text.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

struct ComparisonWords {
    Q_DECLARE_TR_FUNCTIONS(ComparisonWords)
};

struct FigureRow {
    ComparedFigure figure;
    const char* column;
    const char* words;
};

constexpr std::array figureRows{
    FigureRow{ComparedFigure::onPhase, "stim_s",
              QT_TRANSLATE_NOOP("ComparisonWords", "On phase, s")},
    FigureRow{ComparedFigure::plateau, "plateau_s",
              QT_TRANSLATE_NOOP("ComparisonWords", "Plateau, s")},
    FigureRow{ComparedFigure::cycle, "cycle_s", QT_TRANSLATE_NOOP("ComparisonWords", "Cycle, s")},
    FigureRow{ComparedFigure::sessionLength, "session_s",
              QT_TRANSLATE_NOOP("ComparisonWords", "Session length, s")},
    FigureRow{ComparedFigure::contractionsStarted, "contractions_started",
              QT_TRANSLATE_NOOP("ComparisonWords", "Contractions started")},
    FigureRow{ComparedFigure::contractionsCompleted, "contractions_full",
              QT_TRANSLATE_NOOP("ComparisonWords", "Contractions completed")},
    FigureRow{ComparedFigure::totalOnTime, "on_time_s",
              QT_TRANSLATE_NOOP("ComparisonWords", "Total on time, s")},
    FigureRow{ComparedFigure::dutyCycle, "duty_cycle",
              QT_TRANSLATE_NOOP("ComparisonWords", "Duty cycle")},
    FigureRow{ComparedFigure::offOnRatio, "off_on_ratio",
              QT_TRANSLATE_NOOP("ComparisonWords", "Off : on ratio")},
    FigureRow{ComparedFigure::pulses, "pulses", QT_TRANSLATE_NOOP("ComparisonWords", "Pulses")},
    FigureRow{ComparedFigure::phaseCharge, "phase_charge_uc",
              QT_TRANSLATE_NOOP("ComparisonWords", "Phase charge, µC")},
    FigureRow{ComparedFigure::chargeDensity, "charge_density_uc_cm2",
              QT_TRANSLATE_NOOP("ComparisonWords", "Charge density, µC/cm²")},
    FigureRow{ComparedFigure::rmsTrain, "rms_train_ma",
              QT_TRANSLATE_NOOP("ComparisonWords", "r.m.s. current in the train, mA")},
    FigureRow{ComparedFigure::rmsCycle, "rms_cycle_ma",
              QT_TRANSLATE_NOOP("ComparisonWords", "r.m.s. current over the cycle, mA")},
    FigureRow{ComparedFigure::currentDensity, "rms_density_train_ma_cm2",
              QT_TRANSLATE_NOOP("ComparisonWords", "Current density, mA/cm²")},
    FigureRow{ComparedFigure::powerDensityTrain, "power_density_train_mw_cm2",
              QT_TRANSLATE_NOOP("ComparisonWords", "Power density in the train, mW/cm²")},
    FigureRow{ComparedFigure::powerDensityCycle, "power_density_cycle_mw_cm2",
              QT_TRANSLATE_NOOP("ComparisonWords", "Power density over the cycle, mW/cm²")},
    FigureRow{ComparedFigure::weekContractions, "week_contractions_full",
              QT_TRANSLATE_NOOP("ComparisonWords", "Contractions a week")},
    FigureRow{ComparedFigure::weekOnTime, "week_on_time_s",
              QT_TRANSLATE_NOOP("ComparisonWords", "Total on time a week, s")},
    FigureRow{ComparedFigure::weekPulses, "week_pulses",
              QT_TRANSLATE_NOOP("ComparisonWords", "Pulses a week")},
    FigureRow{ComparedFigure::weekCharge, "week_charge_mc",
              QT_TRANSLATE_NOOP("ComparisonWords", "Charge a week, mC")},
    FigureRow{ComparedFigure::fatigueRatioIntegral, "fti_ratio_last_first",
              QT_TRANSLATE_NOOP("ComparisonWords", "Fatigue ratio, force–time integral *")},
    FigureRow{ComparedFigure::fatigueRatioPeak, "peak_ratio_last_first",
              QT_TRANSLATE_NOOP("ComparisonWords", "Fatigue ratio, peak force *")},
    FigureRow{ComparedFigure::fatigueRatioIntegralOfThree, "fti_ratio_last3_first3",
              QT_TRANSLATE_NOOP("ComparisonWords", "Last three / first three, integral *")},
    FigureRow{ComparedFigure::fatigueRatioPeakOfThree, "peak_ratio_last3_first3",
              QT_TRANSLATE_NOOP("ComparisonWords", "Last three / first three, peak *")},
};

const FigureRow& rowOf(ComparedFigure figure)
{
    return *std::ranges::find(figureRows, figure, &FigureRow::figure);
}

QString significant(double value)
{
    return QString::number(value, 'g', 8);
}

/// A double as JSON without the noise of its last digits.
double rounded(double value)
{
    return QString::number(value, 'g', 12).toDouble();
}

QString cellOf(const ComparedValue& value)
{
    if (!value.value) {
        return QStringLiteral("–");
    }
    QString cell = significant(value.value->value);
    if (value.difference) {
        const QString sign = *value.difference >= 0.0 ? QStringLiteral("+") : QString();
        cell += QStringLiteral(" (%1%2)").arg(sign, significant(*value.difference));
    }
    return cell;
}

QString findingLine(const Finding& finding, const QuantityText& text)
{
    const FindingText words = findingText(finding, text);
    QStringList parts{words.what};
    for (const QString& part : {words.source, words.advice}) {
        if (!part.isEmpty()) {
            parts.append(part);
        }
    }
    return parts.join(QLatin1Char(' '));
}

/// Why the model does not judge a case against the first; empty where it does.
QStringList refusalsOf(const ComparedCase& compared)
{
    QStringList texts;
    if (!compared.isInModel) {
        texts.append(notInModelText());
        return texts;
    }
    for (const ModelRefusal refusal : compared.model.refusals) {
        texts.append(modelRefusalText(refusal));
    }
    return texts;
}

QStringList ignoredIn(const ComparedCase& compared)
{
    QStringList texts;
    for (const QString& ignored : modelIgnoredText(compared.model)) {
        texts.append(ignored);
    }
    return texts;
}

/// The limits of all cases, each once.
QStringList limitsOf(const std::vector<ComparedCase>& cases)
{
    QStringList texts;
    for (const ComparedCase& compared : cases) {
        for (const ModelLimit limit : compared.limits) {
            const QString text = modelLimitText(limit);
            if (!texts.contains(text)) {
                texts.append(text);
            }
        }
    }
    return texts;
}

QJsonObject caseJson(const ComparedCase& compared, bool isFirst, const QuantityText& text)
{
    QJsonObject figures;
    QJsonObject differences;
    for (const ComparedValue& value : compared.values) {
        const QString column = columnOf(value.figure);
        figures[column] = value.value ? QJsonValue(rounded(value.value->value)) : QJsonValue();
        if (value.difference) {
            differences[column] = rounded(*value.difference);
        }
    }
    QJsonArray findings;
    for (const Finding& finding : compared.findings) {
        findings.append(findingLine(finding, text));
    }
    QJsonObject object{{QStringLiteral("name"), QString::fromStdString(compared.name)},
                       {QStringLiteral("figures"), figures},
                       {QStringLiteral("findings"), findings}};
    if (!isFirst) {
        const QStringList refusals = refusalsOf(compared);
        object[QStringLiteral("differences")] = differences;
        object[QStringLiteral("fatigue_comparison")] = QJsonObject{
            {QStringLiteral("allowed"), refusals.isEmpty()},
            {QStringLiteral("reasons"), QJsonArray::fromStringList(refusals)},
            {QStringLiteral("ignored"), QJsonArray::fromStringList(ignoredIn(compared))}};
    }
    return object;
}

} // namespace

QString columnOf(ComparedFigure figure)
{
    return QLatin1String(rowOf(figure).column);
}

QString comparisonTable(const std::vector<ComparedCase>& cases, const QuantityText& text)
{
    std::vector<QStringList> rows;
    QStringList headings{ComparisonWords::tr("Difference to the first in brackets")};
    for (const ComparedCase& compared : cases) {
        headings.append(QString::fromStdString(compared.name));
    }
    rows.push_back(headings);
    for (const ComparedFigure figure : comparedFigures()) {
        QStringList row{ComparisonWords::tr(rowOf(figure).words)};
        for (const ComparedCase& compared : cases) {
            row.append(cellOf(compared.value(figure)));
        }
        rows.push_back(row);
    }
    QString table = alignedRows(rows);
    for (const ComparedCase& compared : cases) {
        const QString name = QString::fromStdString(compared.name);
        QStringList remarks;
        for (const Finding& finding : compared.findings) {
            remarks.append(findingLine(finding, text));
        }
        if (&compared != &cases.front() || !compared.isInModel) {
            remarks += refusalsOf(compared);
        }
        remarks += ignoredIn(compared);
        for (const QString& remark : remarks) {
            table += QStringLiteral("\n%1: %2").arg(name, remark);
        }
        table += remarks.isEmpty() ? QString() : QStringLiteral("\n");
    }
    table += QStringLiteral("\n* %1\n").arg(modelMark());
    for (const QString& limit : limitsOf(cases)) {
        table += QStringLiteral("  %1\n").arg(limit);
    }
    return table;
}

QByteArray comparisonJson(const std::vector<ComparedCase>& cases, const QuantityText& text)
{
    QJsonArray array;
    for (const ComparedCase& compared : cases) {
        array.append(caseJson(compared, &compared == &cases.front(), text));
    }
    const QJsonObject object{
        {QStringLiteral("cases"), array},
        {QStringLiteral("model_limits"), QJsonArray::fromStringList(limitsOf(cases))}};
    return QJsonDocument(object).toJson();
}

} // namespace quadrille::app
