// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/adherence_report.h"
#include "app/command_line/text_table.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct AdherenceWords {
    Q_DECLARE_TR_FUNCTIONS(AdherenceWords)
};

QString none()
{
    return QStringLiteral("–");
}

QString dateText(Date date)
{
    return QString::fromStdString(isoDate(date));
}

QString percentText(const std::optional<Share>& share)
{
    return share ? QString::number(100.0 * share->value(), 'f', 1) : none();
}

QString countText(const std::optional<int>& count)
{
    return count ? QString::number(*count) : none();
}

QStringList headings()
{
    return {AdherenceWords::tr("Days"),
            AdherenceWords::tr("From"),
            AdherenceWords::tr("To"),
            AdherenceWords::tr("Done"),
            AdherenceWords::tr("Sessions, %"),
            AdherenceWords::tr("Minutes, %"),
            AdherenceWords::tr("Contractions, %"),
            AdherenceWords::tr("On time, %"),
            AdherenceWords::tr("Partly"),
            AdherenceWords::tr("Missed"),
            AdherenceWords::tr("Not known"),
            AdherenceWords::tr("To come"),
            AdherenceWords::tr("Extra"),
            AdherenceWords::tr("Over-use, min"),
            AdherenceWords::tr("Longest gap, days")};
}

QStringList rowOf(const QString& name, const AdherenceFigures& figures)
{
    const SessionCounts& sessions = figures.sessions;
    const QString done = figures.session ? AdherenceWords::tr("%1 of %2", "sessions done, known")
                                               .arg(figures.session->part)
                                               .arg(figures.session->whole)
                                         : none();
    const QString overUse =
        figures.overUse
            ? QString::number(static_cast<double>(figures.overUse->time.count()) / 6e4, 'g', 6)
            : none();
    return {name,
            dateText(figures.from),
            dateText(figures.to),
            done,
            percentText(figures.session),
            percentText(figures.time),
            percentText(figures.contractions),
            percentText(figures.onTime),
            QString::number(sessions.partly),
            QString::number(sessions.missed),
            QString::number(sessions.notKnownYet),
            QString::number(sessions.toCome),
            QString::number(sessions.extra),
            overUse,
            countText(figures.longestGap)};
}

std::vector<QStringList> rowsOf(const Adherence& adherence)
{
    std::vector<QStringList> rows{headings()};
    rows.push_back(rowOf(AdherenceWords::tr("All days asked for"), adherence.interval));
    rows.push_back(rowOf(AdherenceWords::tr("Last 7 days"), adherence.last7Days));
    rows.push_back(rowOf(AdherenceWords::tr("Last 14 days"), adherence.last14Days));
    if (adherence.last14KnownDays) {
        rows.push_back(rowOf(AdherenceWords::tr("Last 14 known days"), *adherence.last14KnownDays));
    }
    rows.push_back(rowOf(adherence.lastFollowUp ? AdherenceWords::tr("Since the last follow-up")
                                                : AdherenceWords::tr("Since the start"),
                         adherence.sinceLastFollowUp));
    for (const BlockAdherence& block : adherence.blocks) {
        rows.push_back(rowOf(AdherenceWords::tr("Plan %1, block %2")
                                 .arg(QString::number(block.plan),
                                      QString::number(static_cast<int>(block.block) + 1)),
                             block.figures));
    }
    for (const WeekAdherence& week : adherence.weeks) {
        rows.push_back(rowOf(AdherenceWords::tr("Week %1").arg(week.week.number), week.figures));
    }
    return rows;
}

QString knownText(const Adherence& adherence)
{
    return adherence.knownThrough ? AdherenceWords::tr("The diary is known through %1.")
                                        .arg(dateText(*adherence.knownThrough))
                                  : AdherenceWords::tr("No diary has come back yet.");
}

QString weeksText(const AdherenceReport& report)
{
    const auto& weeks = report.adherence.weeksReaching;
    if (!weeks) {
        return AdherenceWords::tr("No week is fully known.");
    }
    return AdherenceWords::tr("Weeks with %1 % of sessions done or more: %2 of %3 fully known.")
        .arg(report.rules.weekPercent)
        .arg(weeks->part)
        .arg(weeks->whole);
}

QString trendText(const std::optional<AdherenceTrend>& trend)
{
    if (!trend) {
        return AdherenceWords::tr("No trend: it takes four fully known weeks.");
    }
    const double points = trend->difference();
    return AdherenceWords::tr("Trend: %1%2 percentage points of sessions done, the last two fully "
                              "known weeks (up to week %3) against the two before.")
        .arg(points > 0.0 ? QStringLiteral("+") : QString(), QString::number(points, 'f', 1),
             QString::number(trend->lastWeek.number));
}

} // namespace

QString adherenceTable(const AdherenceReport& report)
{
    const Adherence& adherence = report.adherence;
    const QStringList sentences{
        AdherenceWords::tr("A session is done from %1 % of its length on. Contractions: %2 "
                           "sessions reported, %3 computed from minutes and settings.")
            .arg(report.rules.sessionDonePercent)
            .arg(adherence.interval.contractionsReported)
            .arg(adherence.interval.contractionsComputed),
        weeksText(report), trendText(adherence.trend)};
    return AdherenceWords::tr("Patient %1, course %2, as of %3. %4")
               .arg(report.patient, QString::number(report.records.course.number),
                    dateText(adherence.asOf), knownText(adherence)) +
           QStringLiteral("\n\n") + alignedRows(rowsOf(adherence)) + QLatin1Char('\n') +
           sentences.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

} // namespace quadrille::app
