// SPDX-License-Identifier: GPL-3.0-or-later
// A diary page on the screen.
#pragma once

#include "app/diary/diary_geometry.h"
#include "app/grid/course_grid.h"
#include "app/look/tokens.h"
#include "app/words/quantity_text.h"

#include "core/diary_remarks.h"
#include "core/lived_days.h"

#include <QCoreApplication>
#include <QFont>

#include <vector>

class QPainter;

namespace quadrille::app
{

/// Everything that a page shows.
struct DiaryPicture {
    const DiarySheet& sheet;
    const CourseRecords& preview; ///< with what is not saved yet
    const CourseAsLived& lived;   ///< of these
    bool hasFocus = false;
    int visibleTop = 0; ///< the heads stay where the page is scrolled to, px
};

/// Draws the weeks of a geometry, one cell after the other.
class DiaryPainter
{
    Q_DECLARE_TR_FUNCTIONS(DiaryPainter)

public:
    DiaryPainter(QPainter& painter, const DiaryPicture& picture, const DiaryGeometry& geometry,
                 const Tokens& tokens, const QuantityText& text);
    void paint();

private:
    void paintHead(int column);
    void paintRowNames();
    void paintCell(int column, int row);
    void paintLine(const QRect& line, const DiaryFormDay& day, int session);
    void paintField(const QRect& box, const DiaryPlace& place, const QString& written,
                    const QString& offered);
    void paintDayLine(const QRect& line, const DiaryFormDay& day);
    void paintSkin(const QRect& line, const DiaryFormDay& day, bool withAnswers);
    void paintSkinAnswer(const QRect& box, int answer, bool chosen);
    void paintLattice();
    QColor ground(int column, int row) const;
    bool isPlace(const DiaryPlace& place) const;
    QString captionOf(const DiaryForm& form, CourseWeek week) const;

    QPainter& m_painter;
    const DiaryPicture& m_picture;
    const DiarySheet& m_sheet;
    const DiaryGeometry& m_geometry;
    const Tokens& m_tokens;
    const QuantityText& m_text;
    QFont m_plain;
    QFont m_strong;
    QFont m_small;
    QColor m_ground;                    ///< of the cell that is drawn
    std::vector<DayMark> m_marks;       ///< of its lines
    std::vector<DiaryRemark> m_remarks; ///< of its day
};

} // namespace quadrille::app
