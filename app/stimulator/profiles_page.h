// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/stimulator.h"

#include <QWidget>

#include <vector>

class QLabel;
class QListWidget;
class QPushButton;

namespace quadrille::app
{

/// What the practice's stimulators can do, each with its verdict, and why not where one will not
/// do.
class ProfilesPage : public QWidget
{
    Q_OBJECT

public:
    ProfilesPage(const Services& services, QWidget* parent);

signals:
    /// A stimulator was added or changed.
    void changed();

private:
    void refresh();
    void add();
    void changeCurrent();
    void showCurrent();

    const Services m_services;
    std::vector<Stimulator> m_stimulators;
    QListWidget* m_list;
    QLabel* m_verdict;
    QPushButton* m_change;
};

} // namespace quadrille::app
