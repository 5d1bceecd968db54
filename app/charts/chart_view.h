// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"

#include <QByteArray>
#include <QImage>
#include <QWidget>

#include <memory>
#include <optional>
#include <vector>

class QCPAbstractItem;
class QCustomPlot;

namespace quadrille::app
{

/// Draws a ChartSpec in the colours of its palette. The only room that knows QCustomPlot.
///
/// A chart that can be read takes the focus: Left, Right, Home, End and the pointer move a
/// crosshair over the rows of its table, Esc takes it away; the row is written beside it and said
/// in the accessible description.
class ChartView : public QWidget
{
    Q_OBJECT

public:
    explicit ChartView(QWidget* parent = nullptr);

    void setSpec(const ChartSpec& spec);
    const ChartSpec& spec() const { return m_spec; }
    /// Room around the plot for numbers and names, px.
    void setPlotMargins(const QMargins& margins);

    void setReadable(bool readable);
    /// Lets Ctrl and the wheel (the wheel alone while it has the focus) and zoomBy() show a part of
    /// the x axis.
    void setZoomable(bool zoomable) { m_zoomable = zoomable; }
    bool isZoomable() const { return m_zoomable; }
    /// The row under the crosshair.
    std::optional<std::size_t> crosshair() const;
    /// Puts the crosshair on the row nearest to a place, nothing takes it away; says nothing back.
    void setCrosshair(std::optional<double> place);
    /// Above 1 shows a smaller part, around the crosshair or the middle.
    void zoomBy(double factor);
    void showWhole();
    /// What is shown of the x axis.
    double shownFrom() const;
    double shownTo() const;

    /// The chart for use elsewhere: on white, with title and note, `size` px, twice as fine.
    QImage picture(const QSize& size) const;
    /// The same as a page of its own.
    QByteArray pdf(const QSize& size) const;

signals:
    /// The person moved the crosshair, or took it away.
    void crosshairMoved(std::optional<double> place);

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void draw();
    /// The x axis of the part that is shown, with its own numbers.
    ChartAxis shownAxis() const;
    void drawAxes();
    void drawLines();
    void drawBars();
    void drawTexts();
    void drawSpans();
    void drawHeading();
    void drawCrosshair();
    /// The place under a point of the widget; nothing beside the plot.
    std::optional<double> placeAt(const QPoint& point) const;
    void zoomAround(double factor, double place);
    /// Shows this part, moved so far that it lies in the whole.
    void showPart(double from, double to);
    void moveCrosshair(std::optional<double> place);
    bool isShown(double place) const;
    void describe();
    std::unique_ptr<ChartView> forPaper(const QSize& size) const;

    struct Part {
        double from = 0.0;
        double to = 1.0;
    };

    QCustomPlot* m_plot;
    ChartSpec m_spec;
    QMargins m_margins{40, 8, 8, 24};
    bool m_readable = false;
    bool m_zoomable = false;
    bool m_onPaper = false;
    std::optional<Part> m_part;                     ///< of the x axis; nothing: the whole
    std::optional<double> m_place;                  ///< of the crosshair
    std::vector<QCPAbstractItem*> m_crosshairItems; ///< the plot owns them
};

} // namespace quadrille::app
