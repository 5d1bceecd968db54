// SPDX-License-Identifier: GPL-3.0-or-later
// Pages as geometry: nothing leaves the text area, nothing overlaps, nothing is orphaned.
#include "app/print/handout_document.h"
#include "app/print/handout_words.h"
#include "app/print/page_painter.h"
#include "tests/app/handout_samples.h"

#include <QImage>
#include <QPainter>

#include <algorithm>
#include <array>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using quadrille::tests::blockWithSites;
using quadrille::tests::sampleContent;
using quadrille::tests::samplePlan;

namespace
{

constexpr std::array choices{PaperChoice{PaperFormat::a4, PrintSize::normal},
                             PaperChoice{PaperFormat::a4, PrintSize::large},
                             PaperChoice{PaperFormat::letter, PrintSize::normal},
                             PaperChoice{PaperFormat::letter, PrintSize::large}};

HandoutDocument documentOf(const HandoutContent& content, PaperChoice choice)
{
    const HandoutWords words(QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)));
    return {words.of(content), choice};
}

Block blockWithLongTexts(int sites)
{
    Block block = blockWithSites(sites, true);
    for (Site& site : block.sites) {
        for (int i = 0; i < 40; ++i) {
            site.muscle += " muscle" + std::to_string(i);
            site.position += " position" + std::to_string(i);
            site.instruction += " instruction" + std::to_string(i);
        }
    }
    return block;
}

/// Three settings differ between the sites.
Block blockWithOwnSettings(int sites)
{
    Block block = blockWithSites(sites, true);
    for (Site& site : block.sites) {
        const std::int64_t own = site.settings.phaseDuration.count();
        site.settings.pulseFrequency =
            PulseFrequency::fromCount(site.settings.pulseFrequency.count() + own);
        site.settings.rampUp += Milliseconds(own);
    }
    return block;
}

void expectNothingOverlaps(const HandoutDocument& document)
{
    for (int page = 0; page < document.pageCount(); ++page) {
        double below = document.edges().bodyTop();
        for (const PlacedStrip& placed : document.page(page)) {
            EXPECT_GE(placed.top, below - 0.01);
            below = placed.top + placed.strip.size.height;
        }
        EXPECT_LE(below, document.edges().bodyBottom() + 0.01);
        EXPECT_FALSE(document.page(page).empty());
    }
}

/// Ink in a part of a page drawn at 40 dpi: the least grey found, 255 for none.
int darkestIn(const HandoutDocument& document, int page, const QRectF& points)
{
    const double pixels = 40.0 / 72.0;
    QImage image((document.pageSize() * pixels).toSize(), QImage::Format_Grayscale8);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintPage(painter, document, page, QRectF(image.rect()));
    painter.end();
    int darkest = 255;
    const QRect part = QRectF(points.topLeft() * pixels, points.size() * pixels).toAlignedRect();
    for (int y = part.top(); y <= part.bottom(); ++y) {
        for (int x = part.left(); x <= part.right(); ++x) {
            if (image.rect().contains(x, y)) {
                darkest = std::min(darkest, qGray(image.pixel(x, y)));
            }
        }
    }
    return darkest;
}

} // namespace

TEST(HandoutDocument, NothingLeavesTheTextAreaAndNothingOverlaps)
{
    for (const PaperChoice choice : choices) {
        for (int sites = 1; sites <= 8; ++sites) {
            expectNothingOverlaps(
                documentOf(sampleContent(samplePlan({blockWithSites(sites, false)})), choice));
            expectNothingOverlaps(
                documentOf(sampleContent(samplePlan({blockWithSites(sites, true)})), choice));
        }
        expectNothingOverlaps(
            documentOf(sampleContent(samplePlan({blockWithLongTexts(3)})), choice));
    }
}

TEST(HandoutDocument, NoPageEndsWithAHeadingOrInsideAShortRow)
{
    for (const PaperChoice choice : choices) {
        for (int sites = 1; sites <= 8; ++sites) {
            const auto document =
                documentOf(sampleContent(samplePlan({blockWithSites(sites, true)})), choice);
            for (int page = 0; page < document.pageCount(); ++page) {
                EXPECT_NE(document.page(page).back().strip.size.below, BreakBelow::never)
                    << document.pageText(page).toStdString();
            }
        }
    }
}

TEST(HandoutDocument, LargePrintIsLargerAndSaysTheSame)
{
    const auto content = sampleContent(samplePlan({blockWithSites(2, true)}));
    const auto normal = documentOf(content, choices[0]);
    const auto large = documentOf(content, choices[1]);
    EXPECT_GT(large.pageCount(), normal.pageCount());
    const auto wordsOf = [](const HandoutDocument& document) {
        QStringList words;
        for (int page = 0; page < document.pageCount(); ++page) {
            // Which pages go on in the middle of a card differs with the size.
            bool continued = document.pageText(page).startsWith(QStringLiteral("Weeks "));
            for (const PlacedStrip& placed : document.page(page)) {
                const QString text = placed.strip.text.simplified();
                if (!continued) {
                    words += text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
                }
                continued = continued && !text.endsWith(QStringLiteral("continued"));
            }
        }
        words.removeDuplicates();
        words.sort();
        return words;
    };
    EXPECT_EQ(wordsOf(normal), wordsOf(large));
}

TEST(HandoutDocument, APageInTheMiddleOfACardSaysWhoseWeeksTheseAre)
{
    const QString title = QStringLiteral("Your programme");
    const QString settings = QStringLiteral("Your settings");
    int continued = 0;
    for (const PaperChoice choice : choices) {
        for (int sites = 1; sites <= 8; ++sites) {
            const auto document =
                documentOf(sampleContent(samplePlan({blockWithSites(sites, true)})), choice);
            for (int page = 0; page < document.pageCount(); ++page) {
                const QString text = document.pageText(page);
                if (text.startsWith(QStringLiteral("Doing it safely"))) {
                    break;
                }
                const bool begins = text.startsWith(title) || text.startsWith(settings);
                const QString first = document.page(page).front().strip.text;
                EXPECT_EQ(first.startsWith(QStringLiteral("Weeks 1 to 4: ")), !begins)
                    << text.toStdString();
                EXPECT_EQ(text.simplified().contains(QStringLiteral("2026, continued")), !begins);
                continued += begins ? 0 : 1;
            }
        }
    }
    EXPECT_GT(continued, 0);
}

TEST(HandoutDocument, AChannelsSettingsStayWithTheirHeading)
{
    const auto isHeading = [](const PlacedStrip& placed) {
        return placed.strip.text.startsWith(QStringLiteral("Channel ")) &&
               placed.strip.text.contains(QLatin1Char(':'));
    };
    for (const PaperChoice choice : choices) {
        for (int sites = 2; sites <= 6; ++sites) {
            const auto document =
                documentOf(sampleContent(samplePlan({blockWithOwnSettings(sites)})), choice);
            int whole = 0;
            for (int page = 0; page < document.pageCount(); ++page) {
                const auto& strips = document.page(page);
                for (std::size_t i = 0; i < strips.size(); ++i) {
                    // Three settings in two columns below each heading.
                    if (isHeading(strips[i])) {
                        ASSERT_LT(i + 2, strips.size()) << document.pageText(page).toStdString();
                        EXPECT_EQ(strips[i + 2].strip.frame, strips[i].strip.frame);
                        ++whole;
                    }
                }
            }
            EXPECT_EQ(whole, sites);
        }
    }
}

// A table of more sites is longer than a page of large print.
TEST(HandoutDocument, HowStrongStandsOnOnePageWithItsTable)
{
    for (const PaperChoice choice : choices) {
        for (int sites = 1; sites <= 4; ++sites) {
            for (const bool differing : {false, true}) {
                const Block block = blockWithSites(sites, differing);
                Plan plan = samplePlan({block, block});
                plan.stimulator.ownWords = {
                    {Field::pulseFrequency, "Rate"}, {Field::phaseDuration, "Width"},
                    {Field::onTime, "Work"},         {Field::offTime, "Rest"},
                    {Field::sessionLength, "Timer"}, {Field::amplitudeCeiling, "Level"}};
                const auto document = documentOf(sampleContent(plan), choice);
                for (int page = 0; page < document.pageCount(); ++page) {
                    const QString text = document.pageText(page);
                    const bool saysHow = text.contains(QStringLiteral("How strong ("));
                    EXPECT_EQ(text.count(QStringLiteral("70 mA")), saysHow ? sites : 0)
                        << text.toStdString();
                }
            }
        }
    }
}

TEST(HandoutDocument, NoLineOfTheFootEndsWithAPoint)
{
    const auto linesOf = [](const HandoutContent& content, PaperChoice choice) {
        const TextBlock foot = documentOf(content, choice).edges().foot();
        QStringList lines;
        for (int line = 0; line < foot.lineCount(); ++line) {
            lines.append(foot.lineText(line));
        }
        return lines;
    };
    auto content = sampleContent(samplePlan({blockWithSites(1, false)}));
    content.planIssuedBy = "Anselm Orrick";
    int broken = 0;
    for (const PaperChoice choice : choices) {
        for (const char* printer : {"Ruta Vennel", "Ruta Anselma Vennel-Orrick", "R V"}) {
            content.printedBy = printer;
            const QStringList lines = linesOf(content, choice);
            broken += lines.size() > 1 ? 1 : 0;
            for (const QString& line : lines) {
                EXPECT_FALSE(line.endsWith(QStringLiteral("·"))) << line.toStdString();
                EXPECT_FALSE(line.startsWith(QStringLiteral("·"))) << line.toStdString();
            }
        }
    }
    EXPECT_GT(broken, 0);
    // A short foot takes one line beside the number of a page below ten.
    content.planIssuedBy = *(content.printedBy = "Ruta Vennel");
    EXPECT_EQ(linesOf(content, choices[0]).size(), 1);
}

TEST(HandoutDocument, PaperOutsideTheEdgesStaysWhite)
{
    for (const PaperChoice choice : choices) {
        const auto document =
            documentOf(sampleContent(samplePlan({blockWithLongTexts(2)})), choice);
        const QSizeF paper = document.pageSize();
        for (int page = 0; page < document.pageCount(); ++page) {
            EXPECT_EQ(darkestIn(document, page, {0, 0, 18, paper.height()}), 255);
            EXPECT_EQ(darkestIn(document, page, {paper.width() - 36, 0, 36, paper.height()}), 255);
            EXPECT_EQ(darkestIn(document, page, {0, 0, paper.width(), 24}), 255);
            EXPECT_EQ(darkestIn(document, page, {0, paper.height() - 24, paper.width(), 24}), 255);
        }
    }
}

TEST(HandoutDocument, WithoutCardsOnlyTheSafetyPagesAreLeft)
{
    const auto document = documentOf(sampleContent(samplePlan({})), choices[0]);
    ASSERT_GE(document.pageCount(), 1);
    EXPECT_TRUE(document.pageText(0).contains(QStringLiteral("Doing it safely")));
}
