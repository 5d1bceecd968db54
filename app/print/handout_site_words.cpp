// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_site_words.h"

#include "app/print/handout_words.h"
#include "app/print/rich_text.h"
#include "app/words/trade_words.h"

#include <QStringList>

#include <optional>

namespace quadrille::app
{

namespace
{

QString capitalised(QString text)
{
    if (!text.isEmpty()) {
        text[0] = text[0].toUpper();
    }
    return text;
}

} // namespace

QString dash()
{
    return QStringLiteral("—");
}

QString orDash(const QString& text)
{
    return text.isEmpty() ? dash() : text;
}

QString sentence(const QString& typed)
{
    if (typed.isEmpty()) {
        return {};
    }
    const QString text = capitalised(typed);
    const QChar last = text.back();
    return last.isLetterOrNumber() || last == QLatin1Char(')') ? text + QLatin1Char('.') : text;
}

QString whereOf(const HandoutSite& site)
{
    Site named;
    named.muscle = capitalised(orDash(typedText(site.muscle))).toStdString();
    named.side = site.side;
    return siteName(named);
}

QString padsOf(const std::vector<Pad>& pads, const QuantityText& text)
{
    QStringList sizes;
    for (const Pad& pad : pads) {
        sizes.append(padSize(pad, text));
    }
    const bool same = !sizes.isEmpty() && sizes.count(sizes.front()) == sizes.size();
    if (same && sizes.size() == 2) {
        return sizes.front();
    }
    if (same && sizes.size() > 2) {
        return HandoutWords::tr("%1 pads, each %2")
            .arg(text.count(static_cast<std::int64_t>(pads.size())), sizes.front());
    }
    for (std::size_t i = 0; i < pads.size(); ++i) {
        const QString lead = pads[i].lead == Lead::a ? QStringLiteral("A") : QStringLiteral("B");
        QString& size = sizes[static_cast<qsizetype>(i)];
        size = lead + noBreakSpace() + size;
    }
    return sizes.join(QStringLiteral(", "));
}

bool samePads(const HandoutCard& card, const QuantityText& text)
{
    std::optional<QString> size;
    for (const HandoutSite& site : card.sites) {
        for (const Pad& pad : site.pads) {
            if (size.value_or(padSize(pad, text)) != padSize(pad, text)) {
                return false;
            }
            size = padSize(pad, text);
        }
        if (site.pads.size() != 2) {
            return false;
        }
    }
    return size.has_value();
}

bool inTurn(const HandoutCard& card)
{
    return card.siteOrder == SiteOrder::oneAfterAnother && card.sites.size() > 1;
}

} // namespace quadrille::app
