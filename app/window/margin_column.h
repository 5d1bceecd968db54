// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QToolButton;

namespace quadrille::app
{

/// The gutter at the left of every page with its one line, as in an exercise book; holds the way
/// back.
class MarginColumn : public QWidget
{
    Q_OBJECT

public:
    explicit MarginColumn(QWidget* parent);

signals:
    void backRequested();

protected:
    void paintEvent(QPaintEvent* event) override;
};

} // namespace quadrille::app
