// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/practice/practice_form.h"

#include "app/window/store_events.h"
#include "ui_practice_form.h"

#include "db/people.h"

namespace quadrille::app
{

PracticeForm::PracticeForm(const Services& services, QWidget* parent)
    : EntryDialog(services, QStringLiteral("practice"), tr("Practice"), parent)
    , m_ui(std::make_unique<Ui::PracticeFields>())
{
    m_ui->setupUi(body());
    setMinimumWidth(460);
    if (!readAgain()) {
        m_before = {}; // the window has said why by then; the form begins empty
    }
    const auto practitioners = services.store.read(db::practitioners);
    m_isFirst = practitioners && practitioners->empty();
    for (QWidget* field :
         {static_cast<QWidget*>(m_ui->practitionerName),
          static_cast<QWidget*>(m_ui->registrationNumber), static_cast<QWidget*>(m_ui->initials)}) {
        m_ui->formLayout->setRowVisible(field, m_isFirst);
    }
    restoreKept();
    startKeeping();
}

PracticeForm::~PracticeForm() = default;

Result<void> PracticeForm::readAgain()
{
    const auto stored = services().store.read(db::practice);
    if (!stored) {
        return stored.error();
    }
    m_before = stored->value_or(Practice{});
    m_ui->name->setText(QString::fromStdString(m_before.name));
    m_ui->address->setPlainText(QString::fromStdString(m_before.address));
    m_ui->telephone->setText(QString::fromStdString(m_before.telephone));
    m_ui->emergencyNumber->setText(QString::fromStdString(m_before.emergencyNumber));
    return {};
}

std::optional<EntryDialog::Problem> PracticeForm::problem() const
{
    if (m_ui->name->text().trimmed().isEmpty()) {
        return Problem{
            m_ui->name,
            tr("The name of the practice is empty. It stands on every handout: enter it.")};
    }
    if (m_isFirst && m_ui->practitionerName->text().trimmed().isEmpty()) {
        return Problem{m_ui->practitionerName,
                       tr("Your own name is empty. Plans are signed with it: enter it.")};
    }
    return std::nullopt;
}

Result<void> PracticeForm::save()
{
    const Practice practice{.name = m_ui->name->text().simplified().toStdString(),
                            .address = m_ui->address->toPlainText().trimmed().toStdString(),
                            .telephone = m_ui->telephone->text().simplified().toStdString(),
                            .emergencyNumber =
                                m_ui->emergencyNumber->text().simplified().toStdString(),
                            .version = m_before.version};
    const Practitioner practitioner{
        .id = std::nullopt,
        .name = m_ui->practitionerName->text().simplified().toStdString(),
        .registrationNumber = m_ui->registrationNumber->text().simplified().toStdString(),
        .initials = m_ui->initials->text().simplified().toStdString(),
        .archived = false};
    const auto saved =
        services().store.write(services().author, "change practice", [&](db::Writing& writing) {
            db::savePractice(writing, practice);
            return m_isFirst ? std::optional(db::addPractitioner(writing, practitioner))
                             : std::nullopt;
        });
    if (!saved) {
        return saved.error();
    }
    m_practitioner = *saved;
    emit services().events.practiceChanged();
    return {};
}

} // namespace quadrille::app
