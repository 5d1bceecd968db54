// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/chart_pair.h"

#include "app/look/tokens.h"

#include <QHBoxLayout>
#include <QTabBar>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int leftShare = 55;
constexpr int rightShare = 45;

} // namespace

ChartPair::ChartPair(QWidget* left, const QString& leftName, QWidget* right,
                     const QString& rightName, QWidget* parent)
    : QWidget(parent)
    , m_tabs(new QTabBar(this))
    , m_left(left)
    , m_right(right)
{
    m_tabs->setObjectName(QStringLiteral("chartTabs"));
    m_tabs->setAccessibleName(tr("Charts of the block"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_tabs->addTab(leftName);
    m_tabs->addTab(rightName);
    auto* sheets = new QHBoxLayout;
    sheets->setSpacing(space::betweenSheets);
    sheets->addWidget(m_left, leftShare);
    sheets->addWidget(m_right, rightShare);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_tabs);
    layout->addLayout(sheets, 1);
    connect(m_tabs, &QTabBar::currentChanged, this, &ChartPair::arrange);
    arrange();
}

void ChartPair::setTabbed(bool tabbed)
{
    if (tabbed != m_tabbed) {
        m_tabbed = tabbed;
        arrange();
    }
}

void ChartPair::arrange()
{
    m_tabs->setVisible(m_tabbed);
    m_left->setVisible(!m_tabbed || m_tabs->currentIndex() == 0);
    m_right->setVisible(!m_tabbed || m_tabs->currentIndex() == 1);
}

} // namespace quadrille::app
