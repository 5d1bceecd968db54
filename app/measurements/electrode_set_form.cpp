// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/electrode_set_form.h"

#include "app/look/tokens.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"
#include "app/words/electrode_text.h"

#include "db/electrode_lives.h"
#include "db/electrode_sets.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QSpinBox>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int mostPads = 64;
constexpr int mostUses = 10000;
constexpr int mostMonths = 120;

QString formName(const ElectrodeSet& set)
{
    return set.id ? QStringLiteral("pads/%1").arg(set.id->key())
                  : QStringLiteral("pads/new/%1").arg(set.course ? set.course->key() : 0);
}

} // namespace

ElectrodeSetForm::ElectrodeSetForm(const Services& services, const ElectrodeSet& set,
                                   const std::vector<ElectrodeSet>& inUse, QWidget* parent)
    : EntryDialog(services, formName(set),
                  set.id ? tr("Set of pads") : tr("Hand out a set of pads"), parent)
    , m_before(set)
    , m_inUse(inUse)
    , m_form(new QFormLayout(body()))
    , m_issuedOn(new QLineEdit(body()))
    , m_description(new QLineEdit(body()))
    , m_type(new QComboBox(body()))
    , m_shape(new QComboBox(body()))
    , m_width(new QLineEdit(body()))
    , m_height(new QLineEdit(body()))
    , m_pads(new QSpinBox(body()))
    , m_uses(new QLineEdit(body()))
    , m_months(new QLineEdit(body()))
    , m_replaces(new QComboBox(body()))
    , m_outOfUseOn(new QLineEdit(body()))
{
    if (const auto lives = services.store.read(db::electrodeLives)) {
        m_lives = *lives;
    }
    layOut();
    fill();
    connect(m_shape, &QComboBox::currentIndexChanged, this, &ElectrodeSetForm::showSides);
    connect(m_type, &QComboBox::activated, this, &ElectrodeSetForm::fillLife);
    restoreKept();
    showSides();
    startKeeping();
    m_description->setFocus();
}

void ElectrodeSetForm::layOut()
{
    for (const ElectrodeType type : {ElectrodeType::selfAdhesive, ElectrodeType::carbonRubberSponge,
                                     ElectrodeType::carbonRubberGel}) {
        m_type->addItem(electrodeTypeName(type), static_cast<int>(type));
    }
    m_shape->addItem(tr("rectangle"), static_cast<int>(PadShape::rectangle));
    m_shape->addItem(tr("round"), static_cast<int>(PadShape::round));
    m_pads->setRange(1, mostPads);
    m_replaces->addItem(tr("no other set"));
    for (const ElectrodeSet& set : m_inUse) {
        m_replaces->addItem(tr("%1: %2", "for what, which pads")
                                .arg(QString::fromStdString(set.description),
                                     electrodeSetName(set, services().text)));
    }
    spaceOut(*m_form);
    QWidget* before = nullptr;
    const auto row = [&](const QString& label, QWidget* field, const char* name) {
        if (before != nullptr) {
            setTabOrder(before, field);
        }
        before = field;
        addNamedRow(*m_form, label, field, name);
    };
    row(tr("&For"), m_description, "description");
    row(tr("&Handed out on"), m_issuedOn, "issuedOn");
    row(tr("&Type"), m_type, "type");
    row(tr("&Number of pads"), m_pads, "pads");
    row(tr("Sh&ape"), m_shape, "shape");
    row(tr("&Width, mm"), m_width, "width");
    row(tr("H&eight, mm"), m_height, "height");
    row(tr("Life in &uses"), m_uses, "uses");
    row(tr("Life in &months"), m_months, "months");
    row(tr("Takes the &place of"), m_replaces, "replaces");
    row(tr("&Out of use since"), m_outOfUseOn, "outOfUseOn");
    m_form->setRowVisible(m_replaces, !m_before.id && !m_inUse.empty());
    m_form->setRowVisible(m_outOfUseOn, m_before.id.has_value());
    m_description->setPlaceholderText(tr("for example: right thigh"));
    m_uses->setPlaceholderText(tr("empty: no limit"));
    m_months->setPlaceholderText(tr("empty: no limit"));
    m_outOfUseOn->setPlaceholderText(tr("empty while it is in use"));
    setMinimumWidth(460);
}

void ElectrodeSetForm::fill()
{
    const auto numberText = [](const std::optional<int>& number) {
        return number ? QString::number(*number) : QString();
    };
    const auto sideText = [this](Length side) {
        return m_before.shape ? QString::number(side.count()) : QString();
    };
    m_issuedOn->setText(services().text.date(m_before.issuedOn));
    m_description->setText(QString::fromStdString(m_before.description));
    m_type->setCurrentIndex(static_cast<int>(m_before.type.value_or(ElectrodeType::selfAdhesive)));
    m_shape->setCurrentIndex(static_cast<int>(m_before.shape.value_or(PadShape::rectangle)));
    m_width->setText(sideText(m_before.width));
    m_height->setText(sideText(m_before.height));
    m_pads->setValue(m_before.pads);
    m_outOfUseOn->setText(m_before.outOfUseOn ? services().text.date(*m_before.outOfUseOn)
                                              : QString());
    m_replaces->setCurrentIndex(0);
    if (m_before.id) {
        m_uses->setText(numberText(m_before.life.uses));
        m_months->setText(numberText(m_before.life.months));
    } else {
        fillLife();
    }
}

/// The practice's own lives, for the type that is chosen.
void ElectrodeSetForm::fillLife()
{
    const ElectrodeLife& life = lifeOf(m_lives, type());
    m_uses->setText(life.uses ? QString::number(*life.uses) : QString());
    m_months->setText(life.months ? QString::number(*life.months) : QString());
}

void ElectrodeSetForm::showSides()
{
    m_form->setRowVisible(m_height, !isRound());
}

ElectrodeType ElectrodeSetForm::type() const
{
    return static_cast<ElectrodeType>(m_type->currentData().toInt());
}

bool ElectrodeSetForm::isRound() const
{
    return static_cast<PadShape>(m_shape->currentData().toInt()) == PadShape::round;
}

std::optional<Length> ElectrodeSetForm::side(const QLineEdit& field) const
{
    bool isNumber = false;
    const int millimetres = field.text().trimmed().toInt(&isNumber);
    constexpr int least = 5;
    constexpr int most = 400;
    const bool possible = isNumber && millimetres >= least && millimetres <= most;
    return possible ? std::optional(Length::fromCount(millimetres)) : std::nullopt;
}

/// Nothing for an empty field; zero for what is no number, which no life is.
std::optional<int> ElectrodeSetForm::number(const QLineEdit& field) const
{
    const QString typed = field.text().trimmed();
    return typed.isEmpty() ? std::nullopt : std::optional(typed.toInt());
}

std::optional<EntryDialog::Problem> ElectrodeSetForm::lifeProblem() const
{
    const auto uses = number(*m_uses);
    if (uses && (*uses < 1 || *uses > mostUses)) {
        return Problem{m_uses, tr("A life of “%1” uses cannot be right. Enter 1 to %2, or nothing.")
                                   .arg(m_uses->text(), services().text.count(mostUses))};
    }
    const auto months = number(*m_months);
    if (months && (*months < 1 || *months > mostMonths)) {
        return Problem{m_months,
                       tr("A life of “%1” months cannot be right. Enter 1 to %2, or nothing.")
                           .arg(m_months->text(), services().text.count(mostMonths))};
    }
    return std::nullopt;
}

std::optional<EntryDialog::Problem> ElectrodeSetForm::problem() const
{
    if (m_description->text().trimmed().isEmpty()) {
        return Problem{m_description,
                       tr("What the set is for is empty. Enter it, for example right thigh.")};
    }
    const auto notADate = tr("“%1” is no date. Enter day, month and year, for example %2.");
    const auto issued = services().text.dateFrom(m_issuedOn->text());
    if (!issued) {
        return Problem{m_issuedOn, notADate.arg(m_issuedOn->text(), services().text.dateExample())};
    }
    if (!side(*m_width)) {
        return Problem{m_width, tr("A pad “%1” mm wide cannot be right. Enter 5 to 400.")
                                    .arg(m_width->text().trimmed())};
    }
    if (!isRound() && !side(*m_height)) {
        return Problem{m_height, tr("A pad “%1” mm high cannot be right. Enter 5 to 400.")
                                     .arg(m_height->text().trimmed())};
    }
    if (auto wrong = lifeProblem()) {
        return wrong;
    }
    const QString out = m_outOfUseOn->text().trimmed();
    const auto outOn = services().text.dateFrom(out);
    if (!out.isEmpty() && !outOn) {
        return Problem{m_outOfUseOn, notADate.arg(out, services().text.dateExample())};
    }
    if (outOn && *outOn < *issued) {
        return Problem{m_outOfUseOn, tr("The set left use before it was handed out. Enter a later "
                                        "day.")};
    }
    return std::nullopt;
}

ElectrodeSet ElectrodeSetForm::entered() const
{
    ElectrodeSet set = m_before;
    set.description = m_description->text().simplified().toStdString();
    set.issuedOn = services().text.dateFrom(m_issuedOn->text()).value_or(m_before.issuedOn);
    set.type = type();
    set.shape = isRound() ? PadShape::round : PadShape::rectangle;
    set.width = side(*m_width).value_or(Length());
    set.height = isRound() ? set.width : side(*m_height).value_or(Length());
    set.pads = m_pads->value();
    set.life = {.uses = number(*m_uses), .months = number(*m_months)};
    if (m_before.id) {
        set.outOfUseOn = services().text.dateFrom(m_outOfUseOn->text());
    }
    return set;
}

Result<void> ElectrodeSetForm::save()
{
    const ElectrodeSet set = entered();
    const int replaced = set.id ? 0 : m_replaces->currentIndex();
    const auto saved = services().store.write(
        services().author, set.id ? "change pads" : "hand out pads", [&](db::Writing& writing) {
            if (set.id) {
                db::changeElectrodeSet(writing, set);
                return;
            }
            if (replaced > 0) {
                ElectrodeSet former = m_inUse[static_cast<std::size_t>(replaced) - 1];
                former.outOfUseOn = std::max(set.issuedOn, former.issuedOn);
                db::changeElectrodeSet(writing, former);
            }
            db::addElectrodeSet(writing, set);
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.electrodeSetsChanged(*set.course);
    return {};
}

Result<void> ElectrodeSetForm::readAgain()
{
    const auto all = services().store.read(
        [&](db::Reading& reading) { return db::electrodeSetsOf(reading, *m_before.course); });
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_before.id, &ElectrodeSet::id);
    if (!m_before.id || stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_before.description, .detail = {}};
    }
    m_before = *stored;
    fill();
    return {};
}

} // namespace quadrille::app
