// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_caseload.h"

#include "app/caseload/caseload_page.h"
#include "tests/app/invented_caseload.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMainWindow>
#include <QMenuBar>
#include <QStatusBar>

using namespace quadrille::app;

namespace
{

const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};

void save(QMainWindow& window, const QDir& folder, const QString& name)
{
    QApplication::processEvents();
    window.grab().save(folder.filePath(name + QStringLiteral(".png")));
}

void dress(QMainWindow& window, CaseloadPage* page)
{
    for (const char* name : {"&Practice", "Patien&t", "&View", "&Help"}) {
        window.menuBar()->addMenu(QString::fromUtf8(name));
    }
    window.setCentralWidget(page);
    window.statusBar()->setSizeGripEnabled(false);
    window.statusBar()->addWidget(new QLabel(page->statusText()));
}

} // namespace

void renderCaseload(const QDir& folder, const QSize& size, const QString& suffix)
{
    InventedSource source;
    QMainWindow full;
    auto* page = new CaseloadPage(source, text);
    page->reload();
    dress(full, page);
    full.resize(size);
    full.show();
    page->focusList();
    save(full, folder, QStringLiteral("caseload-") + suffix);
    page->choosePatient(quadrille::PatientId(15));
    save(full, folder, QStringLiteral("caseload-end-") + suffix);
    page->findChild<QLineEdit*>()->setText(QStringLiteral("knee"));
    page->focusSearch();
    save(full, folder, QStringLiteral("caseload-search-") + suffix);
    page->findChild<QLineEdit*>()->setText(QStringLiteral("xyz"));
    save(full, folder, QStringLiteral("caseload-none-") + suffix);

    InventedSource nobody{{}};
    QMainWindow empty;
    auto* first = new CaseloadPage(nobody, text);
    first->reload();
    dress(empty, first);
    empty.resize(size);
    empty.show();
    save(empty, folder, QStringLiteral("caseload-empty-") + suffix);
}
