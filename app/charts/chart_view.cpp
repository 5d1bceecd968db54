// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_view.h"

#include "app/charts/chart_dash.h"
#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QBuffer>
#include <QEvent>
#include <QPageSize>
#include <QPdfWriter>
#include <QVBoxLayout>
#include <qcustomplot.h>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr double markerSide = 7.0;
constexpr double barWidth = 0.72;
constexpr std::size_t mostCrispBars = 20;
constexpr int headingHeight = 40; ///< above a chart on paper
constexpr int axisRoom = 38;      ///< below a chart on paper, for numbers and title
constexpr double paperScale = 2.0;
/// A chart on paper is as large as on a screen of 96 dpi.
constexpr int paperResolution = 96;
constexpr double pointsPerPixel = 0.75;

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
    case ChartText::Place::edge:
    case ChartText::Place::right:
        item.setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        break;
    case ChartText::Place::centre:
        item.setPositionAlignment(Qt::AlignCenter);
        break;
    }
}

} // namespace

ChartView::ChartView(QWidget* parent)
    : QWidget(parent)
    , m_plot(new QCustomPlot(this))
{
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_plot->setAttribute(Qt::WA_TransparentForMouseEvents);
    m_plot->setMinimumSize(40, 40);
    m_plot->axisRect()->setAutoMargins(QCP::msNone);
}

void ChartView::setSpec(const ChartSpec& spec)
{
    const bool sameAxis = spec.x.least == m_spec.x.least && spec.x.most == m_spec.x.most;
    m_spec = spec;
    if (!sameAxis) {
        m_part.reset();
    }
    describe();
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
    m_crosshairItems.clear();
    const int heading = m_onPaper ? headingHeight : 0;
    m_plot->axisRect()->setMargins(m_margins + QMargins(0, heading, 0, 0));
    m_plot->setBackground(Qt::NoBrush);
    m_plot->setAttribute(Qt::WA_OpaquePaintEvent, false);
    drawAxes();
    drawBars();
    drawLines();
    drawTexts();
    drawSpans();
    drawHeading();
    drawCrosshair();
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
        const bool isNamed = m_onPaper || !spec.namedOnPaperOnly;
        axis->setTicker(ticker);
        axis->setTickLabels(isNamed);
        axis->setTickLabelFont(font);
        axis->setTickLabelColor(tokens.ink3);
        axis->setLabel(isNamed ? spec.title : QString());
        axis->setLabelFont(font);
        axis->setLabelColor(tokens.ink3);
        axis->setBasePen(QPen(tokens.edge, stroke::line));
        axis->setTickPen(Qt::NoPen);
        axis->setSubTickPen(Qt::NoPen);
        axis->grid()->setVisible(spec.hasGrid);
        axis->grid()->setPen(QPen(tokens.rule, stroke::line));
        axis->grid()->setZeroLinePen(Qt::NoPen);
    };
    set(m_plot->xAxis, shownAxis());
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
            pen.setDashPattern(dashPattern(line.dash));
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
        QVector<double> heights;
        for (std::size_t i = 0; i < series.heights.size(); ++i) {
            if (series.heights[i]) {
                x.append(static_cast<double>(i) + 1.0);
                heights.append(*series.heights[i]);
            }
        }
        bars->setData(x, heights);
        bars->setWidth(barWidth);
        // Where bars are narrow, whole pixels would close some of the gaps between them.
        const bool many = series.heights.size() > mostCrispBars;
        bars->setAntialiased(many);
        bars->setPen(many && series.filled ? QPen(Qt::NoPen) : QPen(tokens.mark, stroke::line));
        bars->setBrush(series.filled ? QBrush(tokens.mark) : QBrush(Qt::NoBrush));
        for (std::size_t i = 0; i < series.limits.size(); ++i) {
            const auto height = i < series.heights.size() ? series.heights[i] : std::nullopt;
            if (series.limits[i] && height > series.limits[i]) {
                auto* limit = new QCPItemLine(m_plot);
                const double middle = static_cast<double>(i) + 1.0;
                limit->start->setCoords(middle - barWidth / 2.0, *series.limits[i]);
                limit->end->setCoords(middle + barWidth / 2.0, *series.limits[i]);
                limit->setPen(QPen(tokens.sheet, stroke::chart));
            }
        }
    }
}

void ChartView::drawTexts()
{
    const Tokens tokens = tokensOf(palette());
    for (const ChartText& text : m_spec.texts) {
        const bool onEdge = text.place == ChartText::Place::edge;
        if (!onEdge && m_part && !isShown(text.at.x())) {
            continue;
        }
        auto* item = new QCPItemText(m_plot);
        if (onEdge) {
            item->position->setTypeX(QCPItemPosition::ptAxisRectRatio);
        }
        item->position->setCoords(onEdge ? 1.0 : text.at.x(), text.at.y());
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

void ChartView::drawHeading()
{
    if (!m_onPaper) {
        return;
    }
    const Tokens tokens = tokensOf(palette());
    const auto write = [&](const QString& line, int top, TextStyle style, const QColor& colour) {
        auto* item = new QCPItemText(m_plot);
        item->setClipToAxisRect(false);
        item->position->setType(QCPItemPosition::ptAbsolute);
        item->position->setCoords(space::close, top);
        item->setPositionAlignment(Qt::AlignLeft | Qt::AlignTop);
        item->setText(line);
        item->setFont(fontOf(style, appliedFactor()));
        item->setColor(colour);
    };
    write(m_spec.title, space::hair, TextStyle::strong, tokens.ink);
    write(m_spec.note, headingHeight / 2, TextStyle::axis, tokens.ink3);
}

void ChartView::drawCrosshair()
{
    for (QCPAbstractItem* item : m_crosshairItems) {
        m_plot->removeItem(item);
    }
    m_crosshairItems.clear();
    const auto row = crosshair();
    if (!row || !isShown(m_spec.table.rows[*row].place)) {
        return;
    }
    const Tokens tokens = tokensOf(palette());
    const double place = m_spec.table.rows[*row].place;
    auto* line = new QCPItemStraightLine(m_plot);
    line->point1->setCoords(place, m_spec.y.least);
    line->point2->setCoords(place, m_spec.y.most);
    line->setPen(QPen(tokens.ink, stroke::line, Qt::DotLine));
    auto* text = new QCPItemText(m_plot);
    const bool leftHalf = place < (shownFrom() + shownTo()) / 2.0;
    text->position->setTypeY(QCPItemPosition::ptAxisRectRatio);
    text->position->setCoords(place, 0.0);
    text->setPositionAlignment((leftHalf ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop);
    text->setClipToAxisRect(false);
    text->setText(m_spec.table.rows[*row].readout);
    text->setFont(fontOf(TextStyle::axis, appliedFactor()));
    text->setColor(tokens.ink);
    text->setBrush(tokens.sheet);
    text->setPen(QPen(tokens.line, stroke::line));
    text->setPadding(QMargins(stroke::chartTextHalo, 1, stroke::chartTextHalo, 1));
    m_crosshairItems = {line, text};
}

std::optional<double> ChartView::placeAt(const QPoint& point) const
{
    const QRect area = m_plot->axisRect()->rect();
    const bool beside = point.x() < area.left() || point.x() > area.right();
    return beside ? std::nullopt : std::optional(m_plot->xAxis->pixelToCoord(point.x()));
}

void ChartView::setCrosshair(std::optional<double> place)
{
    m_place = place;
    if (place && m_part && !isShown(*place)) {
        const double half = (m_part->to - m_part->from) / 2.0;
        showPart(*place - half, *place + half);
    }
    describe();
    drawCrosshair();
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

std::unique_ptr<ChartView> ChartView::forPaper(const QSize& size) const
{
    auto paper = std::make_unique<ChartView>();
    paper->setPalette(paletteOf(lightTokens()));
    paper->m_onPaper = true;
    paper->m_margins = m_margins;
    paper->m_margins.setBottom(std::max(m_margins.bottom(), axisRoom));
    paper->m_spec = m_spec;
    paper->m_part = m_part;
    paper->resize(size);
    paper->m_plot->resize(size);
    paper->draw();
    return paper;
}

QImage ChartView::picture(const QSize& size) const
{
    const auto paper = forPaper(size);
    paper->m_plot->setBackground(QBrush(lightTokens().sheet));
    return paper->m_plot->toPixmap(size.width(), size.height(), paperScale).toImage();
}

QByteArray ChartView::pdf(const QSize& size) const
{
    const auto paper = forPaper(size);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(m_spec.title);
    writer.setResolution(paperResolution);
    writer.setPageMargins({});
    writer.setPageSize(
        QPageSize(QSizeF(size) * pointsPerPixel, QPageSize::Point, {}, QPageSize::ExactMatch));
    QCPPainter painter;
    painter.begin(&writer);
    painter.setMode(QCPPainter::pmVectorized);
    painter.setMode(QCPPainter::pmNoCaching);
    paper->m_plot->toPainter(&painter, size.width(), size.height());
    painter.end();
    return bytes;
}

} // namespace quadrille::app
