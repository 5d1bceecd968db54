// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backup.h"
#include "db/caught.h"
#include "db/codec.h"
#include "db/file_system.h"

#include "core/backup_retention.h"

#include <QDir>
#include <QFileInfo>
#include <QRegularExpression>

#include <algorithm>

namespace quadrille::db
{

namespace
{

const QString ending = QStringLiteral(".quadrille");

QString stemOf(const QString& store)
{
    const QString name = QFileInfo(store).fileName();
    return name.endsWith(ending) ? name.chopped(ending.size()) : name;
}

std::optional<Moment> momentFromCompact(const QString& text)
{
    static const QRegularExpression shape(
        QStringLiteral("^(\\d{4})(\\d\\d)(\\d\\d)T(\\d\\d)(\\d\\d)(\\d\\d)Z$"));
    const auto parts = shape.match(text);
    if (!parts.hasMatch()) {
        return std::nullopt;
    }
    return momentFromIso(QStringLiteral("%1-%2-%3T%4:%5:%6Z")
                             .arg(parts.captured(1), parts.captured(2), parts.captured(3),
                                  parts.captured(4), parts.captured(5), parts.captured(6))
                             .toStdString());
}

QString startOfCopies(const QString& store)
{
    return stemOf(store) + QStringLiteral(".copy-");
}

void removeOld(const QString& store, const QString& folder, Date today)
{
    const auto copies = dailyCopiesOf(store, folder);
    std::vector<Moment> moments;
    std::ranges::transform(copies, std::back_inserter(moments), &DailyCopy::madeAt);
    const auto keep = copiesToKeep(moments, today);
    for (std::size_t i = 0; i < copies.size(); ++i) {
        if (!keep[i]) {
            QFile::remove(copies[i].file);
        }
    }
}

/// Whether a store holds the patient: the key, with the reference, name or birth date, in case it
/// is another practice's file; any of them may have been corrected since. Nothing where it can't be
/// told.
std::optional<bool> holds(const QString& file, const Patient& patient)
{
    if (QFileInfo::exists(file + QLatin1String(dialect::writeAheadLogEnding))) {
        return std::nullopt; // the file alone is not all
    }
    try {
        const Connection copy(file, Access::frozen, usualPatience);
        return numberFrom(copy,
                          "SELECT id FROM patient WHERE id = ? AND (reference = ? OR name = ? OR "
                          "birth_date = ?)",
                          {valueOf(*patient.id), valueOf(patient.reference), valueOf(patient.name),
                           valueOf(patient.birthDate)})
            .has_value();
    } catch (const SqlError&) {
        return std::nullopt;
    } catch (const Failure&) {
        return std::nullopt;
    }
}

} // namespace

std::vector<DailyCopy> dailyCopiesOf(const QString& store, const QString& folder)
{
    std::vector<DailyCopy> copies;
    const QString start = startOfCopies(store);
    const QDir place(folder);
    for (const QString& name : place.entryList(QDir::Files)) {
        if (!name.startsWith(start) || !name.endsWith(ending)) {
            continue;
        }
        const QString when = name.mid(start.size()).chopped(ending.size());
        if (const auto moment = momentFromCompact(when)) {
            copies.push_back({place.filePath(name), *moment});
        }
    }
    std::ranges::sort(copies, std::ranges::greater(), &DailyCopy::madeAt);
    return copies;
}

QString usualCopyFolder(const QString& store)
{
    return QFileInfo(store).absolutePath() + QStringLiteral("/copies");
}

Result<std::optional<QString>> copyOnceADay(const QString& store, const QString& folder,
                                            const Clock& clock)
{
    const auto copies = dailyCopiesOf(store, folder);
    const auto dayOf = [](const DailyCopy& copy) {
        return std::chrono::floor<std::chrono::days>(copy.madeAt);
    };
    const Date today = std::chrono::floor<std::chrono::days>(clock.now());
    if (std::ranges::find(copies, today, dayOf) != copies.end()) {
        return std::optional<QString>();
    }
    if (!makePrivateFolder(folder)) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = folder.toStdString(),
                     .detail = "the folder can’t be made"};
    }
    const QString file =
        QDir(folder).filePath(startOfCopies(store) + momentInFileName(clock.now()) + ending);
    if (const auto written = writeBackup(store, file, std::nullopt); !written) {
        return written.error();
    }
    removeOld(store, folder, today);
    return std::optional(file);
}

QStringList copiesHolding(const Patient& patient, const QString& store, const QStringList& folders)
{
    QStringList found;
    const QString own = QFileInfo(store).absoluteFilePath();
    for (const QString& folder : folders) {
        const QDir place(folder);
        for (const QFileInfo& entry : place.entryInfoList(QDir::Files, QDir::Name)) {
            const QString file = entry.absoluteFilePath();
            if (file == own || file.startsWith(own + QLatin1Char('-')) || found.contains(file)) {
                continue;
            }
            // Whatever else lies there is not ours; what bears the store's name is.
            const bool mayHold = entry.fileName().startsWith(stemOf(store));
            if (isSealed(file) || holds(file, patient).value_or(mayHold)) {
                found.append(file);
            }
        }
    }
    return found;
}

} // namespace quadrille::db
