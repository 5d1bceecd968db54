// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/sample_diary.h"

#include "db/caseload_query.h"
#include "db/course_records.h"
#include "db/courses.h"
#include "db/people.h"
#include "db/store.h"

#include "core/prescribed_days.h"
#include "core/sitting.h"

#include <QSaveFile>

#include <algorithm>
#include <chrono>
#include <optional>

namespace quadrille::app
{

namespace
{

constexpr std::chrono::days sampleDays{21};
constexpr int leastRows = 5;

class StandingClock : public Clock
{
public:
    explicit StandingClock(Date today)
        : m_today(today)
    {
    }
    Date today() const override { return m_today; }
    Moment now() const override { return Moment(m_today); }

private:
    Date m_today;
};

/// Of cells that need no quotes.
QString lineOf(const QStringList& cells)
{
    return cells.join(QLatin1Char(',')) + QLatin1Char('\n');
}

struct Sample {
    SampleDiary about;
    QString text;
};

/// Like a diary that somebody keeps: most days whole, one short, one left out.
std::optional<Sample> sampleOf(const CourseRecords& records, Date today)
{
    Sample sample;
    sample.about.course = records.course.number;
    sample.text = lineOf({QStringLiteral("date"), QStringLiteral("session"),
                          QStringLiteral("minutes"), QStringLiteral("comfort"),
                          QStringLiteral("skin"), QStringLiteral("pad"), QStringLiteral("remark")});
    const auto isOnFile = [&](Date day) {
        return std::ranges::find(records.entries, day, &DiaryEntry::day) != records.entries.end() ||
               std::ranges::find(records.days, day, &DiaryDay::day) != records.days.end();
    };
    for (const PrescribedDay& day : prescribedDays(records.course, records.plans, records.pauses)) {
        const bool isWanted = day.day >= today - sampleDays && day.day < today && !day.isPaused;
        if (!isWanted || day.sessions == 0 || isOnFile(day.day)) {
            continue;
        }
        const Plan& plan = records.plans[day.block.plan];
        const auto sitting = Sitting::of(plan.blocks[day.block.block], plan.stimulator.rampHabit,
                                         plan.stimulator.cycleStart);
        if (!sitting) {
            continue;
        }
        const auto whole = std::chrono::floor<std::chrono::minutes>(sitting->whole().time).count();
        const int place = sample.about.rows++;
        const bool isShort = place == 3;
        const bool isRed = place == 1;
        sample.text +=
            lineOf({QString::fromStdString(isoDate(day.day)), QStringLiteral("1"),
                    QString::number(isShort ? whole / 2 : whole), QString::number(6 + place % 3),
                    QString::number(isRed ? 1 : 0), isRed ? QStringLiteral("lower pad") : QString(),
                    isShort ? QStringLiteral("Stopped early when the telephone rang") : QString()});
    }
    return sample.about.rows >= leastRows ? std::optional(sample) : std::nullopt;
}

std::optional<Sample> firstSample(db::Reading& reading, Date today)
{
    for (const auto& place : db::currentCaseload(reading, today)) {
        const auto patient = db::patient(reading, place.patient);
        for (const Course& course : db::coursesOf(reading, place.patient)) {
            if (!patient || !isRunning(course, today)) {
                continue;
            }
            auto sample = sampleOf(db::courseRecords(reading, course), today);
            if (sample) {
                sample->about.patient = QString::fromStdString(patient->reference);
                return sample;
            }
        }
    }
    return std::nullopt;
}

} // namespace

Result<SampleDiary> writeSampleDiary(const QString& store, const QString& file, Date today)
{
    if (QFile::exists(file)) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = file.toStdString(),
                     .detail = "it is there already"};
    }
    const StandingClock clock(today);
    const auto opened = db::Store::open(store, db::Opening::readOnly, clock);
    if (!opened) {
        return opened.error();
    }
    const auto sample =
        (*opened)->read([&](db::Reading& reading) { return firstSample(reading, today); });
    if (!sample) {
        return sample.error();
    }
    if (!*sample) {
        return Error{.code = ErrorCode::notFound,
                     .subject = "A running course with days that are not on file",
                     .detail = {}};
    }
    QSaveFile out(file);
    if (!out.open(QIODevice::WriteOnly) || out.write((*sample)->text.toUtf8()) < 0 ||
        !out.commit()) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = file.toStdString(),
                     .detail = out.errorString().toStdString()};
    }
    return (*sample)->about;
}

} // namespace quadrille::app
