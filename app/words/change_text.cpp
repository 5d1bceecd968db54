// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/change_text.h"

#include "app/words/electrode_text.h"
#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include "db/codec.h"

#include "core/measurement_kinds.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QStringList>

#include <algorithm>
#include <array>
#include <utility>

namespace quadrille::app
{

namespace
{

struct ChangeWords {
    Q_DECLARE_TR_FUNCTIONS(ChangeWords)
};

/// Words of the store that are no field of a form, and what a person calls them.
struct Name {
    const char* word;
    const char* text;
};

constexpr std::array recordNames{
    Name{"patient", QT_TRANSLATE_NOOP("ChangeWords", "Patient")},
    Name{"course", QT_TRANSLATE_NOOP("ChangeWords", "Course")},
    Name{"draft", QT_TRANSLATE_NOOP("ChangeWords", "Draft")},
    Name{"plan", QT_TRANSLATE_NOOP("ChangeWords", "Plan")},
    Name{"pause", QT_TRANSLATE_NOOP("ChangeWords", "Pause")},
    Name{"screening", QT_TRANSLATE_NOOP("ChangeWords", "Screening")},
    Name{"practice_question", QT_TRANSLATE_NOOP("ChangeWords", "Question of the practice")},
    Name{"screening_override", QT_TRANSLATE_NOOP("ChangeWords", "Reason for going ahead")},
    Name{"house_settings", QT_TRANSLATE_NOOP("ChangeWords", "House settings")},
    Name{"diary_entry", QT_TRANSLATE_NOOP("ChangeWords", "Diary entry")},
    Name{"diary_day", QT_TRANSLATE_NOOP("ChangeWords", "Day of the diary")},
    Name{"diary_received", QT_TRANSLATE_NOOP("ChangeWords", "Diary received")},
    Name{"counter_reading", QT_TRANSLATE_NOOP("ChangeWords", "Counter reading")},
    Name{"measurement", QT_TRANSLATE_NOOP("ChangeWords", "Measurement")},
    Name{"follow_up", QT_TRANSLATE_NOOP("ChangeWords", "Follow-up")},
    Name{"printed_document", QT_TRANSLATE_NOOP("ChangeWords", "Printed page")},
    Name{"clinic_session", QT_TRANSLATE_NOOP("ChangeWords", "Session in the clinic")},
    Name{"electrode_set", QT_TRANSLATE_NOOP("ChangeWords", "Electrode set")},
    Name{"loan", QT_TRANSLATE_NOOP("ChangeWords", "Loan of a unit")},
    Name{"loan_unit", QT_TRANSLATE_NOOP("ChangeWords", "Unit")},
    Name{"stimulator", QT_TRANSLATE_NOOP("ChangeWords", "Stimulator")},
};

constexpr std::array fieldNames{
    Name{"archived", QT_TRANSLATE_NOOP("ChangeWords", "Archived")},
    Name{"note", QT_TRANSLATE_NOOP("ChangeWords", "Note")},
    Name{"email", QT_TRANSLATE_NOOP("ChangeWords", "E-mail")},
    Name{"contact_person", QT_TRANSLATE_NOOP("ChangeWords", "Contact person")},
    Name{"height", QT_TRANSLATE_NOOP("ChangeWords", "Height")},
    Name{"language", QT_TRANSLATE_NOOP("ChangeWords", "Language")},
    Name{"end_reason", QT_TRANSLATE_NOOP("ChangeWords", "Reason of the end")},
    Name{"agreed_return_date", QT_TRANSLATE_NOOP("ChangeWords", "Agreed return of the diary")},
    Name{"adopted_reasons", QT_TRANSLATE_NOOP("ChangeWords", "Reasons of what was adopted")},
    Name{"days_per_week", QT_TRANSLATE_NOOP("ChangeWords", "Days a week")},
    Name{"site_order", QT_TRANSLATE_NOOP("ChangeWords", "Sites at once or in turn")},
    Name{"starting_point", QT_TRANSLATE_NOOP("ChangeWords", "Started from")},
    Name{"changed_since", QT_TRANSLATE_NOOP("ChangeWords", "Changed since")},
    Name{"condition", QT_TRANSLATE_NOOP("ChangeWords", "Condition")},
    Name{"withdrawn", QT_TRANSLATE_NOOP("ChangeWords", "Withdrawn")},
    Name{"to_date", QT_TRANSLATE_NOOP("ChangeWords", "To")},
    Name{"comfort", QT_TRANSLATE_NOOP("ChangeWords", "Comfort")},
    Name{"contractions", QT_TRANSLATE_NOOP("ChangeWords", "Contractions")},
    Name{"duration", QT_TRANSLATE_NOOP("ChangeWords", "Time used")},
    Name{"read_on", QT_TRANSLATE_NOOP("ChangeWords", "Read on")},
    Name{"total_uses", QT_TRANSLATE_NOOP("ChangeWords", "Total uses")},
    Name{"total_time", QT_TRANSLATE_NOOP("ChangeWords", "Total time")},
    Name{"explanation", QT_TRANSLATE_NOOP("ChangeWords", "Explanation")},
    Name{"explanation_words", QT_TRANSLATE_NOOP("ChangeWords", "Explanation in words")},
    Name{"skin_pad", QT_TRANSLATE_NOOP("ChangeWords", "Pad of the skin mark")},
    Name{"through_date", QT_TRANSLATE_NOOP("ChangeWords", "Received through")},
    Name{"received_on", QT_TRANSLATE_NOOP("ChangeWords", "Received on")},
    Name{"remark", QT_TRANSLATE_NOOP("ChangeWords", "Remark")},
    Name{"skin", QT_TRANSLATE_NOOP("ChangeWords", "Skin")},
    Name{"signed_on", QT_TRANSLATE_NOOP("ChangeWords", "Signed on")},
    Name{"signed_by", QT_TRANSLATE_NOOP("ChangeWords", "Key of who signed")},
    Name{"signed_by_name", QT_TRANSLATE_NOOP("ChangeWords", "Signed by")},
    Name{"ordinal", QT_TRANSLATE_NOOP("ChangeWords", "Place in the order")},
    Name{"class", QT_TRANSLATE_NOOP("ChangeWords", "What a yes means")},
    Name{"reach", QT_TRANSLATE_NOOP("ChangeWords", "How far it reaches")},
    Name{"regions", QT_TRANSLATE_NOOP("ChangeWords", "Parts of the body")},
    Name{"wording", QT_TRANSLATE_NOOP("ChangeWords", "Wording")},
    Name{"advice", QT_TRANSLATE_NOOP("ChangeWords", "Advice")},
    Name{"advice_place", QT_TRANSLATE_NOOP("ChangeWords", "Where the advice stands")},
    Name{"answer", QT_TRANSLATE_NOOP("ChangeWords", "Answer")},
    Name{"region", QT_TRANSLATE_NOOP("ChangeWords", "Part of the body")},
    Name{"skin_seen", QT_TRANSLATE_NOOP("ChangeWords", "Skin looked at")},
    Name{"sharp_blunt", QT_TRANSLATE_NOOP("ChangeWords", "Sharp and blunt")},
    Name{"warm_cold", QT_TRANSLATE_NOOP("ChangeWords", "Warm and cold")},
    Name{"questions_version", QT_TRANSLATE_NOOP("ChangeWords", "Set of questions")},
    Name{"decision", QT_TRANSLATE_NOOP("ChangeWords", "Decision")},
    Name{"treated_side", QT_TRANSLATE_NOOP("ChangeWords", "Treated side")},
    Name{"measured_on", QT_TRANSLATE_NOOP("ChangeWords", "Measured on")},
    Name{"kind", QT_TRANSLATE_NOOP("ChangeWords", "Kind")},
    Name{"subject", QT_TRANSLATE_NOOP("ChangeWords", "Of what")},
    Name{"value", QT_TRANSLATE_NOOP("ChangeWords", "Value")},
    Name{"unit", QT_TRANSLATE_NOOP("ChangeWords", "Unit")},
    Name{"method", QT_TRANSLATE_NOOP("ChangeWords", "Method")},
    Name{"device", QT_TRANSLATE_NOOP("ChangeWords", "Device")},
    Name{"counted", QT_TRANSLATE_NOOP("ChangeWords", "How trials count")},
    Name{"issued_on", QT_TRANSLATE_NOOP("ChangeWords", "Handed out on")},
    Name{"description", QT_TRANSLATE_NOOP("ChangeWords", "For")},
    Name{"pads", QT_TRANSLATE_NOOP("ChangeWords", "Number of pads")},
    Name{"type", QT_TRANSLATE_NOOP("ChangeWords", "Type")},
    Name{"shape", QT_TRANSLATE_NOOP("ChangeWords", "Shape")},
    Name{"life_sessions", QT_TRANSLATE_NOOP("ChangeWords", "Life in uses")},
    Name{"life_months", QT_TRANSLATE_NOOP("ChangeWords", "Life in months")},
    Name{"out_of_use_on", QT_TRANSLATE_NOOP("ChangeWords", "Out of use on")},
    Name{"width", QT_TRANSLATE_NOOP("ChangeWords", "Width")},
    Name{"lead", QT_TRANSLATE_NOOP("ChangeWords", "Lead")},
    Name{"lent_on", QT_TRANSLATE_NOOP("ChangeWords", "Lent on")},
    Name{"due_on", QT_TRANSLATE_NOOP("ChangeWords", "Due back on")},
    Name{"given_back_on", QT_TRANSLATE_NOOP("ChangeWords", "Given back on")},
    Name{"serial_number", QT_TRANSLATE_NOOP("ChangeWords", "Serial number")},
    Name{"next_safety_check_on", QT_TRANSLATE_NOOP("ChangeWords", "Next safety check")},
};

template <std::size_t Count>
QString nameIn(const std::array<Name, Count>& names, const QString& word)
{
    for (const Name& name : names) {
        if (word == QLatin1String(name.word)) {
            return QCoreApplication::translate("ChangeWords", name.text);
        }
    }
    return {};
}

/// "on_time" of "on_time_ms".
QString withoutUnit(QString column)
{
    for (const char* unit : {"_ms", "_us", "_mhz", "_ua", "_mm", "_permille", "_thousandths"}) {
        if (column.endsWith(QLatin1String(unit))) {
            return column.chopped(static_cast<qsizetype>(qstrlen(unit)));
        }
    }
    return column;
}

std::optional<Field> fieldOf(const QString& column)
{
    return db::choiceOf<Field>(withoutUnit(column).toStdString());
}

/// The built-in questions by what they ask; one of the practice's own by its number there.
QString questionName(const QString& name)
{
    const QString own = QStringLiteral("own_");
    if (name.startsWith(own)) {
        return ChangeWords::tr("question %1 of the practice").arg(name.mid(own.size()));
    }
    return ChangeWords::tr("question “%1”")
        .arg(QString(name).replace(QLatin1Char('_'), QLatin1Char(' ')));
}

/// "blocks", "1" as "block 1".
QString partName(const QString& part, const QString& number)
{
    if (part == QStringLiteral("blocks")) {
        return ChangeWords::tr("block %1").arg(number);
    }
    if (part == QStringLiteral("sites")) {
        return ChangeWords::tr("site %1").arg(number);
    }
    if (part == QStringLiteral("pads")) {
        return ChangeWords::tr("pad %1").arg(number);
    }
    if (part == QStringLiteral("answers") || part == QStringLiteral("questions")) {
        return questionName(number);
    }
    if (part == QStringLiteral("places")) {
        return ChangeWords::tr("place %1").arg(number);
    }
    if (part == QStringLiteral("skin_tests")) {
        return ChangeWords::tr("skin test %1").arg(number);
    }
    if (part == QStringLiteral("trials")) {
        return ChangeWords::tr("trial %1").arg(number);
    }
    return ChangeWords::tr("%1 %2").arg(part, number).replace(QLatin1Char('_'), QLatin1Char(' '));
}

QString columnName(const QString& column)
{
    if (const auto field = fieldOf(column)) {
        return fieldName(*field);
    }
    const QString name = nameIn(fieldNames, withoutUnit(column));
    return name.isEmpty() ? withoutUnit(column).replace(QLatin1Char('_'), QLatin1Char(' ')) : name;
}

QString fieldText(const std::string& path)
{
    QStringList words = QString::fromStdString(path).split(QLatin1Char('.'));
    const QString column = words.takeLast();
    QStringList parts;
    for (qsizetype i = 0; i + 1 < words.size(); i += 2) {
        parts.append(partName(words[i], words[i + 1]));
    }
    if (words.size() % 2 == 1) { // a list of plain values: "amplitudes.12"
        parts.append(partName(words.last(), column));
    } else {
        parts.append(columnName(column));
    }
    QString text = parts.join(QStringLiteral(", "));
    text[0] = text[0].toUpper();
    return text;
}

/// What a person calls a word that stands for a choice; empty where it says itself.
QString choiceText(const db::Change& change, const QString& column, const std::string& value)
{
    if (change.recordKind == "measurement" && column == QStringLiteral("kind")) {
        return measurementKindName(value);
    }
    if (change.recordKind == "measurement" && column == QStringLiteral("unit")) {
        return QString::fromStdString(tradeUnitOf(value));
    }
    const auto type = db::choiceOf<ElectrodeType>(value);
    return type && column == QStringLiteral("type") ? electrodeTypeName(*type) : QString();
}

/// Words of the store that a person reads as they are, but for their underscores.
bool isChoice(const QString& column)
{
    constexpr std::array columns{"answer", "sharp_blunt", "warm_cold",    "region",     "class",
                                 "reach",  "regions",     "advice_place", "explanation"};
    return std::ranges::any_of(columns,
                               [&](const char* name) { return column == QLatin1String(name); });
}

bool isFlag(const QString& column)
{
    return column == QStringLiteral("archived") || column == QStringLiteral("withdrawn") ||
           column == QStringLiteral("skin_seen") || column == QStringLiteral("changed_since");
}

} // namespace

QString changeText(const db::Change& change)
{
    const QString word = QString::fromStdString(change.recordKind);
    QString record = nameIn(recordNames, word);
    if (record.isEmpty()) {
        record = word;
    }
    switch (change.act) {
    case db::ChangeAct::created:
        return ChangeWords::tr("%1 added").arg(record);
    case db::ChangeAct::removed:
        return change.what == "issue plan" ? ChangeWords::tr("%1 became the plan").arg(record)
                                           : ChangeWords::tr("%1 removed").arg(record);
    case db::ChangeAct::changed:
        break;
    }
    return ChangeWords::tr("%1 · %2", "record, its field").arg(record, fieldText(change.field));
}

QString changedValueText(const db::Change& change, const std::optional<std::string>& value,
                         const QuantityText& text)
{
    if (change.act != db::ChangeAct::changed || !value || value->empty()) {
        return change.act == db::ChangeAct::changed ? QStringLiteral("–") : QString();
    }
    QString shown = QString::fromStdString(*value);
    const QString column = QString::fromStdString(change.field).section(QLatin1Char('.'), -1);
    bool isNumber = false;
    const qlonglong number = shown.toLongLong(&isNumber);
    if (isNumber && isFlag(column)) {
        return number != 0 ? ChangeWords::tr("yes") : ChangeWords::tr("no");
    }
    if (column == QStringLiteral("weekdays") && isNumber) {
        return scheduleName(WeekdaySet::fromBits(static_cast<unsigned>(number)), text);
    }
    if (QString choice = choiceText(change, column, *value); !choice.isEmpty()) {
        return choice;
    }
    const bool hasUnit = withoutUnit(column) != column;
    if (const auto field = fieldOf(column); field && isNumber && hasUnit) {
        return text.setting(*field, number);
    }
    if ((column == QStringLiteral("duration_ms") || column == QStringLiteral("total_time_ms")) &&
        isNumber) {
        return text.shortTime(Milliseconds(number));
    }
    const bool trial = change.field.starts_with("trials.");
    if ((column == QStringLiteral("value_thousandths") || trial) && isNumber) {
        return text.shortNumber(static_cast<double>(number) / 1e3, 3);
    }
    if (column.endsWith(QStringLiteral("_mm")) && isNumber) {
        return ChangeWords::tr("%1 mm").arg(text.count(number));
    }
    if (isChoice(column)) {
        return shown.replace(QLatin1Char('_'), QLatin1Char(' '));
    }
    if (const auto date = dateFromIso(*value)) {
        return text.date(*date);
    }
    return shown;
}

QString changeMomentText(const db::Change& change, const QuantityText& text)
{
    const QDateTime moment =
        QDateTime::fromSecsSinceEpoch(change.madeAt.time_since_epoch().count()).toLocalTime();
    return ChangeWords::tr("%1, %2", "date, time of day")
        .arg(text.date(fromQDate(moment.date())),
             text.locale().toString(moment.time(), QStringLiteral("HH:mm")));
}

} // namespace quadrille::app
