// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/roles.h"

#include <QLatin1StringView>
#include <QStyle>
#include <QVariant>
#include <QWidget>

#include <array>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr const char* roleProperty = "role";
constexpr const char* outOfRangeProperty = "outOfRange";

constexpr std::array<std::pair<Role, QLatin1StringView>, 21> names{{
    {Role::primaryButton, QLatin1StringView("primaryButton")},
    {Role::linkButton, QLatin1StringView("linkButton")},
    {Role::segmentButton, QLatin1StringView("segmentButton")},
    {Role::titleText, QLatin1StringView("titleText")},
    {Role::bigFigureText, QLatin1StringView("bigFigureText")},
    {Role::sheetTitleText, QLatin1StringView("sheetTitleText")},
    {Role::listNameText, QLatin1StringView("listNameText")},
    {Role::strongText, QLatin1StringView("strongText")},
    {Role::secondLineText, QLatin1StringView("secondLineText")},
    {Role::captionText, QLatin1StringView("captionText")},
    {Role::axisText, QLatin1StringView("axisText")},
    {Role::warnText, QLatin1StringView("warnText")},
    {Role::warnStrongText, QLatin1StringView("warnStrongText")},
    {Role::goodText, QLatin1StringView("goodText")},
    {Role::sheet, QLatin1StringView("sheet")},
    {Role::sheetHead, QLatin1StringView("sheetHead")},
    {Role::band, QLatin1StringView("band")},
    {Role::warningStrip, QLatin1StringView("warningStrip")},
    {Role::changedRow, QLatin1StringView("changedRow")},
    {Role::sideColumn, QLatin1StringView("sideColumn")},
    {Role::pageHead, QLatin1StringView("pageHead")},
}};

} // namespace

void setRole(QWidget& widget, Role role)
{
    if (roleOf(&widget) == role) {
        return;
    }
    // What the old role has set is taken back while the style still knows it.
    const bool polished = widget.testAttribute(Qt::WA_WState_Polished);
    if (polished) {
        widget.style()->unpolish(&widget);
    }
    QVariant value;
    for (const auto& [named, name] : names) {
        if (named == role) {
            value = QString(name);
        }
    }
    widget.setProperty(roleProperty, value);
    if (polished) {
        widget.style()->polish(&widget);
        widget.updateGeometry();
        widget.update();
    }
}

Role roleOf(const QWidget* widget)
{
    if (!widget) {
        return Role::none;
    }
    const QString name = widget->property(roleProperty).toString();
    for (const auto& [role, text] : names) {
        if (name == text) {
            return role;
        }
    }
    return Role::none;
}

void setOutOfRange(QWidget& field, bool outOfRange)
{
    if (isOutOfRange(&field) != outOfRange) {
        field.setProperty(outOfRangeProperty, outOfRange);
        field.update();
    }
}

bool isOutOfRange(const QWidget* field)
{
    return field && field->property(outOfRangeProperty).toBool();
}

} // namespace quadrille::app
