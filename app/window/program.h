// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/look/look.h"
#include "app/window/preferences.h"
#include "app/window/services.h"
#include "app/window/store_events.h"
#include "app/words/quantity_text.h"

#include "db/store.h"

#include "core/result.h"

#include <QObject>
#include <QString>

#include <memory>

namespace quadrille::app
{

class DailyCopies;
class MainWindow;
class Prompts;

/// The running program: one practice open in one window at a time. It owns store and window and
/// changes both when another practice is opened.
///
///   Program ── store, look, preferences, author
///      └── MainWindow ── pages (given references, never owners)
class Program : public QObject
{
    Q_OBJECT

public:
    /// All outlive the program object.
    Program(QApplication& application, const Clock& clock, const QLocale& locale,
            QSettings& settings, Prompts& prompts);
    ~Program() override;

    /// Opens a practice in a new window in place of the last one. On failure the last one stays.
    Result<void> open(const QString& file, db::Opening opening);
    /// Makes the demo practice anew in the user's data folder and opens it.
    Result<void> openDemo();
    /// Why a practice could not be opened, with the copy that could be restored where one would
    /// help.
    QString whyNotOpened(const Error& error, const QString& file) const;
    MainWindow* window() { return m_window.get(); }

    /// Where a person's own practice and the demo live: the user's data folder.
    static QString defaultStore();
    static QString demoStore();

private:
    void askForStore(bool create);
    void askForCopyFolder();
    void erase(PatientId patient);
    /// Which copies still hold an erased patient, in a sentence.
    QString copiesText(const Patient& patient) const;
    Services services() const;
    void keepCopies();
    /// Whether daily copies are made of the practice that is open.
    bool isCopied() const;
    QString copyFolderOf(const QString& store) const;
    void setAuthor();
    void work(PractitionerId practitioner);
    void showWindow();
    void applyLook();
    void remember();

    const Clock& m_clock;
    Preferences m_preferences;
    Prompts& m_prompts;
    QuantityText m_text;
    Look m_look;
    std::unique_ptr<StoreEvents> m_events;
    std::unique_ptr<db::Store> m_store;
    db::Author m_author;
    std::unique_ptr<MainWindow> m_window;
    std::unique_ptr<DailyCopies> m_copies;
};

} // namespace quadrille::app
