// SPDX-License-Identifier: GPL-3.0-or-later
// A window on a practice of its own in a temporary folder, for tests that use the program as a
// person does.
#pragma once

#include "app/look/look.h"
#include "app/window/main_window.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/quantity_text.h"
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include <QApplication>
#include <QLocale>

#include <functional>
#include <memory>
#include <optional>

namespace quadrille::tests
{

/// Answers questions and file dialogs from what the test put in.
class ScriptedPrompts : public app::Prompts
{
public:
    std::optional<QString> storeToOpen(QWidget*) override { return store; }
    std::optional<QString> diaryToImport(QWidget*) override { return diary; }
    std::optional<QString> placeForStore(QWidget*) override { return store; }
    std::optional<QString> placeForPdf(QWidget*, const QString& suggestedName) override
    {
        suggestedPdfName = suggestedName;
        return pdf;
    }
    std::optional<QString> placeForTable(QWidget*, const QString&) override { return table; }
    std::optional<QString> placeForPicture(QWidget*, const QString&) override { return picture; }
    std::optional<QString> folderForCopies(QWidget*, const QString&) override { return folder; }
    bool confirm(QWidget*, const QString& question, const QString&) override
    {
        asked = question;
        return confirms;
    }
    void tell(QWidget*, const QString& sentence) override { told = sentence; }
    std::optional<std::vector<bool>>
    chooseBetween(QWidget*, const QString& sentence,
                  const std::vector<app::Difference>& differences) override
    {
        asked = sentence;
        shown = differences;
        return choose ? std::optional(choose(differences)) : std::nullopt;
    }

    std::optional<QString> store;
    std::optional<QString> diary;
    std::optional<QString> pdf;
    std::optional<QString> table;
    std::optional<QString> picture;
    std::optional<QString> folder;
    QString suggestedPdfName;
    bool confirms = true;
    QString asked;
    QString told;
    /// What was shown last of a change made elsewhere, and how to choose; empty: back to the form.
    std::vector<app::Difference> shown;
    std::function<std::vector<bool>(const std::vector<app::Difference>&)> choose;
};

/// Store, services and main window; everything goes with it.
class PracticeWindow
{
public:
    /// `filled`: a practice with a name, a practitioner, a unit and a patient with a course.
    explicit PracticeWindow(bool filled = true);
    /// The test fails where a dialog is waited for still.
    ~PracticeWindow();

    db::Store& store() { return *m_store; }
    app::MainWindow& window() { return *m_window; }
    const app::Services& services() const { return *m_services; }
    ScriptedPrompts& prompts() { return m_prompts; }
    const Practiced& ids() const { return *m_ids; }
    TempStore& temp() { return m_temp; }
    const app::QuantityText& text() const { return m_text; }
    /// A screen without a window manager gives the focus back to nobody when a dialog closes.
    void bringToFront();
    /// Closes the window as a crash would: nothing is asked, nothing is saved. Then opens the file
    /// again.
    void crashAndStartAgain();

    /// The one visible widget of this name inside `parent`; the test fails when there is none.
    template <class Widget>
    Widget* find(const char* name, QWidget* parent = nullptr)
    {
        QWidget* within = parent != nullptr ? parent : m_window.get();
        auto* found = within->findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << "no widget " << name;
        return found;
    }

private:
    void openWindow();

    TempStore m_temp;
    app::QuantityText m_text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    app::Look m_look{*qApp};
    ScriptedPrompts m_prompts;
    db::Author m_author;
    std::unique_ptr<db::Store> m_store;
    std::optional<Practiced> m_ids;
    std::unique_ptr<app::StoreEvents> m_events;
    std::unique_ptr<app::Services> m_services;
    std::unique_ptr<app::MainWindow> m_window;
};

/// Runs `answer` on the dialog that opens next, from inside its event loop; waits no longer than
/// the window of the practice lives.
void onNextDialog(const std::function<void(QDialog&)>& answer);
/// Types text into a field that is cleared first.
void typeInto(QWidget* field, const QString& text);

} // namespace quadrille::tests
