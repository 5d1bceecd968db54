// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/starting_points.h"

#include "db/caseload_key.h"
#include "db/codec.h"

#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QJsonParseError>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <type_traits>

namespace quadrille::app
{

namespace
{

struct PointWords {
    Q_DECLARE_TR_FUNCTIONS(PointWords)
};

Error badPoints(const QString& detail)
{
    return {.code = ErrorCode::badFormat,
            .subject = PointWords::tr("the published starting points").toStdString(),
            .detail = detail.toStdString()};
}

/// How a figure is written: its key, its setting, base units for one unit of the key.
struct FigureKey {
    const char* key;
    Field field;
    double perUnit;
};
constexpr std::array figureKeys{
    FigureKey{"pulse_frequency_hz", Field::pulseFrequency, 1e3},
    FigureKey{"phase_duration_us", Field::phaseDuration, 1},
    FigureKey{"carrier_frequency_hz", Field::carrierFrequency, 1e3},
    FigureKey{"burst_duty_percent", Field::burstDuty, 10},
    FigureKey{"on_time_s", Field::onTime, 1e3},
    FigureKey{"off_time_s", Field::offTime, 1e3},
    FigureKey{"ramp_up_s", Field::rampUp, 1e3},
    FigureKey{"ramp_down_s", Field::rampDown, 1e3},
    FigureKey{"session_length_min", Field::sessionLength, 6e4},
    FigureKey{"sessions_per_day", Field::sessionsPerDay, 1},
    FigureKey{"days_per_week", Field::weekdays, 1},
    FigureKey{"weeks", Field::weeks, 1},
};
constexpr const char* otherKeys[] = {
    "name",      "citation",     "standing",   "place",           "use",
    "muscles",   "muscle_words", "conditions", "condition_words", "waveform",
    "ramp_rule", "contractions", "intensity",  "position",        "note"};

template <class Choice>
struct NamedChoice {
    const char* word;
    Choice choice;
};
constexpr std::array standings{
    NamedChoice<Standing>{"read", Standing::read},
    NamedChoice<Standing>{"read_elsewhere", Standing::readElsewhere},
    NamedChoice<Standing>{"from_memory", Standing::fromMemory},
    NamedChoice<Standing>{"assumed", Standing::assumed},
    NamedChoice<Standing>{"doubtful", Standing::doubtful},
    NamedChoice<Standing>{"not_said", Standing::notSaid},
};
constexpr std::array places{
    NamedChoice<CarePlace>{"home", CarePlace::home},
    NamedChoice<CarePlace>{"clinic", CarePlace::clinic},
    NamedChoice<CarePlace>{"intensive_care", CarePlace::intensiveCare},
    NamedChoice<CarePlace>{"not_said", CarePlace::notSaid},
};
constexpr std::array uses{
    NamedChoice<PointUse>{"plan", PointUse::plan},
    NamedChoice<PointUse>{"sub_tetanic", PointUse::subTetanic},
    NamedChoice<PointUse>{"citation_only", PointUse::citationOnly},
};

template <class Choice, std::size_t Count>
std::optional<Choice> choiceNamed(const std::array<NamedChoice<Choice>, Count>& choices,
                                  const QString& word)
{
    for (const NamedChoice<Choice>& named : choices) {
        if (word == QLatin1String(named.word)) {
            return named.choice;
        }
    }
    return std::nullopt;
}

/// Reads one starting point; remembers the first thing that is wrong.
class PointReader
{
public:
    explicit PointReader(const QJsonObject& object)
        : m_object(object)
    {
    }

    StartingPoint read()
    {
        StartingPoint point;
        point.name = textIn("name");
        point.citation = textIn("citation");
        m_standing = choiceIn(standings, "standing", {});
        point.citationStanding = m_standing;
        point.place = choiceIn(places, "place", CarePlace::notSaid);
        point.use = choiceIn(uses, "use", PointUse::plan);
        point.note = textIn("note");
        point.muscles = textsIn("muscles");
        point.muscleWords = textsIn("muscle_words");
        point.conditions = textsIn("conditions");
        point.conditionWords = textsIn("condition_words");
        point.waveform = waveform();
        point.rampRule = rampRule();
        for (const FigureKey& key : figureKeys) {
            if (m_object.contains(QLatin1String(key.key))) {
                point.figures[key.field] = figure(key.key, key.perUnit);
            }
        }
        point.contractions = figure("contractions", 1);
        point.intensity = words("intensity");
        point.position = words("position");
        if (point.name.empty() || point.citation.empty()) {
            complain(PointWords::tr("name or citation is missing"));
        }
        checkKeys();
        return point;
    }

    const QString& problem() const { return m_problem; }

private:
    void complain(const QString& problem)
    {
        if (m_problem.isEmpty()) {
            m_problem = problem;
        }
    }

    QJsonValue value(const char* key) const { return m_object.value(QLatin1String(key)); }
    std::string textIn(const char* key) const { return value(key).toString().toStdString(); }
    std::vector<std::string> textsIn(const char* key) const
    {
        std::vector<std::string> texts;
        const QJsonArray array = value(key).toArray();
        for (const auto& text : array) {
            texts.push_back(text.toString().toStdString());
        }
        return texts;
    }

    template <class Choice, std::size_t Count>
    Choice choiceIn(const std::array<NamedChoice<Choice>, Count>& choices, const char* key,
                    std::type_identity_t<std::optional<Choice>> missing)
    {
        const auto choice = m_object.contains(QLatin1String(key))
                                ? choiceNamed(choices, value(key).toString())
                                : missing;
        if (!choice) {
            complain(PointWords::tr("“%1” is missing or not understood").arg(QLatin1String(key)));
        }
        return choice.value_or(choices.front().choice);
    }

    /// That of a cell, or of its row.
    Standing standingOf(const QJsonObject& cell)
    {
        const QJsonValue word = cell.value(QStringLiteral("standing"));
        const auto standing = word.isUndefined() ? std::optional(m_standing)
                                                 : choiceNamed(standings, word.toString());
        if (!standing) {
            complain(PointWords::tr("“%1” is no standing").arg(word.toString()));
        }
        return standing.value_or(Standing::notSaid);
    }

    CitedWaveform waveform()
    {
        const QJsonObject cell = value("waveform").toObject();
        CitedWaveform cited;
        const QJsonArray any = cell.value(QStringLiteral("any")).toArray();
        for (const auto& word : any) {
            const auto waveform = db::choiceOf<Waveform>(word.toString().toStdString());
            if (waveform) {
                cited.any.push_back(*waveform);
            } else {
                complain(PointWords::tr("“%1” is no waveform").arg(word.toString()));
            }
        }
        cited.standing = cited.any.empty() ? Standing::notSaid : standingOf(cell);
        cited.note = cell.value(QStringLiteral("note")).toString().toStdString();
        return cited;
    }

    CitedRampRule rampRule()
    {
        const QJsonObject cell = value("ramp_rule").toObject();
        if (cell.isEmpty()) {
            return {};
        }
        const QString word = cell.value(QStringLiteral("value")).toString();
        const auto habit = db::choiceOf<RampHabit>(word.toStdString());
        if (!habit) {
            complain(PointWords::tr("“%1” is no rule for ramps").arg(word));
        }
        return {habit, standingOf(cell)};
    }

    std::int64_t countFrom(const QJsonValue& number, const char* key, double perUnit)
    {
        const double count = number.toDouble(-1) * perUnit;
        constexpr double most = 1e12;
        if (!number.isDouble() || count < 0 || count > most || std::nearbyint(count) != count) {
            complain(PointWords::tr("“%1” is no figure in base units").arg(QLatin1String(key)));
            return 0;
        }
        return std::llround(count);
    }

    CitedCount figure(const char* key, double perUnit)
    {
        const QJsonValue written = value(key);
        if (written.isUndefined()) {
            return {};
        }
        const QJsonObject cell = written.toObject();
        const QJsonValue number =
            written.isObject() ? cell.value(QStringLiteral("value")) : written;
        CitedCount cited;
        cited.standing = standingOf(cell);
        cited.note = cell.value(QStringLiteral("note")).toString().toStdString();
        if (number.isUndefined() == isOffered(cited.standing)) {
            complain(PointWords::tr("“%1” has a figure that is not to be offered, or none")
                         .arg(QLatin1String(key)));
        } else if (number.isArray()) {
            const QJsonArray range = number.toArray();
            cited.least = countFrom(range.at(0), key, perUnit);
            cited.most = countFrom(range.at(1), key, perUnit);
        } else if (isOffered(cited.standing)) {
            cited.least = cited.most = countFrom(number, key, perUnit);
        }
        return cited;
    }

    CitedWords words(const char* key)
    {
        const QJsonValue written = value(key);
        if (written.isUndefined()) {
            return {};
        }
        const QJsonObject cell = written.toObject();
        const QString text =
            written.isObject() ? cell.value(QStringLiteral("text")).toString() : written.toString();
        return {text.toStdString(), standingOf(cell)};
    }

    void checkKeys()
    {
        const QStringList keys = m_object.keys();
        for (const QString& key : keys) {
            const bool isFigure = std::ranges::any_of(figureKeys, [&](const FigureKey& known) {
                return key == QLatin1String(known.key);
            });
            const bool isOther = std::ranges::any_of(
                otherKeys, [&](const char* known) { return key == QLatin1String(known); });
            if (!isFigure && !isOther) {
                complain(PointWords::tr("“%1” is no key").arg(key));
            }
        }
    }

    QJsonObject m_object;
    Standing m_standing = Standing::read; ///< of the row
    QString m_problem;
};

/// The beginning of a word of one in the other.
bool meet(const std::string& word, const QString& asked)
{
    const QString blank(QLatin1Char(' '));
    const QString known = blank + db::foldedWords(QString::fromStdString(word)).trimmed();
    const QString text = blank + asked;
    return text.contains(known) || known.contains(text);
}

bool isFor(const std::vector<std::string>& names, const std::vector<std::string>& words,
           const QString& text)
{
    const QString asked = db::foldedWords(text).simplified();
    const auto meets = [&](const std::string& word) { return meet(word, asked); };
    return asked.isEmpty() || std::ranges::any_of(names, meets) ||
           std::ranges::any_of(words, meets);
}

} // namespace

Result<std::vector<StartingPoint>> startingPointsFrom(const QByteArray& json)
{
    QJsonParseError parsing;
    const QJsonObject object = QJsonDocument::fromJson(json, &parsing).object();
    if (parsing.error != QJsonParseError::NoError) {
        return badPoints(parsing.errorString());
    }
    std::vector<StartingPoint> points;
    const QJsonArray array = object.value(QStringLiteral("starting_points")).toArray();
    for (const auto& value : array) {
        PointReader reader(value.toObject());
        StartingPoint point = reader.read();
        const QString name = QString::fromStdString(point.name);
        if (!reader.problem().isEmpty()) {
            return badPoints(
                PointWords::tr("%1: %2", "starting point, fault").arg(name, reader.problem()));
        }
        if (std::ranges::find(points, point.name, &StartingPoint::name) != points.end()) {
            return badPoints(PointWords::tr("“%1” stands twice").arg(name));
        }
        points.push_back(std::move(point));
    }
    if (points.empty()) {
        return badPoints(PointWords::tr("there is none"));
    }
    return points;
}

std::vector<StartingPoint> publishedStartingPoints()
{
    QFile file(QStringLiteral(":/starting_points/starting_points.json"));
    [[maybe_unused]] const bool opened = file.open(QIODevice::ReadOnly);
    Q_ASSERT(opened);
    return startingPointsFrom(file.readAll()).value();
}

bool isForMuscle(const StartingPoint& point, const QString& text)
{
    return isFor(point.muscles, point.muscleWords, text);
}

bool isForCondition(const StartingPoint& point, const QString& text)
{
    return isFor(point.conditions, point.conditionWords, text);
}

} // namespace quadrille::app
