// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/conflict_dialog.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

QLabel* caption(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    setRole(*label, Role::captionText);
    return label;
}

QRadioButton* choice(const QString& value, const QString& name, QWidget* parent)
{
    auto* button =
        new QRadioButton(value.isEmpty() ? ConflictDialog::tr("(empty)") : value, parent);
    button->setAccessibleName(name);
    return button;
}

} // namespace

ConflictDialog::ConflictDialog(const QString& sentence, const std::vector<Difference>& differences,
                               QWidget* parent)
    : QDialog(parent)
{
    setWindowTitle(tr("Changed elsewhere"));
    setMinimumWidth(560);
    auto* said = new QLabel(sentence, this);
    said->setWordWrap(true);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(space::wide);
    grid->setVerticalSpacing(space::medium);
    grid->addWidget(caption(tr("Saved elsewhere"), this), 0, 1);
    grid->addWidget(caption(tr("Entered here"), this), 0, 2);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(2, 1);
    for (const Difference& difference : differences) {
        const int row = grid->rowCount();
        auto* field = new QLabel(difference.field, this);
        setRole(*field, Role::strongText);
        auto* theirs =
            choice(difference.theirs, tr("%1, saved elsewhere").arg(difference.field), this);
        auto* mine = choice(difference.mine, tr("%1, entered here").arg(difference.field), this);
        theirs->setObjectName(QStringLiteral("theirs%1").arg(row));
        mine->setObjectName(QStringLiteral("mine%1").arg(row));
        theirs->setChecked(true);
        auto* both = new QButtonGroup(this);
        both->addButton(theirs);
        both->addButton(mine);
        grid->addWidget(field, row, 0, Qt::AlignTop);
        grid->addWidget(theirs, row, 1, Qt::AlignTop);
        grid->addWidget(mine, row, 2, Qt::AlignTop);
        m_mine.push_back(mine);
    }
    auto* use = new QPushButton(tr("Use what is chosen"), this);
    use->setObjectName(QStringLiteral("useChosen"));
    setRole(*use, Role::primaryButton);
    use->setDefault(true);
    auto* back = new QPushButton(tr("Back to the form"), this);
    back->setAutoDefault(false);
    connect(use, &QPushButton::clicked, this, &QDialog::accept);
    connect(back, &QPushButton::clicked, this, &QDialog::reject);
    auto* buttons = new QHBoxLayout;
    buttons->addStretch();
    buttons->addWidget(back);
    buttons->addWidget(use);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::wide, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(said);
    layout->addLayout(grid);
    layout->addStretch();
    layout->addLayout(buttons);
}

std::vector<bool> ConflictDialog::choices() const
{
    std::vector<bool> chosen;
    std::ranges::transform(m_mine, std::back_inserter(chosen), &QRadioButton::isChecked);
    return chosen;
}

} // namespace quadrille::app
