// SPDX-License-Identifier: GPL-3.0-or-later
// Draws the controls in both schemes as pictures into a folder, to be looked at by people:
//   render_look FOLDER
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/segment_row.h"
#include "tests/app/render_caseload.h"
#include "tests/app/render_grid.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDir>
#include <QFormLayout>
#include <QFrame>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QStatusBar>
#include <QTabBar>
#include <QTableWidget>
#include <QTextStream>
#include <QToolButton>
#include <QVBoxLayout>

using namespace quadrille::app;

namespace
{

QLabel* label(const QString& text, Role role)
{
    auto* made = new QLabel(text);
    setRole(*made, role);
    return made;
}

QPushButton* button(const QString& text, Role role, bool enabled = true)
{
    auto* made = new QPushButton(text);
    setRole(*made, role);
    made->setEnabled(enabled);
    return made;
}

QWidget* buttons()
{
    auto* sheet = new QFrame;
    setRole(*sheet, Role::sheet);
    auto* column = new QVBoxLayout(sheet);
    auto* row = new QHBoxLayout;
    row->addWidget(button(QStringLiteral("&New patient…"), Role::primaryButton));
    row->addWidget(button(QStringLiteral("Revert"), Role::none));
    row->addWidget(button(QStringLiteral("Edit…"), Role::linkButton));
    row->addWidget(button(QStringLiteral("Issue"), Role::primaryButton, false));
    row->addWidget(button(QStringLiteral("Later"), Role::none, false));
    auto* withMenu = button(QStringLiteral("Print"), Role::none);
    withMenu->setMenu(new QMenu(withMenu));
    row->addWidget(withMenu);
    auto* back = new QToolButton;
    back->setArrowType(Qt::LeftArrow);
    row->addWidget(back);
    row->addStretch();
    column->addLayout(row);
    auto* segments = new SegmentRow;
    segments->addSegment(0, QStringLiteral("All"));
    segments->addSegment(1, QStringLiteral("Needs attention"));
    segments->addSegment(2, QStringLiteral("Ended"));
    segments->setCount(0, 14);
    segments->setCount(1, 5);
    segments->setCount(2, 23);
    column->addWidget(segments);
    auto* checks = new QHBoxLayout;
    for (const auto state : {Qt::Unchecked, Qt::Checked, Qt::PartiallyChecked}) {
        auto* box = new QCheckBox(QStringLiteral("Mon"));
        box->setCheckState(state);
        checks->addWidget(box);
    }
    auto* off = new QCheckBox(QStringLiteral("Off"));
    off->setChecked(true);
    off->setEnabled(false);
    checks->addWidget(off);
    for (const bool on : {true, false}) {
        auto* radio = new QRadioButton(on ? QStringLiteral("yes") : QStringLiteral("no"));
        radio->setAutoExclusive(false);
        radio->setChecked(on);
        checks->addWidget(radio);
    }
    checks->addStretch();
    column->addLayout(checks);
    return sheet;
}

QSpinBox* spinBox(int value, const QString& unit)
{
    auto* box = new QSpinBox;
    box->setRange(0, 500);
    box->setValue(value);
    box->setSuffix(unit);
    box->setAlignment(Qt::AlignRight);
    box->setFixedWidth(104);
    return box;
}

QWidget* fields(QWidget** focus)
{
    auto* sheet = new QFrame;
    setRole(*sheet, Role::sheet);
    auto* form = new QFormLayout(sheet);
    form->addRow(QStringLiteral("Pulse frequency"), spinBox(50, QStringLiteral("\u00A0Hz")));
    auto* wrong = spinBox(420, QStringLiteral("\u00A0µs"));
    setOutOfRange(*wrong, true);
    form->addRow(QStringLiteral("Phase duration"), wrong);
    auto* focused = spinBox(10, QStringLiteral("\u00A0s"));
    form->addRow(QStringLiteral("On time"), focused);
    *focus = focused;
    auto* off = spinBox(0, QStringLiteral("\u00A0s"));
    off->setEnabled(false);
    form->addRow(QStringLiteral("Ramp up"), off);
    auto* line = new QLineEdit;
    line->setPlaceholderText(QStringLiteral("Name or problem"));
    form->addRow(QStringLiteral("&Name"), line);
    form->addRow(QStringLiteral("Telephone"), new QLineEdit(QStringLiteral("01632 960 101")));
    auto* combo = new QComboBox;
    combo->addItems({QStringLiteral("symmetric biphasic"), QStringLiteral("kHz bursts")});
    form->addRow(QStringLiteral("Waveform"), combo);
    auto* editable = new QComboBox;
    editable->setEditable(true);
    editable->addItem(QStringLiteral("Vastus medialis"));
    form->addRow(QStringLiteral("Muscle"), editable);
    auto* date = new QDateEdit(QDate(2026, 3, 12));
    date->setCalendarPopup(true);
    form->addRow(QStringLiteral("From"), date);
    auto* text = new QPlainTextEdit(QStringLiteral("Sit with the knee bent."));
    text->setMaximumHeight(60);
    form->addRow(QStringLiteral("Instruction"), text);
    return sheet;
}

QWidget* texts()
{
    auto* sheet = new QFrame;
    setRole(*sheet, Role::sheet);
    auto* column = new QVBoxLayout(sheet);
    column->addWidget(label(QStringLiteral("Agnes Thorley"), Role::titleText));
    column->addWidget(label(QStringLiteral("350 contractions"), Role::bigFigureText));
    column->addWidget(label(QStringLiteral("No patients yet"), Role::sheetTitleText));
    column->addWidget(label(QStringLiteral("Desmond Achterby"), Role::listNameText));
    column->addWidget(label(QStringLiteral("Strong text"), Role::strongText));
    column->addWidget(label(QStringLiteral("Second line"), Role::secondLineText));
    column->addWidget(label(QStringLiteral("Caption"), Role::captionText));
    column->addWidget(label(QStringLiteral("Axis 0 100 200"), Role::axisText));
    column->addWidget(label(QStringLiteral("50 to 400 µs"), Role::warnStrongText));
    column->addWidget(label(QStringLiteral("Signed"), Role::goodText));
    auto* changed = new QFrame;
    setRole(*changed, Role::changedRow);
    auto* row = new QHBoxLayout(changed);
    row->addWidget(label(QStringLiteral("Off time"), Role::strongText));
    column->addWidget(changed);
    auto* group = new QGroupBox(QStringLiteral("Reminders"));
    auto* inside = new QVBoxLayout(group);
    inside->addWidget(new QLabel(QStringLiteral("A group, with a <a href='x'>link</a>")));
    column->addWidget(group);
    column->addStretch();
    return sheet;
}

QWidget* table()
{
    auto* made = new QTableWidget(12, 3);
    made->setHorizontalHeaderLabels(
        {QStringLiteral("Name"), QStringLiteral("Output"), QStringLiteral("Channels")});
    made->verticalHeader()->hide();
    made->setSelectionBehavior(QAbstractItemView::SelectRows);
    made->setShowGrid(false);
    for (int row = 0; row < made->rowCount(); ++row) {
        made->setItem(row, 0, new QTableWidgetItem(QStringLiteral("Unit %1").arg(row + 1)));
        made->setItem(row, 1, new QTableWidgetItem(QStringLiteral("symmetric")));
        made->setItem(row, 2, new QTableWidgetItem(QStringLiteral("2")));
    }
    made->selectRow(1);
    return made;
}

QWidget* warningStrip()
{
    auto* strip = new QFrame;
    setRole(*strip, Role::warningStrip);
    auto* row = new QHBoxLayout(strip);
    auto* words = new QVBoxLayout;
    words->addWidget(
        label(QStringLiteral("Phase duration 420 µs is more than this stimulator can give."),
              Role::warnStrongText));
    words->addWidget(
        label(QStringLiteral("Source: stimulator record, checked 3 Feb 2026."), Role::warnText));
    row->addLayout(words);
    row->addStretch();
    row->addWidget(button(QStringLiteral("Set 400 µs"), Role::none));
    return strip;
}

void save(QWidget& widget, const QDir& folder, const QString& name)
{
    widget.grab().save(folder.filePath(name + QStringLiteral(".png")));
}

void renderControls(const QDir& folder, const QString& suffix)
{
    QMainWindow window;
    for (const char* name : {"&Practice", "Patien&t", "&View", "&Help"}) {
        QMenu* menu = window.menuBar()->addMenu(QString::fromUtf8(name));
        menu->addAction(QStringLiteral("&New patient…"))->setShortcut(QKeySequence::New);
        menu->addSeparator();
        QAction* checked = menu->addAction(QStringLiteral("&Dark"));
        checked->setCheckable(true);
        checked->setChecked(true);
        menu->addMenu(QStringLiteral("&More"));
        menu->addAction(QStringLiteral("&Print"))->setEnabled(false);
    }
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    auto* tabs = new QTabBar;
    for (const char* name : {"Plan", "Handout", "Diary"}) {
        tabs->addTab(QString::fromUtf8(name));
    }
    column->addWidget(tabs);
    column->addWidget(warningStrip());
    auto* row = new QHBoxLayout;
    auto* left = new QVBoxLayout;
    QWidget* focus = nullptr;
    left->addWidget(buttons());
    left->addWidget(fields(&focus));
    row->addLayout(left);
    row->addWidget(texts());
    row->addWidget(table());
    column->addLayout(row);
    window.setCentralWidget(page);
    window.statusBar()->showMessage(QStringLiteral("Block 3 changed, not saved"));
    window.resize(1280, 720);
    window.show();
    window.activateWindow();
    focus->setFocus();
    QApplication::processEvents();
    save(window, folder, QStringLiteral("controls-") + suffix);
    auto* menu = window.menuBar()->findChild<QMenu*>();
    menu->popup({10, 30});
    QApplication::processEvents();
    save(*menu, folder, QStringLiteral("menu-") + suffix);
    menu->close();
}

} // namespace

int main(int argc, char* argv[])
{
    QApplication application(argc, argv);
    QTextStream errors(stderr);
    if (argc != 2 || !QDir().mkpath(QString::fromLocal8Bit(argv[1]))) {
        errors << "Usage: render_look FOLDER\n";
        return 2;
    }
    const QDir folder(QString::fromLocal8Bit(argv[1]));
    Look look(application);
    look.apply(SchemeChoice::light);
    renderGrid(folder.filePath(QStringLiteral("grid.png")));
    const QSize small(1280, 720);
    const QSize wide(1440, 900);
    renderControls(folder, QStringLiteral("light"));
    renderCaseload(folder, small, QStringLiteral("1280-light"));
    renderCaseload(folder, wide, QStringLiteral("1440-light"));
    look.apply(SchemeChoice::dark);
    renderControls(folder, QStringLiteral("dark"));
    renderCaseload(folder, small, QStringLiteral("1280-dark"));
    renderCaseload(folder, wide, QStringLiteral("1440-dark"));
    look.apply(SchemeChoice::light, 1.5);
    renderControls(folder, QStringLiteral("large"));
    renderCaseload(folder, wide, QStringLiteral("large"));
    return 0;
}
