// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/practice/practitioner_choice.h"

#include "db/people.h"

#include <QComboBox>
#include <QVariant>

namespace quadrille::app
{

void fillPractitioners(QComboBox& list, const Services& services)
{
    list.clear();
    const auto practitioners = services.store.read(db::practitioners);
    if (!practitioners) {
        return; // the act that follows reports what is wrong with the store
    }
    for (const Practitioner& practitioner : *practitioners) {
        if (!practitioner.archived && practitioner.id) {
            list.addItem(QString::fromStdString(practitioner.name),
                         QVariant::fromValue<qint64>(practitioner.id->key()));
        }
    }
    const auto working = services.author.practitioner;
    list.setCurrentIndex(working ? list.findData(QVariant::fromValue<qint64>(working->key())) : -1);
}

std::optional<PractitionerId> chosenPractitioner(const QComboBox& list)
{
    return list.currentIndex() < 0 ? std::nullopt
                                   : std::optional(PractitionerId(list.currentData().toLongLong()));
}

} // namespace quadrille::app
