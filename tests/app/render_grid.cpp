// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_grid.h"

#include "app/grid/grid_painter.h"
#include "app/grid/mark_painter.h"
#include "app/look/look.h"

#include <QImage>
#include <QPainter>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

struct Example {
    QString name;
    DayMark day;
    bool today = false;
};

DayMark in(DayState state)
{
    DayMark day;
    day.state = state;
    return day;
}

std::vector<Example> examples()
{
    std::vector<Example> all{
        {QStringLiteral("Not prescribed"), in(DayState::notPrescribed)},
        {QStringLiteral("To come"), in(DayState::toCome)},
        {QStringLiteral("No diary yet"), in(DayState::noDiaryYet)},
        {QStringLiteral("Done"), in(DayState::done)},
        {QStringLiteral("Partly done"), in(DayState::partlyDone)},
        {QStringLiteral("Missed"), in(DayState::missed)},
        {QStringLiteral("Done, not prescribed"), in(DayState::doneNotPrescribed)}};
    DayMark skin = in(DayState::done);
    skin.skinMark = true;
    all.push_back({QStringLiteral("Skin mark"), skin});
    DayMark note = in(DayState::partlyDone);
    note.note = QStringLiteral("tired");
    all.push_back({QStringLiteral("Note"), note});
    all.push_back({QStringLiteral("Today"), in(DayState::toCome), true});
    return all;
}

/// The course of the drawing that explains the grid: five weeks lived, seven to come.
CourseGrid exampleCourse()
{
    CourseGrid grid;
    grid.startDate = *dateFromIso("2026-02-09");
    const char* names[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    for (std::size_t row = 0; row < daysInWeek; ++row) {
        grid.weekdayNames[row] = QString::fromUtf8(names[row]);
    }
    for (int week = 0; week < 12; ++week) {
        WeekMarks marks;
        for (std::size_t row = 0; row < daysInWeek; ++row) {
            const bool rest = row > 4 || (row == 4 && week > 7);
            const bool lived = week < 4 || (week == 4 && row < 2);
            marks[row].state = rest    ? DayState::notPrescribed
                               : lived ? DayState::done
                                       : DayState::toCome;
        }
        grid.weeks.push_back(marks);
    }
    grid.weeks[0][2] = in(DayState::missed);
    grid.weeks[1][3] = in(DayState::partlyDone);
    grid.weeks[1][3].note = QStringLiteral("tired");
    grid.weeks[1][5] = in(DayState::doneNotPrescribed);
    grid.weeks[2][2] = in(DayState::partlyDone);
    grid.weeks[2][2].share = DoneShare::third;
    grid.weeks[3][1].skinMark = true;
    grid.weeks[3][2] = in(DayState::missed);
    grid.weeks[3][2].note = QStringLiteral("away");
    grid.weeks[3][4] = in(DayState::partlyDone);
    grid.weeks[3][4].share = DoneShare::twoThirds;
    grid.weeks[4][2] = in(DayState::noDiaryYet);
    const int ends[] = {0, 2, 4, 8, 12};
    for (std::size_t i = 0; i + 1 < std::size(ends); ++i) {
        const QString number = QString::number(i + 1);
        grid.blocks.push_back(
            {{ends[i] + 1}, ends[i + 1] - ends[i], i, QStringLiteral("Block ") + number, number});
    }
    grid.chosenBlock = 2;
    grid.currentWeek = CourseWeek{5};
    grid.todayRow = 3;
    return grid;
}

void paintPanel(QPainter& painter, const QRect& panel, const Tokens& tokens)
{
    painter.fillRect(panel, tokens.desk);
    const CourseGrid grid = exampleCourse();
    const QFont axis = fontOf(TextStyle::axis, 1.0);
    painter.save();
    painter.translate(panel.topLeft() + QPoint(16, 40));
    painter.fillRect(QRect(0, 0, 44, 68), tokens.sheet);
    paintMiniature(painter, {6, 6}, windowOf(grid, {2}, 4), miniatureSize(1.0), tokens,
                   tokens.sheet);
    painter.restore();
    painter.save();
    painter.translate(panel.topLeft() + QPoint(90, 44));
    const OverviewGeometry geometry(overviewSize(24, 1.0), 12, namesWidthOf(grid, axis), 1.0);
    paintOverview(painter, grid, geometry, tokens, axis);
    painter.restore();
}

} // namespace

void renderGrid(const QString& file)
{
    QImage image(1440, 860, QImage::Format_RGB32);
    const Tokens light = lightTokens();
    image.fill(light.sheet);
    QPainter painter(&image);
    int x = 44;
    for (const Example& example : examples()) {
        painter.setFont(fontOf(TextStyle::secondLine, 1.0));
        painter.setPen(light.ink);
        painter.drawText(QPoint(x, 20), example.name);
        int y = 40;
        for (const int side : {80, 30, 22, 18}) {
            const QRect mark(x, y, side, side);
            paintMark(painter, mark, example.day, light, light.sheet, MarkDetail::full);
            if (example.today) {
                paintTodayFrame(painter, mark, light);
            }
            y += side + 14;
        }
        paintMark(painter, QRect(x + 60, 140, 7, 7), example.day, light, light.sheet,
                  MarkDetail::miniature);
        paintMark(painter, QRect(x + 60, 160, 14, 14), example.day, light, light.sheet,
                  MarkDetail::miniature);
        x += 138;
    }
    paintPanel(painter, QRect(40, 270, 440, 284), light);
    paintPanel(painter, QRect(500, 270, 440, 284), darkTokens());
    paintPanel(painter, QRect(960, 270, 440, 284), printTokens());
    // Print at twice the size, as a printer's painter is scaled.
    painter.translate(40, 570);
    painter.scale(1.5, 1.5);
    paintPanel(painter, QRect(0, 0, 440, 190), printTokens());
    painter.end();
    image.save(file);
}
