// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/inventory_text.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct InventoryWords {
    Q_DECLARE_TR_FUNCTIONS(InventoryWords)
};

} // namespace

QString holderText(const db::InventoryRow& row)
{
    if (!row.patient) {
        return {};
    }
    return InventoryWords::tr("%1 (%2), %3", "name, reference, problem")
        .arg(QString::fromStdString(row.patientName), QString::fromStdString(row.patientReference),
             QString::fromStdString(row.problem));
}

QString dueText(const std::optional<Date>& due, Date today, const QuantityText& text)
{
    if (!due) {
        return QStringLiteral("—");
    }
    if (*due >= today) {
        return text.date(*due);
    }
    return InventoryWords::tr("%n day(s) overdue, %1", nullptr,
                              static_cast<int>((today - *due).count()))
        .arg(text.date(*due));
}

QString pastLoanText(const db::InventoryRow& row, const QuantityText& text)
{
    const QString from = text.date(row.loan->lentOn);
    return row.loan->givenBackOn
               ? InventoryWords::tr("%1 to %2: %3", "day, day, to whom")
                     .arg(from, text.date(*row.loan->givenBackOn), holderText(row))
               : InventoryWords::tr("since %1: %2", "day, to whom").arg(from, holderText(row));
}

} // namespace quadrille::app
