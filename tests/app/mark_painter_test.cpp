// SPDX-License-Identifier: GPL-3.0-or-later
// Each state of a square, probed pixel by pixel. What is expected is the table of states: shape,
// fractions of the side, colours by name.
#include "app/grid/grid_geometry.h"
#include "app/grid/mark_painter.h"
#include "app/look/tokens.h"

#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

using namespace quadrille::app;

namespace
{

constexpr int room = 10; ///< px around the mark

DayMark in(DayState state)
{
    DayMark day;
    day.state = state;
    return day;
}

/// A square of side `side` on sheet colour; at(x, y) is counted from the mark's top left corner.
class Drawn
{
public:
    Drawn(const DayMark& day, int side, MarkDetail detail = MarkDetail::full,
          const Tokens& tokens = lightTokens())
        : m_image(side + 2 * room, side + 2 * room, QImage::Format_RGB32)
        , m_side(side)
        , m_tokens(tokens)
    {
        m_image.fill(tokens.sheet);
        QPainter painter(&m_image);
        paintMark(painter, QRect(room, room, side, side), day, tokens, tokens.sheet, detail);
    }
    QColor at(int x, int y) const { return m_image.pixelColor(room + x, room + y); }
    /// Pixels of exactly this colour.
    int count(const QColor& colour) const
    {
        int found = 0;
        for (int y = 0; y < m_image.height(); ++y) {
            for (int x = 0; x < m_image.width(); ++x) {
                found += m_image.pixelColor(x, y) == colour ? 1 : 0;
            }
        }
        return found;
    }
    int side() const { return m_side; }

private:
    QImage m_image;
    int m_side;
    Tokens m_tokens;
};

const Tokens light = lightTokens();

} // namespace

TEST(Mark, ADayDoneIsFilledEdgeToEdgeAndNoFurther)
{
    const Drawn drawn(in(DayState::done), 18);
    EXPECT_EQ(drawn.count(light.mark), 18 * 18);
    EXPECT_EQ(drawn.at(0, 0), light.mark);
    EXPECT_EQ(drawn.at(17, 17), light.mark);
    EXPECT_EQ(drawn.at(-1, 0), light.sheet);
    EXPECT_EQ(drawn.at(18, 17), light.sheet);
}

TEST(Mark, ATickStandsInADoneSquareFromTwentyTwoPixelsOn)
{
    EXPECT_EQ(Drawn(in(DayState::done), 21).count(light.mark), 21 * 21);
    const Drawn ticked(in(DayState::done), 30);
    EXPECT_LT(ticked.count(light.mark), 30 * 30);
    // The tick's lowest point is (0.43, 0.72); straight above it, between the legs, is the fill.
    EXPECT_EQ(ticked.at(13, 20), light.onMark);
    EXPECT_EQ(ticked.at(13, 8), light.mark);
}

TEST(Mark, ADayToComeIsAnOutlineOfOnePixel)
{
    const Drawn drawn(in(DayState::toCome), 18);
    EXPECT_EQ(drawn.count(light.future), 4 * 17);
    EXPECT_EQ(drawn.at(0, 9), light.future);
    EXPECT_EQ(drawn.at(1, 9), light.sheet);
    EXPECT_EQ(drawn.at(9, 9), light.sheet);
}

TEST(Mark, ADayWithoutPrescriptionIsADotInTheMiddle)
{
    const Drawn drawn(in(DayState::notPrescribed), 30);
    EXPECT_EQ(drawn.at(15, 15), light.dot);
    EXPECT_EQ(drawn.at(15 + 4, 15), light.sheet) << "radius is 0.085 of 30, about 2.6 px";
    EXPECT_EQ(drawn.at(0, 0), light.sheet);
}

TEST(Mark, ADayWithoutDiaryShowsOnlyItsCorners)
{
    const Drawn drawn(in(DayState::noDiaryYet), 18);
    // 0.28 of 18 is 5 px, two bars at each corner.
    for (const int end : {0, 17}) {
        const int inwards = end == 0 ? 1 : -1;
        EXPECT_EQ(drawn.at(end, 0), light.ink2);
        EXPECT_EQ(drawn.at(end + 4 * inwards, 0), light.ink2);
        EXPECT_EQ(drawn.at(end + 5 * inwards, 0), light.sheet);
        EXPECT_EQ(drawn.at(0, end + 4 * inwards), light.ink2);
        EXPECT_EQ(drawn.at(0, end + 5 * inwards), light.sheet);
    }
    EXPECT_EQ(drawn.at(9, 0), light.sheet);
    EXPECT_EQ(drawn.at(9, 9), light.sheet);
}

TEST(Mark, APartlyDoneDayIsFilledFromBelowToTheShareDone)
{
    const std::pair<DoneShare, int> shares[] = {
        {DoneShare::third, 6}, {DoneShare::half, 9}, {DoneShare::twoThirds, 12}};
    for (const auto& [share, height] : shares) {
        DayMark day = in(DayState::partlyDone);
        day.share = share;
        const Drawn drawn(day, 18);
        EXPECT_EQ(drawn.at(9, 18 - height), light.mark) << height;
        EXPECT_EQ(drawn.at(9, 18 - height - 1), light.sheet) << height;
        EXPECT_EQ(drawn.at(0, 4), light.mark) << "the outline goes round";
        EXPECT_EQ(drawn.at(9, 17), light.mark);
    }
}

TEST(Mark, AMissedDayIsStruckFromLowerLeftToUpperRight)
{
    const Drawn drawn(in(DayState::missed), 30);
    for (const int along : {5, 10, 20, 25}) {
        EXPECT_EQ(drawn.at(along, 29 - along), light.miss) << along;
        EXPECT_EQ(drawn.at(along, along == 15 ? 0 : along), light.sheet) << along;
    }
    EXPECT_EQ(drawn.at(0, 15), light.miss);
    EXPECT_EQ(drawn.at(1, 15), light.miss) << "2 px from a side of 26 on";
    EXPECT_EQ(drawn.at(2, 15), light.sheet);
}

TEST(Mark, DoneWithoutPrescriptionIsADiscThatLeavesTheCornersFree)
{
    const Drawn drawn(in(DayState::doneNotPrescribed), 20);
    EXPECT_EQ(drawn.at(10, 10), light.mark);
    EXPECT_EQ(drawn.at(10 - 5, 10), light.mark) << "radius is 0.30 of 20";
    EXPECT_EQ(drawn.at(10 - 7, 10), light.sheet);
    EXPECT_EQ(drawn.at(1, 1), light.sheet);
}

TEST(Mark, ANoteFoldsTheLowerRightCorner)
{
    DayMark day = in(DayState::done);
    day.note = QStringLiteral("tired");
    const Drawn drawn(day, 30);
    EXPECT_EQ(drawn.at(29, 29), light.sheet) << "the corner is cut away";
    EXPECT_EQ(drawn.at(28, 27), light.sheet);
    EXPECT_EQ(drawn.at(29, 15), light.mark) << "above the fold of 0.38 the side stands";
    EXPECT_EQ(drawn.at(15, 29), light.mark);
    EXPECT_EQ(drawn.at(21, 21), light.sheet) << "inside the flap";
    EXPECT_EQ(drawn.at(0, 29), light.mark) << "the other corners stay";
}

TEST(Mark, ASkinMarkIsADiamondAtTheUpperRightWithAHalo)
{
    DayMark day = in(DayState::done);
    day.skinMark = true;
    const Drawn drawn(day, 30);
    // Centre (0.88, 0.12) of 30 is (26.4, 3.6); half-diagonal 8.1, halo to 12.3.
    EXPECT_EQ(drawn.at(26, 3), light.hazard);
    EXPECT_EQ(drawn.at(26, -3), light.hazard) << "it stands out over the square";
    EXPECT_EQ(drawn.at(26 - 10, 3), light.sheet) << "the halo";
    EXPECT_EQ(drawn.at(26 - 14, 3), light.mark);
}

TEST(Mark, TheMiniatureKeepsToWholeAndHalfSquares)
{
    DayMark day = in(DayState::partlyDone);
    day.share = DoneShare::twoThirds;
    const Drawn partly(day, 7, MarkDetail::miniature);
    // Half of 7 rounded down is 3 filled rows, and 4 rows of outline: 3 · 7 + 7 + 3 · 2.
    EXPECT_EQ(partly.count(light.mark), 21 + 7 + 6);
    EXPECT_EQ(partly.at(3, 3), light.sheet);
    EXPECT_EQ(partly.at(3, 4), light.mark);
}

TEST(Mark, InTheMiniatureASkinMarkTakesTheWholeSquare)
{
    DayMark day = in(DayState::done);
    day.skinMark = true;
    const Drawn drawn(day, 7, MarkDetail::miniature);
    EXPECT_EQ(drawn.count(light.mark), 0);
    EXPECT_EQ(drawn.at(3, 3), light.hazard);
    EXPECT_EQ(drawn.at(0, 3), light.hazard);
    EXPECT_NE(drawn.at(0, 0), light.hazard);
}

TEST(Mark, InTheMiniatureANoteCutsThreePixels)
{
    DayMark day = in(DayState::done);
    day.note = QStringLiteral("tired");
    const Drawn drawn(day, 7, MarkDetail::miniature);
    EXPECT_EQ(drawn.at(6, 6), light.sheet);
    EXPECT_EQ(drawn.at(6, 3), light.mark);
    EXPECT_EQ(drawn.at(3, 6), light.mark);
    DayMark missed = in(DayState::missed);
    const Drawn plain(missed, 7, MarkDetail::miniature);
    missed.note = QStringLiteral("away");
    const Drawn noted(missed, 7, MarkDetail::miniature);
    EXPECT_EQ(noted.count(light.miss), plain.count(light.miss)) << "only on done and partly done";
}

TEST(Mark, TodayIsFramedTwoPixelsOutside)
{
    QImage image(40, 40, QImage::Format_RGB32);
    image.fill(light.sheet);
    QPainter painter(&image);
    paintTodayFrame(painter, QRect(10, 10, 18, 18), light);
    painter.end();
    EXPECT_EQ(image.pixelColor(8, 20), light.ink);
    EXPECT_EQ(image.pixelColor(9, 20), light.sheet);
    EXPECT_EQ(image.pixelColor(29, 20), light.ink);
    EXPECT_EQ(image.pixelColor(7, 20), light.sheet);
}

TEST(Mark, EveryStateLooksDifferentInBlackAndWhite)
{
    const DayState states[] = {
        DayState::blank, DayState::notPrescribed, DayState::toCome, DayState::noDiaryYet,
        DayState::done,  DayState::partlyDone,    DayState::missed, DayState::doneNotPrescribed};
    for (const auto detail : {MarkDetail::full, MarkDetail::miniature}) {
        const int side = detail == MarkDetail::full ? 18 : 7;
        std::vector<QImage> images;
        for (const DayState state : states) {
            QImage image(30, 30, QImage::Format_Mono);
            image.fill(1);
            QImage grey(30, 30, QImage::Format_RGB32);
            grey.fill(Qt::white);
            QPainter painter(&grey);
            paintMark(painter, QRect(5, 5, side, side), in(state), printTokens(), Qt::white,
                      detail);
            painter.end();
            image = grey.convertToFormat(QImage::Format_Mono, Qt::ThresholdDither);
            for (const QImage& other : images) {
                EXPECT_NE(image, other) << static_cast<int>(state);
            }
            images.push_back(image);
        }
    }
}
