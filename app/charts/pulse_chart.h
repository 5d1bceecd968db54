// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/settings.h"

#include <QWidget>

#include <optional>

namespace quadrille::app
{

/// One pulse, enlarged and to scale in time within itself: both phases, the gap, and how long until
/// the next one. For kHz bursts one burst with its carrier.
class PulseChart : public QWidget
{
    Q_OBJECT

public:
    PulseChart(const QuantityText& text, QWidget* parent);

    /// Nothing clears the drawing.
    void setSettings(const std::optional<Settings>& settings);
    QSize sizeHint() const override { return {240, 120}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintPulse(QPainter& painter, const QRectF& area) const;
    void paintBurst(QPainter& painter, const QRectF& area) const;
    QString spoken() const;

    const QuantityText& m_text;
    std::optional<Settings> m_settings;
};

} // namespace quadrille::app
