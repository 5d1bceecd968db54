// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/cue_view.h"

#include "app/clinic/clinic_words.h"
#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>
#include <QPainterPath>

namespace quadrille::app
{

namespace
{

constexpr int phaseWidth = 300;
constexpr int phaseHeight = 122;
constexpr int cycleHeight = 26;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

bool isWork(CuePhase phase)
{
    return phase == CuePhase::rampUp || phase == CuePhase::hold || phase == CuePhase::rampDown;
}

/// Seconds that are begun: the last one reads 1, never 0.
std::int64_t secondsLeft(Milliseconds left)
{
    return (left.count() + 999) / 1000;
}

/// How much of the field is filled: it rises with the ramp up and falls with the ramp down.
double filledShare(const CueMoment& moment)
{
    const double left = moment.length.count() > 0 ? static_cast<double>(moment.left.count()) /
                                                        static_cast<double>(moment.length.count())
                                                  : 0.0;
    switch (moment.phase) {
    case CuePhase::rampUp:
        return 1.0 - left;
    case CuePhase::hold:
        return 1.0;
    case CuePhase::rampDown:
        return left;
    case CuePhase::rest:
    case CuePhase::over:
        break;
    }
    return 0.0;
}

} // namespace

CueView::CueView(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    setAccessibleName(tr("Work and rest"));
    setMinimumHeight(px(phaseHeight));
}

void CueView::show(const std::optional<Content>& content)
{
    const QString before = accessibleDescription();
    m_content = content;
    const QString words = content ? phaseWord() + QStringLiteral(". ") + countText() : QString();
    if (words != before) {
        setAccessibleDescription(words);
    }
    update();
}

QSize CueView::sizeHint() const
{
    return {px(640), px(phaseHeight)};
}

QString CueView::phaseWord() const
{
    return m_content->paused  ? tr("Paused")
           : m_content->begun ? cuePhaseName(m_content->moment.phase)
                              : tr("Ready");
}

QString CueView::countText() const
{
    const CueMoment& moment = m_content->moment;
    const QString contraction = tr("contraction %1 of %2")
                                    .arg(m_text.count(moment.contraction),
                                         m_text.count(m_content->timing.contractionsStarted));
    return moment.phase == CuePhase::over
               ? contraction
               : tr("%1 · %2 left")
                     .arg(contraction,
                          m_text.time(Milliseconds(1000 * secondsLeft(moment.sessionLeft))));
}

void CueView::paintEvent(QPaintEvent*)
{
    if (!m_content) {
        return;
    }
    QPainter painter(this);
    const Tokens tokens = tokensOf(palette());
    const QRect field(0, 0, px(phaseWidth), height() - 1);
    paintPhase(painter, field);
    const int left = field.right() + px(space::wide);
    painter.setPen(tokens.ink);
    painter.setFont(fontOf(TextStyle::cue, appliedFactor()));
    const bool running = m_content->begun && m_content->moment.phase != CuePhase::over;
    const QString seconds =
        running ? m_text.count(secondsLeft(m_content->moment.left)) : QStringLiteral("—");
    const QRect numbers(left, 0, width() - left, px(64));
    painter.drawText(numbers, Qt::AlignLeft | Qt::AlignVCenter, seconds);
    if (running) {
        const int after =
            left + painter.fontMetrics().horizontalAdvance(seconds) + px(space::medium);
        painter.setFont(fontOf(TextStyle::bigFigure, appliedFactor()));
        painter.drawText(numbers.adjusted(after - left, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                         tr("s"));
    }
    painter.setFont(fontOf(TextStyle::listName, appliedFactor()));
    painter.drawText(QRect(left, px(66), width() - left, px(22)), Qt::AlignLeft | Qt::AlignVCenter,
                     countText());
    paintCycle(painter, QRectF(left, px(94), width() - left - 2, px(cycleHeight)));
}

void CueView::paintPhase(QPainter& painter, const QRect& field) const
{
    const Tokens tokens = tokensOf(palette());
    const bool work = m_content->begun && !m_content->paused && isWork(m_content->moment.phase);
    painter.fillRect(field, tokens.sheet);
    if (work) {
        const int filled = static_cast<int>(field.height() * filledShare(m_content->moment));
        painter.fillRect(field.left(), field.bottom() + 1 - filled, field.width(), filled,
                         tokens.tint);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(work ? tokens.mark : tokens.edge, work ? 3 : 1));
    painter.drawRect(work ? field.adjusted(1, 1, -2, -2) : field.adjusted(0, 0, -1, -1));
    painter.setPen(tokens.ink);
    painter.setFont(fontOf(TextStyle::cueWord, appliedFactor()));
    painter.drawText(field, Qt::AlignCenter, phaseWord());
}

void CueView::paintCycle(QPainter& painter, const QRectF& area) const
{
    const Tokens tokens = tokensOf(palette());
    const SessionTiming& timing = m_content->timing;
    if (timing.cycle <= Milliseconds(0)) {
        return;
    }
    const auto at = [&](Milliseconds time) {
        return area.left() + area.width() * static_cast<double>(time.count()) /
                                 static_cast<double>(timing.cycle.count());
    };
    const double bottom = area.bottom() - 1.0;
    QPainterPath shape(QPointF(area.left(), bottom));
    shape.lineTo(at(timing.rampUp), area.top() + 1.0);
    shape.lineTo(at(timing.rampUp + timing.plateau), area.top() + 1.0);
    shape.lineTo(at(timing.onPhase), bottom);
    const Milliseconds gone =
        m_content->moment.phase == CuePhase::over
            ? Milliseconds(0)
            : (timing.session - m_content->moment.sessionLeft + timing.cycle - timing.lead) %
                  timing.cycle;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(QRectF(area.left(), area.top(), at(gone) - area.left(), area.height()));
    painter.fillPath(shape, tokens.mark);
    painter.setClipping(false);
    painter.setPen(QPen(tokens.edge, 1.4));
    painter.drawPath(shape);
    painter.drawLine(QPointF(area.left(), bottom), QPointF(area.right(), bottom));
    if (m_content->begun) {
        painter.setPen(QPen(tokens.ink, 2));
        painter.drawLine(QPointF(at(gone), area.top()), QPointF(at(gone), area.bottom()));
    }
}

} // namespace quadrille::app
