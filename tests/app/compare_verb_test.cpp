// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the compared settings come from the reference table of sessions (see
// tests/core/reference_cases.h).
#include "app/command_line/compare_verb.h"
#include "app/command_line/settings_json.h"
#include "tests/app/verb_outcome.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

using namespace quadrille::app;
using quadrille::test::runVerb;
using quadrille::test::runVerbOnAFullDisk;
using quadrille::test::VerbOutcome;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

namespace
{

using Outcome = VerbOutcome;

Outcome run(const QStringList& arguments)
{
    return runVerb(compareVerb, arguments);
}

/// Files of a folder of their own.
class SettingsFiles
{
public:
    QString write(const QString& name, const QByteArray& text)
    {
        const QString path = m_folder.filePath(name);
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text);
        return path;
    }

private:
    QTemporaryDir m_folder;
};

/// The first case of the reference table, with one member replaced or added.
QByteArray firstCase(const char* member = nullptr, const QJsonValue& value = {})
{
    QJsonObject object = QJsonDocument::fromJson(
                             R"({"frequency_hz": 50, "phase_duration_us": 300, "amplitude_ma": 60,)"
                             R"( "pad_area_cm2": 50, "on_s": 4, "off_s": 12, "ramps_included": 1,)"
                             R"( "session_s": 1200, "sessions_per_week": 5})")
                             .object();
    if (member) {
        object[QLatin1String(member)] = value;
    }
    return QJsonDocument(object).toJson();
}

QJsonObject caseAt(const Outcome& outcome, int index)
{
    const QJsonDocument document = QJsonDocument::fromJson(QByteArray::fromStdString(outcome.out));
    return document.object()[QLatin1String("cases")].toArray()[index].toObject();
}

std::string problemWith(const QByteArray& json)
{
    const auto given = settingsFromJson(json, QStringLiteral("A.json"));
    EXPECT_FALSE(given);
    return given ? std::string() : given.error().detail;
}

} // namespace

TEST(CompareCommand, GivesTheReferencesFiguresAndTheDifferenceToTheFirst)
{
    SettingsFiles files;
    // Case P01 of the table, and the same with 16 s off: 1200 / 20 contractions.
    const QString a = files.write(QStringLiteral("now.json"), firstCase());
    const QString b = files.write(QStringLiteral("rest.json"), firstCase("off_s", 16));
    const Outcome outcome = run({a, b, QStringLiteral("--json")});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const QJsonObject first = caseAt(outcome, 0);
    EXPECT_EQ(first[QLatin1String("name")].toString(), QStringLiteral("now"));
    const QJsonObject figures = first[QLatin1String("figures")].toObject();
    EXPECT_EQ(figures[QLatin1String("contractions_full")].toDouble(), 75.0);
    EXPECT_EQ(figures[QLatin1String("duty_cycle")].toDouble(), 0.25);
    EXPECT_NEAR(figures[QLatin1String("rms_density_train_ma_cm2")].toDouble(), 0.2078461, 1e-8);
    EXPECT_EQ(figures[QLatin1String("week_charge_mc")].toDouble(), 1350.0);
    EXPECT_NEAR(figures[QLatin1String("fti_ratio_last_first")].toDouble(), 0.55723094, 1e-7);
    const QJsonObject second = caseAt(outcome, 1);
    const QJsonObject differences = second[QLatin1String("differences")].toObject();
    EXPECT_EQ(differences[QLatin1String("contractions_full")].toDouble(), 60.0 - 75.0);
    EXPECT_GT(differences[QLatin1String("fti_ratio_last_first")].toDouble(), 0.0);
    EXPECT_TRUE(
        second[QLatin1String("fatigue_comparison")].toObject()[QLatin1String("allowed")].toBool());
}

TEST(CompareCommand, RefusesToCompareFatigueWherePulseFrequencyDiffersAndSaysWhy)
{
    SettingsFiles files;
    const QString a = files.write(QStringLiteral("a.json"), firstCase());
    const QString b = files.write(QStringLiteral("b.json"), firstCase("frequency_hz", 35));
    const Outcome json = run({a, b, QStringLiteral("--json")});
    ASSERT_EQ(json.code, 0) << json.err;
    const QJsonObject second = caseAt(json, 1);
    EXPECT_FALSE(second[QLatin1String("differences")].toObject().contains(
        QLatin1String("fti_ratio_last_first")));
    const QJsonObject verdict = second[QLatin1String("fatigue_comparison")].toObject();
    EXPECT_FALSE(verdict[QLatin1String("allowed")].toBool());
    EXPECT_EQ(verdict[QLatin1String("reasons")].toArray().size(), 1);
    EXPECT_THAT(run({a, b}).out, HasSubstr("Pulse frequency differs"));
}

TEST(CompareCommand, WritesATableThatSaysWhatTheModelIs)
{
    SettingsFiles files;
    const QString a =
        files.write(QStringLiteral("a.json"), firstCase("name", QStringLiteral("now")));
    const QString b = files.write(QStringLiteral("b.json"), firstCase("session_s", 600));
    const Outcome outcome = run({a, b});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out,
                AllOf(HasSubstr("now"), HasSubstr("Contractions completed"), HasSubstr("38 (-37)"),
                      HasSubstr("* model, group values, not this patient"),
                      HasSubstr("only to compare settings")));
}

TEST(CompareCommand, ShowsNoDoseAndNoWeekWhereTheyAreNotGiven)
{
    SettingsFiles files;
    const QByteArray timingOnly =
        R"({"frequency_hz": 50, "phase_duration_us": 300, "on_s": 4, "off_s": 12,)"
        R"( "session_s": 1200, "ramps_included": true})";
    const QString a = files.write(QStringLiteral("a.json"), timingOnly);
    const QString b = files.write(QStringLiteral("b.json"), timingOnly);
    const Outcome outcome = run({a, b, QStringLiteral("--json")});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const QJsonObject figures = caseAt(outcome, 0)[QLatin1String("figures")].toObject();
    EXPECT_TRUE(figures[QLatin1String("phase_charge_uc")].isNull());
    EXPECT_TRUE(figures[QLatin1String("week_pulses")].isNull());
    EXPECT_EQ(figures[QLatin1String("contractions_full")].toDouble(), 75.0);
}

TEST(SettingsJson, KeepsDecimalsExactly)
{
    const auto given = settingsFromJson(
        R"({"frequency_hz": 33.333, "phase_duration_us": 250, "amplitude_ma": 42.5, "on_s": 2.5,)"
        R"( "off_s": 0.1e2, "session_s": 300, "ramps_included": 0, "name": "µ"})",
        QStringLiteral("A.json"));
    ASSERT_TRUE(given) << given.error().detail;
    const quadrille::Settings& settings = given->settings.settings;
    EXPECT_EQ(settings.pulseFrequency.count(), 33'333);
    EXPECT_EQ(settings.amplitude.lastTolerated->count(), 42'500);
    EXPECT_EQ(settings.onTime.count(), 2500);
    EXPECT_EQ(settings.offTime.count(), 10'000);
    EXPECT_EQ(given->settings.habit, quadrille::RampHabit::addedToOnTime);
    EXPECT_EQ(given->settings.name, "µ");
}

TEST(SettingsJson, SaysWhichMemberCannotBeUsedAndWhatIsExpected)
{
    EXPECT_THAT(problemWith(""), HasSubstr("not JSON"));
    EXPECT_THAT(problemWith("{"), HasSubstr("not JSON at character"));
    EXPECT_THAT(problemWith("[50]"), HasSubstr("one JSON object"));
    EXPECT_THAT(problemWith("{}"), HasSubstr("frequency_hz is missing"));
    EXPECT_THAT(problemWith(firstCase("frequency", 50)),
                AllOf(HasSubstr("“frequency” is not known"), HasSubstr("frequency_hz")));
    EXPECT_THAT(problemWith(firstCase("on_s", QStringLiteral("4"))),
                HasSubstr("on_s is no number; write it without quotes"));
    EXPECT_THAT(problemWith(firstCase("on_s", true)), HasSubstr("on_s is no number"));
    EXPECT_THAT(problemWith(firstCase("on_s", QJsonArray{4})), HasSubstr("on_s is no number"));
    EXPECT_THAT(problemWith(firstCase("on_s", QJsonValue())), HasSubstr("on_s is no number"));
    EXPECT_THAT(problemWith(firstCase("on_s", 2.5001)), HasSubstr("at most 3 decimals"));
    EXPECT_THAT(problemWith(firstCase("on_s", -4)), HasSubstr("from 0.001 to 3600"));
    EXPECT_THAT(problemWith(firstCase("on_s", 1e300)), HasSubstr("from 0.001 to 3600"));
    EXPECT_THAT(problemWith(firstCase("on_s", 1e-300)), HasSubstr("from 0.001 to 3600"));
    EXPECT_THAT(problemWith(firstCase("off_s", 0)), HasSubstr("off time"));
    EXPECT_THAT(problemWith(firstCase("phase_duration_us", 300000)), HasSubstr("overlap"));
    EXPECT_THAT(problemWith(firstCase("ramps_included", 2)), HasSubstr("0 or 1"));
    EXPECT_THAT(problemWith(firstCase("name", 7)), HasSubstr("name is no text"));
    EXPECT_THAT(problemWith(firstCase("on_s", -4)), Not(HasSubstr("row")));
}

TEST(CompareCommand, WritesNothingWhenAFileCannotBeUsed)
{
    SettingsFiles files;
    const QString a = files.write(QStringLiteral("a.json"), firstCase());
    const QString b = files.write(QStringLiteral("b.json"), firstCase("off_s", 0));
    const Outcome bad = run({a, b});
    EXPECT_EQ(bad.code, 1);
    EXPECT_THAT(bad.out, IsEmpty());
    EXPECT_THAT(bad.err, HasSubstr("b.json"));
    const Outcome missing = run({a, QStringLiteral("nowhere.json")});
    EXPECT_EQ(missing.code, 1);
    EXPECT_THAT(missing.err, HasSubstr("nowhere.json"));
    const Outcome huge =
        run({a, files.write(QStringLiteral("huge.json"), QByteArray(2'000'000, ' '))});
    EXPECT_EQ(huge.code, 1);
    EXPECT_THAT(huge.err, HasSubstr("larger than"));
}

TEST(CompareCommand, FailsWhenTheComparisonCannotBeWritten)
{
    SettingsFiles files;
    const QString a = files.write(QStringLiteral("a.json"), firstCase());
    const Outcome outcome = runVerbOnAFullDisk(compareVerb, {a, a});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("can’t be written"));
}

TEST(CompareCommand, RefusesAMixOfRecruitmentModels)
{
    SettingsFiles files;
    const QString a = files.write(QStringLiteral("a.json"), firstCase());
    const QString b = files.write(QStringLiteral("b.json"), firstCase("recruitment_model", 1));
    const Outcome outcome = run({a, b});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("recruitment_model differs"));
}

TEST(CompareCommand, TellsHowItIsUsed)
{
    const Outcome help = run({QStringLiteral("--help")});
    EXPECT_EQ(help.code, 0);
    EXPECT_THAT(help.out, AllOf(HasSubstr("phase_duration_us"), HasSubstr("may be left away"),
                                HasSubstr("ramps_included")));
    EXPECT_EQ(run({}).code, 2);
    EXPECT_EQ(run({QStringLiteral("a.json")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("--nonsense")}).code, 2);
}
