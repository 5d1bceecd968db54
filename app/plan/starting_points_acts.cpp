// SPDX-License-Identifier: GPL-3.0-or-later
// What is done with a starting point: applied, or kept, called otherwise and withdrawn where it is
// the practice's own.
#include "app/plan/house_settings_form.h"
#include "app/plan/starting_points_dialog.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/starting_point_text.h"

#include "db/house_settings.h"

#include <QLineEdit>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

void StartingPointsDialog::readHouseSettings()
{
    const auto kept = m_services.store.read(db::houseSettings);
    if (!kept) {
        m_services.prompts.tell(this, errorText(kept.error(), m_services.text));
        return;
    }
    m_house = *kept;
    m_own.clear();
    std::ranges::transform(m_house, std::back_inserter(m_own), startingPointFrom);
}

void StartingPointsDialog::accept()
{
    if (m_applied) {
        QDialog::accept();
    }
}

QString StartingPointsDialog::saidAfterwards() const
{
    const StartingPoint* point = chosen();
    return point != nullptr && m_applied ? appliedText(*point, *m_applied, m_services.text)
                                         : QString();
}

void StartingPointsDialog::keepBlock()
{
    if (!m_place.block || !m_place.unit) {
        return;
    }
    HouseSettings kept = houseSettingsFrom(*m_place.block, *m_place.unit);
    kept.condition = m_condition->text().simplified().toStdString();
    HouseSettingsForm form(m_services, kept, this);
    if (form.exec() == QDialog::Accepted) {
        readHouseSettings();
        refill(form.savedName());
    }
}

void StartingPointsDialog::rename()
{
    if (const HouseSettings* kept = chosenHouse()) {
        HouseSettingsForm form(m_services, *kept, this);
        if (form.exec() == QDialog::Accepted) {
            readHouseSettings();
            refill(form.savedName());
        }
    }
}

void StartingPointsDialog::withdraw()
{
    const HouseSettings* kept = chosenHouse();
    if (kept == nullptr ||
        !m_services.prompts.confirm(this,
                                    tr("Withdraw “%1”? Nobody can start from it any more; plans "
                                       "that did stay as they are.")
                                        .arg(QString::fromStdString(kept->name)),
                                    tr("Withdraw"))) {
        return;
    }
    HouseSettings withdrawn = *kept;
    withdrawn.withdrawn = true;
    const auto saved = m_services.store.write(
        m_services.author, "withdraw house settings",
        [&](db::Writing& writing) { db::changeHouseSettings(writing, withdrawn); });
    if (!saved) {
        m_services.prompts.tell(this, errorText(saved.error(), m_services.text));
    } else {
        emit m_services.events.practiceChanged();
    }
    readHouseSettings();
    refill({});
}

} // namespace quadrille::app
