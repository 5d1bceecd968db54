// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/settings_json.h"

#include "app/command_line/csv_table.h"
#include "app/command_line/figures_case.h"
#include "app/words/bad_format.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace quadrille::app
{

namespace
{

struct SettingsJsonWords {
    Q_DECLARE_TR_FUNCTIONS(SettingsJsonWords)
};

constexpr const char* nameMember = "name";
constexpr qint64 mostBytes = 1'000'000;

/// Members that may be left away, and what is then read in their place. Amplitude, pad area and
/// sessions a week are taken out again: no figure may rest on what was not said.
struct OptionalMember {
    const char* name;
    const char* value;
};
constexpr std::array optionalMembers{
    OptionalMember{"ramp_up_s", "0"},         OptionalMember{"ramp_down_s", "0"},
    OptionalMember{"recruitment_model", "0"}, OptionalMember{"amplitude_ma", "0"},
    OptionalMember{"pad_area_cm2", "1"},      OptionalMember{"sessions_per_week", "1"}};

const OptionalMember* optionalMember(const QString& name)
{
    const auto found = std::ranges::find_if(optionalMembers, [&name](const OptionalMember& member) {
        return name == QLatin1String(member.name);
    });
    return found != optionalMembers.end() ? &*found : nullptr;
}

/// The shortest decimal that reads back as the same number, so that 42.5 stays 42.5.
QString decimalOf(double value)
{
    std::array<char, 1200> text{};
    const auto [end, error] =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    return error == std::errc() ? QString::fromLatin1(text.data(), end - text.data()) : QString();
}

/// A member as a cell of a table; nothing when it is no number. The two choices of 0 or 1 may be
/// false or true.
std::optional<QString> cellFrom(const QString& column, const QJsonValue& value)
{
    const bool isChoice =
        column == QLatin1String("ramps_included") || column == QLatin1String("recruitment_model");
    if (isChoice && value.isBool()) {
        return value.toBool() ? QStringLiteral("1") : QStringLiteral("0");
    }
    if (!value.isDouble() || !std::isfinite(value.toDouble())) {
        return std::nullopt;
    }
    return decimalOf(value.toDouble());
}

/// The object as a table of one row, with all of inputColumns().
Result<CsvTable> tableFrom(const QJsonObject& object, const QString& name)
{
    const QStringList columns = inputColumns();
    for (const QString& member : object.keys()) {
        if (member != QLatin1String(nameMember) && !columns.contains(member)) {
            return badFormat(name, SettingsJsonWords::tr("“%1” is not known; known are %2, %3")
                                       .arg(member.simplified().left(60), QLatin1String(nameMember),
                                            columns.join(QStringLiteral(", "))));
        }
    }
    CsvRow row;
    for (const QString& column : columns) {
        const auto member = object.constFind(column);
        if (member == object.constEnd()) {
            const OptionalMember* optional = optionalMember(column);
            if (!optional) {
                return badFormat(name, SettingsJsonWords::tr("%1 is missing").arg(column));
            }
            row.cells.append(QLatin1String(optional->value));
            continue;
        }
        const std::optional<QString> cell = cellFrom(column, *member);
        if (!cell) {
            return badFormat(
                name,
                SettingsJsonWords::tr("%1 is no number; write it without quotes").arg(column));
        }
        row.cells.append(*cell);
    }
    return CsvTable{columns, {row}};
}

} // namespace

QString settingsJsonHelp()
{
    QStringList optional;
    for (const OptionalMember& member : optionalMembers) {
        optional.append(QLatin1String(member.name));
    }
    return SettingsJsonWords::tr("  %1 what the settings are called; else the file’s name\n")
               .arg(QLatin1String(nameMember), -18) +
           inputColumnsHelp() +
           SettingsJsonWords::tr("These may be left away: %1.\n")
               .arg(optional.join(QStringLiteral(", ")));
}

Result<GivenSettings> settingsFromJson(const QByteArray& bytes, const QString& name)
{
    QJsonParseError problem;
    const QJsonDocument document = QJsonDocument::fromJson(bytes, &problem);
    if (problem.error != QJsonParseError::NoError) {
        return badFormat(name, SettingsJsonWords::tr("not JSON at character %1 (%2)")
                                   .arg(QString::number(problem.offset), problem.errorString()));
    }
    if (!document.isObject()) {
        return badFormat(name,
                         SettingsJsonWords::tr("one JSON object with the settings is "
                                               "expected, such as {\"frequency_hz\": 50, …}"));
    }
    const QJsonObject object = document.object();
    const QJsonValue called = object.value(QLatin1String(nameMember));
    if (!called.isUndefined() && (!called.isString() || called.toString().trimmed().isEmpty())) {
        return badFormat(name, SettingsJsonWords::tr("name is no text; write it in quotes"));
    }
    const Result<CsvTable> table = tableFrom(object, name);
    if (!table) {
        return table.error();
    }
    const Result<FiguresCase> given = figuresCaseFrom(*table, table->rows.front(), name);
    if (!given) {
        return given.error();
    }
    GivenSettings result;
    result.phaseDurationRecruits = given->phaseDurationRecruits;
    result.settings.name =
        (called.isUndefined() ? name : called.toString().simplified()).toStdString();
    result.settings.settings = given->settings;
    result.settings.habit = given->habit;
    if (!object.contains(QLatin1String("amplitude_ma"))) {
        result.settings.settings.amplitude = {};
    }
    if (object.contains(QLatin1String("pad_area_cm2"))) {
        result.settings.smallerPad = given->area;
    }
    if (object.contains(QLatin1String("sessions_per_week"))) {
        result.settings.sessionsPerWeek = given->sessionsPerWeek;
    }
    return result;
}

Result<GivenSettings> settingsFromJsonFile(const QString& file)
{
    QFile source(file);
    if (!source.open(QIODevice::ReadOnly)) {
        return Error{ErrorCode::cannotRead,
                     file.toStdString(),
                     source.errorString().toStdString(),
                     Field::none,
                     {}};
    }
    const QByteArray bytes = source.read(mostBytes + 1);
    if (source.error() != QFileDevice::NoError) {
        return Error{ErrorCode::cannotRead,
                     file.toStdString(),
                     source.errorString().toStdString(),
                     Field::none,
                     {}};
    }
    if (bytes.size() > mostBytes) {
        return badFormat(file, SettingsJsonWords::tr("larger than any settings can be"));
    }
    Result<GivenSettings> given = settingsFromJson(bytes, file);
    if (given && given->settings.name == file.toStdString()) {
        given->settings.name = QFileInfo(file).completeBaseName().toStdString();
    }
    return given;
}

} // namespace quadrille::app
