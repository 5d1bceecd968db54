// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/work_rest_cue.h"

#include <QWidget>

#include <optional>

namespace quadrille::app
{

/// The cue large enough for a patient on the couch: the phase as a word, the seconds that are left
/// of it, which contraction, and the cycle to scale with what has passed of it. Work is a filled
/// field, rest an empty one, so that no colour has to be told from another.
class CueView : public QWidget
{
    Q_OBJECT

public:
    CueView(const QuantityText& text, QWidget* parent);

    struct Content {
        SessionTiming timing;
        CueMoment moment;
        bool begun = false;
        bool paused = false;
    };
    /// Nothing: no rhythm to show.
    void show(const std::optional<Content>& content);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintPhase(QPainter& painter, const QRect& field) const;
    void paintCycle(QPainter& painter, const QRectF& area) const;
    QString phaseWord() const;
    QString countText() const;

    const QuantityText& m_text;
    std::optional<Content> m_content;
};

} // namespace quadrille::app
