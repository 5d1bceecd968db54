// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/conflict_dialog.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollArea>
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

/// The value beside its button, on as many lines as it needs; a click on it chooses too.
class ValueLabel : public QLabel
{
public:
    ValueLabel(const QString& value, QRadioButton* button, QWidget* parent)
        : QLabel(value, parent)
        , m_button(button)
    {
        setTextFormat(Qt::PlainText);
        setWordWrap(true);
    }

private:
    void mousePressEvent(QMouseEvent* event) override
    {
        m_button->setFocus(Qt::MouseFocusReason);
        m_button->setChecked(true);
        event->accept();
    }
    QRadioButton* m_button;
};

QRadioButton* addChoice(QGridLayout& grid, int row, int column, const QString& value,
                        const QString& name, QWidget* parent)
{
    const QString shown = value.isEmpty() ? ConflictDialog::tr("(empty)") : value;
    auto* button = new QRadioButton(parent);
    button->setAccessibleName(
        ConflictDialog::tr("%1: %2", "field and whose, value").arg(name, shown));
    auto* both = new QHBoxLayout;
    both->setSpacing(space::small);
    both->addWidget(button, 0, Qt::AlignTop);
    both->addWidget(new ValueLabel(shown, button, parent), 1);
    grid.addLayout(both, row, column);
    return button;
}

/// Long notes are read by scrolling; the buttons below stay on the screen.
QScrollArea* scrolled(QWidget* values)
{
    constexpr int mostHeight = 480;
    auto* area = new QScrollArea(values->parentWidget());
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(values);
    const int width = 520;
    area->setMinimumHeight(std::min(mostHeight, values->layout()->heightForWidth(width)));
    return area;
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
    auto* values = new QWidget(this);
    auto* grid = new QGridLayout(values);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::wide);
    grid->setVerticalSpacing(space::medium);
    grid->addWidget(caption(tr("Saved elsewhere"), values), 0, 1);
    grid->addWidget(caption(tr("Entered here"), values), 0, 2);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(2, 1);
    for (const Difference& difference : differences) {
        const int row = grid->rowCount();
        auto* field = new QLabel(difference.field, values);
        setRole(*field, Role::strongText);
        auto* theirs = addChoice(*grid, row, 1, difference.theirs,
                                 tr("%1, saved elsewhere").arg(difference.field), values);
        auto* mine = addChoice(*grid, row, 2, difference.mine,
                               tr("%1, entered here").arg(difference.field), values);
        theirs->setObjectName(QStringLiteral("theirs%1").arg(row));
        mine->setObjectName(QStringLiteral("mine%1").arg(row));
        theirs->setChecked(true);
        auto* both = new QButtonGroup(this);
        both->addButton(theirs);
        both->addButton(mine);
        grid->addWidget(field, row, 0, Qt::AlignTop);
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
    layout->addWidget(scrolled(values), 1);
    layout->addLayout(buttons);
}

std::vector<bool> ConflictDialog::choices() const
{
    std::vector<bool> chosen;
    std::ranges::transform(m_mine, std::back_inserter(chosen), &QRadioButton::isChecked);
    return chosen;
}

} // namespace quadrille::app
