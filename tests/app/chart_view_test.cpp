// SPDX-License-Identifier: GPL-3.0-or-later
// Charts read with keys and pointer, enlarged, copied and saved.
#include "app/charts/chart_acts.h"
#include "app/charts/chart_link.h"
#include "app/charts/chart_view.h"
#include "app/charts/force_chart.h"
#include "tests/app/pdf_reader.h"
#include "tests/app/practice_window.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QDialog>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QWheelEvent>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

class ReadChart : public testing::Test
{
protected:
    ReadChart()
    {
        ForcesToShow forces{.name = QStringLiteral("Predicted force"),
                            .note = QStringLiteral("model, not this patient")};
        for (int i = 0; i < 20; ++i) {
            forces.shares.push_back(1.0 - 0.01 * i);
        }
        forces.nameNow = QStringLiteral("=Block");
        chart.setReadable(true);
        chart.setZoomable(true);
        chart.setSpec(forceChart(forces, text));
        chart.resize(400, 220);
        chart.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&chart));
        chart.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&chart));
        chart.setFocus();
    }

    void act(const char* name)
    {
        auto* action = chart.findChild<QAction*>(QLatin1String(name));
        ASSERT_NE(action, nullptr) << name;
        action->trigger();
    }

    QByteArray contentOf(const QString& file)
    {
        QFile source(file);
        EXPECT_TRUE(source.open(QIODevice::ReadOnly)) << file.toStdString();
        return source.readAll();
    }

    QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    QTemporaryDir folder;
    ScriptedPrompts prompts;
    ChartView chart;
};

} // namespace

TEST_F(ReadChart, LeftAndRightReadOneContractionAfterTheOther)
{
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(chart.crosshair(), 0U);
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(chart.crosshair(), 1U);
    EXPECT_TRUE(
        chart.accessibleDescription().startsWith(QStringLiteral("Contraction 2: 99\u00A0%.")))
        << chart.accessibleDescription().toStdString();
    QTest::keyClick(&chart, Qt::Key_End);
    EXPECT_EQ(chart.crosshair(), 19U);
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(chart.crosshair(), 19U) << "there is no more";
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.crosshair(), 18U);
    QTest::keyClick(&chart, Qt::Key_Escape);
    EXPECT_FALSE(chart.crosshair());
}

TEST_F(ReadChart, ThePointerReadsWhatItStandsOn)
{
    QTest::mouseMove(&chart, QPoint(60, 100));
    ASSERT_TRUE(chart.crosshair());
    const std::size_t left = *chart.crosshair();
    QTest::mouseMove(&chart, QPoint(300, 100));
    EXPECT_GT(*chart.crosshair(), left);
}

TEST_F(ReadChart, ChartsOnTheSameAxisShareTheCrosshair)
{
    ChartView other;
    other.setSpec(chart.spec());
    ChartLink link(&chart);
    link.add(chart);
    link.add(other);
    QSignalSpy moved(&link, &ChartLink::moved);
    QTest::keyClick(&chart, Qt::Key_End);
    EXPECT_EQ(other.crosshair(), 19U);
    EXPECT_EQ(moved.size(), 1) << "said once, not to and fro";
    QTest::keyClick(&chart, Qt::Key_Escape);
    EXPECT_FALSE(other.crosshair());
}

TEST_F(ReadChart, PlusMinusAndNoughtShowAPartAndTheWhole)
{
    const ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    QTest::keyClick(&chart, Qt::Key_End);
    QTest::keyClick(&chart, Qt::Key_Plus);
    EXPECT_GT(chart.shownFrom(), 0.5);
    EXPECT_LE(chart.shownTo(), 20.5);
    EXPECT_GE(chart.shownTo(), 20.0) << "the crosshair stays in view";
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_LE(chart.shownFrom(), 1.0) << "the part follows the crosshair";
    QTest::keyClick(&chart, Qt::Key_Minus);
    QTest::keyClick(&chart, Qt::Key_Plus);
    QTest::keyClick(&chart, Qt::Key_0);
    EXPECT_EQ(chart.shownFrom(), 0.5);
    EXPECT_EQ(chart.shownTo(), 20.5);
}

TEST_F(ReadChart, TheWheelEnlargesWhereItStandsAndOnlyWithTheFocus)
{
    const auto turn = [this] {
        QWheelEvent wheel(QPointF(200, 100), chart.mapToGlobal(QPointF(200, 100)), {}, {0, 120},
                          Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
        QApplication::sendEvent(&chart, &wheel);
        return wheel.isAccepted();
    };
    chart.clearFocus();
    EXPECT_FALSE(turn()) << "the page scrolls";
    EXPECT_EQ(chart.shownTo(), 20.5);
    chart.setFocus();
    EXPECT_TRUE(turn());
    EXPECT_LT(chart.shownTo() - chart.shownFrom(), 20.0);
}

TEST_F(ReadChart, IsCopiedAndSavedAsAPictureOnWhite)
{
    ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    QSignalSpy said(&acts, &ChartActs::said);
    act("copyPicture");
    const QImage copied = QApplication::clipboard()->image();
    ASSERT_FALSE(copied.isNull());
    EXPECT_EQ(copied.pixelColor(0, 0), QColor(Qt::white));
    prompts.picture = folder.filePath(QStringLiteral("force.png"));
    act("savePng");
    EXPECT_EQ(QImage(*prompts.picture).size(), copied.size());
    EXPECT_EQ(QFileInfo(*prompts.picture).permissions() &
                  (QFileDevice::ReadGroup | QFileDevice::ReadOther),
              QFileDevice::Permissions());
    EXPECT_TRUE(said.back().front().toString().contains(*prompts.picture));
}

TEST_F(ReadChart, IsSavedAsOnePageOfPdf)
{
    const ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    prompts.pdf = folder.filePath(QStringLiteral("force.pdf"));
    act("savePdf");
    EXPECT_EQ(prompts.suggestedPdfName, QStringLiteral("force.pdf"));
    EXPECT_EQ(pdfPageCount(*prompts.pdf), 1);
}

TEST_F(ReadChart, IsSavedAsATableWithoutFormulas)
{
    const ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    prompts.table = folder.filePath(QStringLiteral("force.csv"));
    act("saveCsv");
    const QList<QByteArray> lines = contentOf(*prompts.table).split('\n');
    EXPECT_EQ(lines[0], "Contraction,\"'=Block, % of the first\"");
    EXPECT_EQ(lines[2], "2,99");
    EXPECT_EQ(lines.size(), 22) << "heads, 20 contractions, the last line end";
}

TEST_F(ReadChart, WhatCannotBeSavedIsToldInASentence)
{
    ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    QSignalSpy said(&acts, &ChartActs::said);
    prompts.table = folder.filePath(QStringLiteral("nowhere/force.csv"));
    act("saveCsv");
    ASSERT_EQ(said.size(), 1);
    EXPECT_TRUE(said.front().front().toString().contains(QStringLiteral("force.csv")));
}

TEST_F(ReadChart, ATableOpensByKey)
{
    const ChartActs acts(chart, text, prompts, QStringLiteral("force"));
    int rows = 0;
    onNextDialog([&rows](QDialog& dialog) {
        auto* table = dialog.findChild<QTableWidget*>(QStringLiteral("chartTable"));
        if (table != nullptr) {
            rows = table->rowCount();
            EXPECT_EQ(table->item(1, 1)->text(), QStringLiteral("99.0"));
        }
        dialog.reject();
    });
    QTest::keyClick(&chart, Qt::Key_T, Qt::ControlModifier);
    EXPECT_EQ(rows, 20);
}
