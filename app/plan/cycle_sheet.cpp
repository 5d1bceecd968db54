// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/cycle_sheet.h"

#include "app/charts/chart_acts.h"
#include "app/charts/chart_view.h"
#include "app/charts/cycle_chart.h"
#include "app/charts/pulse_chart.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QGridLayout>
#include <QLabel>
#include <QResizeEvent>

namespace quadrille::app
{

namespace
{

/// Narrower, the cycle has all the room: the pulse only says what the settings say too.
constexpr int leastForBoth = 440;
constexpr int pulseShare = 35; ///< of a hundred

} // namespace

CycleSheet::CycleSheet(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_text(services.text)
    , m_title(new QLabel(this))
    , m_pulseTitle(new QLabel(tr("<b>One pulse</b>, enlarged"), this))
    , m_cycle(new ChartView(this))
    , m_pulse(new PulseChart(services.text, this))
{
    setRole(*this, Role::sheet);
    m_cycle->setAccessibleName(tr("One cycle, drawn to scale"));
    m_cycle->setObjectName(QStringLiteral("cycleChart"));
    m_cycle->setPlotMargins({44, 4, 14, 40});
    m_cycle->setReadable(true);
    auto* acts =
        new ChartActs(*m_cycle, services.text, services.prompts, QStringLiteral("one-cycle"));
    connect(acts, &ChartActs::said, this, &CycleSheet::said);
    m_pulse->setAccessibleName(tr("One pulse, enlarged"));
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    grid->setHorizontalSpacing(space::wide);
    grid->setVerticalSpacing(space::tiny);
    grid->addWidget(m_title, 0, 0);
    grid->addWidget(m_pulseTitle, 0, 1);
    grid->addWidget(m_cycle, 1, 0);
    grid->addWidget(m_pulse, 1, 1);
    grid->setColumnStretch(0, 100 - pulseShare);
    grid->setRowStretch(1, 1);
    m_title->setMinimumWidth(1); // the charts share what width there is
    m_pulse->hide();
    m_pulseTitle->hide();
    setMinimumHeight(150);
}

void CycleSheet::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    const bool both = width() >= scaled(leastForBoth, appliedFactor());
    m_pulse->setVisible(both);
    m_pulseTitle->setVisible(both);
    auto* grid = qobject_cast<QGridLayout*>(layout());
    grid->setColumnStretch(1, both ? pulseShare : 0);
    grid->setHorizontalSpacing(both ? space::wide : 0);
}

void CycleSheet::show(const Block* block, const std::optional<BlockFigures>& figures,
                      const Block* blockBefore, const std::optional<BlockFigures>& before,
                      const QString& nameBefore)
{
    const bool drawn =
        block != nullptr && figures && !figures->sites.empty() && figures->sites.front().timing;
    m_cycle->setVisible(drawn);
    if (!drawn) {
        m_title->setText(tr("<b>One cycle</b>"));
        m_pulse->setSettings(std::nullopt);
        return;
    }
    const Settings& settings = block->sites.front().settings;
    const SessionTiming& timing = *figures->sites.front().timing;
    const auto amplitude = doseAmplitude(settings.amplitude);
    m_title->setText(
        tr("<b>One cycle</b>, amplitude in %1, %2 in all")
            .arg(amplitude ? unitSymbol(Unit::milliampere) : tr("percent of what is set"),
                 m_text.time(timing.cycle)));
    CycleToShow cycle{timing, amplitude, {}, {}, {}};
    if (blockBefore != nullptr && before && !before->sites.empty() &&
        before->sites.front().timing) {
        cycle.before = before->sites.front().timing;
        cycle.amplitudeBefore = doseAmplitude(blockBefore->sites.front().settings.amplitude);
        cycle.nameBefore = nameBefore;
    }
    m_cycle->setSpec(cycleChart(cycle, m_text));
    m_pulse->setSettings(settings);
}

} // namespace quadrille::app
