// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include <optional>

class QWidget;

namespace quadrille::app
{

/// The door for questions and file dialogs, so that a test can answer them.
class Prompts
{
public:
    virtual ~Prompts() = default;
    /// A practice file to open; nothing when the person thinks better of it.
    virtual std::optional<QString> storeToOpen(QWidget* parent) = 0;
    /// Where a new practice shall live.
    virtual std::optional<QString> placeForStore(QWidget* parent) = 0;
    /// Where a PDF shall go.
    virtual std::optional<QString> placeForPdf(QWidget* parent, const QString& suggestedName) = 0;
    /// A question with two answers, the act named on its button. False for Cancel.
    virtual bool confirm(QWidget* parent, const QString& question, const QString& act) = 0;
    /// A fact to be read before going on.
    virtual void tell(QWidget* parent, const QString& sentence) = 0;
};

/// The real ones.
class DesktopPrompts : public Prompts
{
public:
    std::optional<QString> storeToOpen(QWidget* parent) override;
    std::optional<QString> placeForStore(QWidget* parent) override;
    std::optional<QString> placeForPdf(QWidget* parent, const QString& suggestedName) override;
    bool confirm(QWidget* parent, const QString& question, const QString& act) override;
    void tell(QWidget* parent, const QString& sentence) override;
};

} // namespace quadrille::app
