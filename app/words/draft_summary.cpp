// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/draft_summary.h"

#include "app/words/trade_words.h"

#include "core/settings.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct DraftWords {
    Q_DECLARE_TR_FUNCTIONS(DraftWords)
};

QString siteLine(const Site& site, const QuantityText& text)
{
    QStringList settings;
    for (const Field field : {Field::pulseFrequency, Field::phaseDuration, Field::onTime,
                              Field::offTime, Field::sessionLength}) {
        if (const auto count = countIn(site.settings, field)) {
            settings.append(text.setting(field, *count));
        }
    }
    return DraftWords::tr("%1: %2", "site: settings")
        .arg(siteName(site), settings.join(QStringLiteral(", ")));
}

} // namespace

QString draftSummary(const Draft& draft, const std::vector<Stimulator>& units,
                     const QuantityText& text)
{
    QStringList lines;
    const auto unit = std::ranges::find(units, draft.stimulator, &Stimulator::id);
    if (unit != units.end()) {
        lines.append(QString::fromStdString(unit->name));
    }
    CourseWeek week;
    for (const Block& block : draft.blocks) {
        lines.append(DraftWords::tr("%1, %2, %3", "weeks, days, sessions a day")
                         .arg(weeksName(week, block.weeks), scheduleName(block.schedule, text),
                              timesADay(block.sessionsPerDay)));
        for (const Site& site : block.sites) {
            lines.append(siteLine(site, text));
        }
        week.number += block.weeks;
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace quadrille::app
