// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/measurement_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/typed_value.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"
#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include "db/measurements.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

QString formName(const Measurement& measurement)
{
    return QStringLiteral("measurement/%1").arg(measurement.id ? measurement.id->key() : 0);
}

} // namespace

MeasurementForm::MeasurementForm(const Services& services, const Measurement& measurement,
                                 QWidget* parent)
    : EntryDialog(services, formName(measurement),
                  tr("Correct: %1").arg(measurementName(measurement.kind, measurement.subject)),
                  parent)
    , m_before(measurement)
    , m_kind(measurementKind(measurement.kind))
    , m_day(new QLineEdit(body()))
    , m_side(new QComboBox(body()))
    , m_value(new QLineEdit(body()))
    , m_note(new QLabel(body()))
    , m_method(new QLineEdit(body()))
    , m_device(new QLineEdit(body()))
{
    layOut();
    fill();
    connect(m_value, &QLineEdit::textChanged, this, &MeasurementForm::showNote);
    restoreKept();
    startKeeping();
    m_value->setFocus();
    m_value->selectAll();
}

void MeasurementForm::layOut()
{
    for (const Side side : {Side::right, Side::left}) {
        m_side->addItem(sideName(side), static_cast<int>(side));
    }
    m_note->hide();
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    const auto row = [&](const QString& label, QWidget* field, const char* name) {
        addNamedRow(*form, label, field, name);
    };
    row(tr("&Measured on"), m_day, "measuredOn");
    row(tr("S&ide"), m_side, "side");
    const QString unit = measuredUnit(m_before.kind, m_before.unit);
    row(unit.isEmpty() ? tr("&Value, or trials") : tr("&Value, or trials, %1").arg(unit), m_value,
        "value");
    form->addRow(QString(), m_note);
    row(tr("M&ethod"), m_method, "method");
    row(tr("&Device"), m_device, "device");
    form->setRowVisible(m_side, m_before.side != Side::middle);
    m_method->setPlaceholderText(methodHint(m_before.kind));
    setMinimumWidth(460);
}

void MeasurementForm::fill()
{
    m_day->setText(services().text.date(m_before.measuredOn));
    m_side->setCurrentIndex(std::max(0, m_side->findData(static_cast<int>(m_before.side))));
    m_value->setText(typedText(m_before, services().text));
    m_method->setText(QString::fromStdString(m_before.method));
    m_device->setText(QString::fromStdString(m_before.device));
}

Result<void> MeasurementForm::readAgain()
{
    const auto all = services().store.read(
        [&](db::Reading& reading) { return db::measurementsOf(reading, *m_before.course); });
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_before.id, &Measurement::id);
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_before.kind, .detail = {}};
    }
    m_before = *stored;
    fill();
    return {};
}

void MeasurementForm::showNote()
{
    if (m_kind == nullptr) {
        return;
    }
    const TypedNote note = typedNote(*m_kind, typedValue(*m_kind, m_value->text(), services().text),
                                     m_before.unit, services().text);
    setOutOfRange(*m_value, note.unusual);
    setRole(*m_note, note.unusual ? Role::warnText : Role::secondLineText);
    m_note->setText(note.text);
    m_note->setVisible(!note.text.isEmpty());
}

std::optional<EntryDialog::Problem> MeasurementForm::problem() const
{
    const auto day = services().text.dateFrom(m_day->text());
    if (!day) {
        return Problem{m_day, tr("“%1” is no date. Enter day, month and year, for example %2.")
                                  .arg(m_day->text(), services().text.dateExample())};
    }
    if (*day > services().clock.today()) {
        return Problem{
            m_day,
            tr("%1 is still to come. Enter the day of the visit.").arg(services().text.date(*day))};
    }
    const TypedValue value = typedValue(*m_kind, m_value->text(), services().text);
    if (!value.problem.isEmpty()) {
        return Problem{m_value, value.problem};
    }
    if (value.isEmpty()) {
        return Problem{m_value, tr("The value is empty. Enter it, or cancel and withdraw the "
                                   "measurement.")};
    }
    if (m_kind->methodNeeded && m_method->text().trimmed().isEmpty()) {
        return Problem{m_method, tr("The method is empty. Enter it (%1), since values compare only "
                                    "when they were taken in the same way.")
                                     .arg(methodHint(m_before.kind))};
    }
    return std::nullopt;
}

Measurement MeasurementForm::changed() const
{
    Measurement measurement = m_before;
    measurement.measuredOn = services().text.dateFrom(m_day->text()).value_or(m_before.measuredOn);
    if (m_before.side != Side::middle) {
        measurement.side = static_cast<Side>(m_side->currentData().toInt());
    }
    setTyped(measurement, typedValue(*m_kind, m_value->text(), services().text));
    measurement.method = m_method->text().simplified().toStdString();
    measurement.device = m_device->text().simplified().toStdString();
    return measurement;
}

Result<void> MeasurementForm::save()
{
    const Measurement measurement = changed();
    const auto saved =
        services().store.write(services().author, "correct measurement", [&](db::Writing& writing) {
            db::changeMeasurement(writing, measurement);
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.measurementsChanged(*m_before.course);
    return {};
}

} // namespace quadrille::app
