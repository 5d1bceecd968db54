// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/result.h"

#include <QString>

namespace quadrille::app
{

class HandoutDocument;

/// Writes a handout as PDF: vectors, text that can be searched, fonts embedded. The file appears
/// whole or not at all; one that was there before stays until then. Error `cannotWrite`.
Result<void> writePdf(const HandoutDocument& document, const QString& file);

} // namespace quadrille::app
