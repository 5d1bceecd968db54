// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/days_picker.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QToolButton>

#include <algorithm>

namespace quadrille::app
{

DaysPicker::DaysPicker(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_any(new QPushButton(this))
    , m_count(new QSpinBox(this))
{
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    for (unsigned iso = 1; iso <= 7; ++iso) {
        auto* day = new QToolButton(this);
        const QString name = text.longWeekday(Weekday(iso));
        day->setText(text.locale().standaloneDayName(static_cast<int>(iso), QLocale::NarrowFormat));
        day->setCheckable(true);
        day->setAccessibleName(name);
        day->setToolTip(name);
        day->setObjectName(QStringLiteral("weekday%1").arg(iso));
        day->setFixedSize(size::hitArea, size::field);
        connect(day, &QToolButton::clicked, this, &DaysPicker::chooseDays);
        m_days[iso - 1] = day;
        layout->addWidget(day);
    }
    m_count->setRange(1, 7);
    m_count->setAccessibleName(tr("Days per week, 1 to 7"));
    m_count->setObjectName(QStringLiteral("daysPerWeek"));
    layout->addWidget(m_count);
    setRole(*m_any, Role::linkButton);
    m_any->setToolTip(tr("So many days a week, whichever they are; or certain weekdays"));
    m_any->setObjectName(QStringLiteral("anyDays"));
    layout->addWidget(m_any);
    layout->addStretch();
    connect(m_any, &QPushButton::clicked, this, &DaysPicker::switchKind);
    connect(m_count, &QSpinBox::valueChanged, this,
            [this](int days) { emit scheduleChosen(DaysPerWeek{days}); });
    setFocusProxy(m_days.front());
    setSchedule(WeekdaySet::mondayToFriday());
}

void DaysPicker::setSchedule(const Schedule& schedule)
{
    m_schedule = schedule;
    const auto* set = std::get_if<WeekdaySet>(&schedule);
    for (unsigned iso = 1; iso <= 7; ++iso) {
        m_days[iso - 1]->setVisible(set != nullptr);
        m_days[iso - 1]->setChecked(set != nullptr && set->contains(Weekday(iso)));
    }
    m_count->setVisible(set == nullptr);
    if (const auto* any = std::get_if<DaysPerWeek>(&schedule)) {
        const QSignalBlocker silent(m_count); // shown, not chosen
        m_count->setValue(any->days);
    }
    m_any->setText(set != nullptr ? tr("any") : tr("certain days"));
}

void DaysPicker::chooseDays()
{
    WeekdaySet days;
    for (unsigned iso = 1; iso <= 7; ++iso) {
        if (m_days[iso - 1]->isChecked()) {
            days = days.with(Weekday(iso));
        }
    }
    emit scheduleChosen(days);
}

void DaysPicker::switchKind()
{
    if (const auto* set = std::get_if<WeekdaySet>(&m_schedule)) {
        emit scheduleChosen(DaysPerWeek{std::max(1, set->size())});
        return;
    }
    WeekdaySet days;
    const int count = std::get<DaysPerWeek>(m_schedule).days;
    for (unsigned iso = 1; iso <= 7 && days.size() < count; ++iso) {
        days = days.with(Weekday(iso));
    }
    emit scheduleChosen(days);
}

} // namespace quadrille::app
