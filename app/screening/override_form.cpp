// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/override_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/practice/practitioner_choice.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"

#include "db/screenings.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QPlainTextEdit>

namespace quadrille::app
{

namespace
{

constexpr int reasonHeight = 84;
constexpr int leastWidth = 480;

} // namespace

OverrideForm::OverrideForm(const Services& services, const Screening& screening,
                           const std::string& question, const QString& head, const QString& blocks,
                           QWidget* parent)
    : EntryDialog(services, {}, tr("Go ahead all the same"), parent)
    , m_screening(screening)
    , m_question(question)
    , m_practitioner(new QComboBox(body()))
    , m_reason(new QPlainTextEdit(body()))
{
    auto* what = new QLabel(QStringLiteral("%1\n%2").arg(head, blocks), body());
    what->setWordWrap(true);
    setRole(*what, Role::strongText);
    auto* permanent = new QLabel(tr("This is permanent and stands in the head of the record. It "
                                    "lifts this one block until the next screening."),
                                 body());
    permanent->setWordWrap(true);
    m_practitioner->setObjectName(QStringLiteral("practitioner"));
    m_practitioner->setAccessibleName(tr("Practitioner"));
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->setAccessibleName(tr("Reason"));
    m_reason->setTabChangesFocus(true);
    m_reason->setMaximumHeight(reasonHeight);
    m_reason->setPlaceholderText(tr("for example: agreed with the heart clinic on the telephone"));
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    form->addRow(what);
    form->addRow(permanent);
    form->addRow(tr("&Practitioner"), m_practitioner);
    form->addRow(tr("&Reason"), m_reason);
    fillPractitioners(*m_practitioner, services);
    setSaveText(tr("Go ahead"));
    setMinimumWidth(leastWidth);
    m_reason->setFocus();
}

std::optional<EntryDialog::Problem> OverrideForm::problem() const
{
    if (!chosenPractitioner(*m_practitioner)) {
        return Problem{m_practitioner,
                       tr("No practitioner is chosen. Choose who answers for going ahead.")};
    }
    if (m_reason->toPlainText().trimmed().isEmpty()) {
        return Problem{m_reason, tr("The reason is empty. Say why this person is treated all the "
                                    "same.")};
    }
    return std::nullopt;
}

Result<void> OverrideForm::save()
{
    ScreeningOverride reason;
    reason.screening = m_screening.id;
    reason.question = m_question;
    reason.practitioner = chosenPractitioner(*m_practitioner);
    reason.reason = m_reason->toPlainText().trimmed().toStdString();
    const auto saved =
        services().store.write(services().author, "go ahead in spite of the screening",
                               [&](db::Writing& writing) { db::addOverride(writing, reason); });
    if (!saved) {
        return saved.error();
    }
    emit services().events.screeningChanged(*m_screening.course);
    return {};
}

} // namespace quadrille::app
