// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/fit_dialog.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int tableWidth = 640;
constexpr int mostTableHeight = 420;
constexpr int columns = 4;

QLabel* text(const QString& words, Role role, QWidget* parent)
{
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    setRole(*label, role);
    return label;
}

} // namespace

FitDialog::FitDialog(const QString& unitName, const std::vector<FitSection>& sections, Kept kept,
                     QWidget* parent)
    : QDialog(parent)
{
    setWindowTitle(tr("Fit to %1").arg(unitName));
    setMinimumWidth(tableWidth + 2 * space::wide);
    auto* said = text(tr("This unit can’t be set to all that is planned. This is what it can do "
                         "instead, and how the figures change. Nothing is changed yet; undo brings "
                         "it back."),
                      Role::none, this);
    auto* fit = new QPushButton(tr("&Fit all to the unit"), this);
    fit->setObjectName(QStringLiteral("fitAll"));
    fit->setDefault(true);
    setRole(*fit, Role::primaryButton);
    auto* keep = new QPushButton(tr("&Keep the settings"), this);
    keep->setObjectName(QStringLiteral("keepSettings"));
    keep->setToolTip(tr("Takes the unit; what it can’t do stays marked"));
    keep->setAutoDefault(false);
    keep->setVisible(kept == Kept::offered);
    auto* cancel = new QPushButton(tr("Cancel"), this);
    cancel->setAutoDefault(false);
    connect(fit, &QPushButton::clicked, this, &QDialog::accept);
    connect(keep, &QPushButton::clicked, this, [this] {
        m_keepsSettings = true;
        accept();
    });
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);

    auto* buttons = new QHBoxLayout;
    buttons->addStretch();
    buttons->addWidget(cancel);
    buttons->addWidget(keep);
    buttons->addWidget(fit);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::wide, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(said);
    layout->addWidget(table(sections), 1);
    layout->addLayout(buttons);
    resize(minimumWidth(), layout->totalHeightForWidth(minimumWidth()));
    fit->setFocus();
}

QWidget* FitDialog::table(const std::vector<FitSection>& sections)
{
    auto* content = new QWidget(this);
    content->setObjectName(QStringLiteral("fitTable"));
    auto* grid = new QGridLayout(content);
    grid->setContentsMargins(0, 0, space::insideSheet, 0);
    grid->setHorizontalSpacing(space::insideSheet);
    grid->setVerticalSpacing(space::tiny);
    grid->setColumnStretch(0, 3);
    grid->setColumnStretch(1, 2);
    grid->setColumnStretch(2, 2);
    grid->setColumnStretch(3, 4);
    for (const FitSection& section : sections) {
        addSection(*grid, section, content);
    }
    grid->setRowStretch(grid->rowCount(), 1);
    auto* area = new QScrollArea(this);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setAccessibleName(tr("What would change"));
    area->setWidget(content);
    area->setMinimumHeight(std::min(mostTableHeight, grid->heightForWidth(tableWidth)));
    return area;
}

void FitDialog::addSection(QGridLayout& grid, const FitSection& section, QWidget* parent)
{
    const int first = grid.rowCount();
    if (first > 1) {
        grid.setRowMinimumHeight(first, space::medium);
    }
    const int head = first > 1 ? first + 1 : first;
    grid.addWidget(text(section.title, Role::strongText, parent), head, 0);
    grid.addWidget(text(tr("planned"), Role::captionText, parent), head, 1);
    grid.addWidget(text(tr("possible"), Role::captionText, parent), head, 2);
    grid.addWidget(text(tr("why"), Role::captionText, parent), head, 3);
    for (const FitRow& row : section.settings) {
        addRow(grid, row, parent);
    }
    const int figures = grid.rowCount();
    if (section.figures.empty()) {
        grid.addWidget(text(tr("The figures of a session stay."), Role::captionText, parent),
                       figures, 0, 1, columns);
    } else {
        grid.addWidget(text(tr("Figures of one session"), Role::captionText, parent), figures, 0);
        grid.addWidget(text(tr("before"), Role::captionText, parent), figures, 1);
        grid.addWidget(text(tr("after"), Role::captionText, parent), figures, 2);
    }
    for (const FitRow& row : section.figures) {
        addRow(grid, row, parent);
    }
    for (const QString& left : section.left) {
        grid.addWidget(text(tr("Left to be mended: %1").arg(left), Role::warnText, parent),
                       grid.rowCount(), 0, 1, columns);
    }
}

void FitDialog::addRow(QGridLayout& grid, const FitRow& row, QWidget* parent)
{
    const int line = grid.rowCount();
    grid.addWidget(text(row.what, Role::none, parent), line, 0);
    grid.addWidget(text(row.before, Role::none, parent), line, 1);
    grid.addWidget(text(row.after, Role::strongText, parent), line, 2);
    grid.addWidget(text(row.why, Role::secondLineText, parent), line, 3);
}

} // namespace quadrille::app
