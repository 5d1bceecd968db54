// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/caseload_key.h"

#include "db/codec.h"
#include "db/rows.h"

#include <QStringList>

#include <array>
#include <optional>
#include <utility>
#include <vector>

namespace quadrille::db
{

namespace
{

constexpr const char* noEnd = "9999-12-31";

constexpr std::array<std::pair<char16_t, const char*>, 9> unaccented{{{u'ø', "o"},
                                                                      {u'ł', "l"},
                                                                      {u'đ', "d"},
                                                                      {u'ð', "d"},
                                                                      {u'þ', "th"},
                                                                      {u'æ', "ae"},
                                                                      {u'œ', "oe"},
                                                                      {u'ß', "ss"},
                                                                      {u'ı', "i"}}};

void appendFolded(QString& result, QChar letter)
{
    for (const auto& [special, plain] : unaccented) {
        if (letter == QChar(special)) {
            result += QLatin1StringView(plain);
            return;
        }
    }
    result += letter.isLetterOrNumber() ? letter : QChar(u' ');
}

struct Key {
    std::optional<std::int64_t> course = std::nullopt;
    std::string endsOn = noEnd;
    QStringList words;
};

/// The course shown goes first: one without a last day before the others, then the one that ends
/// later, then the later start.
void addCourses(const Connection& connection, PatientId patient, Key& key)
{
    Statement rows(connection,
                   "SELECT id, problem, end_date FROM course WHERE patient = ? ORDER BY "
                   "CASE WHEN end_date IS NULL THEN 0 ELSE 1 END, end_date DESC, "
                   "start_date DESC, number DESC");
    rows.bind({valueOf(patient)});
    while (rows.next()) {
        const std::int64_t course = rows.takeInteger();
        key.words << QString::fromStdString(rows.takeText());
        const auto endDate = rows.takeOptionalText();
        if (!key.course) {
            key.course = course;
            key.endsOn = endDate.value_or(noEnd);
        }
    }
}

void addSites(const Connection& connection, PatientId patient, Key& key)
{
    Statement rows(connection,
                   "SELECT DISTINCT site.muscle, site.side FROM course "
                   "JOIN plan ON plan.course = course.id JOIN block ON block.plan = plan.id "
                   "JOIN site ON site.block = block.id WHERE course.patient = ?");
    rows.bind({valueOf(patient)});
    while (rows.next()) {
        key.words << QString::fromStdString(rows.takeText());
        key.words << QString::fromStdString(rows.takeText());
    }
}

} // namespace

QString foldedWords(const QString& text)
{
    QString result;
    const QString parts = text.toCaseFolded().normalized(QString::NormalizationForm_KD);
    for (const QChar letter : parts) {
        if (!letter.isMark()) {
            appendFolded(result, letter);
        }
    }
    return result.simplified();
}

void refreshCaseloadKey(const Connection& connection, PatientId patient)
{
    Key key;
    QString name;
    {
        Statement row(connection,
                      "SELECT name, reference FROM patient WHERE id = ? AND archived = 0");
        row.bind({valueOf(patient)});
        if (!row.next()) {
            Statement(connection, "DELETE FROM caseload_key WHERE patient = ?")
                .bind({valueOf(patient)})
                .run();
            return;
        }
        name = QString::fromStdString(row.takeText());
        key.words << name << QString::fromStdString(row.takeText());
    }
    addCourses(connection, patient, key);
    addSites(connection, patient, key);
    key.words.removeDuplicates();
    Statement(connection, "INSERT INTO caseload_key (patient, course, ends_on, name, words) "
                          "VALUES (?, ?, ?, ?, ?) ON CONFLICT (patient) DO UPDATE SET course = "
                          "excluded.course, ends_on = excluded.ends_on, name = excluded.name, "
                          "words = excluded.words")
        .bind({valueOf(patient), key.course ? Value(*key.course) : Value(), key.endsOn,
               foldedWords(name).toStdString(),
               foldedWords(key.words.join(QLatin1Char(' '))).toStdString()})
        .run();
}

void refreshCaseloadKeys(const Connection& connection)
{
    run(connection, "DELETE FROM caseload_key");
    std::vector<PatientId> patients;
    {
        Statement rows(connection, "SELECT id FROM patient WHERE archived = 0");
        while (rows.next()) {
            patients.emplace_back(rows.takeInteger());
        }
    }
    for (const PatientId patient : patients) {
        refreshCaseloadKey(connection, patient);
    }
}

} // namespace quadrille::db
