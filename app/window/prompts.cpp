// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/prompts.h"

#include "app/window/conflict_dialog.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QStandardPaths>

namespace quadrille::app
{

namespace
{

struct PromptWords {
    Q_DECLARE_TR_FUNCTIONS(PromptWords)
};

QString documents()
{
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

std::optional<QString> unlessEmpty(const QString& file)
{
    return file.isEmpty() ? std::nullopt : std::optional(file);
}

QString withSuffix(const QString& file, const QString& suffix)
{
    return file.isEmpty() || file.endsWith(suffix, Qt::CaseInsensitive) ? file : file + suffix;
}

} // namespace

std::optional<QString> DesktopPrompts::storeToOpen(QWidget* parent)
{
    return unlessEmpty(QFileDialog::getOpenFileName(
        parent, PromptWords::tr("Open a practice"), documents(),
        PromptWords::tr("Practice files (*.quadrille);;All files (*)")));
}

std::optional<QString> DesktopPrompts::diaryToImport(QWidget* parent)
{
    return unlessEmpty(QFileDialog::getOpenFileName(
        parent, PromptWords::tr("Import a diary"), documents(),
        PromptWords::tr("Tables and JSON (*.csv *.txt *.tsv *.json);;All files (*)")));
}

std::optional<QString> DesktopPrompts::placeForStore(QWidget* parent)
{
    const QString suggested = QDir(documents()).filePath(QStringLiteral("practice.quadrille"));
    return unlessEmpty(withSuffix(
        QFileDialog::getSaveFileName(parent, PromptWords::tr("Place of the new practice"),
                                     suggested, PromptWords::tr("Practice files (*.quadrille)")),
        QStringLiteral(".quadrille")));
}

std::optional<QString> DesktopPrompts::placeForPdf(QWidget* parent, const QString& suggestedName)
{
    return unlessEmpty(
        withSuffix(QFileDialog::getSaveFileName(parent, PromptWords::tr("Save as PDF"),
                                                QDir(documents()).filePath(suggestedName),
                                                PromptWords::tr("PDF files (*.pdf)")),
                   QStringLiteral(".pdf")));
}

std::optional<QString> DesktopPrompts::placeForTable(QWidget* parent, const QString& suggestedName)
{
    return unlessEmpty(
        withSuffix(QFileDialog::getSaveFileName(parent, PromptWords::tr("Save as CSV"),
                                                QDir(documents()).filePath(suggestedName),
                                                PromptWords::tr("CSV files (*.csv)")),
                   QStringLiteral(".csv")));
}

std::optional<QString> DesktopPrompts::placeForPicture(QWidget* parent,
                                                       const QString& suggestedName)
{
    return unlessEmpty(
        withSuffix(QFileDialog::getSaveFileName(parent, PromptWords::tr("Save as PNG"),
                                                QDir(documents()).filePath(suggestedName),
                                                PromptWords::tr("PNG pictures (*.png)")),
                   QStringLiteral(".png")));
}

std::optional<QString> DesktopPrompts::folderForCopies(QWidget* parent, const QString& present)
{
    return unlessEmpty(QFileDialog::getExistingDirectory(
        parent, PromptWords::tr("Folder of the daily copies"), present));
}

bool DesktopPrompts::confirm(QWidget* parent, const QString& question, const QString& act)
{
    QMessageBox box(QMessageBox::NoIcon, PromptWords::tr("Quadrille"), question,
                    QMessageBox::NoButton, parent);
    const QPushButton* yes = box.addButton(act, QMessageBox::AcceptRole);
    box.addButton(PromptWords::tr("Cancel"), QMessageBox::RejectRole);
    box.exec();
    return box.clickedButton() == yes;
}

void DesktopPrompts::tell(QWidget* parent, const QString& sentence)
{
    QMessageBox box(QMessageBox::NoIcon, PromptWords::tr("Quadrille"), sentence,
                    QMessageBox::NoButton, parent);
    box.addButton(PromptWords::tr("Close"), QMessageBox::AcceptRole);
    box.exec();
}

std::optional<std::vector<bool>>
DesktopPrompts::chooseBetween(QWidget* parent, const QString& sentence,
                              const std::vector<Difference>& differences)
{
    ConflictDialog dialog(sentence, differences, parent);
    if (dialog.exec() != QDialog::Accepted) {
        return std::nullopt;
    }
    return dialog.choices();
}

} // namespace quadrille::app
