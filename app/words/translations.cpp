// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/translations.h"

#include <QCoreApplication>
#include <QTranslator>

namespace quadrille::app
{

void installTranslations(QCoreApplication& application)
{
    auto* words = new QTranslator(&application);
    if (words->load(QStringLiteral(":/translations/quadrille_en.qm"))) {
        QCoreApplication::installTranslator(words);
    } else {
        qWarning("the program's words for plurals are missing from this build");
    }
}

} // namespace quadrille::app
