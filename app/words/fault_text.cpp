// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/fault_text.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct FaultWords {
    Q_DECLARE_TR_FUNCTIONS(FaultWords)
};

QString kindOf(db::Fault fault)
{
    switch (fault) {
    case db::Fault::damage:
        return FaultWords::tr("The file is damaged");
    case db::Fault::reference:
        return FaultWords::tr("A record belongs to one that is missing");
    case db::Fault::schema:
        return FaultWords::tr("The structure was changed");
    case db::Fault::changedPlan:
        return FaultWords::tr("An issued plan was changed");
    case db::Fault::brokenChain:
        return FaultWords::tr("The change record was tampered with");
    case db::Fault::changedValue:
        return FaultWords::tr("A value in the change record was changed");
    case db::Fault::orphan:
        return FaultWords::tr("A record belongs to nothing");
    case db::Fault::date:
        return FaultWords::tr("Dates contradict each other");
    case db::Fault::value:
        break;
    }
    return FaultWords::tr("A value is not what its parts make");
}

} // namespace

QString faultText(const db::Complaint& complaint)
{
    QString text = kindOf(complaint.fault);
    for (const std::string& part : {complaint.place, complaint.detail}) {
        if (!part.empty()) {
            text = FaultWords::tr("%1: %2", "what is wrong, where")
                       .arg(text, QString::fromStdString(part));
        }
    }
    return text;
}

} // namespace quadrille::app
