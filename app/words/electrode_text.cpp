// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/electrode_text.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct ElectrodeWords {
    Q_DECLARE_TR_FUNCTIONS(ElectrodeWords)
};

} // namespace

QString electrodeTypeName(ElectrodeType type)
{
    switch (type) {
    case ElectrodeType::selfAdhesive:
        return ElectrodeWords::tr("self-adhesive");
    case ElectrodeType::carbonRubberSponge:
        return ElectrodeWords::tr("carbon rubber, wetted sponge and straps");
    case ElectrodeType::carbonRubberGel:
        break;
    }
    return ElectrodeWords::tr("carbon rubber, gel");
}

QString electrodeSetName(const ElectrodeSet& set, const QuantityText& text)
{
    QStringList parts;
    if (set.type) {
        parts.append(electrodeTypeName(*set.type));
    }
    if (set.shape) {
        Pad pad;
        pad.shape = *set.shape;
        pad.width = set.width;
        pad.height = set.height;
        parts.append(padSize(pad, text));
    }
    parts.prepend(ElectrodeWords::tr("%n pad(s)", nullptr, set.pads));
    return parts.join(QStringLiteral(", "));
}

QString usesText(const ElectrodeSet& set, const ElectrodeWear& wear, const QuantityText& text)
{
    return set.life.uses ? ElectrodeWords::tr("%1 of %2", "uses of the life")
                               .arg(text.count(wear.uses), text.count(*set.life.uses))
                         : text.count(wear.uses);
}

QString lifeText(const ElectrodeLife& life)
{
    QStringList parts;
    if (life.uses) {
        parts.append(ElectrodeWords::tr("%n use(s)", nullptr, *life.uses));
    }
    if (life.months) {
        parts.append(ElectrodeWords::tr("%n month(s)", nullptr, *life.months));
    }
    return parts.isEmpty() ? QStringLiteral("—")
                           : parts.join(ElectrodeWords::tr(" or ", "20 uses or 1 month"));
}

QString electrodeStateText(const ElectrodeSet& set, const ElectrodeWear& wear,
                           const QuantityText& text)
{
    if (set.withdrawn) {
        return ElectrodeWords::tr("withdrawn");
    }
    if (set.outOfUseOn && !wear.inUse) {
        return ElectrodeWords::tr("out of use since %1").arg(text.date(*set.outOfUseOn));
    }
    if (wear.replacementDue() && wear.usedUp) {
        return ElectrodeWords::tr("replace: %1 uses").arg(usesText(set, wear, text));
    }
    if (wear.replacementDue()) {
        return ElectrodeWords::tr("replace: too old since %1")
            .arg(text.date(wear.tooOldFrom.value_or(set.issuedOn)));
    }
    return wear.inUse ? ElectrodeWords::tr("in use") : ElectrodeWords::tr("not yet in use");
}

} // namespace quadrille::app
