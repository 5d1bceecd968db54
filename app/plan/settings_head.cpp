// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/settings_head.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/setting_row.h"
#include "app/words/starting_point_text.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace quadrille::app
{

SettingsHead::SettingsHead(QWidget* parent)
    : QFrame(parent)
    , m_title(new QLabel(this))
    , m_startingPoints(new QPushButton(tr("Start from…"), this))
    , m_whatIf(new QPushButton(tr("What if…"), this))
    , m_unit(new QLabel(this))
    , m_before(new QLabel(this))
    , m_origin(new QLabel(this))
{
    setRole(*this, Role::sheetHead);
    setRole(*m_title, Role::strongText);
    setRole(*m_unit, Role::captionText);
    setRole(*m_before, Role::captionText);
    setRole(*m_origin, Role::secondLineText);
    setRole(*m_startingPoints, Role::linkButton);
    m_startingPoints->setObjectName(QStringLiteral("startingPoints"));
    m_startingPoints->setAccessibleName(tr("Published and own settings to start from"));
    m_startingPoints->setToolTip(tr("Published and own settings to start from: Ctrl Shift S"));
    setRole(*m_whatIf, Role::linkButton);
    m_whatIf->setObjectName(QStringLiteral("whatIf"));
    m_whatIf->setToolTip(tr("Variants beside this block: Ctrl Shift W"));
    m_origin->setObjectName(QStringLiteral("origin"));
    m_origin->setTextFormat(Qt::PlainText);
    m_origin->setWordWrap(true);
    m_origin->setVisible(false);
    const double factor = appliedFactor();
    auto* first = new QHBoxLayout;
    first->setSpacing(space::tiny);
    first->addWidget(m_title);
    first->addStretch();
    first->addWidget(m_startingPoints);
    first->addWidget(m_whatIf);
    auto* firstColumn = new QWidget(this);
    firstColumn->setLayout(first);
    first->setContentsMargins(0, 0, 0, 0);
    firstColumn->setFixedWidth(
        scaled(SettingRow::nameWidth + SettingRow::fieldWidth + space::close, factor));
    m_unit->setFixedWidth(scaled(SettingRow::allowedWidth, factor));
    auto* line = new QHBoxLayout;
    line->setSpacing(space::close);
    line->addWidget(firstColumn);
    line->addWidget(m_unit);
    line->addWidget(m_before, 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::hair, space::close, space::hair);
    layout->setSpacing(0);
    layout->addLayout(line);
    layout->addWidget(m_origin);
    connect(m_startingPoints, &QPushButton::clicked, this, &SettingsHead::startingPointsRequested);
    connect(m_whatIf, &QPushButton::clicked, this, &SettingsHead::whatIfRequested);
}

void SettingsHead::showBlock(std::optional<std::size_t> index,
                             const std::optional<Stimulator>& unit, const Block* block,
                             bool hasBlockBefore)
{
    m_title->setText(index ? tr("Block %1").arg(*index + 1) : tr("Settings"));
    m_unit->setText(unit ? tr("Unit allows") : QString());
    m_unit->setToolTip(unit ? QString::fromStdString(unit->name) : QString());
    m_before->setText(index && hasBlockBefore ? tr("Block %1").arg(*index) : QString());
    const bool hasOrigin = block != nullptr && block->origin;
    m_origin->setText(hasOrigin ? originText(*block->origin) : QString());
    m_origin->setVisible(hasOrigin);
}

} // namespace quadrille::app
