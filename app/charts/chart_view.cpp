// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_view.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QEvent>
#include <QVBoxLayout>
#include <qcustomplot.h>

#include <cmath>

namespace quadrille::app
{

namespace
{

QVector<double> toVector(const std::vector<double>& values)
{
    return {values.begin(), values.end()};
}

constexpr double markerSide = 7.0;

QColor withAlpha(QColor colour, int alpha)
{
    colour.setAlpha(alpha);
    return colour;
}

void placeText(QCPItemText& item, ChartText::Place place)
{
    switch (place) {
    case ChartText::Place::above:
        item.setPositionAlignment(Qt::AlignHCenter | Qt::AlignBottom);
        break;
    case ChartText::Place::below:
        item.setPositionAlignment(Qt::AlignHCenter | Qt::AlignTop);
        break;
    case ChartText::Place::right:
        item.setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        break;
    case ChartText::Place::centre:
        item.setPositionAlignment(Qt::AlignCenter);
        break;
    }
}

} // namespace

std::vector<double> roundTicks(double most, int wanted)
{
    if (!(most > 0) || wanted < 1) {
        return {0.0, 1.0};
    }
    const double rough = most / wanted;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10.0 * power;
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= rough) {
            step = factor * power;
            break;
        }
    }
    std::vector<double> ticks;
    const auto count = static_cast<int>(std::ceil(most / step - 1e-9));
    for (int i = 0; i <= count; ++i) {
        ticks.push_back(i * step);
    }
    return ticks;
}

ChartView::ChartView(QWidget* parent)
    : QWidget(parent)
    , m_plot(new QCustomPlot(this))
{
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_plot->setMinimumSize(40, 40);
    m_plot->axisRect()->setAutoMargins(QCP::msNone);
}

void ChartView::setSpec(const ChartSpec& spec)
{
    m_spec = spec;
    setAccessibleDescription(spec.spoken);
    setToolTip(spec.spoken);
    draw();
}

void ChartView::setPlotMargins(const QMargins& margins)
{
    m_margins = margins;
    draw();
}

void ChartView::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        draw();
    }
}

void ChartView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    draw();
}

void ChartView::draw()
{
    m_plot->clearPlottables();
    m_plot->clearItems();
    m_plot->axisRect()->setMargins(m_margins);
    m_plot->setBackground(Qt::NoBrush);
    m_plot->setAttribute(Qt::WA_OpaquePaintEvent, false);
    drawAxes();
    drawBars();
    drawLines();
    drawTexts();
    drawSpans();
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

void ChartView::drawAxes()
{
    const Tokens tokens = tokensOf(palette());
    const QFont font = fontOf(TextStyle::axis, appliedFactor());
    const auto set = [&](QCPAxis* axis, const ChartAxis& spec) {
        axis->setRange(spec.least, spec.most);
        const auto ticker = QSharedPointer<QCPAxisTickerText>::create();
        for (std::size_t i = 0; i < spec.ticks.size(); ++i) {
            ticker->addTick(spec.ticks[i], spec.tickNames.value(static_cast<qsizetype>(i)));
        }
        axis->setTicker(ticker);
        axis->setTickLabelFont(font);
        axis->setTickLabelColor(tokens.ink3);
        axis->setLabel(spec.title);
        axis->setLabelFont(font);
        axis->setLabelColor(tokens.ink3);
        axis->setBasePen(QPen(tokens.edge, stroke::line));
        axis->setTickPen(Qt::NoPen);
        axis->setSubTickPen(Qt::NoPen);
        axis->grid()->setVisible(spec.hasGrid);
        axis->grid()->setPen(QPen(tokens.rule, stroke::line));
        axis->grid()->setZeroLinePen(Qt::NoPen);
    };
    set(m_plot->xAxis, m_spec.x);
    set(m_plot->yAxis, m_spec.y);
    for (const double at : m_spec.dividers) {
        auto* line = new QCPItemStraightLine(m_plot);
        line->point1->setCoords(at, m_spec.y.least);
        line->point2->setCoords(at, m_spec.y.most);
        line->setPen(QPen(tokens.edge, stroke::line));
    }
}

void ChartView::drawLines()
{
    const Tokens tokens = tokensOf(palette());
    for (const ChartLine& line : m_spec.lines) {
        auto* curve = new QCPCurve(m_plot->xAxis, m_plot->yAxis);
        QVector<double> x;
        QVector<double> y;
        for (const QPointF& point : line.points) {
            x.append(point.x());
            y.append(point.y());
        }
        curve->setData(x, y);
        curve->setAntialiased(true);
        if (line.kind == ChartLine::Kind::comparison) {
            QPen pen(tokens.ink3, stroke::comparison);
            pen.setDashPattern({stroke::dash, stroke::dashGap});
            curve->setPen(pen);
        } else {
            curve->setPen(
                QPen(tokens.mark, stroke::chart, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        }
        if (line.filled) {
            curve->setBrush(withAlpha(tokens.mark, 40));
        }
        if (line.marker != ChartLine::Marker::none) {
            const bool open = line.marker == ChartLine::Marker::open;
            curve->setScatterStyle(
                QCPScatterStyle(QCPScatterStyle::ssSquare,
                                QPen(open ? tokens.ink3 : tokens.mark, stroke::comparison),
                                open ? tokens.sheet : tokens.mark, markerSide));
        }
    }
}

void ChartView::drawBars()
{
    const Tokens tokens = tokensOf(palette());
    for (const ChartBars& series : m_spec.bars) {
        auto* bars = new QCPBars(m_plot->xAxis, m_plot->yAxis);
        QVector<double> x;
        for (std::size_t i = 0; i < series.heights.size(); ++i) {
            x.append(static_cast<double>(i) + 1.0);
        }
        bars->setData(x, toVector(series.heights));
        bars->setWidth(0.72);
        bars->setAntialiased(false);
        bars->setPen(QPen(tokens.mark, stroke::line));
        bars->setBrush(series.filled ? QBrush(tokens.mark) : QBrush(Qt::NoBrush));
    }
}

void ChartView::drawTexts()
{
    const Tokens tokens = tokensOf(palette());
    for (const ChartText& text : m_spec.texts) {
        auto* item = new QCPItemText(m_plot);
        item->position->setCoords(text.at);
        item->setText(text.text);
        item->setFont(fontOf(text.bold ? TextStyle::strong : TextStyle::axis, appliedFactor()));
        item->setColor(text.bold ? tokens.ink : tokens.ink2);
        item->setClipToAxisRect(false);
        item->setPadding(QMargins(stroke::chartTextHalo, 1, stroke::chartTextHalo, 1));
        placeText(*item, text.place);
    }
}

void ChartView::drawSpans()
{
    const Tokens tokens = tokensOf(palette());
    const double below =
        m_plot->axisRect()->height() > 0 ? 1.0 + 30.0 / m_plot->axisRect()->height() : 1.1;
    for (const ChartSpan& span : m_spec.spans) {
        auto* bracket = new QCPItemLine(m_plot);
        bracket->setClipToAxisRect(false);
        for (QCPItemPosition* end : {bracket->start, bracket->end}) {
            end->setTypeX(QCPItemPosition::ptPlotCoords);
            end->setTypeY(QCPItemPosition::ptAxisRectRatio);
        }
        bracket->start->setCoords(span.from, below);
        bracket->end->setCoords(span.to, below);
        bracket->setHead(QCPLineEnding(QCPLineEnding::esBar, 7, 7));
        bracket->setTail(QCPLineEnding(QCPLineEnding::esBar, 7, 7));
        bracket->setPen(QPen(tokens.ink2, stroke::line));
        auto* name = new QCPItemText(m_plot);
        name->setClipToAxisRect(false);
        name->position->setTypeX(QCPItemPosition::ptPlotCoords);
        name->position->setTypeY(QCPItemPosition::ptAxisRectRatio);
        name->position->setCoords((span.from + span.to) / 2.0, below);
        name->setPositionAlignment(Qt::AlignCenter);
        name->setText(span.name);
        name->setFont(fontOf(TextStyle::axis, appliedFactor()));
        name->setColor(tokens.ink);
        name->setBrush(tokens.sheet);
        name->setPadding(QMargins(stroke::chartTextHalo, 0, stroke::chartTextHalo, 0));
    }
}

} // namespace quadrille::app
