// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

namespace quadrille::app
{

/// A value on a line with its limit marked. The limit stands at four fifths, so that going over it
/// shows.
class LimitBar : public QWidget
{
    Q_OBJECT

public:
    explicit LimitBar(QWidget* parent);
    /// `share` of the limit; 1.0 reaches it.
    void setShare(double share);
    QSize sizeHint() const override { return {200, 14}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    double m_share = 0.0;
};

} // namespace quadrille::app
