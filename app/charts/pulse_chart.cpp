// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/pulse_chart.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>
#include <numbers>

namespace quadrille::app
{

namespace
{

/// The share of the width that the pulse takes; the rest is the pause up to the next one, not to
/// scale.
constexpr double pulseShare = 0.56;

double secondPhase(const Settings& settings)
{
    switch (settings.waveform) {
    case Waveform::symmetricBiphasic:
        return settings.phaseDuration.shown();
    case Waveform::asymmetricBalancedBiphasic:
        return settings.secondPhaseDuration ? settings.secondPhaseDuration->shown() : 0.0;
    default:
        return 0.0;
    }
}

QRectF around(QPointF centre, double width)
{
    return {centre.x() - width / 2.0, centre.y() - 9.0, width, 18.0};
}

} // namespace

PulseChart::PulseChart(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    setMinimumSize(180, 90);
}

void PulseChart::setSettings(const std::optional<Settings>& settings)
{
    m_settings = settings;
    setAccessibleDescription(spoken());
    setToolTip(spoken());
    update();
}

QString PulseChart::spoken() const
{
    if (!m_settings) {
        return {};
    }
    const QString pulse =
        m_settings->waveform == Waveform::kilohertzBursts
            ? tr("One burst; the next one after %1.")
            : tr("One pulse with a first phase of %2; the next one after %1.")
                  .arg(QStringLiteral("%1"), m_text.amount(amountOf(m_settings->phaseDuration)));
    return pulse.arg(m_text.amount({1e3 / m_settings->pulseFrequency.shown(), Unit::none}) +
                     noBreakSpace() + tr("ms"));
}

void PulseChart::paintEvent(QPaintEvent*)
{
    if (!m_settings || m_settings->pulseFrequency.count() <= 0) {
        return;
    }
    QPainter painter(this);
    const Tokens tokens = tokensOf(palette());
    painter.setFont(fontOf(TextStyle::axis, appliedFactor()));
    const QRectF area = QRectF(rect()).adjusted(6, 22, -6, -22);
    painter.setPen(QPen(tokens.mark, stroke::chart, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    if (m_settings->waveform == Waveform::kilohertzBursts) {
        paintBurst(painter, area);
    } else {
        paintPulse(painter, area);
    }
    const QString next = tr("next one after %1 ms")
                             .arg(m_text.shortNumber(1e3 / m_settings->pulseFrequency.shown(), 2));
    painter.setPen(tokens.ink2);
    painter.drawText(QRectF(rect()).adjusted(6, 2, -6, -2), Qt::AlignRight | Qt::AlignTop, next);
    painter.setFont(fontOf(TextStyle::strong, appliedFactor()));
    painter.setPen(tokens.ink);
    painter.drawText(QRectF(rect()).adjusted(6, 2, -6, -2), Qt::AlignRight | Qt::AlignBottom,
                     m_text.amount(amountOf(m_settings->pulseFrequency)));
}

void PulseChart::paintPulse(QPainter& painter, const QRectF& area) const
{
    const Tokens tokens = tokensOf(palette());
    const double first = m_settings->phaseDuration.shown();
    const double gap = m_settings->interphaseGap.shown();
    const double second = secondPhase(*m_settings);
    const double whole = first + gap + second;
    if (whole <= 0.0) {
        return;
    }
    const double lead = area.width() * 0.06;
    const double perMicrosecond = area.width() * pulseShare / whole;
    const double middle = area.center().y();
    const double up = area.height() / 2.0;
    const double down = second > 0.0 ? up * first / second : 0.0;
    double x = area.left() + lead;
    QPolygonF path{{area.left(), middle}, {x, middle}, {x, middle - up}};
    const QPointF firstLabel(x + first * perMicrosecond / 2.0, middle - up / 2.0);
    x += first * perMicrosecond;
    path << QPointF(x, middle - up) << QPointF(x, middle);
    x += gap * perMicrosecond;
    path << QPointF(x, middle);
    const QPointF secondLabel(x + second * perMicrosecond / 2.0, middle + down + 10.0);
    if (second > 0.0) {
        path << QPointF(x, middle + down);
        x += second * perMicrosecond;
        path << QPointF(x, middle + down) << QPointF(x, middle);
    }
    path << QPointF(area.right(), middle);
    painter.drawPolyline(path);
    painter.setPen(tokens.ink);
    painter.drawText(around(firstLabel, 80), Qt::AlignCenter,
                     m_text.amount(amountOf(m_settings->phaseDuration)));
    if (second > 0.0) {
        painter.drawText(around(secondLabel, 90), Qt::AlignCenter,
                         m_text.amount({second, Unit::microsecond}));
    }
}

void PulseChart::paintBurst(QPainter& painter, const QRectF& area) const
{
    const double carrier =
        m_settings->carrierFrequency ? m_settings->carrierFrequency->shown() : 0.0;
    const double duty = m_settings->burstDuty ? m_settings->burstDuty->shown() / 100.0 : 0.0;
    const double cycles = carrier * duty / m_settings->pulseFrequency.shown();
    if (!(cycles > 0.0)) {
        return;
    }
    // Past some thirty periods the sine would fill in; the drawing then shows that many and the
    // figures stay true.
    const double drawn = std::min(cycles, 30.0);
    QPainterPath path(QPointF(area.left(), area.center().y()));
    const double start = area.left() + area.width() * 0.06;
    const double width = area.width() * pulseShare;
    path.lineTo(start, area.center().y());
    constexpr int steps = 600;
    for (int i = 0; i <= steps; ++i) {
        const double share = static_cast<double>(i) / steps;
        path.lineTo(start + share * width,
                    area.center().y() -
                        area.height() / 2.0 * std::sin(2.0 * std::numbers::pi * drawn * share));
    }
    path.lineTo(start + width, area.center().y());
    path.lineTo(area.right(), area.center().y());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.strokePath(path, QPen(painter.pen().color(), 1.2));
}

} // namespace quadrille::app
