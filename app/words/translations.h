// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QCoreApplication;

namespace quadrille::app
{

/// Installs the words of the program's language on `application`, which owns them. English has a
/// file of its own for its plural forms ("1 day", "2 days").
void installTranslations(QCoreApplication& application);

} // namespace quadrille::app
