// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/stimulators_dialog.h"

#include "app/look/tokens.h"
#include "app/stimulator/inventory_page.h"
#include "app/stimulator/profiles_page.h"

#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace quadrille::app
{

StimulatorsDialog::StimulatorsDialog(const Services& services, std::optional<CourseId> preferred,
                                     QWidget* parent)
    : QDialog(parent)
    , m_tabs(new QTabBar(this))
    , m_pages(new QStackedWidget(this))
{
    setWindowTitle(tr("Stimulators and loans"));
    resize(1140, 600);
    auto* units = new InventoryPage(services, preferred, this);
    auto* profiles = new ProfilesPage(services, this);
    m_tabs->setObjectName(QStringLiteral("stimulatorTabs"));
    m_tabs->setAccessibleName(tr("Units and loans, or stimulators"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_tabs->addTab(tr("&Units and loans"));
    m_tabs->addTab(tr("&Stimulators"));
    m_pages->addWidget(units);
    m_pages->addWidget(profiles);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::medium, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(m_tabs, 0, Qt::AlignLeft);
    layout->addWidget(m_pages, 1);
    layout->addWidget(close, 0, Qt::AlignRight);
    connect(m_tabs, &QTabBar::currentChanged, m_pages, &QStackedWidget::setCurrentIndex);
    connect(profiles, &ProfilesPage::changed, units, &InventoryPage::refresh);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
}

void StimulatorsDialog::showPage(int index)
{
    m_tabs->setCurrentIndex(index);
}

} // namespace quadrille::app
