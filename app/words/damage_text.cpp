// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/damage_text.h"

#include "app/words/error_text.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct DamageWords {
    Q_DECLARE_TR_FUNCTIONS(DamageWords)
};

bool helpedByABackup(ErrorCode code)
{
    return code == ErrorCode::notAStore || code == ErrorCode::storeDamaged ||
           code == ErrorCode::logMissing;
}

} // namespace

QString damageText(const Error& error, const QString& store,
                   const std::vector<db::DailyCopy>& copies, const QuantityText& text)
{
    QString sentence = errorText(error, text);
    if (!helpedByABackup(error.code)) {
        return sentence;
    }
    if (copies.empty()) {
        return DamageWords::tr("%1 There is no automatic copy beside it; look for a backup "
                               "elsewhere.")
            .arg(sentence);
    }
    const Date day = std::chrono::floor<std::chrono::days>(copies.front().madeAt);
    return DamageWords::tr("%1 The latest copy is of %2. To restore it: quadrille restore \"%3\" "
                           "--store \"%4\" --force")
        .arg(sentence, text.date(day), copies.front().file, store);
}

} // namespace quadrille::app
