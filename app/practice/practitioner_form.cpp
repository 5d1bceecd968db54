// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/practice/practitioner_form.h"

#include "app/window/store_events.h"
#include "ui_practitioner_form.h"

#include "db/people.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

QString formName(const Practitioner& practitioner)
{
    return practitioner.id ? QStringLiteral("practitioner/%1").arg(practitioner.id->key())
                           : QStringLiteral("practitioner/new");
}

} // namespace

PractitionerForm::PractitionerForm(const Services& services, const Practitioner& practitioner,
                                   QWidget* parent)
    : EntryDialog(services, formName(practitioner),
                  practitioner.id ? tr("Practitioner") : tr("New practitioner"), parent)
    , m_ui(std::make_unique<Ui::PractitionerFields>())
    , m_practitioner(practitioner)
{
    m_ui->setupUi(body());
    setMinimumWidth(400);
    fill();
    m_ui->archived->setVisible(practitioner.id.has_value());
    restoreKept();
    startKeeping();
}

PractitionerForm::~PractitionerForm() = default;

void PractitionerForm::fill()
{
    m_ui->name->setText(QString::fromStdString(m_practitioner.name));
    m_ui->registrationNumber->setText(QString::fromStdString(m_practitioner.registrationNumber));
    m_ui->initials->setText(QString::fromStdString(m_practitioner.initials));
    m_ui->archived->setChecked(m_practitioner.archived);
}

Result<void> PractitionerForm::readAgain()
{
    const auto all = services().store.read(db::practitioners);
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_practitioner.id, &Practitioner::id);
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_practitioner.name, .detail = {}};
    }
    m_practitioner = *stored;
    fill();
    return {};
}

std::optional<EntryDialog::Problem> PractitionerForm::problem() const
{
    if (m_ui->name->text().trimmed().isEmpty()) {
        return Problem{m_ui->name, tr("The name is empty. Plans are signed with it: enter it.")};
    }
    if (m_ui->archived->isChecked() && m_practitioner.id == services().author.practitioner) {
        return Problem{m_ui->archived,
                       tr("This is who is working now. Let somebody else sign in first.")};
    }
    return std::nullopt;
}

Result<void> PractitionerForm::save()
{
    Practitioner practitioner = m_practitioner;
    practitioner.name = m_ui->name->text().simplified().toStdString();
    practitioner.registrationNumber = m_ui->registrationNumber->text().simplified().toStdString();
    practitioner.initials = m_ui->initials->text().simplified().toStdString();
    practitioner.archived = m_ui->archived->isChecked();
    const auto saved = services().store.write(
        services().author, practitioner.id ? "change practitioner" : "add practitioner",
        [&](db::Writing& writing) {
            if (practitioner.id) {
                db::changePractitioner(writing, practitioner);
            } else {
                db::addPractitioner(writing, practitioner);
            }
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.practiceChanged();
    return {};
}

} // namespace quadrille::app
