// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDir>
#include <QSize>
#include <QString>

/// Draws the caseload with invented rows, empty, and with a search that finds nothing.
void renderCaseload(const QDir& folder, const QSize& size, const QString& suffix);
