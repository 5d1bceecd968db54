// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/split_form.h"

#include "app/look/tokens.h"

#include <QFormLayout>
#include <QLabel>
#include <QSpinBox>

namespace quadrille::app
{

namespace
{

constexpr int leastWidth = 380;

} // namespace

SplitForm::SplitForm(const Services& services, std::size_t block, SplitWeeks weeks,
                     std::optional<CourseWeek> current, QWidget* parent)
    : EntryDialog(services, {}, tr("Split block %1").arg(block + 1), parent)
    , m_week(new QSpinBox(body()))
{
    const int first = weeks.first.number;
    const int last = weeks.last.number;
    m_week->setObjectName(QStringLiteral("splitWeek"));
    m_week->setAccessibleName(tr("First week of the second half, %1 to %2").arg(first).arg(last));
    m_week->setRange(first, last);
    const bool fits = current && *current >= weeks.first && *current <= weeks.last;
    m_week->setValue(fits ? current->number : (first + last + 1) / 2);
    auto* why = new QLabel(
        tr("Both halves keep all sites and settings; change the second one then."), body());
    why->setWordWrap(true);
    auto* form = new QFormLayout(body());
    form->setContentsMargins(0, 0, 0, 0);
    form->setVerticalSpacing(space::close);
    form->addRow(why);
    form->addRow(tr("The second half &begins in week"), m_week);
    setSaveText(tr("Split"));
    setMinimumWidth(leastWidth);
    m_week->setFocus();
    m_week->selectAll();
}

CourseWeek SplitForm::week() const
{
    return {m_week->value()};
}

std::optional<EntryDialog::Problem> SplitForm::problem() const
{
    return std::nullopt; // the field takes no other week
}

Result<void> SplitForm::save()
{
    return {}; // the page takes it over into the draft
}

} // namespace quadrille::app
