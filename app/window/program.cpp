// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/program.h"

#include "app/demo/demo_practice.h"
#include "app/patient/erase_form.h"
#include "app/window/daily_copies.h"
#include "app/window/main_window.h"
#include "app/window/prompts.h"
#include "app/words/damage_text.h"
#include "app/words/error_text.h"

#include "db/backup.h"
#include "db/file_system.h"
#include "db/people.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QStandardPaths>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

QString dataFolder()
{
    return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
           QStringLiteral("/quadrille");
}

/// A made-up practice may be thrown away; its companions of an open store go with it.
Result<void> removeStore(const QString& file)
{
    for (const QString& suffix : {QString(), QStringLiteral("-wal"), QStringLiteral("-shm")}) {
        QFile part(file + suffix);
        if (part.exists() && !part.remove()) {
            return Error{.code = ErrorCode::cannotWrite,
                         .subject = (file + suffix).toStdString(),
                         .detail = part.errorString().toStdString()};
        }
    }
    return {};
}

} // namespace

Program::Program(QApplication& application, const Clock& clock, const QLocale& locale,
                 QSettings& settings, Prompts& prompts)
    : m_clock(clock)
    , m_preferences(settings)
    , m_prompts(prompts)
    , m_text(locale)
    , m_look(application)
{
    applyLook();
}

Program::~Program()
{
    m_copies.reset(); // says nothing to a window that goes
    remember();
}

QString Program::defaultStore()
{
    return dataFolder() + QStringLiteral("/practice.quadrille");
}

QString Program::demoStore()
{
    return dataFolder() + QStringLiteral("/demo.quadrille");
}

Result<void> Program::open(const QString& file, db::Opening opening)
{
    if (opening == db::Opening::createIfMissing) {
        // Where it can't be made, opening the file in it says so.
        db::makePrivateFolder(QFileInfo(file).absolutePath());
    }
    auto store = db::Store::open(file, opening, m_clock);
    if (!store) {
        return store.error();
    }
    remember();
    m_window.reset();
    m_store = std::move(store).value();
    m_preferences.setLastStore(m_store->file());
    setAuthor();
    showWindow();
    keepCopies();
    return {};
}

QString Program::copyFolderOf(const QString& store) const
{
    return m_preferences.copyFolder(store).value_or(db::usualCopyFolder(store));
}

QString Program::whyNotOpened(const Error& error, const QString& file) const
{
    return damageText(error, file, db::dailyCopiesOf(file, copyFolderOf(file)), m_text);
}

bool Program::isCopied() const
{
    return m_store->file() != demoStore() && m_store->isWritable();
}

void Program::keepCopies()
{
    m_copies.reset();
    const QString store = m_store->file();
    if (!isCopied()) {
        return;
    }
    m_copies = std::make_unique<DailyCopies>(store, copyFolderOf(store), m_clock);
    connect(m_copies.get(), &DailyCopies::failed, this, [this](const Error& error) {
        m_window->say(
            tr("Today’s copy of the practice could not be made. %1").arg(errorText(error, m_text)));
    });
    m_copies->copyIfDue();
}

void Program::askForCopyFolder()
{
    const QString store = m_store->file();
    if (!isCopied()) {
        m_prompts.tell(m_window.get(),
                       tr("No daily copies are made of the demo practice, nor of a practice that "
                          "can only be read. Open your own practice to choose their folder."));
        return;
    }
    if (const auto folder = m_prompts.folderForCopies(m_window.get(), copyFolderOf(store))) {
        m_preferences.setCopyFolder(store, *folder);
        keepCopies();
        m_window->say(tr("The daily copies of this practice go to %1.").arg(*folder));
    }
}

Services Program::services() const
{
    return {*m_store, m_clock, m_text, m_look, m_prompts, *m_events, m_author};
}

void Program::erase(PatientId id)
{
    const auto patient =
        m_store->read([&](db::Reading& reading) { return db::patient(reading, id); });
    if (!patient) {
        return m_window->say(errorText(patient.error(), m_text));
    }
    if (!*patient) {
        return m_window->say(tr("This patient is no longer in the practice file."));
    }
    EraseForm form(services(), **patient, m_window.get());
    if (form.exec() != QDialog::Accepted) {
        return;
    }
    m_window->leaveErased(id);
    const QString erased =
        tr("Patient %1 is erased.").arg(QString::fromStdString((*patient)->reference));
    QStringList sentences{erased, copiesText(**patient)};
    if (form.notScrubbed()) {
        sentences.insert(1, errorText(*form.notScrubbed(), m_text));
    }
    m_window->say(erased);
    m_prompts.tell(m_window.get(), sentences.join(QStringLiteral("\n\n")));
}

QString Program::copiesText(const Patient& patient) const
{
    const QString store = m_store->file();
    const QStringList folders{QFileInfo(store).absolutePath(), copyFolderOf(store)};
    const QStringList copies = db::copiesHolding(patient, store, folders);
    if (copies.isEmpty()) {
        return tr("No copy that still holds this person was found in %1. Look wherever else "
                  "backups of this practice are kept.")
            .arg(folders.join(QStringLiteral(", ")));
    }
    return tr("These copies still hold this person, or may; replace or delete them as your rules "
              "ask:\n%1")
        .arg(copies.join(QLatin1Char('\n')));
}

Result<void> Program::openDemo()
{
    remember();
    const bool demoIsOpen = m_store && m_store->file() == demoStore();
    if (demoIsOpen) {
        m_window.reset();
        m_store.reset();
    }
    db::makePrivateFolder(dataFolder());
    if (auto removed = removeStore(demoStore()); !removed) {
        return removed;
    }
    if (auto written = writeDemoPractice(demoStore(), m_clock.today()); !written) {
        return written;
    }
    return open(demoStore(), db::Opening::existing);
}

void Program::setAuthor()
{
    m_author = {};
    const auto practitioners = m_store->read(db::practitioners);
    if (!practitioners) {
        return;
    }
    const auto last = m_preferences.workingAt(m_store->file());
    const auto works = [](const Practitioner& p) { return !p.archived; };
    auto who = std::ranges::find_if(
        *practitioners, [&](const Practitioner& p) { return works(p) && p.id == last; });
    if (who == practitioners->end()) {
        who = std::ranges::find_if(*practitioners, works);
    }
    if (who != practitioners->end()) {
        m_author = {.practitioner = who->id, .name = who->name};
    }
}

void Program::work(PractitionerId practitioner)
{
    m_preferences.setWorkingAt(m_store->file(), practitioner);
    setAuthor();
    emit m_events->practiceChanged();
}

void Program::showWindow()
{
    m_events = std::make_unique<StoreEvents>();
    m_window = std::make_unique<MainWindow>(services());
    MainWindow* window = m_window.get();
    window->setScheme(m_preferences.scheme(), m_preferences.textPercent());
    // Queued: the window that asks is replaced by the answer.
    connect(
        window, &MainWindow::newPracticeRequested, this, [this] { askForStore(true); },
        Qt::QueuedConnection);
    connect(
        window, &MainWindow::openPracticeRequested, this, [this] { askForStore(false); },
        Qt::QueuedConnection);
    connect(
        window, &MainWindow::demoRequested, this,
        [this] {
            if (const auto opened = openDemo(); !opened) {
                m_prompts.tell(m_window.get(), errorText(opened.error(), m_text));
            }
        },
        Qt::QueuedConnection);
    connect(window, &MainWindow::eraseRequested, this, &Program::erase);
    connect(window, &MainWindow::copyFolderRequested, this, &Program::askForCopyFolder);
    connect(window, &MainWindow::workingChosen, this, &Program::work);
    connect(window, &MainWindow::schemeChosen, this, [this](SchemeChoice scheme) {
        m_preferences.setScheme(scheme);
        applyLook();
    });
    connect(window, &MainWindow::textPercentChosen, this, [this](int percent) {
        m_preferences.setTextPercent(percent);
        applyLook();
    });
    if (!window->restoreGeometry(m_preferences.windowGeometry())) {
        window->resize(1440, 900);
    }
    window->show();
}

void Program::askForStore(bool create)
{
    const auto file =
        create ? m_prompts.placeForStore(m_window.get()) : m_prompts.storeToOpen(m_window.get());
    if (!file) {
        return;
    }
    if (create && QFile::exists(*file)) {
        return m_prompts.tell(
            m_window.get(),
            tr("%1 exists already. Open it, or choose another name for the new practice.")
                .arg(*file));
    }
    if (const auto opened =
            open(*file, create ? db::Opening::createIfMissing : db::Opening::existing);
        !opened) {
        return m_prompts.tell(m_window.get(), whyNotOpened(opened.error(), *file));
    }
    m_window->askForPractice();
}

void Program::applyLook()
{
    m_look.apply(m_preferences.scheme(), m_preferences.textPercent() / 100.0);
    if (m_window) {
        m_window->setScheme(m_preferences.scheme(), m_preferences.textPercent());
    }
}

void Program::remember()
{
    if (m_window) {
        m_preferences.setWindowGeometry(m_window->saveGeometry());
    }
}

} // namespace quadrille::app
