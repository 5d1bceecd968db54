// SPDX-License-Identifier: GPL-3.0-or-later
// What saves a window of the program as a picture.
#pragma once

#include "app/window/main_window.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/quantity_text.h"

#include "db/people.h"
#include "db/store.h"

#include <QApplication>
#include <QLocale>
#include <QTextStream>
#include <QWidget>

#include <memory>
#include <utility>

namespace quadrille::app
{

struct Size {
    int width;
    int height;
};

/// One practice with its window.
struct Shown {
    Shown(const QString& file, db::Opening opening, const Clock& clock, const Look& look)
        : text(QLocale(QLocale::English, QLocale::UnitedKingdom))
        , store(db::Store::open(file, opening, clock).value())
        , services{*store, clock, text, look, prompts, events, author}
    {
        const auto practitioners = store->read(db::practitioners).value();
        if (!practitioners.empty()) {
            author = {.practitioner = practitioners.front().id, .name = practitioners.front().name};
        }
        window = std::make_unique<MainWindow>(services);
    }
    QuantityText text;
    std::unique_ptr<db::Store> store;
    DesktopPrompts prompts;
    StoreEvents events;
    db::Author author;
    Services services;
    std::unique_ptr<MainWindow> window;
};

class Renderer
{
public:
    Renderer(const QString& folder, QString suffix)
        : m_folder(folder)
        , m_suffix(std::move(suffix))
    {
    }
    bool save(QWidget& widget, const QString& name)
    {
        widget.ensurePolished();
        QApplication::sendPostedEvents();
        QApplication::processEvents(); // layouts and queued drawings before the picture is taken
        const QString file = QStringLiteral("%1/%2-%3.png").arg(m_folder, name, m_suffix);
        const bool saved = widget.grab().save(file);
        QTextStream(stdout) << (saved ? "" : "not saved: ") << file << '\n';
        return saved;
    }

private:
    QString m_folder;
    QString m_suffix;
};

} // namespace quadrille::app
