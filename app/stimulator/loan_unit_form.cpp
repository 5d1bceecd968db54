// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/loan_unit_form.h"

#include "app/look/tokens.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"

#include "db/loans.h"
#include "db/stimulators.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

QString formName(const LoanUnit& unit)
{
    return unit.id ? QStringLiteral("loan_unit/%1").arg(unit.id->key())
                   : QStringLiteral("loan_unit/new");
}

} // namespace

LoanUnitForm::LoanUnitForm(const Services& services, const LoanUnit& unit, QWidget* parent)
    : EntryDialog(services, formName(unit), unit.id ? tr("Unit") : tr("New unit"), parent)
    , m_unit(unit)
    , m_number(new QLineEdit(body()))
    , m_stimulator(new QComboBox(body()))
    , m_serialNumber(new QLineEdit(body()))
    , m_nextCheck(new QLineEdit(body()))
    , m_note(new QLineEdit(body()))
    , m_archived(new QCheckBox(tr("No longer in &use"), body()))
{
    setMinimumWidth(460);
    m_number->setObjectName(QStringLiteral("inventoryNumber"));
    m_stimulator->setObjectName(QStringLiteral("unitStimulator"));
    m_serialNumber->setObjectName(QStringLiteral("serialNumber"));
    m_nextCheck->setObjectName(QStringLiteral("nextCheck"));
    m_note->setObjectName(QStringLiteral("note"));
    m_archived->setObjectName(QStringLiteral("archived"));
    m_serialNumber->setPlaceholderText(tr("may stay empty"));
    m_nextCheck->setPlaceholderText(tr("not known"));
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    form->addRow(tr("&Inventory number"), m_number);
    form->addRow(tr("&Stimulator"), m_stimulator);
    form->addRow(tr("Se&rial number"), m_serialNumber);
    form->addRow(tr("Next safety &check"), m_nextCheck);
    form->addRow(tr("N&ote"), m_note);
    form->addRow(QString(), m_archived);
    m_archived->setVisible(unit.id.has_value());
    fill();
    restoreKept();
    startKeeping();
}

void LoanUnitForm::fill()
{
    const auto stimulators = services().store.read(db::stimulators);
    m_stimulator->clear();
    for (const Stimulator& stimulator : stimulators ? *stimulators : std::vector<Stimulator>{}) {
        if (!stimulator.archived || stimulator.id == m_unit.stimulator) {
            m_stimulator->addItem(QString::fromStdString(stimulator.name),
                                  QVariant::fromValue<qint64>(stimulator.id->key()));
        }
    }
    m_stimulator->setPlaceholderText(tr("Choose what it can do"));
    m_stimulator->setCurrentIndex(
        m_unit.stimulator
            ? m_stimulator->findData(QVariant::fromValue<qint64>(m_unit.stimulator->key()))
            : -1);
    m_number->setText(QString::fromStdString(m_unit.inventoryNumber));
    m_serialNumber->setText(QString::fromStdString(m_unit.serialNumber));
    m_nextCheck->setText(m_unit.nextSafetyCheckOn ? services().text.date(*m_unit.nextSafetyCheckOn)
                                                  : QString());
    m_note->setText(QString::fromStdString(m_unit.note));
    m_archived->setChecked(m_unit.archived);
}

Result<void> LoanUnitForm::readAgain()
{
    const auto all = services().store.read(db::inventory);
    if (!all) {
        return all.error();
    }
    const auto stored =
        std::ranges::find(*all, m_unit.id, [](const db::InventoryRow& row) { return row.unit.id; });
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_unit.inventoryNumber, .detail = {}};
    }
    m_unit = stored->unit;
    fill();
    return {};
}

std::optional<Date> LoanUnitForm::nextCheck() const
{
    return services().text.dateFrom(m_nextCheck->text());
}

std::optional<EntryDialog::Problem> LoanUnitForm::problem() const
{
    if (m_number->text().trimmed().isEmpty()) {
        return Problem{m_number, tr("The inventory number is empty. Enter what is written on the "
                                    "unit; the handout names it.")};
    }
    if (m_stimulator->currentIndex() < 0) {
        return Problem{m_stimulator,
                       tr("No stimulator is chosen. Choose which of them this unit is.")};
    }
    if (!m_nextCheck->text().trimmed().isEmpty() && !nextCheck()) {
        return Problem{m_nextCheck,
                       tr("“%1” is no date. Enter day, month and year, for example %2.")
                           .arg(m_nextCheck->text(), services().text.dateExample())};
    }
    return std::nullopt;
}

Result<void> LoanUnitForm::save()
{
    LoanUnit unit = m_unit;
    unit.inventoryNumber = m_number->text().simplified().toStdString();
    unit.stimulator = StimulatorId(m_stimulator->currentData().toLongLong());
    unit.serialNumber = m_serialNumber->text().simplified().toStdString();
    unit.nextSafetyCheckOn = nextCheck();
    unit.note = m_note->text().simplified().toStdString();
    unit.archived = m_archived->isChecked();
    const auto saved = services().store.write(
        services().author, unit.id ? "change unit" : "add unit", [&](db::Writing& writing) {
            if (unit.id) {
                db::changeLoanUnit(writing, unit);
            } else {
                db::addLoanUnit(writing, unit);
            }
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.loansChanged();
    return {};
}

} // namespace quadrille::app
