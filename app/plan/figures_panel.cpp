// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/figures_panel.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/fatigue_figures.h"
#include "app/plan/limit_bar.h"

#include "core/limits.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QStringList>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <memory>

namespace quadrille::app
{

namespace
{

QString unknown()
{
    return QStringLiteral("—");
}

} // namespace

FiguresPanel::FiguresPanel(const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_layout(new QVBoxLayout(this))
{
    setRole(*this, Role::sheet);
    m_layout->setContentsMargins(1, 1, 1, space::close);
    m_layout->setSpacing(0);
    QGridLayout* grid = nullptr;
    m_sessionTitle = addSection(tr("For one session"), grid, 2);
    m_contractions = addFigure(*grid, tr("Contractions"), QStringLiteral("contractions"));
    m_onTime = addFigure(*grid, tr("Total on time"), QStringLiteral("onTime"));
    m_duty = addFigure(*grid, tr("Duty cycle"), QStringLiteral("dutyCycle"));
    m_ratio = addFigure(*grid, tr("Off : on ratio"), QStringLiteral("offOnRatio"));
    m_pulses = addFigure(*grid, tr("Pulses"), QStringLiteral("pulses"));
    m_fatigue = new FatigueFigures(text, this);
    m_layout->addWidget(m_fatigue);

    QGridLayout* dose = nullptr;
    addSection(tr("Dose, at the highest amplitude"), dose, 2);
    m_sites = new QWidget(this);
    m_layout->addWidget(m_sites);
    m_noDose = new QLabel(this);
    m_noDose->setWordWrap(true);
    m_noDose->setContentsMargins(space::insideSheet, space::tiny, space::insideSheet, space::tiny);
    setRole(*m_noDose, Role::secondLineText);
    m_layout->addWidget(m_noDose);
    m_bar = new LimitBar(this);
    m_barText = new QLabel(this);
    setRole(*m_barText, Role::captionText);
    auto* bar = new QVBoxLayout;
    bar->setContentsMargins(space::insideSheet, space::tiny, space::insideSheet, space::close);
    bar->setSpacing(0);
    bar->addWidget(m_bar);
    bar->addWidget(m_barText, 0, Qt::AlignRight);
    m_layout->addLayout(bar);

    addWeekAndPlan();
    m_layout->addStretch();
    clearFigures();
}

QLabel* FiguresPanel::addSection(const QString& title, QGridLayout*& grid, int columns)
{
    auto* head = new QFrame(this);
    setRole(*head, Role::sheetHead);
    auto* label = new QLabel(title, head);
    setRole(*label, Role::strongText);
    auto* headLayout = new QVBoxLayout(head);
    headLayout->setContentsMargins(space::insideSheet, space::small, space::insideSheet,
                                   space::small);
    headLayout->addWidget(label);
    m_layout->addWidget(head);
    grid = new QGridLayout;
    grid->setContentsMargins(space::insideSheet, space::tiny, space::insideSheet, space::tiny);
    grid->setVerticalSpacing(0);
    grid->setColumnStretch(columns - 2, 1);
    m_layout->addLayout(grid);
    return label;
}

QLabel* FiguresPanel::addFigure(QGridLayout& grid, const QString& name, const QString& objectName)
{
    auto* caption = new QLabel(name, this);
    auto* value = new QLabel(this);
    setRole(*value, Role::strongText);
    value->setObjectName(objectName);
    value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    value->setTextInteractionFlags(Qt::TextSelectableByMouse);
    const int row = grid.rowCount();
    grid.addWidget(caption, row, 0);
    grid.addWidget(value, row, 1);
    grid.setRowMinimumHeight(row, size::closeRow);
    return value;
}

QLabel* FiguresPanel::addSecondValue(QGridLayout& grid, const QString& name,
                                     const QString& objectName)
{
    auto* value = new QLabel(this);
    setRole(*value, Role::strongText);
    value->setObjectName(objectName);
    value->setAccessibleDescription(name);
    value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    value->setTextInteractionFlags(Qt::TextSelectableByMouse);
    grid.addWidget(value, grid.rowCount() - 1, 2);
    return value;
}

void FiguresPanel::addWeekAndPlan()
{
    QGridLayout* grid = nullptr;
    addSection(tr("For the week, and for all blocks"), grid, 2);
    grid->setHorizontalSpacing(space::close);
    for (const int column : {1, 2}) {
        auto* head = new QLabel(column == 1 ? tr("a week") : tr("all blocks"), this);
        setRole(*head, Role::captionText);
        grid->addWidget(head, 0, column, Qt::AlignRight);
    }
    m_weekSessions = addFigure(*grid, tr("Sessions"), QStringLiteral("weekSessions"));
    m_planSessions =
        addSecondValue(*grid, tr("Sessions in all blocks"), QStringLiteral("planSessions"));
    m_weekContractions = addFigure(*grid, tr("Contractions"), QStringLiteral("weekContractions"));
    m_planContractions =
        addSecondValue(*grid, tr("Contractions in all blocks"), QStringLiteral("planContractions"));
    m_weekOnTime = addFigure(*grid, tr("On time"), QStringLiteral("weekOnTime"));
    m_planOnTime = addSecondValue(*grid, tr("On time in all blocks"), QStringLiteral("planOnTime"));
    m_weekCharge = addFigure(*grid, tr("Charge, mC"), QStringLiteral("weekCharge"));
    m_planCharge = addSecondValue(*grid, tr("Charge in all blocks"), QStringLiteral("planCharge"));
    for (QLabel* charge : {m_weekCharge, m_planCharge}) {
        charge->setToolTip(tr("Charge of one phase, both phases carry the same; of the site that "
                              "takes most"));
    }
    m_weekNote = new QLabel(this);
    m_weekNote->setWordWrap(true);
    m_weekNote->setObjectName(QStringLiteral("weekNote"));
    m_weekNote->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::tiny);
    setRole(*m_weekNote, Role::secondLineText);
    m_layout->addWidget(m_weekNote);
}

bool FiguresPanel::event(QEvent* event)
{
    const bool done = QFrame::event(event);
    if (event->type() == QEvent::LayoutRequest) {
        keepHeight();
    }
    return done;
}

void FiguresPanel::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    keepHeight();
}

void FiguresPanel::keepHeight()
{
    if (const int height = m_layout->totalHeightForWidth(width()); height > 0) {
        setMinimumHeight(height);
    }
}

void FiguresPanel::showPlan(const std::optional<PlanTotals>& totals)
{
    const bool any = totals && totals->sessions > 0;
    m_planSessions->setText(any ? m_text.count(totals->sessions) : unknown());
    const bool known = any && totals->dose;
    m_planContractions->setText(known ? m_text.count(totals->dose->contractions) : unknown());
    m_planOnTime->setText(known ? m_text.shortTime(totals->dose->onTime) : unknown());
    m_planCharge->setText(any && totals->charge ? m_text.number(totals->charge->shown(), 0)
                                                : unknown());
}

void FiguresPanel::clearFigures()
{
    for (QLabel* label : {m_contractions, m_onTime, m_duty, m_ratio, m_pulses, m_weekSessions,
                          m_weekContractions, m_weekOnTime, m_weekCharge}) {
        label->setText(unknown());
    }
    m_weekNote->hide();
    hideDose();
    m_noDose->setText(tr("No figures while a value stops them: see the cautions above."));
    m_noDose->show();
}

void FiguresPanel::hideDose()
{
    m_sites->hide();
    m_bar->hide();
    m_barText->hide();
}

void FiguresPanel::show(const Block* block, const std::optional<BlockFigures>& figures,
                        const std::optional<BlockFigures>& before)
{
    clearFigures();
    if (block == nullptr || !figures || !figures->contractions) {
        if (block == nullptr || block->sites.empty()) {
            m_noDose->setText(tr("Figures appear with the first site."));
        }
        return;
    }
    showSession(*block, *figures);
    showSites(*figures);
    showWeek(*block, *figures, before);
}

void FiguresPanel::showSession(const Block& block, const BlockFigures& figures)
{
    // In turn the contractions of all sites follow each other; at once the most of any counts.
    std::int64_t started = 0;
    for (const SiteFigures& site : figures.sites) {
        const std::int64_t ofSite = site.timing->contractionsStarted;
        started = block.siteOrder == SiteOrder::oneAfterAnother ? started + ofSite
                                                                : std::max(started, ofSite);
    }
    m_contractions->setText(
        started == *figures.contractions
            ? m_text.count(started)
            : tr("%1 whole, %2 begun")
                  .arg(m_text.count(*figures.contractions), m_text.count(started)));
    bool differs = false;
    const auto show = [&](QLabel* label, auto&& textOf) {
        QStringList bySite;
        for (const SiteFigures& site : figures.sites) {
            bySite.append(textOf(*site.timing));
        }
        const bool same = bySite.count(bySite.front()) == bySite.size();
        differs = differs || !same;
        label->setText(same ? bySite.front() : bySite.join(QStringLiteral(" | ")));
    };
    show(m_onTime, [&](const SessionTiming& timing) { return m_text.time(timing.totalOnTime); });
    show(m_duty, [&](const SessionTiming& timing) { return m_text.percent(timing.dutyCycle()); });
    show(m_ratio,
         [&](const SessionTiming& timing) { return m_text.ratioToOne(timing.offOnRatio()); });
    show(m_pulses, [&](const SessionTiming& timing) { return m_text.count(timing.pulses); });
    m_sessionTitle->setText(differs ? tr("For one session, site by site") : tr("For one session"));
}

void FiguresPanel::rebuildSites(std::size_t sites)
{
    QWidget* old = m_sites;
    m_sites = new QWidget(this);
    const std::unique_ptr<QLayoutItem> place(m_layout->replaceWidget(old, m_sites));
    old->setParent(nullptr);
    old->deleteLater();
    m_doseValues.clear();
    auto* grid = new QGridLayout(m_sites);
    grid->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::tiny);
    grid->setHorizontalSpacing(space::insideSheet);
    grid->setVerticalSpacing(0);
    grid->setColumnStretch(0, 1);
    const std::array names{tr("Amplitude, mA"),           tr("Phase charge, µC"),
                           tr("Charge density, µC/cm²"),  tr("r.m.s. current, mA"),
                           tr("Current density, mA/cm²"), tr("Power density, mW/cm²")};
    for (std::size_t i = 0; i < names.size(); ++i) {
        grid->addWidget(new QLabel(names[i], m_sites), static_cast<int>(i) + 1, 0);
        grid->setRowMinimumHeight(static_cast<int>(i) + 1, size::closeRow);
    }
    for (std::size_t site = 0; site < sites; ++site) {
        const int column = static_cast<int>(site) + 1;
        if (sites > 1) {
            auto* head = new QLabel(tr("Site %1").arg(site + 1), m_sites);
            setRole(*head, Role::captionText);
            grid->addWidget(head, 0, column, Qt::AlignRight);
        }
        std::array<QLabel*, doseFigures> labels{};
        for (std::size_t i = 0; i < names.size(); ++i) {
            auto* value = new QLabel(m_sites);
            setRole(*value, Role::strongText);
            value->setObjectName(QStringLiteral("dose-%1-%2").arg(i).arg(site));
            grid->addWidget(value, static_cast<int>(i) + 1, column, Qt::AlignRight);
            labels[i] = value;
        }
        m_doseValues.push_back(labels);
    }
}

void FiguresPanel::showSites(const BlockFigures& figures)
{
    if (m_doseValues.size() != figures.sites.size()) {
        rebuildSites(figures.sites.size());
    }
    double worst = 0.0;
    std::size_t worstSite = 0;
    bool any = false;
    for (std::size_t site = 0; site < figures.sites.size(); ++site) {
        const auto& dose = figures.sites[site].dose;
        std::array<QString, doseFigures> values;
        values.fill(unknown());
        if (dose) {
            values = {m_text.shortNumber(dose->amplitude.shown(), 1),
                      m_text.number(dose->phaseCharge.shown(), 1),
                      m_text.number(dose->chargeDensity.shown(), 2),
                      m_text.number(dose->rmsTrain.shown(), 1),
                      m_text.number(dose->currentDensity.shown(), 2),
                      m_text.number(dose->powerDensityTrain.shown(), 2)};
            any = true;
            const double share =
                dose->currentDensity.shown() / limits::attentionCurrentDensity.shown();
            if (share >= worst) {
                worst = share;
                worstSite = site;
            }
        }
        for (std::size_t i = 0; i < values.size(); ++i) {
            m_doseValues[site][i]->setText(values[i]);
        }
    }
    m_sites->setVisible(any);
    m_noDose->setVisible(!any);
    m_noDose->setText(tr("Enter a ceiling or the last tolerated amplitude to see the dose."));
    m_bar->setVisible(any);
    m_barText->setVisible(any);
    m_bar->setShare(worst);
    const QString level =
        tr("density; care above %1").arg(m_text.amount(amountOf(limits::attentionCurrentDensity)));
    m_barText->setText(figures.sites.size() > 1 ? tr("Site %1: %2").arg(worstSite + 1).arg(level)
                                                : level);
}

void FiguresPanel::showWeek(const Block& block, const BlockFigures& figures,
                            const std::optional<BlockFigures>& before)
{
    m_weekSessions->setText(m_text.count(sessionsPerWeek(block)));
    m_weekContractions->setText(m_text.count(*figures.weekContractions));
    m_weekOnTime->setText(m_text.shortTime(*figures.weekOnTime));
    const QString sitting = tr("Each session lasts %1.").arg(m_text.shortTime(*figures.sitting));
    const bool comparable = before && before->weekContractions && before->weekOnTime;
    m_weekNote->setText(comparable ? tr("%1 The block before: %2 contractions, %3 on time a week.",
                                        "how long a session lasts, contractions, time")
                                         .arg(sitting, m_text.count(*before->weekContractions),
                                              m_text.shortTime(*before->weekOnTime))
                                   : sitting);
    m_weekNote->show();
    double charge = 0.0;
    bool known = false;
    for (const SiteFigures& site : figures.sites) {
        if (site.week->charge) {
            charge = std::max(charge, site.week->charge->shown());
            known = true;
        }
    }
    m_weekCharge->setText(known ? m_text.number(charge, 0) : unknown());
}

} // namespace quadrille::app
