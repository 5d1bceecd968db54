// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/adherence_report.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <cmath>

namespace quadrille::app
{

namespace
{

struct AdherenceWords {
    Q_DECLARE_TR_FUNCTIONS(AdherenceWords)
};

constexpr double millisecondsInMinute = 6e4;
constexpr double millisecondsInSecond = 1e3;

QJsonValue dateJson(const std::optional<Date>& date)
{
    return date ? QJsonValue(QString::fromStdString(isoDate(*date))) : QJsonValue();
}

QJsonValue countJson(const std::optional<int>& count)
{
    return count ? QJsonValue(*count) : QJsonValue();
}

/// Percent or percentage points, two decimals.
double rounded(double percent)
{
    return std::round(percent * 100.0) / 100.0;
}

QJsonValue percentJson(const std::optional<Share>& share)
{
    return share ? QJsonValue(rounded(100.0 * share->value())) : QJsonValue();
}

/// name_delivered, name_prescribed and name_adherence_percent, in units of so many counts.
void addDose(QJsonObject& object, const QString& name, const std::optional<Share>& share,
             double counts)
{
    const auto amount = [&](std::int64_t count) {
        return QJsonValue(static_cast<double>(count) / counts);
    };
    object[name + QStringLiteral("_delivered")] = share ? amount(share->part) : QJsonValue();
    object[name + QStringLiteral("_prescribed")] = share ? amount(share->whole) : QJsonValue();
    object[name + QStringLiteral("_adherence_percent")] = percentJson(share);
}

QJsonObject figuresJson(const AdherenceFigures& figures)
{
    const SessionCounts& sessions = figures.sessions;
    QJsonObject object{
        {QStringLiteral("from"), dateJson(figures.from)},
        {QStringLiteral("to"), dateJson(figures.to)},
        {QStringLiteral("sessions_prescribed"), sessions.prescribed()},
        {QStringLiteral("sessions_known"), sessions.known()},
        {QStringLiteral("sessions_done"), sessions.done},
        {QStringLiteral("sessions_partly"), sessions.partly},
        {QStringLiteral("sessions_missed"), sessions.missed},
        {QStringLiteral("sessions_not_known_yet"), sessions.notKnownYet},
        {QStringLiteral("sessions_to_come"), sessions.toCome},
        {QStringLiteral("sessions_delivered"), countJson(figures.sessionsDelivered)},
        {QStringLiteral("session_adherence_percent"), percentJson(figures.session)},
        {QStringLiteral("contractions_reported_sessions"), figures.contractionsReported},
        {QStringLiteral("contractions_computed_sessions"), figures.contractionsComputed},
        {QStringLiteral("longest_gap_days"), countJson(figures.longestGap)}};
    addDose(object, QStringLiteral("minutes"), figures.time, millisecondsInMinute);
    addDose(object, QStringLiteral("contractions"), figures.contractions, 1.0);
    addDose(object, QStringLiteral("on_time_s"), figures.onTime, millisecondsInSecond);
    const auto& overUse = figures.overUse;
    object[QStringLiteral("over_use_sessions")] =
        overUse ? QJsonValue(overUse->sessions) : QJsonValue();
    object[QStringLiteral("over_use_minutes")] =
        overUse ? QJsonValue(static_cast<double>(overUse->time.count()) / millisecondsInMinute)
                : QJsonValue();
    return object;
}

QString word(SessionState state)
{
    switch (state) {
    case SessionState::toCome:
        return QStringLiteral("to_come");
    case SessionState::notKnownYet:
        return QStringLiteral("not_known_yet");
    case SessionState::done:
        return QStringLiteral("done");
    case SessionState::partly:
        return QStringLiteral("partly");
    case SessionState::missed:
        return QStringLiteral("missed");
    case SessionState::extra:
        return QStringLiteral("extra");
    }
    return {};
}

QString word(DayStanding standing)
{
    switch (standing) {
    case DayStanding::notPrescribed:
        return QStringLiteral("not_prescribed");
    case DayStanding::toCome:
        return QStringLiteral("to_come");
    case DayStanding::notKnownYet:
        return QStringLiteral("not_known_yet");
    case DayStanding::done:
        return QStringLiteral("done");
    case DayStanding::partly:
        return QStringLiteral("partly");
    case DayStanding::missed:
        return QStringLiteral("missed");
    case DayStanding::extra:
        return QStringLiteral("extra");
    case DayStanding::paused:
        return QStringLiteral("paused");
    }
    return {};
}

QJsonObject dayJson(const LivedDay& day, const CourseRecords& records)
{
    QJsonArray sessions;
    for (const SessionOfDay& session : day.sessions) {
        QJsonObject object{{QStringLiteral("state"), word(session.state)}};
        if (session.entry) {
            const DiaryEntry& entry = records.entries[*session.entry];
            object[QStringLiteral("number")] = entry.sessionNumber;
            object[QStringLiteral("minutes")] =
                static_cast<double>(entry.duration.count()) / millisecondsInMinute;
            object[QStringLiteral("contractions")] = countJson(entry.contractions);
        }
        sessions.append(object);
    }
    const auto& asked = day.asked;
    return {
        {QStringLiteral("date"), dateJson(day.day)},
        {QStringLiteral("week"), asked ? QJsonValue(asked->week.number) : QJsonValue()},
        {QStringLiteral("state"), word(day.standing)},
        {QStringLiteral("any_day"), asked && asked->anyDay},
        {QStringLiteral("sessions"), sessions},
        {QStringLiteral("skin"), day.skin ? QJsonValue(static_cast<int>(*day.skin)) : QJsonValue()},
        {QStringLiteral("skin_pad"), QString::fromStdString(day.skinPad)},
        {QStringLiteral("remark"), QString::fromStdString(day.remark)}};
}

QJsonArray daysJson(const AdherenceReport& report)
{
    QJsonArray days;
    for (const LivedDay& day : report.lived.days) {
        if (day.day >= report.interval.from && day.day <= report.interval.to) {
            days.append(dayJson(day, report.records));
        }
    }
    return days;
}

QJsonArray weeksJson(const Adherence& adherence)
{
    QJsonArray weeks;
    for (const WeekAdherence& week : adherence.weeks) {
        QJsonObject object = figuresJson(week.figures);
        object[QStringLiteral("week")] = week.week.number;
        object[QStringLiteral("fully_known")] = week.isFullyKnown;
        object[QStringLiteral("reaches_threshold")] =
            week.reachesThreshold ? QJsonValue(*week.reachesThreshold) : QJsonValue();
        weeks.append(object);
    }
    return weeks;
}

QJsonArray blocksJson(const Adherence& adherence)
{
    QJsonArray blocks;
    for (const BlockAdherence& block : adherence.blocks) {
        QJsonObject object = figuresJson(block.figures);
        object[QStringLiteral("plan")] = block.plan;
        object[QStringLiteral("block")] = static_cast<int>(block.block) + 1;
        blocks.append(object);
    }
    return blocks;
}

QJsonValue trendJson(const std::optional<AdherenceTrend>& trend)
{
    if (!trend) {
        return {};
    }
    return QJsonObject{{QStringLiteral("last_week"), trend->lastWeek.number},
                       {QStringLiteral("recent_percent"), rounded(100.0 * trend->recent.value())},
                       {QStringLiteral("before_percent"), rounded(100.0 * trend->before.value())},
                       {QStringLiteral("difference_points"), rounded(trend->difference())}};
}

} // namespace

QByteArray adherenceJson(const AdherenceReport& report)
{
    const Adherence& adherence = report.adherence;
    const auto& reaching = adherence.weeksReaching;
    QJsonObject since = figuresJson(adherence.sinceLastFollowUp);
    since[QStringLiteral("follow_up")] = dateJson(adherence.lastFollowUp);
    const QJsonObject object{
        {QStringLiteral("patient"), report.patient},
        {QStringLiteral("course"), report.records.course.number},
        {QStringLiteral("as_of"), dateJson(adherence.asOf)},
        {QStringLiteral("known_through"), dateJson(adherence.knownThrough)},
        {QStringLiteral("session_done_percent"), report.rules.sessionDonePercent},
        {QStringLiteral("week_adherence_percent"), report.rules.weekPercent},
        {QStringLiteral("interval"), figuresJson(adherence.interval)},
        {QStringLiteral("last_7_days"), figuresJson(adherence.last7Days)},
        {QStringLiteral("last_14_days"), figuresJson(adherence.last14Days)},
        {QStringLiteral("last_14_known_days"),
         adherence.last14KnownDays ? figuresJson(*adherence.last14KnownDays) : QJsonValue()},
        {QStringLiteral("since_last_follow_up"), since},
        {QStringLiteral("weeks_fully_known"),
         reaching ? QJsonValue(static_cast<double>(reaching->whole)) : QJsonValue()},
        {QStringLiteral("weeks_reaching_threshold"),
         reaching ? QJsonValue(static_cast<double>(reaching->part)) : QJsonValue()},
        {QStringLiteral("trend"), trendJson(adherence.trend)},
        {QStringLiteral("weeks"), weeksJson(adherence)},
        {QStringLiteral("blocks"), blocksJson(adherence)},
        {QStringLiteral("days"), daysJson(report)}};
    return QJsonDocument(object).toJson();
}

QString adherenceJsonHelp()
{
    return AdherenceWords::tr(
        "patient, course: whose figures these are\n"
        "as_of, known_through: the day taken for today; the day through which the diary is known\n"
        "session_done_percent, week_adherence_percent: the practice’s thresholds\n"
        "interval, last_7_days, last_14_days, last_14_known_days, since_last_follow_up (with "
        "follow_up, its date), weeks (with week, fully_known, reaches_threshold), blocks (with "
        "plan, block): figures, namely\n"
        "  from, to: the days, both included\n"
        "  sessions_prescribed = sessions_known + sessions_not_known_yet + sessions_to_come\n"
        "  sessions_known = sessions_done + sessions_partly + sessions_missed\n"
        "  session_adherence_percent: done of known\n"
        "  minutes_…, contractions_…, on_time_s_… with delivered, prescribed and "
        "adherence_percent: dose of the known sessions, each capped at what was prescribed\n"
        "  contractions_reported_sessions, contractions_computed_sessions: where contractions "
        "come from, the diary or minutes and settings; on time is always computed\n"
        "  sessions_delivered: with any minutes, over_use_sessions too\n"
        "  over_use_sessions, over_use_minutes: more than prescribed, never credit\n"
        "  longest_gap_days: known days in a row without a session, rest days included\n"
        "weeks_reaching_threshold of weeks_fully_known\n"
        "trend: recent_percent, the last two fully known weeks up to last_week, less "
        "before_percent, the two before, is difference_points\n"
        "days: date, week, state, any_day, sessions (state, number, minutes, contractions), skin "
        "0 to 3, skin_pad, remark\n"
        "States: not_prescribed, to_come, not_known_yet, done, partly, missed, extra, paused. A "
        "figure that does not exist is null, never 0.");
}

} // namespace quadrille::app
