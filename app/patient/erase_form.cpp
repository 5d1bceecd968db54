// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/erase_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int textWidth = 480;

} // namespace

EraseForm::EraseForm(const Services& services, const Patient& patient, QWidget* parent)
    : EntryDialog(services, {}, tr("Erase a patient"), parent)
    , m_patient(patient)
    , m_ground(new QComboBox(body()))
    , m_reference(new QLineEdit(body()))
{
    setSaveText(tr("Erase for good"));
    setMinimumWidth(520);
    layOut();
    m_ground->setFocus();
}

void EraseForm::layOut()
{
    const auto paragraph = [this](const QString& text, Role role) {
        auto* label = new QLabel(text, body());
        label->setWordWrap(true);
        setRole(*label, role);
        // A wrapped text asks for its height only once it knows its width.
        label->setMinimumHeight(label->heightForWidth(textWidth));
        return label;
    };
    m_ground->setObjectName(QStringLiteral("ground"));
    m_ground->setAccessibleName(tr("Ground"));
    m_ground->addItem(tr("the person’s own request"), static_cast<int>(db::ErasureGround::request));
    m_ground->addItem(tr("the term for keeping records is over"),
                      static_cast<int>(db::ErasureGround::retentionOver));
    m_ground->addItem(tr("entered by mistake"),
                      static_cast<int>(db::ErasureGround::enteredInError));
    m_ground->setCurrentIndex(-1);
    m_ground->setPlaceholderText(tr("Choose"));
    m_reference->setObjectName(QStringLiteral("reference"));
    m_reference->setAccessibleName(tr("Reference of the patient, typed once more"));

    auto* fields = new QFormLayout;
    fields->setHorizontalSpacing(space::insideSheet);
    fields->setVerticalSpacing(space::close);
    fields->addRow(tr("&Ground"), m_ground);
    fields->addRow(tr("&Reference once more"), m_reference);
    auto* column = new QVBoxLayout(body());
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::insideSheet);
    column->addWidget(paragraph(tr("%1, reference %2")
                                    .arg(QString::fromStdString(m_patient.name),
                                         QString::fromStdString(m_patient.reference)),
                                Role::strongText));
    column->addWidget(paragraph(
        tr("Every record of this person is removed from the practice file: courses, screenings, "
           "plans, diary, measurements, loans and every value in the history. This "
           "can’t be undone, and local rules may demand that records are kept: erase only where "
           "the law asks for it. To take somebody off the caseload, archive instead."),
        Role::none));
    column->addWidget(
        paragraph(tr("What stays: that a record was erased, when, on what ground and by %1.")
                      .arg(QString::fromStdString(services().author.name)),
                  Role::secondLineText));
    column->addLayout(fields);
}

std::optional<EntryDialog::Problem> EraseForm::problem() const
{
    if (!services().author.practitioner) {
        return Problem{m_ground, tr("A practitioner answers for an erasure. Choose who is working "
                                    "at the lower right of the window first.")};
    }
    if (m_ground->currentIndex() < 0) {
        return Problem{m_ground, tr("No ground is chosen. Say why the patient is erased.")};
    }
    if (m_reference->text().trimmed() != QString::fromStdString(m_patient.reference)) {
        return Problem{m_reference, tr("“%1” is not this patient’s reference. Type %2 to confirm.")
                                        .arg(m_reference->text().trimmed(),
                                             QString::fromStdString(m_patient.reference))};
    }
    return std::nullopt;
}

Result<void> EraseForm::save()
{
    auto erased =
        services().store.erase(services().author, *m_patient.id,
                               static_cast<db::ErasureGround>(m_ground->currentData().toInt()));
    if (!erased && erased.error().code == ErrorCode::erasedNotScrubbed) {
        m_notScrubbed = erased.error();
        return {};
    }
    return erased;
}

} // namespace quadrille::app
