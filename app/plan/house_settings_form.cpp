// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/house_settings_form.h"

#include "app/look/tokens.h"
#include "app/window/form_rows.h"
#include "app/window/store_events.h"
#include "app/words/starting_points.h"

#include "db/house_settings.h"

#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 460;

QString formName(const HouseSettings& kept)
{
    return kept.id ? QStringLiteral("house_settings/%1").arg(kept.id->key())
                   : QStringLiteral("house_settings/new");
}

std::string lineOf(const QLineEdit& field)
{
    return field.text().simplified().toStdString();
}

} // namespace

HouseSettingsForm::HouseSettingsForm(const Services& services, const HouseSettings& kept,
                                     QWidget* parent)
    : EntryDialog(services, formName(kept),
                  kept.id ? tr("House settings") : tr("Keep as house settings"), parent)
    , m_kept(kept)
    , m_name(new QLineEdit(body()))
    , m_muscle(new QLineEdit(body()))
    , m_condition(new QLineEdit(body()))
    , m_note(new QLineEdit(body()))
{
    auto* form = new QFormLayout(body());
    spaceOut(*form);
    auto* why =
        new QLabel(kept.id ? tr("The figures stay. To keep others, apply these, change them "
                                "and keep them under another name.")
                           : tr("Kept for all patients of the practice: settings, days and "
                                "weeks of this block, without amplitudes. Name no patient."),
                   body());
    why->setWordWrap(true);
    form->addRow(why);
    const auto add = [&](const char* name, const QString& label, QLineEdit* field) {
        field->setObjectName(QLatin1String(name));
        field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
        form->addRow(label, field);
    };
    add("houseName", tr("&Name"), m_name);
    add("houseMuscle", tr("&Muscle"), m_muscle);
    add("houseCondition", tr("&Condition"), m_condition);
    add("houseNote", tr("N&ote"), m_note);
    m_name->setPlaceholderText(tr("for example: Quadriceps, first weeks"));
    setMinimumWidth(leastWidth);
    fill();
    restoreKept();
    startKeeping();
    m_name->setFocus();
}

void HouseSettingsForm::fill()
{
    m_name->setText(QString::fromStdString(m_kept.name));
    m_muscle->setText(QString::fromStdString(m_kept.muscle));
    m_condition->setText(QString::fromStdString(m_kept.condition));
    m_note->setText(QString::fromStdString(m_kept.note));
}

QString HouseSettingsForm::savedName() const
{
    return QString::fromStdString(m_kept.name);
}

Result<void> HouseSettingsForm::readAgain()
{
    const auto all = services().store.read(db::houseSettings);
    if (!all) {
        return all.error();
    }
    const auto stored = std::ranges::find(*all, m_kept.id, &HouseSettings::id);
    if (stored == all->end()) {
        return Error{.code = ErrorCode::notFound, .subject = m_kept.name, .detail = {}};
    }
    m_kept = *stored;
    fill();
    return {};
}

std::optional<EntryDialog::Problem> HouseSettingsForm::problem() const
{
    if (m_name->text().trimmed().isEmpty()) {
        return Problem{m_name, tr("The name is empty. It finds the settings again: enter one.")};
    }
    // A block remembers where it started from by name alone.
    const QString name = m_name->text().simplified();
    const auto isTaken = [&](const StartingPoint& point) {
        return name.compare(QString::fromStdString(point.name), Qt::CaseInsensitive) == 0;
    };
    if (std::ranges::any_of(publishedStartingPoints(), isTaken)) {
        return Problem{m_name, tr("“%1” is the name of a published starting point. Enter another "
                                  "one, so that each block says where it started from.")
                                   .arg(name)};
    }
    return std::nullopt;
}

Result<void> HouseSettingsForm::save()
{
    HouseSettings kept = m_kept;
    kept.name = lineOf(*m_name);
    kept.muscle = lineOf(*m_muscle);
    kept.condition = lineOf(*m_condition);
    kept.note = lineOf(*m_note);
    const auto saved = services().store.write(
        services().author, kept.id ? "change house settings" : "keep house settings",
        [&](db::Writing& writing) {
            if (kept.id) {
                db::changeHouseSettings(writing, kept);
            } else {
                db::addHouseSettings(writing, kept);
            }
        });
    if (!saved) {
        return saved.error();
    }
    m_kept.name = kept.name;
    emit services().events.practiceChanged();
    return {};
}

} // namespace quadrille::app
