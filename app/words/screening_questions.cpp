// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/screening_questions.h"

#include "db/codec.h"

#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QJsonParseError>

#include <algorithm>
#include <optional>

namespace quadrille::app
{

namespace
{

struct QuestionWords {
    Q_DECLARE_TR_FUNCTIONS(QuestionWords)
};

Error badSet(const QString& detail)
{
    return {.code = ErrorCode::badFormat,
            .subject = QuestionWords::tr("the questions of the screening").toStdString(),
            .detail = detail.toStdString()};
}

template <class Choice>
std::optional<Choice> choiceIn(const QJsonObject& object, const char* key, Choice missing)
{
    const QJsonValue value = object.value(QLatin1String(key));
    return value.isUndefined() ? std::optional(missing)
                               : db::choiceOf<Choice>(value.toString().toStdString());
}

std::string textIn(const QJsonObject& object, const char* key)
{
    return object.value(QLatin1String(key)).toString().toStdString();
}

std::optional<std::vector<BodyRegion>> regionsIn(const QJsonObject& object)
{
    std::vector<BodyRegion> regions;
    for (const auto& word : object.value(QStringLiteral("regions")).toArray()) {
        const auto region = db::choiceOf<BodyRegion>(word.toString().toStdString());
        if (!region) {
            return std::nullopt;
        }
        regions.push_back(*region);
    }
    return regions;
}

Result<ScreeningQuestion> questionFrom(const QJsonObject& object)
{
    ScreeningQuestion question;
    question.name = textIn(object, "name");
    const QString name = QString::fromStdString(question.name);
    question.wording = textIn(object, "wording");
    question.reason = textIn(object, "reason");
    question.advice = textIn(object, "advice");
    QString source = object.value(QStringLiteral("source")).toString();
    if (question.name.empty() || question.wording.empty() || question.reason.empty() ||
        source.isEmpty()) {
        return badSet(
            QuestionWords::tr("name, wording, reason or source of “%1” is missing").arg(name));
    }
    if (object.value(QStringLiteral("from_memory")).toBool()) {
        source = QuestionWords::tr("%1 (from memory, not checked against the text)").arg(source);
    }
    question.source = source.toStdString();
    const auto weight = db::choiceOf<QuestionClass>(textIn(object, "class"));
    const auto reach = choiceIn(object, "reach", Reach::region);
    const auto place = choiceIn(object, "advice_place", AdvicePlace::before);
    const auto regions = regionsIn(object);
    if (!weight || !reach || !place || !regions) {
        return badSet(
            QuestionWords::tr("class, reach, regions or advice of “%1” are not understood")
                .arg(name));
    }
    question.questionClass = *weight;
    question.reach = *reach;
    question.adviceAt = *place;
    question.regions = *regions;
    return question;
}

} // namespace

Result<QuestionSet> questionSetFrom(const QByteArray& json)
{
    QJsonParseError parsing;
    const QJsonObject object = QJsonDocument::fromJson(json, &parsing).object();
    if (parsing.error != QJsonParseError::NoError) {
        return badSet(parsing.errorString());
    }
    QuestionSet set;
    set.version = object.value(QStringLiteral("version")).toInt();
    if (set.version < 1) {
        return badSet(QuestionWords::tr("the version is missing"));
    }
    for (const auto& value : object.value(QStringLiteral("questions")).toArray()) {
        auto question = questionFrom(value.toObject());
        if (!question) {
            return question.error();
        }
        if (std::ranges::find(set.questions, question->name, &ScreeningQuestion::name) !=
            set.questions.end()) {
            return badSet(
                QuestionWords::tr("“%1” stands twice").arg(QString::fromStdString(question->name)));
        }
        set.questions.push_back(std::move(*question));
    }
    if (set.questions.empty()) {
        return badSet(QuestionWords::tr("there is no question"));
    }
    return set;
}

QuestionSet builtInQuestions()
{
    QFile file(QStringLiteral(":/screening/questions.json"));
    [[maybe_unused]] const bool opened = file.open(QIODevice::ReadOnly);
    Q_ASSERT(opened);
    return questionSetFrom(file.readAll()).value();
}

QuestionSet questionsToAsk(const std::vector<PracticeQuestion>& own)
{
    QuestionSet set = builtInQuestions();
    for (const PracticeQuestion& question : own) {
        if (!question.archived) {
            set.questions.push_back(asked(question));
        }
    }
    return set;
}

} // namespace quadrille::app
