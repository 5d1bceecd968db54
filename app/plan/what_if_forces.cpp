// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/what_if_forces.h"

#include "app/charts/chart_acts.h"
#include "app/charts/chart_view.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/model_text.h"

#include <QLabel>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

/// Room for the numbers of the axes and, at the right, for names and ratios.
constexpr QMargins chartMargins{48, 6, 92, 36};
constexpr int leastChartHeight = 150;

} // namespace

WhatIfForces::WhatIfForces(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_text(services.text)
    , m_chart(new ChartView(this))
    , m_readout(new QLabel(this))
    , m_said(new QLabel(this))
    , m_sentence(new QLabel(this))
{
    setRole(*this, Role::sheet);
    auto* title = new QLabel(tr("<b>Predicted force</b>, % of the first"), this);
    auto* mark = new QLabel(modelMark(), this);
    setRole(*mark, Role::captionText);
    setRole(*m_readout, Role::captionText);
    setRole(*m_said, Role::secondLineText);
    setRole(*m_sentence, Role::secondLineText);
    for (QLabel* label : {mark, m_readout, m_said, m_sentence}) {
        label->setWordWrap(true);
    }
    m_said->setTextFormat(Qt::PlainText);
    m_said->setObjectName(QStringLiteral("variantChartSaid"));
    m_sentence->setTextFormat(Qt::PlainText);
    m_sentence->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_sentence->setObjectName(QStringLiteral("variantForceSentence"));
    m_chart->setObjectName(QStringLiteral("variantChart"));
    m_chart->setAccessibleName(tr("Predicted force of each contraction, block and variants"));
    m_chart->setMinimumHeight(leastChartHeight);
    m_chart->setPlotMargins(chartMargins);
    m_chart->setReadable(true);
    m_chart->setZoomable(true);
    auto* acts = new ChartActs(*m_chart, services.text, services.prompts,
                               QStringLiteral("predicted-force-of-variants"));
    connect(acts, &ChartActs::said, this, &WhatIfForces::say);
    connect(m_chart, &ChartView::crosshairMoved, this, &WhatIfForces::readOut);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    layout->setSpacing(space::hair);
    layout->addWidget(title);
    layout->addWidget(mark);
    layout->addWidget(m_chart, 1);
    layout->addWidget(m_sentence, 1);
    layout->addWidget(m_readout);
    layout->addWidget(m_said);
    showSentence({});
}

void WhatIfForces::show(const VariantForces& forces)
{
    m_chart->setSpec(variantChart(forces, m_text));
    m_chart->show();
    m_sentence->hide();
    m_readout->show();
    say({});
    readOut();
}

void WhatIfForces::showSentence(const QString& sentence)
{
    m_sentence->setText(sentence);
    m_sentence->show();
    m_readout->hide();
    say({});
    m_chart->hide();
}

void WhatIfForces::say(const QString& sentence)
{
    m_said->setText(sentence);
    m_said->setVisible(!sentence.isEmpty());
}

void WhatIfForces::readOut()
{
    const auto row = m_chart->crosshair();
    m_readout->setText(row ? rowText(m_chart->spec().table, *row)
                           : tr("Left and Right read values, Ctrl T shows the table"));
}

} // namespace quadrille::app
