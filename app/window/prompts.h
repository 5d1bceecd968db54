// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include <optional>
#include <vector>

class QWidget;

namespace quadrille::app
{

/// A value that somebody else saved, and one's own that is not saved yet.
struct Difference {
    QString field;
    QString theirs;
    QString mine;
};

/// The door for questions and file dialogs, so that a test can answer them.
class Prompts
{
public:
    virtual ~Prompts() = default;
    /// A practice file to open; nothing when the person thinks better of it.
    virtual std::optional<QString> storeToOpen(QWidget* parent) = 0;
    /// A diary that somebody has as a file.
    virtual std::optional<QString> diaryToImport(QWidget* parent) = 0;
    /// Where a new practice shall live.
    virtual std::optional<QString> placeForStore(QWidget* parent) = 0;
    /// Where a PDF shall go.
    virtual std::optional<QString> placeForPdf(QWidget* parent, const QString& suggestedName) = 0;
    /// Where a table for a spreadsheet shall go.
    virtual std::optional<QString> placeForTable(QWidget* parent, const QString& suggestedName) = 0;
    /// Where a picture (PNG) shall go.
    virtual std::optional<QString> placeForPicture(QWidget* parent,
                                                   const QString& suggestedName) = 0;
    /// The folder into which the daily copies go.
    virtual std::optional<QString> folderForCopies(QWidget* parent, const QString& present) = 0;
    /// A question with two answers, the act named on its button. False for Cancel.
    virtual bool confirm(QWidget* parent, const QString& question, const QString& act) = 0;
    /// A fact to be read before going on.
    virtual void tell(QWidget* parent, const QString& sentence) = 0;
    /// Which of two values shall stand, for each difference: true for one's own. Nothing when the
    /// person thinks better of saving.
    virtual std::optional<std::vector<bool>>
    chooseBetween(QWidget* parent, const QString& sentence,
                  const std::vector<Difference>& differences) = 0;
};

/// The real ones.
class DesktopPrompts : public Prompts
{
public:
    std::optional<QString> storeToOpen(QWidget* parent) override;
    std::optional<QString> diaryToImport(QWidget* parent) override;
    std::optional<QString> placeForStore(QWidget* parent) override;
    std::optional<QString> placeForPdf(QWidget* parent, const QString& suggestedName) override;
    std::optional<QString> placeForTable(QWidget* parent, const QString& suggestedName) override;
    std::optional<QString> placeForPicture(QWidget* parent, const QString& suggestedName) override;
    std::optional<QString> folderForCopies(QWidget* parent, const QString& present) override;
    bool confirm(QWidget* parent, const QString& question, const QString& act) override;
    void tell(QWidget* parent, const QString& sentence) override;
    std::optional<std::vector<bool>>
    chooseBetween(QWidget* parent, const QString& sentence,
                  const std::vector<Difference>& differences) override;
};

} // namespace quadrille::app
