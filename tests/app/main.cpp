// SPDX-License-Identifier: GPL-3.0-or-later
// Tests of windows run in one application without a screen, drawn with the light scheme.
#include "app/look/look.h"
#include "app/words/translations.h"

#include <QApplication>
#include <QLocale>

#include <gtest/gtest.h>

int main(int argc, char* argv[])
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    testing::InitGoogleTest(&argc, argv);
    // The tests read texts with figures and dates; they must not depend on the machine.
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
    QApplication application(argc, argv);
    quadrille::app::installTranslations(application);
    quadrille::app::Look look(application);
    look.apply(quadrille::app::SchemeChoice::light);
    const int result = RUN_ALL_TESTS();
    // What asked to go later goes now, not never.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    return result;
}
