// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/import_diary_report.h"

#include "app/diary_import/import_words.h"
#include "app/words/quantity_text.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <array>

namespace quadrille::app
{

namespace
{

struct ImportReportWords {
    Q_DECLARE_TR_FUNCTIONS(ImportReportWords)
};

constexpr std::array allStates{RowState::fresh,       RowState::same,        RowState::conflict,
                               RowState::beforeStart, RowState::afterEnd,    RowState::afterToday,
                               RowState::repeated,    RowState::saysNothing, RowState::invalid};
static_assert(allStates.size() == rowStates);

QString iso(Date day)
{
    return QString::fromStdString(isoDate(day));
}

/// "Line 3, 2026-03-09, session 1"
QString placeOf(const ImportReport& report, const ImportRow& row)
{
    const ReportedRow& told = report.rows[row.reported];
    QString place = placeName(told.line, report.file.isJson);
    if (told.day) {
        place += QStringLiteral(", ") + iso(*told.day);
    }
    if (row.session) {
        place += ImportReportWords::tr(", session %1")
                     .arg(report.import.sessions[*row.session].file.sessionNumber);
    }
    return place;
}

/// Both sides of a conflict, what is on file first.
QStringList bothSides(const ImportReport& report, const ImportRow& row)
{
    const QuantityText text(QLocale::c());
    const auto sides = [](const QString& ours, const QString& file) {
        return ImportReportWords::tr("on file: %1; in the file: %2").arg(ours, file);
    };
    QStringList both;
    if (row.session) {
        const auto& item = report.import.sessions[*row.session];
        if (item.state == RowState::conflict) {
            both.append(sides(sessionWords(*item.ours, text), sessionWords(item.file, text)));
        }
    }
    if (row.day) {
        const auto& item = report.import.days[*row.day];
        if (item.state == RowState::conflict) {
            both.append(sides(dayWords(*item.ours, text), dayWords(item.file, text)));
        }
    }
    return both;
}

QStringList faultsOf(const ImportReport& report, const ImportRow& row)
{
    QStringList sentences;
    for (const CellFault& fault : row.faults) {
        sentences.append(faultSentence(fault, report.file.table.headings(), report.file.isJson));
    }
    return sentences;
}

QJsonObject jsonOf(const ImportReport& report, const ImportRow& row)
{
    const ReportedRow& told = report.rows[row.reported];
    QJsonObject object{
        {QStringLiteral("line"), told.line},
        {QStringLiteral("state"), stateWord(row.state)},
        {QStringLiteral("date"),
         told.day ? QJsonValue(iso(*told.day)) : QJsonValue(QJsonValue::Null)},
        {QStringLiteral("taken"), report.import.takes(row)},
    };
    if (row.session) {
        object.insert(QStringLiteral("session"),
                      report.import.sessions[*row.session].file.sessionNumber);
    }
    if (row.state == RowState::repeated) {
        object.insert(QStringLiteral("as_line"), row.otherLine);
    }
    if (row.state == RowState::conflict) {
        object.insert(QStringLiteral("differs"),
                      QJsonArray::fromStringList(bothSides(report, row)));
    }
    if (!row.faults.empty()) {
        object.insert(QStringLiteral("faults"), QJsonArray::fromStringList(faultsOf(report, row)));
    }
    return object;
}

} // namespace

QString importReportText(const ImportReport& report)
{
    QStringList lines{ImportReportWords::tr("Diary of patient %1, course %2, from %3:")
                          .arg(report.patient, QString::number(report.course), report.file.name)};
    lines += countSentences(report.import);
    for (const ImportRow& row : report.import.rows) {
        if (row.state == RowState::conflict) {
            lines.append(ImportReportWords::tr("%1: %2. %3")
                             .arg(placeOf(report, row),
                                  bothSides(report, row).join(QStringLiteral("; ")),
                                  row.takeFile ? ImportReportWords::tr("The file’s is taken.")
                                               : ImportReportWords::tr("What is on file stays.")));
        } else if (row.state == RowState::invalid) {
            lines.append(
                ImportReportWords::tr("%1: %2", "line of the file, what is wrong there")
                    .arg(placeOf(report, row), faultsOf(report, row).join(QLatin1Char(' '))));
        }
    }
    const auto taken = static_cast<int>(report.import.rowsTaken());
    lines.append(report.isDone
                     ? ImportReportWords::tr("%n row(s) are taken over.", nullptr, taken)
                     : ImportReportWords::tr("%n row(s) would be taken over; nothing was saved.",
                                             nullptr, taken));
    if (report.through) {
        lines.append((report.isDone
                          ? ImportReportWords::tr("The diary is complete through %1.")
                          : ImportReportWords::tr("The diary would be complete through %1."))
                         .arg(iso(*report.through)));
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

QByteArray importReportJson(const ImportReport& report)
{
    QJsonObject counts{{QStringLiteral("rows"), static_cast<qint64>(report.import.rows.size())}};
    for (const RowState state : allStates) {
        counts.insert(stateWord(state), static_cast<qint64>(report.import.count(state)));
    }
    QJsonArray rows;
    for (const ImportRow& row : report.import.rows) {
        rows.append(jsonOf(report, row));
    }
    const QJsonObject whole{
        {QStringLiteral("file"), report.file.name},
        {QStringLiteral("patient"), report.patient},
        {QStringLiteral("course"), report.course},
        {QStringLiteral("done"), report.isDone},
        {QStringLiteral("counts"), counts},
        {QStringLiteral("rows_taken"), static_cast<qint64>(report.import.rowsTaken())},
        {QStringLiteral("complete_through"),
         report.through ? QJsonValue(iso(*report.through)) : QJsonValue(QJsonValue::Null)},
        {QStringLiteral("rows"), rows},
    };
    return QJsonDocument(whole).toJson();
}

QString importReportHelp()
{
    QStringList states;
    for (const RowState state : allStates) {
        states.append(stateWord(state));
    }
    return ImportReportWords::tr(
               "--json writes file, patient, course, done, counts (rows and one for each state), "
               "rows_taken, complete_through and rows: line, state, date, session, taken, and "
               "as_line, differs or faults where a row has them. States: %1.")
        .arg(states.join(QStringLiteral(", ")));
}

} // namespace quadrille::app
