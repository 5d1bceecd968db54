// SPDX-License-Identifier: GPL-3.0-or-later
// The style of the program: flat sheets with 1 px lines, over Qt's Fusion for what is not ours.
#pragma once

#include "app/look/tokens.h"

#include <QProxyStyle>

class QStyleOptionGroupBox;

namespace quadrille::app
{

/// Draws every control from the tokens and the role of the widget (see roles.h). Made by Look,
/// owned by the application.
class SheetStyle : public QProxyStyle
{
    Q_OBJECT

public:
    /// `factor` is the text size, 1.0 for 100 %; controls grow with it, lines do not.
    SheetStyle(const Tokens& tokens, double factor);

    using QProxyStyle::polish;
    void polish(QWidget* widget) override;
    using QProxyStyle::unpolish;
    void unpolish(QWidget* widget) override;

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget = nullptr) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                            QPainter* painter, const QWidget* widget = nullptr) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                         const QWidget* widget = nullptr) const override;
    QRect subElementRect(SubElement element, const QStyleOption* option,
                         const QWidget* widget = nullptr) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                           const QWidget* widget = nullptr) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                    const QWidget* widget = nullptr) const override;
    int styleHint(StyleHint hint, const QStyleOption* option = nullptr,
                  const QWidget* widget = nullptr,
                  QStyleHintReturn* returned = nullptr) const override;
    QIcon standardIcon(StandardPixmap sign, const QStyleOption* option = nullptr,
                       const QWidget* widget = nullptr) const override;

private:
    void drawFrame(const QStyleOption& option, QPainter& painter, const QWidget* widget) const;
    void drawItemGround(const QStyleOption& option, QPainter& painter) const;
    bool drawHeader(ControlElement element, const QStyleOption& option, QPainter& painter,
                    const QWidget* widget) const;
    bool drawScrollBar(const QStyleOptionComplex& option, QPainter& painter,
                       const QWidget* widget) const;
    void drawGroupTitle(const QStyleOptionGroupBox& option, QPainter& painter,
                        const QWidget* widget) const;
    QSize pushButtonSize(const QStyleOption& option, const QWidget* widget) const;

    Tokens m_tokens;
    double m_factor;
};

} // namespace quadrille::app
