// SPDX-License-Identifier: GPL-3.0-or-later
// Variants of a block in the dialog. The block has 10 s on, 30 s off, 20 min: a contraction each
// 40 s, so 30; five days a week make 150.
#pragma once

#include "app/plan/quantity_box.h"
#include "app/plan/what_if_cells.h"
#include "app/plan/what_if_dialog.h"
#include "tests/app/practice_window.h"

#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>
#include <memory>

namespace quadrille::tests
{

using namespace app;
using namespace literals;
using namespace std::chrono_literals;

inline Block tenOnThirtyOff()
{
    Block block = aBlock(aUnit());
    Settings& settings = block.sites.front().settings;
    settings.rampUp = 0s;
    settings.rampDown = 0s;
    settings.onTime = 10s;
    settings.offTime = 30s;
    settings.sessionLength = 20min;
    settings.amplitude = {.lastTolerated = 35_mA, .ceiling = 40_mA};
    return block;
}

inline QString cellName(std::size_t variant, Field field)
{
    return QStringLiteral("variant-%1-%2").arg(variant).arg(static_cast<int>(field));
}

/// The dialog on a block, and what a person does in it.
class WhatIfVariants : public testing::Test
{
protected:
    void open(const Block& block, Stimulator unit = aUnit())
    {
        unit.rampHabit = RampHabit::includedInOnTime;
        dialog =
            std::make_unique<WhatIfDialog>(practice.services(), block, 0, unit, &practice.window());
        dialog->show();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    QuantityBox& box(std::size_t variant, Field field)
    {
        auto* found = dialog->findChild<QuantityBox*>(cellName(variant, field));
        EXPECT_NE(found, nullptr);
        return *found;
    }
    void enter(std::size_t variant, Field field, const QString& value)
    {
        QuantityBox& into = box(variant, field);
        into.setFocus();
        into.selectAll();
        QTest::keyClicks(&into, value);
        QTest::keyClick(&into, Qt::Key_Tab);
    }
    /// Of the block (column 0) or a variant (1 …).
    QString figure(std::size_t column, ComparedFigure figure)
    {
        const QString name =
            QStringLiteral("figure-%1-%2").arg(column).arg(static_cast<int>(figure));
        return column == 0 ? dialog->findChild<QLabel*>(name)->text()
                           : dialog->findChild<FigureCell*>(name)->value();
    }
    QString difference(std::size_t variant, ComparedFigure figure)
    {
        return dialog
            ->findChild<FigureCell*>(
                QStringLiteral("figure-%1-%2").arg(variant + 1).arg(static_cast<int>(figure)))
            ->difference();
    }
    QString said(const char* name)
    {
        const auto* label = dialog->findChild<QLabel*>(QLatin1String(name));
        EXPECT_NE(label, nullptr) << name;
        return label->text();
    }
    template <class Widget>
    Widget& field(const char* name)
    {
        auto* found = dialog->findChild<Widget*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }
    void click(const char* name) { field<QPushButton>(name).click(); }
    /// The model may come after the figures, on a busy machine.
    bool comesToSay(const char* label, const QString& words)
    {
        return QTest::qWaitFor([&] { return said(label).contains(words); });
    }
    bool ratiosCome(std::size_t column)
    {
        return QTest::qWaitFor([&] {
            const QString shown = figure(column, ComparedFigure::fatigueRatioIntegral);
            return shown != QStringLiteral("…") && shown != QStringLiteral("—");
        });
    }

    PracticeWindow practice;
    std::unique_ptr<WhatIfDialog> dialog;
};

} // namespace quadrille::tests
