// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/force_sheet.h"

#include "app/charts/chart_acts.h"
#include "app/charts/chart_view.h"
#include "app/charts/force_chart.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/model_text.h"
#include "app/words/trade_words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

/// Room for the numbers of the axes and, at the right, for the ratios.
constexpr QMargins chartMargins{48, 6, 88, 36};
constexpr int leastHeight = 150;
/// Lower, the chart has all the room; the pointer and the crosshair still read it.
constexpr int leastForReadout = 200;

} // namespace

ForceSheet::ForceSheet(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_text(services.text)
    , m_title(new QLabel(tr("<b>Predicted force</b>, % of the first"), this))
    , m_mark(new QLabel(modelMark(), this))
    , m_chart(new ChartView(this))
    , m_readout(new QLabel(this))
    , m_sentence(new QLabel(this))
{
    setRole(*this, Role::sheet);
    setRole(*m_mark, Role::captionText);
    setRole(*m_readout, Role::captionText);
    setRole(*m_sentence, Role::secondLineText);
    m_sentence->setWordWrap(true);
    m_sentence->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_sentence->setObjectName(QStringLiteral("forceSentence"));
    m_readout->setObjectName(QStringLiteral("forceReadout"));
    m_mark->setWordWrap(true);
    m_readout->setWordWrap(true);
    m_chart->setObjectName(QStringLiteral("forceChart"));
    m_chart->setAccessibleName(tr("Predicted force of each contraction"));
    m_chart->setPlotMargins(chartMargins);
    m_chart->setReadable(true);
    m_chart->setZoomable(true);
    auto* acts =
        new ChartActs(*m_chart, services.text, services.prompts, QStringLiteral("predicted-force"));
    connect(acts, &ChartActs::said, this, &ForceSheet::said);
    connect(m_chart, &ChartView::crosshairMoved, this, &ForceSheet::readOut);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    layout->setSpacing(space::hair);
    layout->addWidget(m_title);
    layout->addWidget(m_mark);
    layout->addWidget(m_chart, 1);
    layout->addWidget(m_sentence, 1);
    layout->addWidget(m_readout);
    m_title->setMinimumWidth(1); // the charts share what width there is
    setMinimumHeight(leastHeight);
    showNothing();
}

void ForceSheet::show(const ModelAnswer& answer, const Block* block, std::size_t index)
{
    if (block == nullptr || !answer.site || *answer.site >= block->sites.size()) {
        return showNothing();
    }
    if (answer.peaks.empty() || answer.peaksBefore.empty()) {
        return showSentence(noFatigueRatioText(answer.steps[*answer.site]));
    }
    const QString muscle = siteName(block->sites[*answer.site]);
    m_title->setText(block->sites.size() > 1
                         ? tr("<b>Predicted force</b>, %1").arg(muscle.toHtmlEscaped())
                         : tr("<b>Predicted force</b>, % of the first"));
    ForcesToShow forces;
    forces.name = tr("Predicted peak force of %1, % of the first").arg(muscle);
    forces.note = modelMark();
    forces.shares = answer.peaks;
    forces.before = answer.peaksBefore;
    forces.nameNow = tr("Block %1").arg(index + 1);
    forces.nameBefore = tr("Block %1").arg(index);
    m_chart->setSpec(forceChart(forces, m_text));
    m_chart->show();
    m_sentence->hide();
    m_readout->setVisible(height() >= leastForReadout);
    readOut();
}

void ForceSheet::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    m_readout->setVisible(m_chart->isVisibleTo(this) && height() >= leastForReadout);
}

void ForceSheet::showPending()
{
    showSentence(modelPendingText());
}

void ForceSheet::showNothing()
{
    showSentence(tr("Figures appear with the first site."));
}

void ForceSheet::showSentence(const QString& sentence)
{
    m_title->setText(tr("<b>Predicted force</b>, % of the first"));
    m_sentence->setText(sentence);
    m_sentence->show();
    m_readout->hide();
    m_chart->hide();
}

void ForceSheet::readOut()
{
    const auto row = m_chart->crosshair();
    m_readout->setText(row ? rowText(m_chart->spec().table, *row)
                           : tr("Left and Right read values, + and − zoom, 0 shows the whole"));
}

} // namespace quadrille::app
