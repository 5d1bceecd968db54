// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/inventory_text.h"

#include <QCoreApplication>
#include <QStringList>

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
    const Loan& loan = *row.loan;
    const QString from = text.date(loan.lentOn);
    QStringList parts{
        loan.givenBackOn
            ? InventoryWords::tr("%1 to %2: %3", "day, day, to whom")
                  .arg(from, text.date(*loan.givenBackOn), holderText(row))
            : InventoryWords::tr("since %1: %2", "day, to whom").arg(from, holderText(row))};
    if (!loan.lentByName.empty()) {
        parts.append(InventoryWords::tr("lent by %1").arg(QString::fromStdString(loan.lentByName)));
    }
    if (!loan.takenBackByName.empty()) {
        parts.append(InventoryWords::tr("taken back by %1")
                         .arg(QString::fromStdString(loan.takenBackByName)));
    }
    return parts.join(QStringLiteral(" · "));
}

} // namespace quadrille::app
