// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/week_chart.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct WeekWords {
    Q_DECLARE_TR_FUNCTIONS(WeekWords)
};

constexpr double halfWeek = 0.5;
constexpr double pieceInset = 0.08;
constexpr double labelWeeks = 1.6; ///< a longer number needs so much room, at 100 % text
constexpr int shortNumberLength = 3;
constexpr double limitSlack = 1e-9;
constexpr int ratioDecimals = 2;

std::optional<double> valueIn(const std::vector<std::optional<double>>& values, int week)
{
    const auto index = static_cast<std::size_t>(week - 1);
    return index < values.size() ? values[index] : std::nullopt;
}

double placeOf(int week, const WeekWindow& window)
{
    return week - window.firstShown + 1;
}

QString unknown()
{
    return QStringLiteral("—");
}

QString named(const QString& name, Unit unit)
{
    const QString symbol = unitSymbol(unit);
    return symbol.isEmpty() ? name : WeekWords::tr("%1, %2", "name, unit").arg(name, symbol);
}

void setWindow(ChartSpec& spec, const WeekWindow& window)
{
    spec.x.least = halfWeek;
    spec.x.most = placeOf(window.lastShown, window) + halfWeek;
    spec.x.hasGrid = false;
    for (const int week : window.firstWeeks) {
        if (week > window.firstShown && week <= window.lastShown) {
            spec.dividers.push_back(placeOf(week, window) - halfWeek);
        }
    }
    spec.x.title = WeekWords::tr("week of the course");
    spec.x.namedOnPaperOnly = !window.hasNumbers;
    const int step = window.textFactor > 1.4 ? 2 : 1;
    for (int week = window.firstShown; week <= window.lastShown; week += step) {
        spec.x.ticks.push_back(placeOf(week, window));
        spec.x.tickNames.append(QString::number(week));
    }
}

/// Numbers over bars; one that would cover the one before is left out, never that of now.
class BarNumbers
{
public:
    BarNumbers(ChartSpec& spec, const WeeksToShow& weeks, const QuantityText& text)
        : m_spec(spec)
        , m_weeks(weeks)
        , m_text(text)
    {
    }

    void add(int week, double planned, double height)
    {
        const bool isNow = m_weeks.window.now == week;
        const QString number = m_text.shortNumber(planned, m_weeks.decimals);
        const bool nextIsNow = m_weeks.window.now == week + 1;
        const bool isShort = number.size() <= shortNumberLength && m_weeks.window.textFactor <= 1.0;
        const double room = isShort ? 1.0 : labelWeeks * m_weeks.window.textFactor;
        if (!isNow && (week - m_last < room || (nextIsNow && room > 1.0))) {
            return;
        }
        if (isNow && week - m_last < room && !m_spec.texts.empty()) {
            m_spec.texts.pop_back();
        }
        m_spec.texts.push_back(
            {{placeOf(week, m_weeks.window), height}, number, ChartText::Place::above, isNow});
        m_last = week;
    }

private:
    ChartSpec& m_spec;
    const WeeksToShow& m_weeks;
    const QuantityText& m_text;
    double m_last = -100.0;
};

void addBars(ChartSpec& spec, const WeeksToShow& weeks, const QuantityText& text)
{
    ChartBars planned;
    ChartBars done{.heights = {}, .filled = true, .limits = {}};
    double most = 0.0;
    std::optional<double> last;
    BarNumbers numbers(spec, weeks, text);
    for (int week = weeks.window.firstShown; week <= weeks.window.lastShown; ++week) {
        const auto asked = valueIn(weeks.planned, week);
        const auto given = valueIn(weeks.done, week);
        planned.heights.push_back(asked);
        done.heights.push_back(given);
        const bool isMore = asked && given && *given > *asked + limitSlack;
        done.limits.push_back(isMore ? asked : std::nullopt);
        const double height = std::max(asked.value_or(0.0), given.value_or(0.0));
        most = std::max(most, height);
        if (asked && (asked != last || weeks.window.now == week)) {
            numbers.add(week, *asked, height);
        }
        last = asked;
    }
    spec.bars = {std::move(planned), std::move(done)};
    spec.y.ticks = roundTicks(std::max(most, 1.0), 3);
    spec.y.most = std::max(spec.y.ticks.back(), most * 1.15);
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 1));
    }
}

void addTable(ChartSpec& spec, const WeeksToShow& weeks, const QuantityText& text)
{
    const QString unit = unitSymbol(weeks.unit);
    spec.table.columns = {WeekWords::tr("Week"), named(weeks.plannedWord, weeks.unit),
                          named(weeks.doneWord, weeks.unit)};
    const auto count = static_cast<int>(std::max(weeks.planned.size(), weeks.done.size()));
    for (int week = 1; week <= count; ++week) {
        const auto asked = valueIn(weeks.planned, week);
        const auto given = valueIn(weeks.done, week);
        const auto cell = [&](std::optional<double> value) {
            return value ? text.shortNumber(*value, weeks.decimals) : unknown();
        };
        const auto part = [&](std::optional<double> value, const QString& word) {
            const QString number =
                value && !unit.isEmpty() ? cell(value) + noBreakSpace() + unit : cell(value);
            return WeekWords::tr("%1 %2", "value, planned or done").arg(number, word);
        };
        QStringList parts;
        if (asked || !given) {
            parts.append(part(asked, weeks.plannedWord));
        }
        if (given) {
            parts.append(part(given, weeks.doneWord));
        }
        spec.table.rows.push_back({placeOf(week, weeks.window),
                                   {QString::number(week), cell(asked), cell(given)},
                                   parts.join(QStringLiteral(", "))});
    }
}

QString spokenWeeks(const WeeksToShow& weeks, const QuantityText& text)
{
    QStringList changes;
    std::optional<double> last;
    for (std::size_t i = 0; i < weeks.planned.size(); ++i) {
        if (weeks.planned[i] && weeks.planned[i] != last) {
            changes.append(WeekWords::tr("from week %1: %2")
                               .arg(i + 1)
                               .arg(text.shortNumber(*weeks.planned[i], weeks.decimals)));
        }
        last = weeks.planned[i];
    }
    return WeekWords::tr("%1, %2: %3.", "name, planned, values")
        .arg(named(weeks.name, weeks.unit), weeks.plannedWord,
             changes.isEmpty() ? unknown() : changes.join(QStringLiteral(", ")));
}

} // namespace

ChartSpec weekChart(const WeeksToShow& weeks, const QuantityText& text)
{
    ChartSpec spec;
    setWindow(spec, weeks.window);
    addBars(spec, weeks, text);
    addTable(spec, weeks, text);
    spec.title = named(weeks.name, weeks.unit);
    spec.note = WeekWords::tr("outline: %1, filled: %2").arg(weeks.plannedWord, weeks.doneWord);
    spec.spoken = spokenWeeks(weeks, text);
    return spec;
}

ChartSpec weekRatioChart(const WeekRatiosToShow& weeks, const QuantityText& text)
{
    ChartSpec spec;
    setWindow(spec, weeks.window);
    QStringList spoken;
    const WeekWindow& window = weeks.window;
    double most = 1.0;
    for (int week = window.firstShown; week <= window.lastShown;) {
        const auto ratio = valueIn(weeks.ratios, week);
        int end = week + 1;
        while (end <= window.lastShown && valueIn(weeks.ratios, end) == ratio &&
               std::ranges::find(window.firstWeeks, end) == window.firstWeeks.end()) {
            ++end;
        }
        if (ratio) {
            const double from = placeOf(week, window) - halfWeek + pieceInset;
            const double to = placeOf(end, window) - halfWeek - pieceInset;
            spec.lines.push_back({{{from, *ratio}, {to, *ratio}}, ChartLine::Kind::current});
            const bool isNow = window.now && *window.now >= week && *window.now < end;
            const QString value = text.number(*ratio, ratioDecimals);
            spec.texts.push_back(
                {{(from + to) / 2.0, *ratio}, value, ChartText::Place::above, isNow});
            spoken.append(WeekWords::tr("from week %1: %2").arg(week).arg(value));
            most = std::max(most, *ratio);
        }
        week = end;
    }
    spec.y.ticks = {0.0, 0.5, 1.0};
    spec.y.most = most * 1.2; // the value of a ratio near 1 stands above its piece
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.number(tick, 1));
    }
    spec.table.columns = {WeekWords::tr("Week"), weeks.name};
    for (std::size_t i = 0; i < weeks.ratios.size(); ++i) {
        const int week = static_cast<int>(i) + 1;
        const QString value =
            weeks.ratios[i] ? text.number(*weeks.ratios[i], ratioDecimals) : unknown();
        spec.table.rows.push_back({placeOf(week, window), {QString::number(week), value}, value});
    }
    spec.title = weeks.name;
    spec.note = weeks.note;
    spec.spoken = WeekWords::tr("%1, %2: %3.", "name, what must be said, values")
                      .arg(weeks.name, weeks.note,
                           spoken.isEmpty() ? unknown() : spoken.join(QStringLiteral(", ")));
    return spec;
}

} // namespace quadrille::app
