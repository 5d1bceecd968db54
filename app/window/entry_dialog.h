// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/people.h"
#include "core/result.h"

#include <QDialog>
#include <QJsonValue>
#include <QMap>
#include <QString>
#include <QTimer>

#include <optional>

class QLabel;
class QPushButton;

namespace quadrille::app
{

/// A form in a window of its own: fields, one sentence about what is wrong, Save and Cancel. What
/// was typed is kept in the store while the form is open and comes back when the program ended
/// before it was saved.
class EntryDialog : public QDialog
{
    Q_OBJECT

public:
    /// `form` names the form and the record it edits ("patient/12"); empty keeps nothing.
    EntryDialog(const Services& services, QString form, const QString& title, QWidget* parent);

    /// Fills the fields from an earlier run that ended before they were saved; true when there was
    /// something.
    bool restoreKept();
    void accept() override;
    void reject() override;
    /// The sentence shown about what is wrong; empty while nothing is.
    QString problemText() const;

protected:
    void showEvent(QShowEvent* event) override;
    /// A field that cannot be saved as it is.
    struct Problem {
        QWidget* field;
        QString sentence;
    };
    /// Where the fields go.
    QWidget* body() { return m_body; }
    void setSaveText(const QString& text);
    /// Off while the form can only be read.
    void setSaveEnabled(bool enabled);
    /// The first thing that is wrong.
    virtual std::optional<Problem> problem() const = 0;
    /// Saves what the fields hold. An error keeps the form open.
    virtual Result<void> save() = 0;
    /// Reads the record anew and shows it in the fields; the next save goes over that version.
    /// Forms of records that only one window can change leave it out and stay with the error.
    virtual Result<void> readAgain();
    /// The version that the form was filled from and saves over; nothing where a record is new or
    /// has none.
    virtual Version* recordVersion() { return nullptr; }
    /// The fields were filled by their names; what is built from several of them follows here.
    virtual void fieldsEntered() {}
    const Services& services() const { return m_services; }
    /// Watches the fields from now on; call when they are filled.
    void startKeeping();

private:
    /// What a field holds, and how it looks.
    struct Entry {
        QJsonValue value;
        QString shown;
    };
    QMap<QString, Entry> entries() const;
    void enter(const QMap<QString, Entry>& entries);
    /// Somebody else saved the record: shows both and enters what the person chooses.
    Result<void> settle(const Error& error);
    void keep();
    void dropKept();
    void showProblem(QWidget* field, const QString& sentence);
    /// Grows where a sentence would take the room of a field, once the form has its width.
    void makeRoom();

    const Services m_services;
    QString m_form;
    QWidget* m_body;
    QLabel* m_problem;
    QPushButton* m_save;
    QTimer m_keepSoon;
    std::optional<Error> m_unsettled; ///< a change elsewhere on which the person has not decided
};

} // namespace quadrille::app
