// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/screening_term_form.h"

#include "app/look/tokens.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/practice_preferences.h"
#include "db/screenings.h"

#include "core/screening_gate.h"

#include <QFormLayout>
#include <QLabel>
#include <QSpinBox>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 420;

} // namespace

ScreeningTermForm::ScreeningTermForm(const Services& services, QWidget* parent)
    : EntryDialog(services, {}, tr("How long a screening holds"), parent)
    , m_months(new QSpinBox(body()))
{
    m_months->setObjectName(QStringLiteral("months"));
    m_months->setAccessibleName(tr("Months, 1 to 24"));
    m_months->setRange(static_cast<int>(leastValidity.count()),
                       static_cast<int>(mostValidity.count()));
    auto* why = new QLabel(tr("After its term a signed screening blocks until the person is "
                              "screened again. Usual: 6 months (common practice, no source)."),
                           body());
    why->setWordWrap(true);
    auto* form = new QFormLayout(body());
    form->setContentsMargins(0, 0, 0, 0);
    form->setVerticalSpacing(space::close);
    form->addRow(why);
    form->addRow(tr("&Months"), m_months);
    setMinimumWidth(leastWidth);
    if (const auto read = readAgain(); !read) {
        m_months->setValue(static_cast<int>(usualValidity.count()));
    }
    m_months->setFocus();
}

Result<void> ScreeningTermForm::readAgain()
{
    const auto stored = services().store.read([](db::Reading& reading) {
        return db::practicePreference(reading, db::screeningValidityName);
    });
    if (!stored) {
        return stored.error();
    }
    m_version = *stored ? (*stored)->version : 0;
    // Where the file says no term, here is where it is set again.
    const auto validity = services().store.read(db::screeningValidity);
    m_months->setValue(static_cast<int>((validity ? *validity : usualValidity).count()));
    return {};
}

std::optional<EntryDialog::Problem> ScreeningTermForm::problem() const
{
    return std::nullopt; // the field takes no other months
}

Result<void> ScreeningTermForm::save()
{
    const auto saved = services().store.write(
        services().author, "change how long a screening holds", [&](db::Writing& writing) {
            db::setPracticePreference(writing, db::screeningValidityName,
                                      std::to_string(m_months->value()), m_version);
        });
    if (!saved) {
        return saved.error();
    }
    emit services().events.practiceChanged();
    return {};
}

} // namespace quadrille::app
