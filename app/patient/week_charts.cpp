// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/week_charts.h"

#include "app/charts/chart_acts.h"
#include "app/charts/chart_link.h"
#include "app/charts/chart_view.h"
#include "app/charts/week_chart.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/model_text.h"

#include <QEvent>
#include <QLabel>
#include <QStringList>
#include <QVBoxLayout>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

constexpr int barsHeight = 92; ///< the least; charts grow with the window
constexpr int ratioHeight = 78;
constexpr double mostGrowth = 1.5;
constexpr int numbersRoom = 34; ///< below the last chart
constexpr double millisecondsInMinute = 6e4;

double minutes(Milliseconds time)
{
    return static_cast<double>(time.count()) / millisecondsInMinute;
}

/// A figure of each week.
template <class Figure>
std::vector<std::optional<double>> figures(const std::vector<WeekDose>& weeks, Figure figureOf)
{
    std::vector<std::optional<double>> values;
    std::ranges::transform(weeks, std::back_inserter(values), figureOf);
    return values;
}

template <class Figure>
auto ofDose(std::optional<SittingDose> WeekDose::*dose, Figure figureOf)
{
    return [dose, figureOf](const WeekDose& week) {
        return week.*dose ? std::optional<double>(figureOf(*(week.*dose))) : std::nullopt;
    };
}

auto ofAmplitude(std::optional<Amplitude> WeekDose::*amplitude)
{
    return [amplitude](const WeekDose& week) {
        return week.*amplitude ? std::optional((week.*amplitude)->shown()) : std::nullopt;
    };
}

} // namespace

WeekCharts::WeekCharts(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_text(services.text)
    , m_noFatigue(new QLabel(this))
    , m_readout(new QLabel(this))
    , m_total(new QLabel(this))
    , m_link(new ChartLink(this))
{
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::hair);
    m_contractions =
        addChart(services, tr("Contractions per week"), "contractionsChart", barsHeight);
    m_onTime = addChart(services, tr("On time per week"), "onTimeChart", barsHeight);
    m_fatigue =
        addChart(services, tr("Fatigue ratio by week, predicted"), "fatigueChart", ratioHeight);
    m_noFatigue->setWordWrap(true);
    m_noFatigue->setObjectName(QStringLiteral("noWeekFatigue"));
    setRole(*m_noFatigue, Role::captionText);
    layout->addWidget(m_noFatigue);
    m_amplitude = addChart(services, tr("Highest amplitude by week"), "amplitudeChart",
                           barsHeight + numbersRoom);
    m_readout->setWordWrap(true);
    m_readout->setObjectName(QStringLiteral("weekReadout"));
    setRole(*m_readout, Role::secondLineText);
    m_total->setAlignment(Qt::AlignRight);
    m_total->setObjectName(QStringLiteral("weekTotal"));
    layout->addWidget(m_readout);
    layout->addWidget(m_total);
    connect(m_link, &ChartLink::moved, this, &WeekCharts::readOut);
    setHeights();
}

WeekCharts::Chart WeekCharts::addChart(const Services& services, const QString& name,
                                       const char* objectName, int height)
{
    Chart chart{new QLabel(this), new ChartView(this), height};
    chart.title->setWordWrap(true);
    chart.view->setObjectName(QLatin1String(objectName));
    chart.view->setAccessibleName(name);
    chart.view->setReadable(true);
    m_link->add(*chart.view);
    auto* acts = new ChartActs(
        *chart.view, services.text, services.prompts,
        name.toLower().remove(QLatin1Char(',')).replace(QLatin1Char(' '), QLatin1Char('-')));
    connect(acts, &ChartActs::said, this, &WeekCharts::said);
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    all->addWidget(chart.title);
    all->addWidget(chart.view);
    return chart;
}

void WeekCharts::setHeights()
{
    for (const Chart& chart : {m_contractions, m_onTime, m_fatigue, m_amplitude}) {
        const int least = scaled(chart.height, appliedFactor());
        chart.view->setMinimumHeight(least);
        chart.view->setMaximumHeight(qRound(mostGrowth * least));
    }
}

void WeekCharts::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        setHeights();
    }
}

void WeekCharts::setContent(const Content& content)
{
    m_content = content;
    draw();
}

void WeekCharts::setFatigue(const MuscleByWeek& fatigue)
{
    m_ratios = fatigue;
    drawFatigue();
}

void WeekCharts::setColumns(const Columns& columns)
{
    if (columns != m_columns) {
        m_columns = columns;
        // The crosshair would stand on another week.
        for (const Chart& chart : {m_contractions, m_onTime, m_fatigue, m_amplitude}) {
            chart.view->setCrosshair(std::nullopt);
        }
        draw();
    }
}

void WeekCharts::draw()
{
    const WeekWindow window{m_content.firstWeeks, m_columns.firstShown, m_columns.lastShown,
                            m_content.now};
    WeeksToShow shown{.plannedWord = tr("planned"), .doneWord = tr("done"), .window = window};
    const auto put = [&](const Chart& chart) {
        const int below =
            shown.window.hasNumbers ? scaled(numbersRoom, appliedFactor()) : space::tiny;
        chart.view->setPlotMargins({m_columns.left, space::close, m_columns.right, below});
        const QString unit = unitSymbol(shown.unit);
        chart.title->setText(tr("<b>%1</b>%2: outline %3, filled %4")
                                 .arg(shown.name, unit.isEmpty() ? unit : tr(", %1").arg(unit),
                                      shown.plannedWord, shown.doneWord));
        chart.view->setSpec(weekChart(shown, m_text));
    };
    const auto contractionsOf = [](const SittingDose& dose) {
        return static_cast<double>(dose.contractions);
    };
    const auto onTimeOf = [](const SittingDose& dose) { return minutes(dose.onTime); };
    shown.name = tr("Contractions per week");
    shown.planned = figures(m_content.weeks, ofDose(&WeekDose::prescribed, contractionsOf));
    shown.done = figures(m_content.weeks, ofDose(&WeekDose::delivered, contractionsOf));
    put(m_contractions);
    shown.name = tr("On time per week");
    shown.unit = Unit::minute;
    shown.decimals = 1;
    shown.planned = figures(m_content.weeks, ofDose(&WeekDose::prescribed, onTimeOf));
    shown.done = figures(m_content.weeks, ofDose(&WeekDose::delivered, onTimeOf));
    put(m_onTime);
    drawFatigue();
    shown.name = tr("Highest amplitude by week");
    shown.unit = Unit::milliampere;
    shown.doneWord = tr("reported");
    shown.planned = figures(m_content.weeks, ofAmplitude(&WeekDose::planned));
    shown.done = figures(m_content.weeks, ofAmplitude(&WeekDose::reported));
    shown.window.hasNumbers = true;
    shown.window.textFactor = appliedFactor();
    put(m_amplitude);
    drawTotal();
    readOut();
}

void WeekCharts::drawFatigue()
{
    WeekRatiosToShow shown{.name = tr("Fatigue ratio by week, predicted")};
    shown.note = modelMark();
    shown.window = {m_content.firstWeeks, m_columns.firstShown, m_columns.lastShown, m_content.now};
    bool any = false;
    for (const WeekFatigue& week : m_ratios.weeks) {
        const auto ratio = week.ratio ? std::optional(week.ratio->forceTimeIntegral) : std::nullopt;
        any = any || ratio;
        shown.ratios.push_back(ratio);
    }
    m_fatigue.title->setText(
        m_ratios.muscle.isEmpty() || !any
            ? tr("<b>Fatigue ratio by week, predicted</b>: %1").arg(modelMark())
            : tr("<b>Fatigue ratio by week, predicted</b>, %1: %2")
                  .arg(m_ratios.muscle.toHtmlEscaped(), modelMark()));
    m_noFatigue->setText(m_ratios.isPending
                             ? modelPendingText()
                             : tr("No block can be compared with this one: the model only compares "
                                  "blocks that differ in off time or session length alone."));
    m_noFatigue->setVisible(!any);
    m_fatigue.view->setVisible(any);
    m_fatigue.view->setPlotMargins({m_columns.left, space::close, m_columns.right, space::tiny});
    m_fatigue.view->setSpec(weekRatioChart(shown, m_text));
    readOut();
}

void WeekCharts::drawTotal()
{
    SittingDose total;
    bool complete = true;
    for (const WeekDose& week : m_content.weeks) {
        complete = complete && week.prescribed;
        total += week.prescribed.value_or(SittingDose());
    }
    m_total->setText(complete
                         ? tr("In all weeks <b>%1 contractions</b>, <b>%2</b> on time")
                               .arg(m_text.count(total.contractions), m_text.time(total.onTime))
                         : tr("No sum while a block has no figures."));
}

void WeekCharts::readOut()
{
    const auto row = m_contractions.view->crosshair();
    if (!row) {
        m_readout->setText(tr("Left and Right in a chart read a week"));
        return;
    }
    const auto partOf = [](const Chart& chart) {
        const auto at = chart.view->crosshair();
        return at ? chart.view->spec().table.rows[*at].readout : QStringLiteral("—");
    };
    const ChartTable& table = m_contractions.view->spec().table;
    QStringList parts{tr("contractions %1").arg(partOf(m_contractions)),
                      tr("on time %1").arg(partOf(m_onTime))};
    if (m_fatigue.view->isVisibleTo(this)) {
        parts.append(tr("fatigue ratio %1").arg(partOf(m_fatigue)));
    }
    parts.append(tr("amplitude %1").arg(partOf(m_amplitude)));
    m_readout->setText(tr("<b>Week %1</b>: %2")
                           .arg(table.rows[*row].cells.value(0), parts.join(QStringLiteral("; "))));
}

} // namespace quadrille::app
