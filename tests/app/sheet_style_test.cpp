// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/segment_row.h"

#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTabBar>
#include <QTableWidget>
#include <QTest>
#include <QVBoxLayout>

#include <gtest/gtest.h>

using namespace quadrille::app;

namespace
{

const Tokens light = lightTokens();

QColor pixel(QWidget& widget, int x, int y)
{
    return widget.grab().toImage().pixelColor(x, y);
}

/// The lowest row with ink in it, above `below` rows at the lower edge; −1 where there is none.
int lowestInk(QWidget& widget, int below)
{
    const QImage image = widget.grab().toImage();
    for (int y = image.height() - 1 - below; y >= 0; --y) {
        for (int x = 2; x < image.width() - 2; ++x) { // between the edges of a section
            if (image.pixelColor(x, y).lightness() < 128) {
                return y;
            }
        }
    }
    return -1;
}

void showFocused(QWidget& window, QWidget& focus)
{
    window.show();
    window.activateWindow();
    focus.setFocus(Qt::TabFocusReason);
    QApplication::processEvents();
}

} // namespace

TEST(SheetStyle, AFieldHasAnEdgeAndTheFocusMakesItTwoPixelsOfMark)
{
    QWidget window;
    QVBoxLayout column(&window);
    QLineEdit field;
    QLineEdit other;
    column.addWidget(&field);
    column.addWidget(&other);
    showFocused(window, other);
    EXPECT_EQ(pixel(field, 30, 0), light.edge);
    EXPECT_EQ(pixel(field, 30, 1), light.sheet);
    EXPECT_EQ(pixel(other, 30, 0), light.mark);
    EXPECT_EQ(pixel(other, 30, 1), light.mark);
    EXPECT_EQ(pixel(other, 30, 2), light.sheet);
}

TEST(SheetStyle, NothingShiftsWhenTheFocusComes)
{
    QWidget window;
    QVBoxLayout column(&window);
    QLineEdit field(QStringLiteral("Quay Lane"));
    QPushButton button(QStringLiteral("Save"));
    column.addWidget(&field);
    column.addWidget(&button);
    showFocused(window, button);
    const QSize before = field.sizeHint();
    const QRect cursor = field.inputMethodQuery(Qt::ImCursorRectangle).toRect();
    showFocused(window, field);
    EXPECT_EQ(field.sizeHint(), before);
    EXPECT_EQ(field.inputMethodQuery(Qt::ImCursorRectangle).toRect(), cursor);
}

TEST(SheetStyle, AFieldOutsideItsRangeIsDrawnWithTheWarningLine)
{
    QSpinBox box;
    box.resize(104, 26);
    EXPECT_EQ(pixel(box, 20, 0), light.edge);
    setOutOfRange(box, true);
    EXPECT_EQ(pixel(box, 20, 0), light.warnLine);
    EXPECT_EQ(pixel(box, 20, 1), light.warnLine);
    EXPECT_EQ(pixel(box, 20, 2), light.sheet);
    setOutOfRange(box, false);
    EXPECT_EQ(pixel(box, 20, 0), light.edge);
}

TEST(SheetStyle, ShiftMakesTenStepsInASpinBox)
{
    QSpinBox box;
    box.setRange(0, 100);
    box.setValue(50);
    box.ensurePolished();
    QTest::keyClick(&box, Qt::Key_Up);
    EXPECT_EQ(box.value(), 51);
    QTest::keyClick(&box, Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_EQ(box.value(), 61);
}

TEST(SheetStyle, OnlyThePrimaryButtonIsFilled)
{
    QPushButton plain(QStringLiteral("Revert"));
    QPushButton primary(QStringLiteral("Issue plan…"));
    setRole(primary, Role::primaryButton);
    for (QPushButton* button : {&plain, &primary}) {
        button->resize(button->sizeHint());
    }
    EXPECT_EQ(pixel(plain, 5, 5), light.sheet);
    EXPECT_EQ(pixel(plain, 40, 0), light.edge);
    EXPECT_EQ(pixel(primary, 5, 5), light.mark);
    EXPECT_EQ(primary.height(), 28);
    primary.setEnabled(false);
    EXPECT_EQ(pixel(primary, 5, 5), light.band);
}

TEST(SheetStyle, TheChosenTabCarriesATwoPixelMark)
{
    QTabBar tabs;
    tabs.addTab(QStringLiteral("Plan"));
    tabs.addTab(QStringLiteral("Handout"));
    tabs.ensurePolished();
    tabs.resize(tabs.sizeHint());
    const int bottom = tabs.height() - 1;
    const int second = tabs.tabRect(1).center().x();
    EXPECT_EQ(pixel(tabs, 10, bottom - 1), light.mark);
    EXPECT_EQ(pixel(tabs, 10, bottom - 2), light.mark);
    EXPECT_NE(pixel(tabs, 10, bottom - 3), light.mark);
    EXPECT_EQ(pixel(tabs, second, bottom), light.line);
    const QSize before = tabs.sizeHint();
    tabs.setCurrentIndex(1);
    EXPECT_EQ(tabs.sizeHint(), before) << "bold text has its room already";
    EXPECT_EQ(pixel(tabs, second, bottom - 1), light.mark);
}

TEST(SheetStyle, ASheetIsFlatWithALineAround)
{
    QFrame sheet;
    setRole(sheet, Role::sheet);
    sheet.resize(60, 40);
    EXPECT_EQ(pixel(sheet, 0, 0), light.line) << "no rounded corner";
    EXPECT_EQ(pixel(sheet, 30, 0), light.line);
    EXPECT_EQ(pixel(sheet, 1, 1), light.sheet);
    EXPECT_EQ(pixel(sheet, 59, 39), light.line);
}

TEST(SheetStyle, ARoleMayChangeWhileTheWidgetIsShown)
{
    QFrame strip;
    strip.resize(60, 40);
    strip.show();
    setRole(strip, Role::warningStrip);
    EXPECT_EQ(pixel(strip, 30, 20), light.warnBand);
    EXPECT_EQ(pixel(strip, 30, 39), light.warnLine);
    setRole(strip, Role::none);
    EXPECT_EQ(pixel(strip, 30, 20), light.desk);
}

TEST(SheetStyle, RolesOfTextSetSizeWeightAndColour)
{
    QLabel title(QStringLiteral("Caseload"));
    setRole(title, Role::titleText);
    title.ensurePolished();
    EXPECT_EQ(title.font().pixelSize(), 21);
    EXPECT_TRUE(title.font().bold());
    QLabel caption(QStringLiteral("source"));
    setRole(caption, Role::captionText);
    caption.ensurePolished();
    EXPECT_EQ(caption.palette().color(QPalette::WindowText), light.ink3);
    EXPECT_EQ(caption.font().pixelSize(), 12);
}

TEST(SheetStyle, HitAreasAreAtLeastTwentyFourPixels)
{
    QPushButton link(QStringLiteral("Edit…"));
    setRole(link, Role::linkButton);
    QComboBox combo;
    combo.addItem(QStringLiteral("name"));
    QLineEdit field;
    for (const QWidget* widget : {static_cast<QWidget*>(&link), static_cast<QWidget*>(&combo),
                                  static_cast<QWidget*>(&field)}) {
        EXPECT_GE(widget->sizeHint().height(), 24) << widget->metaObject()->className();
    }
}

TEST(SegmentRow, OneOfTheSegmentsIsChosenAndArrowsChooseAnother)
{
    SegmentRow row;
    row.addSegment(4, QStringLiteral("All"));
    row.addSegment(7, QStringLiteral("Ended"));
    row.setCount(7, 23);
    EXPECT_EQ(row.chosen(), 4);
    QSignalSpy changed(&row, &SegmentRow::chosenChanged);
    auto* first = row.findChildren<QPushButton*>().first();
    row.show();
    showFocused(row, *first);
    QTest::keyClick(first, Qt::Key_Right);
    EXPECT_EQ(row.chosen(), 7);
    ASSERT_EQ(changed.size(), 1);
    EXPECT_EQ(changed.at(0).at(0).toInt(), 7);
    EXPECT_EQ(row.findChildren<QPushButton*>().last()->accessibleName(),
              QStringLiteral("Ended, 23"));
}

TEST(Look, ANewSchemeRedrawsWhatIsShown)
{
    QWidget window;
    QFrame sheet(&window);
    setRole(sheet, Role::sheet);
    sheet.resize(60, 40);
    QLabel plain(QStringLiteral("first"), &sheet);
    QLabel second(QStringLiteral("second"), &sheet);
    setRole(second, Role::secondLineText);
    window.show();
    EXPECT_EQ(pixel(sheet, 50, 35), light.sheet);
    Look look(*qApp);
    // Qt hands a new palette on only while the application runs.
    QMetaObject::invokeMethod(
        qApp,
        [&] {
            look.apply(SchemeChoice::dark, 1.5);
            QApplication::processEvents();
            EXPECT_EQ(pixel(sheet, 50, 35), darkTokens().sheet);
            EXPECT_EQ(plain.palette().color(QPalette::WindowText), darkTokens().ink);
            EXPECT_EQ(second.palette().color(QPalette::WindowText), darkTokens().ink2);
            EXPECT_EQ(second.font().pixelSize(), 18);
            EXPECT_EQ(scaled(100, appliedFactor()), 154) << "20 px of 13";
            look.apply(SchemeChoice::light);
            QApplication::processEvents();
            EXPECT_EQ(pixel(sheet, 50, 35), light.sheet);
            EXPECT_EQ(plain.palette().color(QPalette::WindowText), light.ink);
            qApp->quit();
        },
        Qt::QueuedConnection);
    QApplication::exec();
}

TEST(SheetStyle, WhatHangsUnderTheLineIsNotCutInTheHeadOfATable)
{
    QTableWidget table(1, 1);
    table.setHorizontalHeaderLabels({QStringLiteral("n")});
    table.show();
    QLabel free(QStringLiteral("n"));
    free.setFont(table.horizontalHeader()->font());
    free.setMargin(20);
    // A head has a rule at its lower edge.
    const int inHead = lowestInk(*table.horizontalHeader(), 1);
    const int alone = lowestInk(free, 0);
    ASSERT_GT(alone, 0);
    table.setHorizontalHeaderLabels({QStringLiteral("g")});
    free.setText(QStringLiteral("g"));
    ASSERT_GT(lowestInk(free, 0), alone);
    EXPECT_EQ(lowestInk(*table.horizontalHeader(), 1) - inHead, lowestInk(free, 0) - alone);
}
