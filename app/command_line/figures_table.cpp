// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/figures_table.h"

#include "app/command_line/exact_decimal.h"
#include "app/command_line/figures_case.h"

#include "core/dose.h"
#include "core/fatigue_memory.h"
#include "core/plan_figures.h"
#include "core/session_timing.h"

#include <QCoreApplication>

#include <vector>

namespace quadrille::app
{

namespace
{

struct FiguresTableWords {
    Q_DECLARE_TR_FUNCTIONS(FiguresTableWords)
};

/// A ratio or a figure of the dose; eight significant digits, as the reference table has them.
QString significant(double value)
{
    return QString::number(value, 'g', 8);
}

/// Empty where there is no such figure.
template <class Whole>
QString part(const std::optional<Whole>& whole, double Whole::*member)
{
    return whole ? significant((*whole).*member) : QString();
}

/// In the order of modelColumns(); all empty for settings that the model does not know.
QStringList modelFiguresOf(const FiguresCase& given, FatigueMemory& memory)
{
    FatigueOptions options;
    options.phaseDurationRecruits = given.phaseDurationRecruits;
    const auto prediction = memory.predict(given.settings, given.habit, options);
    QStringList figures;
    if (!prediction) {
        figures.resize(modelColumns().size());
        return figures;
    }
    return {significant(prediction->recruitedShare),
            part(prediction->first, &ContractionForce::peakNewtons),
            part(prediction->last, &ContractionForce::peakNewtons),
            part(prediction->first, &ContractionForce::integralNewtonSeconds),
            part(prediction->last, &ContractionForce::integralNewtonSeconds),
            part(prediction->lastToFirst, &FatigueRatio::peak),
            part(prediction->lastToFirst, &FatigueRatio::forceTimeIntegral),
            part(prediction->lastThreeToFirstThree, &FatigueRatio::peak),
            part(prediction->lastThreeToFirstThree, &FatigueRatio::forceTimeIntegral),
            significant(prediction->atEnd.forceScale),
            significant(prediction->atEnd.halfActivation),
            significant(prediction->atEnd.relaxationTime)};
}

QString seconds(Milliseconds time)
{
    return decimalFrom(time.count(), 1000);
}

/// In the order of computedColumns().
Result<QStringList> figuresOf(const FiguresCase& given, FatigueMemory& memory)
{
    const Result<SessionTiming> timing = sessionTiming(given.settings, given.habit);
    if (!timing) {
        return timing.error();
    }
    const Amplitude amplitude = *given.settings.amplitude.lastTolerated;
    const Dose dose = doseOf(given.settings, amplitude, given.area, *timing);
    const WeekFigures week = weekOf(*timing, given.sessionsPerWeek, dose.phaseCharge);
    const auto charge = phaseCharge(amplitude, given.settings.phaseDuration);
    return QStringList{
               seconds(timing->onPhase),
               seconds(timing->plateau),
               seconds(timing->cycle),
               QString::number(timing->cyclesComplete),
               seconds(timing->remainder),
               QString::number(timing->contractionsStarted),
               QString::number(timing->contractionsCompleted),
               seconds(timing->cutContraction),
               seconds(timing->totalOnTime),
               significant(timing->dutyCycle()),
               significant(timing->offOnRatio()),
               QString::number(timing->pulsesPerContraction),
               QString::number(timing->pulses),
               charge ? decimalFrom(charge->count(), 1'000'000)
                      : significant(dose.phaseCharge.shown()),
               significant(dose.chargeDensity.shown()),
               significant(dose.rmsTrain.shown()),
               significant(dose.rmsCycle.shown()),
               significant(dose.currentDensity.shown()),
               significant(dose.powerDensityTrain.shown()),
               significant(dose.powerDensityCycle.shown()),
               QString::number(week.contractionsCompleted),
               seconds(week.onTime),
               QString::number(week.pulses),
               significant(week.charge ? week.charge->shown() : 0.0),
           } +
           modelFiguresOf(given, memory);
}

} // namespace

QStringList computedColumns()
{
    return QStringLiteral(
               "stim_s,plateau_s,cycle_s,cycles_complete,remainder_s,contractions_started,"
               "contractions_full,cut_contraction_s,on_time_s,duty_cycle,off_on_ratio,"
               "pulses_per_contraction,pulses,phase_charge_uc,charge_density_uc_cm2,rms_train_ma,"
               "rms_cycle_ma,rms_density_train_ma_cm2,power_density_train_mw_cm2,"
               "power_density_cycle_mw_cm2,week_contractions_full,week_on_time_s,week_pulses,"
               "week_charge_mc")
               .split(QLatin1Char(',')) +
           modelColumns();
}

QStringList modelColumns()
{
    return QStringLiteral("recruitment_g,peak_first_n,peak_last_n,fti_first_ns,fti_last_ns,"
                          "peak_ratio_last_first,fti_ratio_last_first,peak_ratio_last3_first3,"
                          "fti_ratio_last3_first3,a_end_n_per_ms,km_end,tau1_end_ms")
        .split(QLatin1Char(','));
}

Result<CsvTable> withFigures(const CsvTable& table, const QString& name)
{
    for (const QString& column : inputColumns()) {
        if (!table.columns.contains(column)) {
            const QString missing = FiguresTableWords::tr("the column %1 is missing").arg(column);
            return Error{
                ErrorCode::badFormat, name.toStdString(), missing.toStdString(), Field::none, {}};
        }
    }
    const QStringList computed = computedColumns();
    std::vector<qsizetype> kept;
    CsvTable result;
    for (qsizetype i = 0; i < table.columns.size(); ++i) {
        if (!computed.contains(table.columns[i])) {
            kept.push_back(i);
            result.columns.append(table.columns[i]);
        }
    }
    result.columns.append(computed);
    FatigueMemory memory;
    for (const CsvRow& row : table.rows) {
        const Result<FiguresCase> given = figuresCaseFrom(table, row, name);
        if (!given) {
            return given.error();
        }
        const Result<QStringList> figures = figuresOf(*given, memory);
        if (!figures) {
            return figures.error();
        }
        CsvRow written{row.number, {}};
        for (const qsizetype i : kept) {
            written.cells.append(row.cells[i]);
        }
        written.cells.append(*figures);
        result.rows.push_back(written);
    }
    return result;
}

} // namespace quadrille::app
