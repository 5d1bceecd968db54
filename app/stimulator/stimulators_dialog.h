// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/ids.h"

#include <QDialog>

#include <optional>

class QStackedWidget;
class QTabBar;

namespace quadrille::app
{

/// The units of the practice and to whom they are lent, and what the stimulators can do: two pages
/// of one window.
class StimulatorsDialog : public QDialog
{
    Q_OBJECT

public:
    /// `preferred`: the course that lending begins with.
    StimulatorsDialog(const Services& services, std::optional<CourseId> preferred, QWidget* parent);

    void showPage(int index);
    static constexpr int unitsIndex = 0;
    static constexpr int profilesIndex = 1;

private:
    QTabBar* m_tabs;
    QStackedWidget* m_pages;
};

} // namespace quadrille::app
