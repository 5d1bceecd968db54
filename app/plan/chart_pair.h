// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QTabBar;

namespace quadrille::app
{

/// Two sheets beside each other, or one of them at a time under tabs where the window is low.
class ChartPair : public QWidget
{
    Q_OBJECT

public:
    /// Takes the sheets as children.
    ChartPair(QWidget* left, const QString& leftName, QWidget* right, const QString& rightName,
              QWidget* parent);

    void setTabbed(bool tabbed);
    bool isTabbed() const { return m_tabbed; }

private:
    void arrange();

    QTabBar* m_tabs;
    QWidget* m_left;
    QWidget* m_right;
    bool m_tabbed = false;
};

} // namespace quadrille::app
