// SPDX-License-Identifier: GPL-3.0-or-later
// The command `adherence`, run as the program runs it, on a practice file. Figures counted by hand
// from aDiaryOfFourWeeks(): 12 of 20 sessions done, one of them half, 250 of 400 min.
#include "app/command_line/adherence_verb.h"
#include "tests/app/verb_outcome.h"
#include "tests/support/diary_records.h"

#include "db/practice_preferences.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::test;
using testing::HasSubstr;

namespace
{

class AdherenceVerb : public testing::Test
{
protected:
    AdherenceVerb()
    {
        store = temp.open();
        ids.emplace(aPracticeWithCourse(*store));
        anIssuedPlan(*store, *ids);
        aDiaryOfFourWeeks(*store, *ids);
    }

    VerbOutcome run(const QString& more = {}, const QString& patient = QStringLiteral("1001"))
    {
        const QStringList words = more.split(QLatin1Char(' '), Qt::SkipEmptyParts);
        return runVerb(adherenceVerb, QStringList{QStringLiteral("--store"), temp.file(),
                                                  QStringLiteral("--patient"), patient} +
                                          words);
    }
    QJsonObject json(const QString& more = {})
    {
        const VerbOutcome outcome = run(QStringLiteral("--json ") + more);
        EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
        return QJsonDocument::fromJson(QByteArray::fromStdString(outcome.out)).object();
    }
    static QJsonObject part(const QJsonObject& object, const char* name)
    {
        EXPECT_TRUE(object.contains(QLatin1String(name))) << name;
        return object[QLatin1String(name)].toObject();
    }
    static QJsonValue value(const QJsonObject& object, const char* name)
    {
        EXPECT_TRUE(object.contains(QLatin1String(name))) << name;
        return object[QLatin1String(name)];
    }

    TempStore temp;
    std::unique_ptr<db::Store> store;
    std::optional<Practiced> ids;
};

} // namespace

TEST_F(AdherenceVerb, GivesSessionsAndDoseOfTheWholeCourse)
{
    const QJsonObject all = json();
    EXPECT_EQ(value(all, "patient"), QStringLiteral("1001"));
    EXPECT_EQ(value(all, "course"), 1);
    EXPECT_EQ(value(all, "as_of"), QStringLiteral("2026-03-12"));
    EXPECT_EQ(value(all, "known_through"), QStringLiteral("2026-03-08"));
    const QJsonObject interval = part(all, "interval");
    EXPECT_EQ(value(interval, "from"), QStringLiteral("2026-02-09"));
    EXPECT_EQ(value(interval, "to"), QStringLiteral("2026-03-12"));
    EXPECT_EQ(value(interval, "sessions_prescribed"), 20);
    EXPECT_EQ(value(interval, "sessions_known"), 20);
    EXPECT_EQ(value(interval, "sessions_done"), 12);
    EXPECT_EQ(value(interval, "sessions_partly"), 1);
    EXPECT_EQ(value(interval, "sessions_missed"), 7);
    EXPECT_EQ(value(interval, "sessions_not_known_yet"), 0);
    EXPECT_EQ(value(interval, "sessions_to_come"), 0);
    EXPECT_EQ(value(interval, "sessions_delivered"), 14);
    EXPECT_EQ(value(interval, "session_adherence_percent"), 60);
    EXPECT_EQ(value(interval, "minutes_delivered"), 250);
    EXPECT_EQ(value(interval, "minutes_prescribed"), 400);
    EXPECT_EQ(value(interval, "minutes_adherence_percent"), 62.5);
    // 12 × 75 and, in 10 min, 37 cycles of 16 s and 8 s more: 38. Prescribed 20 × 75.
    EXPECT_EQ(value(interval, "contractions_delivered"), 938);
    EXPECT_EQ(value(interval, "contractions_prescribed"), 1500);
    EXPECT_EQ(value(interval, "contractions_reported_sessions"), 0);
    EXPECT_EQ(value(interval, "contractions_computed_sessions"), 13);
    EXPECT_EQ(value(interval, "on_time_s_delivered"), 12 * 300 + 38 * 4);
    EXPECT_EQ(value(interval, "on_time_s_prescribed"), 6000);
    EXPECT_EQ(value(interval, "over_use_sessions"), 1);
    EXPECT_EQ(value(interval, "over_use_minutes"), 20);
    EXPECT_EQ(value(interval, "longest_gap_days"), 10) << "27 February to 8 March";
}

TEST_F(AdherenceVerb, GivesWeeksBlocksAndTrend)
{
    const QJsonObject all = json();
    const QJsonArray weeks = value(all, "weeks").toArray();
    ASSERT_EQ(weeks.size(), 4);
    EXPECT_EQ(value(weeks[1].toObject(), "week"), 2);
    EXPECT_EQ(value(weeks[1].toObject(), "sessions_done"), 4);
    EXPECT_EQ(value(weeks[1].toObject(), "fully_known"), true);
    EXPECT_EQ(value(weeks[1].toObject(), "reaches_threshold"), true);
    EXPECT_EQ(value(weeks[2].toObject(), "reaches_threshold"), false);
    EXPECT_EQ(value(all, "weeks_fully_known"), 4);
    EXPECT_EQ(value(all, "weeks_reaching_threshold"), 2);
    const QJsonArray blocks = value(all, "blocks").toArray();
    ASSERT_EQ(blocks.size(), 1);
    EXPECT_EQ(value(blocks[0].toObject(), "plan"), 1);
    EXPECT_EQ(value(blocks[0].toObject(), "block"), 1);
    EXPECT_EQ(value(blocks[0].toObject(), "to"), QStringLiteral("2026-03-08"));
    const QJsonObject trend = part(all, "trend");
    EXPECT_EQ(value(trend, "last_week"), 4);
    EXPECT_EQ(value(trend, "recent_percent"), 30);
    EXPECT_EQ(value(trend, "before_percent"), 90);
    EXPECT_EQ(value(trend, "difference_points"), -60);
}

TEST_F(AdherenceVerb, GivesTheLastDaysAndSinceTheLastFollowUp)
{
    QJsonObject all = json();
    EXPECT_EQ(value(part(all, "last_7_days"), "sessions_delivered"), 0);
    EXPECT_EQ(value(part(all, "last_14_known_days"), "sessions_done"), 3);
    EXPECT_EQ(value(part(all, "last_14_known_days"), "sessions_prescribed"), 10);
    EXPECT_TRUE(value(part(all, "since_last_follow_up"), "follow_up").isNull());
    EXPECT_EQ(value(part(all, "since_last_follow_up"), "from"), QStringLiteral("2026-02-09"));
    must(store->write(author(), "add visit", [&](db::Writing& writing) {
        FollowUp visit;
        visit.course = ids->course;
        visit.heldOn = day(2026, 2, 23);
        visit.practitioner = ids->practitioner;
        db::addFollowUp(writing, visit);
    }));
    all = json();
    EXPECT_EQ(value(part(all, "since_last_follow_up"), "follow_up"), QStringLiteral("2026-02-23"));
    EXPECT_EQ(value(part(all, "since_last_follow_up"), "sessions_done"), 3);
}

TEST_F(AdherenceVerb, GivesEachDayWithItsSessionsSkinAndRemark)
{
    const QJsonArray days = value(json(), "days").toArray();
    ASSERT_EQ(days.size(), 28) << "those of the plan";
    const QJsonObject tuesday = days[1].toObject();
    EXPECT_EQ(value(tuesday, "date"), QStringLiteral("2026-02-10"));
    EXPECT_EQ(value(tuesday, "week"), 1);
    EXPECT_EQ(value(tuesday, "state"), QStringLiteral("done"));
    EXPECT_EQ(value(tuesday, "skin"), 2);
    EXPECT_EQ(value(tuesday, "skin_pad"), QStringLiteral("lower pad"));
    EXPECT_EQ(value(tuesday, "remark"), QStringLiteral("Red until Wednesday"));
    const QJsonObject session = value(tuesday, "sessions").toArray()[0].toObject();
    EXPECT_EQ(value(session, "state"), QStringLiteral("done"));
    EXPECT_EQ(value(session, "number"), 1);
    EXPECT_EQ(value(session, "minutes"), 20);
    EXPECT_TRUE(value(session, "contractions").isNull());
    std::string states; // a letter a day, a word a week
    for (int day = 0; day < days.size(); ++day) {
        states += day > 0 && day % 7 == 0 ? " " : "";
        states += value(days[day].toObject(), "state").toString().front().toLatin1();
    }
    EXPECT_EQ(states, "ddddden ddddmnn dddpmnn mmmmmnn")
        << "done, extra, not prescribed, partly, missed";
    EXPECT_TRUE(value(days[2].toObject(), "skin").isNull());
}

TEST_F(AdherenceVerb, CountsTheDaysAskedFor)
{
    const QJsonObject interval =
        part(json(QStringLiteral("--from 2026-02-23 --to 2026-02-27")), "interval");
    EXPECT_EQ(value(interval, "sessions_done"), 3);
    EXPECT_EQ(value(interval, "sessions_prescribed"), 5);
}

TEST_F(AdherenceVerb, TakesAnotherDayForToday)
{
    const QJsonObject all = json(QStringLiteral("--as-of 2026-02-18 --to 2026-02-22"));
    EXPECT_EQ(value(all, "known_through"), QStringLiteral("2026-02-18"));
    EXPECT_EQ(value(part(all, "interval"), "sessions_done"), 8);
    EXPECT_EQ(value(part(all, "interval"), "sessions_known"), 8);
    EXPECT_EQ(value(part(all, "interval"), "sessions_to_come"), 2);
    EXPECT_TRUE(value(all, "trend").isNull());
}

TEST_F(AdherenceVerb, SaysNothingWhereNothingIsKnown)
{
    const QJsonObject interval =
        part(json(QStringLiteral("--from 2026-03-09 --to 2026-03-20")), "interval");
    EXPECT_EQ(value(interval, "sessions_prescribed"), 0);
    for (const char* name : {"session_adherence_percent", "minutes_adherence_percent",
                             "minutes_delivered", "contractions_prescribed", "over_use_sessions",
                             "sessions_delivered", "longest_gap_days"}) {
        EXPECT_TRUE(value(interval, name).isNull()) << name;
    }
}

TEST_F(AdherenceVerb, FollowsThePracticesThresholds)
{
    must(store->write(author(), "set preference", [](db::Writing& writing) {
        db::setPracticePreference(writing, "session_done_percent", "50", 0);
    }));
    const QJsonObject all = json();
    EXPECT_EQ(value(all, "session_done_percent"), 50);
    EXPECT_EQ(value(part(all, "interval"), "sessions_done"), 13);
}

TEST_F(AdherenceVerb, WritesATableForPeople)
{
    const VerbOutcome outcome = run();
    EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("Patient 1001, course 1, as of 2026-03-12. The diary is "
                                       "known through 2026-03-08."));
    EXPECT_THAT(outcome.out,
                testing::ContainsRegex("All days asked for +2026-02-09 +2026-03-12 +12 of 20 +60.0 "
                                       "+62.5 +62.5 +62.5 +1 +7 +0 +0 +1 +20 +10"));
    EXPECT_THAT(outcome.out, testing::ContainsRegex("Week 4 +2026-03-02 +2026-03-08 +0 of 5 +0.0"));
    EXPECT_THAT(outcome.out, testing::ContainsRegex("Plan 1, block 1 +2026-02-09 +2026-03-08"));
    EXPECT_THAT(outcome.out,
                HasSubstr("Weeks with 80 % of sessions done or more: 2 of 4 fully known."));
    EXPECT_THAT(outcome.out, HasSubstr("Trend: -60.0 percentage points"));
    EXPECT_THAT(outcome.out, HasSubstr("0 sessions reported, 13 computed"));
}

TEST_F(AdherenceVerb, WritesADashWhereThereIsNoFigure)
{
    const VerbOutcome outcome = run(QStringLiteral("--as-of 2026-02-01 --to 2026-02-09"));
    EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
    EXPECT_THAT(outcome.out,
                testing::ContainsRegex("All days asked for +2026-02-09 +2026-02-09 +–"));
    EXPECT_THAT(outcome.out, HasSubstr("No week is fully known."));
    EXPECT_THAT(outcome.out, HasSubstr("No trend"));
}

TEST_F(AdherenceVerb, ReadsTheStoreOnly)
{
    store.reset();
    const auto bytes = [&] {
        QFile file(temp.file());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    };
    const QByteArray before = bytes();
    EXPECT_EQ(run().code, exit_code::done);
    EXPECT_EQ(bytes(), before);
}

TEST_F(AdherenceVerb, SaysInOneSentenceWhatIsWrong)
{
    const auto expectRefused = [](const VerbOutcome& outcome, int code, const char* part) {
        EXPECT_EQ(outcome.code, code);
        EXPECT_TRUE(outcome.out.empty());
        EXPECT_THAT(outcome.err, HasSubstr(part));
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1);
    };
    expectRefused(run({}, QStringLiteral("9999")), exit_code::badInput,
                  "There is no patient 9999 in ");
    expectRefused(run(QStringLiteral("--course 7")), exit_code::badInput,
                  "Patient 1001 has no course 7");
    expectRefused(run(QStringLiteral("--course one")), exit_code::usage, "--course");
    expectRefused(run(QStringLiteral("--from yesterday")), exit_code::usage,
                  "--from: “yesterday” is no date");
    expectRefused(run(QStringLiteral("--as-of 2026-02-30")), exit_code::usage, "--as-of");
    expectRefused(run(QStringLiteral("--from 2026-03-02 --to 2026-03-01")), exit_code::badInput,
                  "end (2026-03-01) before they begin (2026-03-02)");
    expectRefused(run(QStringLiteral("--as-of 2026-02-08")), exit_code::badInput,
                  "Course 1 of patient 1001 has not begun on 2026-02-08: it starts on 2026-02-09.");
    expectRefused(run(QStringLiteral("more")), exit_code::usage, "“more” is not understood");
    expectRefused(runVerb(adherenceVerb, {QStringLiteral("--patient"), QStringLiteral("1001")}),
                  exit_code::usage, "--store is needed");
    expectRefused(runVerb(adherenceVerb, {QStringLiteral("--store"), temp.file()}),
                  exit_code::usage, "--patient is needed");
}

TEST_F(AdherenceVerb, DocumentsEveryNameOfItsJson)
{
    const VerbOutcome help = runVerb(adherenceVerb, {QStringLiteral("--help")});
    EXPECT_EQ(help.code, exit_code::done);
    for (const char* name : {"as_of", "known_through", "week_adherence_percent",
                             "last_14_known_days", "session_adherence_percent", "on_time_s_…",
                             "over_use_minutes", "longest_gap_days", "weeks_reaching_threshold",
                             "difference_points", "skin_pad", "not_known_yet", "--as-of"}) {
        EXPECT_THAT(help.out, HasSubstr(name));
    }
}

TEST_F(AdherenceVerb, SaysWhenTheResultCannotBeWritten)
{
    const VerbOutcome outcome =
        runVerbOnAFullDisk(adherenceVerb, {QStringLiteral("--store"), temp.file(),
                                           QStringLiteral("--patient"), QStringLiteral("1001")});
    EXPECT_EQ(outcome.code, exit_code::badInput);
    EXPECT_THAT(outcome.err, HasSubstr("can’t be written"));
}
