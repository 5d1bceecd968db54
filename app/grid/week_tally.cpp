// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/week_tally.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>
#include <QStringList>

#include <array>

namespace quadrille::app
{

namespace
{

constexpr int lineHeight = 16;
constexpr int lines = 3;
constexpr int marginGap = 3;
constexpr std::int64_t millisecondsOfMinute = 60'000;

struct Figures {
    QString done;
    QString of;
    QString minutes;
};

Figures figuresOf(const WeekAdherence& week, const QuantityText& text)
{
    const AdherenceFigures& all = week.figures;
    Figures figures;
    if (all.sessions.prescribed() > 0) {
        figures.of = text.count(all.sessions.prescribed());
    }
    if (all.session) {
        figures.done = text.count(all.session->part);
    }
    if (all.time) {
        figures.minutes = text.count(all.time->part / millisecondsOfMinute);
    }
    return figures;
}

} // namespace

WeekTally::WeekTally(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    setObjectName(QStringLiteral("weekTally"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void WeekTally::setWeeks(const std::vector<WeekAdherence>& weeks)
{
    m_weeks = weeks;
    setAccessibleName(spoken());
    update();
}

void WeekTally::setColumns(const Columns& columns)
{
    m_columns = columns;
    update();
}

QString WeekTally::spoken() const
{
    QStringList parts;
    for (const WeekAdherence& week : m_weeks) {
        const Figures figures = figuresOf(week, m_text);
        if (!figures.done.isEmpty()) {
            parts << tr("week %1: %2 of %3, minutes %4")
                         .arg(QString::number(week.week.number), figures.done, figures.of,
                              figures.minutes);
        }
    }
    return parts.join(QStringLiteral("; "));
}

QSize WeekTally::sizeHint() const
{
    return {0, scaled(lines * lineHeight, appliedFactor())};
}

void WeekTally::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    const Tokens tokens = tokensOf(palette());
    const int height = scaled(lineHeight, appliedFactor());
    painter.setFont(fontOf(TextStyle::axis, appliedFactor()));
    const std::array names{tr("done"), tr("of"), tr("min")};
    painter.setPen(tokens.ink3);
    const int namesRight = m_columns.left - 3 * marginGap;
    for (int line = 0; line < lines; ++line) {
        painter.drawText(QRect(0, line * height, namesRight, height),
                         Qt::AlignRight | Qt::AlignVCenter, names[static_cast<std::size_t>(line)]);
    }
    painter.fillRect(QRect(m_columns.left - marginGap - 1, 0, stroke::line, lines * height),
                     tokens.margin);
    for (const WeekAdherence& week : m_weeks) {
        const int column = week.week.number - m_columns.first;
        if (column < 0 || column >= m_columns.count) {
            continue;
        }
        const Figures figures = figuresOf(week, m_text);
        const QRect cell(m_columns.left + column * m_columns.pitch - 2, 0, m_columns.pitch + 4,
                         height);
        painter.setPen(tokens.ink);
        painter.setFont(fontOf(TextStyle::axis, appliedFactor()));
        painter.drawText(cell, Qt::AlignCenter, figures.done);
        painter.setPen(tokens.ink2);
        painter.drawText(cell.translated(0, height), Qt::AlignCenter, figures.of);
        painter.drawText(cell.translated(0, 2 * height), Qt::AlignCenter, figures.minutes);
    }
}

} // namespace quadrille::app
