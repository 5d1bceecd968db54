// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/entry_dialog.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/window/prompts.h"
#include "app/words/error_text.h"

#include "db/kept_forms.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QJsonObject>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>
#include <chrono>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr std::chrono::milliseconds keepDelay{400};

QJsonValue valueOf(const QWidget* field)
{
    if (const auto* line = qobject_cast<const QLineEdit*>(field)) {
        return line->text();
    }
    if (const auto* text = qobject_cast<const QPlainTextEdit*>(field)) {
        return text->toPlainText();
    }
    if (const auto* combo = qobject_cast<const QComboBox*>(field)) {
        return combo->currentIndex();
    }
    if (const auto* spin = qobject_cast<const QSpinBox*>(field)) {
        return spin->value();
    }
    if (const auto* check = qobject_cast<const QAbstractButton*>(field);
        check && check->isCheckable()) {
        return check->isChecked();
    }
    return QJsonValue::Undefined;
}

void setValue(QWidget* field, const QJsonValue& value)
{
    if (auto* line = qobject_cast<QLineEdit*>(field)) {
        line->setText(value.toString());
    } else if (auto* text = qobject_cast<QPlainTextEdit*>(field)) {
        text->setPlainText(value.toString());
    } else if (auto* combo = qobject_cast<QComboBox*>(field)) {
        combo->setCurrentIndex(value.toInt(-1));
    } else if (auto* spin = qobject_cast<QSpinBox*>(field)) {
        spin->setValue(value.toInt());
    } else if (auto* check = qobject_cast<QAbstractButton*>(field)) {
        check->setChecked(value.toBool());
    }
}

/// What a person reads in a field.
QString shownIn(const QWidget* field)
{
    if (const auto* combo = qobject_cast<const QComboBox*>(field)) {
        return combo->currentText();
    }
    if (const auto* spin = qobject_cast<const QSpinBox*>(field)) {
        return spin->text();
    }
    const QJsonValue value = valueOf(field);
    if (value.isBool()) {
        return value.toBool() ? EntryDialog::tr("yes") : EntryDialog::tr("no");
    }
    return value.toString();
}

/// Beside the fields, whose names are words of ours without a blank.
QString versionName()
{
    return QStringLiteral("version of the record");
}

/// The label beside a field, or what a voice calls it.
QString labelOf(const QWidget* field)
{
    QString text = field->accessibleName();
    for (const QLabel* label : field->window()->findChildren<QLabel*>()) {
        if (label->buddy() == field) {
            text = label->text();
        }
    }
    if (const auto* check = qobject_cast<const QAbstractButton*>(field)) {
        text = check->text();
    }
    return text.remove(QLatin1Char('&'));
}

/// Named fields only; the parts that Qt makes inside them are named qt_….
QList<QWidget*> fieldsIn(const QWidget* body)
{
    QList<QWidget*> fields;
    for (QWidget* field : body->findChildren<QWidget*>()) {
        const bool named = !field->objectName().isEmpty() &&
                           !field->objectName().startsWith(QStringLiteral("qt_"));
        if (named && valueOf(field) != QJsonValue(QJsonValue::Undefined)) {
            fields.append(field);
        }
    }
    return fields;
}

} // namespace

EntryDialog::EntryDialog(const Services& services, QString form, const QString& title,
                         QWidget* parent)
    : QDialog(parent)
    , m_services(services)
    , m_form(std::move(form))
    , m_body(new QWidget(this))
    , m_problem(new QLabel(this))
    , m_save(new QPushButton(tr("Save"), this))
{
    setWindowTitle(title);
    m_problem->setWordWrap(true);
    setRole(*m_problem, Role::warnText);
    m_problem->setObjectName(QStringLiteral("problem"));
    m_problem->hide();
    setRole(*m_save, Role::primaryButton);
    m_save->setDefault(true);
    m_save->setObjectName(QStringLiteral("save"));
    auto* cancel = new QPushButton(tr("Cancel"), this);
    cancel->setAutoDefault(false);
    connect(m_save, &QPushButton::clicked, this, &EntryDialog::accept);
    connect(cancel, &QPushButton::clicked, this, &EntryDialog::reject);

    auto* buttons = new QHBoxLayout;
    buttons->addStretch();
    buttons->addWidget(cancel);
    buttons->addWidget(m_save);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::wide, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(m_body, 1);
    layout->addWidget(m_problem);
    layout->addLayout(buttons);

    m_keepSoon.setSingleShot(true);
    m_keepSoon.setInterval(keepDelay);
    connect(&m_keepSoon, &QTimer::timeout, this, &EntryDialog::keep);
}

void EntryDialog::setSaveText(const QString& text)
{
    m_save->setText(text);
}

void EntryDialog::setSaveEnabled(bool enabled)
{
    m_save->setEnabled(enabled);
}

QString EntryDialog::problemText() const
{
    return m_problem->isHidden() ? QString() : m_problem->text();
}

void EntryDialog::startKeeping()
{
    const auto soon = [this] { m_keepSoon.start(); };
    for (QWidget* field : fieldsIn(m_body)) {
        if (auto* line = qobject_cast<QLineEdit*>(field)) {
            connect(line, &QLineEdit::textEdited, this, soon);
        } else if (auto* text = qobject_cast<QPlainTextEdit*>(field)) {
            connect(text, &QPlainTextEdit::textChanged, this, soon);
        } else if (auto* combo = qobject_cast<QComboBox*>(field)) {
            connect(combo, &QComboBox::activated, this, soon);
        } else if (auto* spin = qobject_cast<QSpinBox*>(field)) {
            connect(spin, &QSpinBox::valueChanged, this, soon);
        } else if (auto* check = qobject_cast<QAbstractButton*>(field)) {
            connect(check, &QAbstractButton::clicked, this, soon);
        }
    }
}

bool EntryDialog::restoreKept()
{
    if (m_form.isEmpty()) {
        return false;
    }
    const auto kept =
        m_services.store.read([&](db::Reading& reading) { return db::keptForm(reading, m_form); });
    if (!kept || !kept->has_value()) {
        return false;
    }
    const QJsonObject& fields = **kept;
    for (QWidget* field : fieldsIn(m_body)) {
        if (fields.contains(field->objectName())) {
            setValue(field, fields.value(field->objectName()));
        }
    }
    // They were typed over that version: if another was saved since, saving shows both.
    if (Version* version = recordVersion(); version && fields.contains(versionName())) {
        *version = static_cast<Version>(fields.value(versionName()).toInteger());
    }
    m_problem->setText(
        tr("These entries were not saved last time. Save keeps them, Cancel drops them."));
    m_problem->show();
    makeRoom();
    return true;
}

void EntryDialog::keep()
{
    if (m_form.isEmpty() || !m_services.store.isWritable()) {
        return;
    }
    QJsonObject fields;
    for (const QWidget* field : fieldsIn(m_body)) {
        fields.insert(field->objectName(), valueOf(field));
    }
    if (const Version* version = recordVersion()) {
        fields.insert(versionName(), static_cast<qint64>(*version));
    }
    const auto kept =
        m_services.store.write(m_services.author, "keep a form", [&](db::Writing& writing) {
            db::keepForm(writing, m_form, fields);
        });
    if (!kept) {
        showProblem(nullptr, errorText(kept.error(), m_services.text));
    }
}

void EntryDialog::dropKept()
{
    m_keepSoon.stop();
    if (m_form.isEmpty() || !m_services.store.isWritable()) {
        return;
    }
    const auto dropped =
        m_services.store.write(m_services.author, "drop a kept form",
                               [&](db::Writing& writing) { db::dropForm(writing, m_form); });
    if (!dropped) {
        qWarning("a kept form could not be dropped; it will be offered again");
    }
}

void EntryDialog::accept()
{
    if (const auto wrong = problem()) {
        showProblem(wrong->field, wrong->sentence);
        return;
    }
    Result<void> saved = m_unsettled ? Result<void>(*m_unsettled) : save();
    if (!saved && saved.error().code == ErrorCode::changedElsewhere) {
        saved = settle(saved.error());
        // What is chosen field by field need not go together.
        if (const auto wrong = saved ? problem() : std::nullopt) {
            showProblem(wrong->field, wrong->sentence);
            return;
        }
        saved = saved ? save() : saved;
    }
    if (!saved) {
        showProblem(nullptr, errorText(saved.error(), m_services.text));
        return;
    }
    dropKept();
    QDialog::accept();
}

Result<void> EntryDialog::readAgain()
{
    return Error{.code = ErrorCode::changedElsewhere, .subject = {}, .detail = {}};
}

QMap<QString, EntryDialog::Entry> EntryDialog::entries() const
{
    QMap<QString, Entry> entries;
    for (const QWidget* field : fieldsIn(m_body)) {
        entries.insert(field->objectName(), {valueOf(field), shownIn(field)});
    }
    return entries;
}

void EntryDialog::enter(const QMap<QString, Entry>& entries)
{
    for (QWidget* field : fieldsIn(m_body)) {
        if (entries.contains(field->objectName())) {
            setValue(field, entries[field->objectName()].value);
        }
    }
    fieldsEntered();
}

Result<void> EntryDialog::settle(const Error& error)
{
    const QMap<QString, Entry> mine = entries();
    if (const auto read = readAgain(); !read) {
        return read.error().code == ErrorCode::changedElsewhere ? error : read.error();
    }
    const QMap<QString, Entry> theirs = entries();
    enter(mine); // what is kept while the person decides is what was typed
    std::vector<Difference> differences;
    QStringList names;
    for (const QWidget* field : fieldsIn(m_body)) {
        const QString name = field->objectName();
        if (mine[name].value != theirs[name].value) {
            differences.push_back({labelOf(field), theirs[name].shown, mine[name].shown});
            names.append(name);
        }
    }
    const QString sentence =
        (error.detail.empty() ? tr("This record was changed elsewhere while it was open here.")
                              : tr("%1 changed this record while it was open here.")
                                    .arg(QString::fromStdString(error.detail))) +
        QLatin1Char(' ') +
        tr("Choose what shall stand; what was saved elsewhere stays in the history.");
    const auto chosen = differences.empty()
                            ? std::optional(std::vector<bool>())
                            : m_services.prompts.chooseBetween(this, sentence, differences);
    if (!chosen) {
        m_unsettled = error;
        return error;
    }
    m_unsettled.reset();
    for (std::size_t i = 0; i < chosen->size(); ++i) {
        if (!(*chosen)[i]) {
            const QString& name = names[static_cast<qsizetype>(i)];
            enter({{name, theirs[name]}});
        }
    }
    return {};
}

void EntryDialog::reject()
{
    dropKept();
    QDialog::reject();
}

void EntryDialog::showEvent(QShowEvent* event)
{
    QDialog::showEvent(event);
    if (!m_problem->isHidden()) {
        makeRoom();
    }
}

void EntryDialog::makeRoom()
{
    if (!isVisible()) {
        return; // the fields have no width yet
    }
    if (const QLayout* inside = m_body->layout();
        inside != nullptr && inside->hasHeightForWidth()) {
        m_body->setMinimumHeight(inside->totalHeightForWidth(m_body->width()));
    }
    layout()->activate();
    const int needed =
        std::max(layout()->totalHeightForWidth(width()), layout()->totalMinimumSize().height());
    if (height() < needed) {
        resize(width(), needed);
    }
}

void EntryDialog::showProblem(QWidget* field, const QString& sentence)
{
    m_problem->setText(sentence);
    m_problem->show();
    makeRoom();
    for (QWidget* any : fieldsIn(m_body)) {
        setOutOfRange(*any, any == field);
    }
    if (field != nullptr) {
        field->setFocus(Qt::OtherFocusReason);
    }
}

} // namespace quadrille::app
