// SPDX-License-Identifier: GPL-3.0-or-later
// The line that makes a page an exercise book's page.
#pragma once

#include <QWidget>

namespace quadrille::app
{

/// The rose line right of the gutter, from top to bottom of its parent and above everything in it.
/// Takes no clicks.
class MarginLine : public QWidget
{
    Q_OBJECT

public:
    explicit MarginLine(QWidget* parent);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void stand();
};

} // namespace quadrille::app
