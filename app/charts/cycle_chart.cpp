// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/cycle_chart.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct CycleWords {
    Q_DECLARE_TR_FUNCTIONS(CycleWords)
};

double seconds(Milliseconds time)
{
    return static_cast<double>(time.count()) / 1e3;
}

std::vector<QPointF> outline(const SessionTiming& timing, double height)
{
    const double plateauEnd = seconds(timing.rampUp + timing.plateau);
    return {{0.0, 0.0},
            {seconds(timing.rampUp), height},
            {plateauEnd, height},
            {seconds(timing.onPhase), 0.0},
            {seconds(timing.cycle), 0.0}};
}

QString spokenCycle(const CycleToShow& cycle, const QuantityText& text)
{
    const SessionTiming& timing = cycle.timing;
    return CycleWords::tr("One cycle of %1: ramp up %2, plateau %3, ramp down %4, off %5.")
        .arg(text.time(timing.cycle), text.time(timing.rampUp), text.time(timing.plateau),
             text.time(timing.rampDown), text.time(timing.offTime));
}

/// A row for each corner of the cycle.
ChartTable cycleTable(const CycleToShow& cycle, double height, const QuantityText& text)
{
    const SessionTiming& timing = cycle.timing;
    ChartTable table;
    table.columns = {CycleWords::tr("Corner"), CycleWords::tr("Time, s"),
                     cycle.amplitude ? CycleWords::tr("Amplitude, mA")
                                     : CycleWords::tr("Amplitude, % of what is set")};
    const auto add = [&](const QString& name, Milliseconds at, double amplitude) {
        const QString level = text.shortNumber(amplitude, 1);
        const QString unit =
            cycle.amplitude ? unitSymbol(Unit::milliampere) : unitSymbol(Unit::percent);
        // Without a ramp two corners stand at the same time; the later one counts.
        if (!table.rows.empty() && table.rows.back().place == seconds(at)) {
            table.rows.pop_back();
        }
        table.rows.push_back({seconds(at),
                              {name, text.shortNumber(seconds(at), 3), level},
                              CycleWords::tr("%1 after %2", "amplitude, time")
                                  .arg(level + noBreakSpace() + unit, text.time(at))});
    };
    add(CycleWords::tr("begin"), {}, 0.0);
    add(CycleWords::tr("full amplitude"), timing.rampUp, height);
    add(CycleWords::tr("end of the plateau"), timing.rampUp + timing.plateau, height);
    add(CycleWords::tr("end of the on phase"), timing.onPhase, 0.0);
    add(CycleWords::tr("end of the cycle"), timing.cycle, 0.0);
    return table;
}

} // namespace

ChartSpec cycleChart(const CycleToShow& cycle, const QuantityText& text)
{
    const SessionTiming& timing = cycle.timing;
    const bool inMilliamperes = cycle.amplitude.has_value();
    const double height = inMilliamperes ? cycle.amplitude->shown() : 100.0;
    const bool compared = cycle.before && (!inMilliamperes || cycle.amplitudeBefore);
    const double heightBefore =
        inMilliamperes && cycle.amplitudeBefore ? cycle.amplitudeBefore->shown() : 100.0;

    ChartSpec spec;
    spec.spoken = spokenCycle(cycle, text);
    spec.title = CycleWords::tr("One cycle");
    spec.table = cycleTable(cycle, height, text);
    spec.x.most = std::max(seconds(timing.cycle), compared ? seconds(cycle.before->cycle) : 0.0);
    spec.x.ticks = roundTicks(spec.x.most, 4);
    std::erase_if(spec.x.ticks, [&](double tick) { return tick > spec.x.most + 1e-9; });
    for (const double tick : spec.x.ticks) {
        spec.x.tickNames.append(text.shortNumber(tick, 2));
    }
    spec.x.tickNames.back() += noBreakSpace() + unitSymbol(Unit::second);
    const double top = compared ? std::max(height, heightBefore) : height;
    spec.y.ticks = roundTicks(std::max(top, 1.0), 4);
    spec.y.most = std::max(spec.y.ticks.back(), top * 1.18);
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 1));
    }
    if (compared) {
        spec.lines.push_back(
            {outline(*cycle.before, heightBefore), ChartLine::Kind::comparison, false});
    }
    spec.lines.push_back({outline(timing, height), ChartLine::Kind::current, true});
    const QString label = inMilliamperes ? text.amount(amountOf(*cycle.amplitude))
                                         : CycleWords::tr("amplitude not known");
    const double middle = seconds(timing.rampUp) + seconds(timing.plateau) / 2.0;
    // A short plateau at the left edge would push its label out of the picture.
    const double least = spec.x.most * 0.09;
    spec.texts.push_back({{std::max(middle, least), height}, label, ChartText::Place::above, true});
    if (compared && *cycle.before != timing) {
        spec.texts.push_back({{seconds(cycle.before->onPhase), heightBefore / 2.0},
                              cycle.nameBefore,
                              ChartText::Place::right,
                              false});
    }
    spec.spans.push_back(
        {0.0, seconds(timing.onPhase), CycleWords::tr("on %1").arg(text.time(timing.onPhase))});
    spec.spans.push_back({seconds(timing.onPhase), seconds(timing.cycle),
                          CycleWords::tr("off %1").arg(text.time(timing.offTime))});
    return spec;
}

} // namespace quadrille::app
