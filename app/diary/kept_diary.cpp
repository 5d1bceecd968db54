// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/kept_diary.h"

#include <QJsonArray>

#include <set>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr QLatin1String baseKey("base");
constexpr QLatin1String mineKey("mine");
constexpr QLatin1String daysKey("days");
constexpr QLatin1String receivedKey("received");

QJsonObject jsonOf(const WrittenSession& session)
{
    QJsonObject json;
    if (session.time) {
        json.insert(QStringLiteral("time"), static_cast<qint64>(session.time->count()));
    }
    if (session.comfort) {
        json.insert(QStringLiteral("comfort"), *session.comfort);
    }
    QJsonObject amplitudes;
    for (const auto& [site, amplitude] : session.amplitudes) {
        amplitudes.insert(QString::number(site), static_cast<qint64>(amplitude.count()));
    }
    json.insert(QStringLiteral("amplitudes"), amplitudes);
    return json;
}

WrittenSession sessionFrom(const QJsonObject& json)
{
    WrittenSession session;
    if (json.contains(QStringLiteral("time"))) {
        session.time = Milliseconds(json.value(QStringLiteral("time")).toInteger());
    }
    if (json.contains(QStringLiteral("comfort"))) {
        session.comfort = json.value(QStringLiteral("comfort")).toInt();
    }
    const QJsonObject amplitudes = json.value(QStringLiteral("amplitudes")).toObject();
    for (auto it = amplitudes.begin(); it != amplitudes.end(); ++it) {
        session.amplitudes[it.key().toLongLong()] = Amplitude::fromCount(it.value().toInteger());
    }
    return session;
}

QJsonObject jsonOf(const WrittenDay& day)
{
    QJsonObject sessions;
    for (const auto& [number, session] : day.sessions) {
        sessions.insert(QString::number(number), jsonOf(session));
    }
    QJsonObject json{{QStringLiteral("sessions"), sessions},
                     {QStringLiteral("pad"), QString::fromStdString(day.skinPad)},
                     {QStringLiteral("remark"), QString::fromStdString(day.remark)}};
    if (day.skin) {
        json.insert(QStringLiteral("skin"), static_cast<int>(*day.skin));
    }
    return json;
}

WrittenDay dayFrom(const QJsonObject& json)
{
    WrittenDay day;
    const QJsonObject sessions = json.value(QStringLiteral("sessions")).toObject();
    for (auto it = sessions.begin(); it != sessions.end(); ++it) {
        day.sessions[it.key().toInt()] = sessionFrom(it.value().toObject());
    }
    day.skinPad = json.value(QStringLiteral("pad")).toString().toStdString();
    day.remark = json.value(QStringLiteral("remark")).toString().toStdString();
    const int skin = json.value(QStringLiteral("skin")).toInt(-1);
    if (skin >= 0 && skin <= static_cast<int>(Skin::blisterOrBurn)) {
        day.skin = static_cast<Skin>(skin);
    }
    return day;
}

QJsonObject jsonOf(const WrittenDiary& diary, const std::set<Date>& days)
{
    QJsonObject written;
    for (const Date day : days) {
        written.insert(QString::fromStdString(isoDate(day)), jsonOf(diary.on(day)));
    }
    QJsonObject json{{QString(daysKey), written}};
    if (diary.receivedThrough) {
        json.insert(receivedKey, QString::fromStdString(isoDate(*diary.receivedThrough)));
    }
    return json;
}

WrittenDiary diaryFrom(const QJsonObject& json, WrittenDiary diary)
{
    const QJsonObject days = json.value(daysKey).toObject();
    for (auto it = days.begin(); it != days.end(); ++it) {
        if (const auto day = dateFromIso(it.key().toStdString())) {
            diary.put(*day, dayFrom(it.value().toObject()));
        }
    }
    diary.receivedThrough = dateFromIso(json.value(receivedKey).toString().toStdString());
    return diary;
}

} // namespace

QString keptDiaryName(CourseId course)
{
    return QStringLiteral("diary/%1").arg(course.key());
}

QJsonObject keptDiary(const WrittenDiary& base, const WrittenDiary& mine)
{
    std::set<Date> days;
    for (const WrittenDiary* diary : {&base, &mine}) {
        for (const auto& [day, written] : diary->days) {
            if (base.on(day) != mine.on(day)) {
                days.insert(day);
            }
        }
    }
    return {{QString(baseKey), jsonOf(base, days)}, {QString(mineKey), jsonOf(mine, days)}};
}

DiaryDraft::Unsaved unsavedFrom(const QJsonObject& kept, const WrittenDiary& onRecord)
{
    return {diaryFrom(kept.value(baseKey).toObject(), onRecord),
            diaryFrom(kept.value(mineKey).toObject(), onRecord)};
}

} // namespace quadrille::app
