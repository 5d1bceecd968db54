// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

/// Draws every state of a square in all sizes, and one course in all schemes, into a PNG file.
void renderGrid(const QString& file);
