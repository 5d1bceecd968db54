// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/patient_form.h"

#include "app/look/look.h"
#include "app/look/tokens.h"
#include "app/patient/segment_fields.h"
#include "app/patient/treated_side_box.h"
#include "app/window/store_events.h"
#include "app/words/trade_words.h"
#include "ui_patient_form.h"

#include "db/courses.h"
#include "db/people.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QLocale>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

using namespace literals;

constexpr int oldestAge = 130;
constexpr int usualWidth = 820;
/// As core/people.h bounds it.
constexpr Length leastHeight = 300_mm;
constexpr Length mostHeight = 2600_mm;

/// Languages to choose from; a patient's own is added where it is another.
constexpr const char* usualLanguages[] = {"en", "ar", "de", "es", "fr", "hi", "it", "nl",
                                          "pl", "pt", "ro", "ru", "tr", "uk", "ur", "zh"};

QString formName(const std::optional<Patient>& patient)
{
    return patient && patient->id ? QStringLiteral("patient/%1").arg(patient->id->key())
                                  : QStringLiteral("patient/new");
}

} // namespace

PatientForm::PatientForm(const Services& services, QWidget* parent)
    : EntryDialog(services, formName({}), tr("New patient"), parent)
    , m_ui(std::make_unique<Ui::PatientFields>())
{
    setUp();
    if (const auto next = services.store.read(db::nextReference)) {
        m_ui->reference->setText(QString::fromStdString(*next));
    }
    m_ui->startDate->setText(services.text.date(services.clock.today()));
    restoreKept();
    startKeeping();
}

PatientForm::PatientForm(const Services& services, const Patient& patient, QWidget* parent)
    : EntryDialog(services, formName(patient),
                  tr("Details of %1").arg(QString::fromStdString(patient.name)), parent)
    , m_ui(std::make_unique<Ui::PatientFields>())
    , m_before(patient)
{
    setUp();
    fill(patient);
    m_ui->formLayout->setRowVisible(m_ui->problem, false);
    m_ui->formLayout->setRowVisible(m_ui->startDate, false);
    m_ui->formLayout->setRowVisible(m_ui->treatedSide, false);
    restoreKept();
    startKeeping();
}

PatientForm::~PatientForm() = default;

void PatientForm::fill(const Patient& patient)
{
    m_ui->name->setText(QString::fromStdString(patient.name));
    m_ui->birthDate->setText(services().text.date(patient.birthDate));
    m_ui->reference->setText(QString::fromStdString(patient.reference));
    m_ui->telephone->setText(QString::fromStdString(patient.telephone));
    m_ui->note->setPlainText(QString::fromStdString(patient.note));
    m_ui->email->setText(QString::fromStdString(patient.email));
    m_ui->address->setPlainText(QString::fromStdString(patient.address));
    m_ui->contactPerson->setText(QString::fromStdString(patient.contactPerson));
    m_ui->height->setText(patient.height ? lengthText(*patient.height, services().text)
                                         : QString());
    m_segments->setLengths(patient.segmentLengths);
    const QString language = QString::fromStdString(patient.language);
    if (m_ui->language->findData(language) < 0) {
        addLanguage(language);
    }
    m_ui->language->setCurrentIndex(m_ui->language->findData(language));
}

void PatientForm::addLanguage(const QString& tag)
{
    const QString name = QLocale(tag).nativeLanguageName();
    m_ui->language->addItem(name.isEmpty() ? tag : tr("%1 (%2)", "language, tag").arg(name, tag),
                            tag);
}

Result<void> PatientForm::readAgain()
{
    const auto stored = services().store.read(
        [&](db::Reading& reading) { return db::patient(reading, *m_before->id); });
    if (!stored) {
        return stored.error();
    }
    if (!*stored) {
        return Error{.code = ErrorCode::notFound, .subject = m_before->reference, .detail = {}};
    }
    m_before = *stored;
    fill(*m_before);
    return {};
}

void PatientForm::setUp()
{
    m_ui->setupUi(body());
    m_ui->birthDate->setPlaceholderText(services().text.dateExample());
    m_ui->startDate->setPlaceholderText(services().text.dateExample());
    m_ui->language->addItem(tr("as the practice"), QString());
    for (const char* tag : usualLanguages) {
        addLanguage(QLatin1String(tag));
    }
    m_ui->language->setToolTip(tr("Kept for handouts in that language; this version prints them in "
                                  "the language of the program"));
    fillTreatedSides(*m_ui->treatedSide);
    m_segments = new SegmentFields(services().text, body());
    m_ui->detailLayout->addRow(m_segments);
    // The shorter column keeps its rows together.
    for (QFormLayout* column : {m_ui->formLayout, m_ui->detailLayout}) {
        auto* rest = new QWidget(body());
        rest->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
        column->addRow(rest);
    }
    setMinimumWidth(std::min(scaled(usualWidth, appliedFactor()), size::leastWindowWidth));
    m_ui->name->setFocus();
}

std::optional<EntryDialog::Problem> PatientForm::problem() const
{
    const Date today = services().clock.today();
    if (m_ui->name->text().trimmed().isEmpty()) {
        return Problem{m_ui->name, tr("The name is empty. Enter the patient’s name.")};
    }
    const auto birth = services().text.dateFrom(m_ui->birthDate->text());
    if (!birth) {
        return Problem{m_ui->birthDate,
                       tr("“%1” is no date of birth. Enter day, month and year, for example %2.")
                           .arg(m_ui->birthDate->text(), services().text.dateExample())};
    }
    const auto age = ageInYears(*birth, today);
    if (!age || *age > oldestAge) {
        return Problem{m_ui->birthDate, tr("A date of birth of %1 cannot be right. Check the year.")
                                            .arg(services().text.date(*birth))};
    }
    if (m_ui->reference->text().trimmed().isEmpty()) {
        return Problem{m_ui->reference,
                       tr("The reference is empty. Enter the practice’s own number.")};
    }
    if (auto wrong = m_before ? std::nullopt : courseProblem()) {
        return wrong;
    }
    return detailProblem();
}

std::optional<EntryDialog::Problem> PatientForm::detailProblem() const
{
    const QString email = m_ui->email->text().trimmed();
    if (!email.isEmpty() &&
        (email.count(QLatin1Char('@')) != 1 || email.contains(QLatin1Char(' ')) ||
         email.startsWith(QLatin1Char('@')) || email.endsWith(QLatin1Char('@')))) {
        return Problem{m_ui->email, tr("“%1” is no e-mail address. Enter it as name@place, or "
                                       "nothing.")
                                        .arg(email)};
    }
    if (typedLength(m_ui->height->text(), leastHeight, mostHeight, services().text).wrong) {
        return Problem{m_ui->height, tr("A height of “%1” cm cannot be right. Enter 30 to 260 cm, "
                                        "in steps of 0.1.")
                                         .arg(m_ui->height->text().trimmed())};
    }
    if (const auto wrong = m_segments->firstWrong()) {
        return Problem{wrong->field, wrong->sentence};
    }
    return std::nullopt;
}

std::optional<EntryDialog::Problem> PatientForm::courseProblem() const
{
    if (m_ui->problem->text().trimmed().isEmpty()) {
        return Problem{m_ui->problem, tr("The problem is empty. Enter what the course is for.")};
    }
    if (!services().text.dateFrom(m_ui->startDate->text())) {
        return Problem{m_ui->startDate,
                       tr("“%1” is no date. Enter day, month and year, for example %2.")
                           .arg(m_ui->startDate->text(), services().text.dateExample())};
    }
    return std::nullopt;
}

Patient PatientForm::patient() const
{
    Patient patient = m_before.value_or(Patient{});
    patient.name = m_ui->name->text().simplified().toStdString();
    patient.birthDate = services().text.dateFrom(m_ui->birthDate->text()).value_or(Date{});
    patient.reference = m_ui->reference->text().simplified().toStdString();
    patient.telephone = m_ui->telephone->text().simplified().toStdString();
    patient.note = m_ui->note->toPlainText().trimmed().toStdString();
    patient.email = m_ui->email->text().trimmed().toStdString();
    patient.address = m_ui->address->toPlainText().trimmed().toStdString();
    patient.contactPerson = m_ui->contactPerson->text().simplified().toStdString();
    patient.language = m_ui->language->currentData().toString().toStdString();
    patient.height =
        typedLength(m_ui->height->text(), leastHeight, mostHeight, services().text).length;
    patient.segmentLengths = m_segments->lengths();
    return patient;
}

Result<void> PatientForm::saveNew()
{
    const auto saved =
        services().store.write(services().author, "add patient", [&](db::Writing& writing) {
            const PatientId id = db::addPatient(writing, patient());
            Course course;
            course.patient = id;
            course.problem = m_ui->problem->text().simplified().toStdString();
            course.startDate = *services().text.dateFrom(m_ui->startDate->text());
            course.treatedSide = treatedSideIn(*m_ui->treatedSide);
            return std::pair(id, db::addCourse(writing, course));
        });
    if (!saved) {
        return saved.error();
    }
    m_saved = saved->first;
    m_savedCourse = saved->second;
    return {};
}

Result<void> PatientForm::save()
{
    if (!m_before) {
        if (const auto saved = saveNew(); !saved) {
            return saved.error();
        }
    } else {
        const auto saved =
            services().store.write(services().author, "change patient", [&](db::Writing& writing) {
                db::changePatient(writing, patient());
            });
        if (!saved) {
            return saved.error();
        }
        m_saved = m_before->id;
    }
    emit services().events.patientChanged(*m_saved);
    return {};
}

} // namespace quadrille::app
