// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes on paper in points (1/72 inch): what look/tokens.h says of print, and what a handout needs
// besides.
#pragma once

#include "app/look/tokens.h"

#include <QPageSize>
#include <QSizeF>

namespace quadrille::app
{

enum class PaperFormat { a4, letter };

/// Large print for people who read small print badly.
enum class PrintSize { normal, large };

/// What the person chose for one printing.
struct PaperChoice {
    PaperFormat format = PaperFormat::a4;
    PrintSize size = PrintSize::normal;
    friend bool operator==(const PaperChoice&, const PaperChoice&) = default;
};

inline QPageSize pageSizeOf(PaperFormat format)
{
    return QPageSize(format == PaperFormat::a4 ? QPageSize::A4 : QPageSize::Letter);
}

/// In points.
inline QSizeF paperSize(PaperFormat format)
{
    return pageSizeOf(format).size(QPageSize::Point);
}

/// The sorts of text on a handout.
enum class PrintText {
    text,
    small, ///< notes under a value
    stepHead,
    stepNumber,
    heading,
    title,
    bigNumber,
    telephone,
    headAndFoot,
};

constexpr paper::PointSize pointSize(PrintText style, PrintSize size)
{
    const bool large = size == PrintSize::large;
    switch (style) {
    case PrintText::text:
        return large ? paper::largeText : paper::text;
    case PrintText::small:
        return large ? paper::PointSize{15, 20} : paper::PointSize{11, 14.5};
    case PrintText::stepHead:
        return large ? paper::largeText : paper::stepHead;
    case PrintText::stepNumber:
        return large ? paper::PointSize{28, 27} : paper::PointSize{21, 19.5};
    case PrintText::heading:
        return large ? paper::PointSize{23, 30} : paper::PointSize{17, 22};
    case PrintText::title:
        return large ? paper::PointSize{38, 46} : paper::title;
    case PrintText::bigNumber:
        return large ? paper::largeBigNumber : paper::bigNumber;
    case PrintText::telephone:
        return large ? paper::PointSize{28, 36} : paper::PointSize{22, 28};
    case PrintText::headAndFoot:
        return large ? paper::PointSize{13, 17} : paper::PointSize{10.5, 14};
    }
    return paper::text;
}

/// Where things stand on a page, points from the upper left corner of the paper.
struct PageFrame {
    double left = 99;         ///< text begins
    double right = 42;        ///< from the right edge of the paper
    double marginLine = 84;   ///< of the exercise book; step numbers stand left of it
    double top = 30;          ///< head begins
    double bottom = 30;       ///< from the lower edge; the foot ends
    double headGap = 15;      ///< between head and text; a frame may reach into it
    double footGap = 15;      ///< between text and the rule above the foot
    double framePadding = 11; ///< inside a frame, above and below the text
    double frameInset = 15;   ///< inside a frame, left and right
};

constexpr PageFrame pageFrame(PrintSize size)
{
    PageFrame frame;
    if (size == PrintSize::large) {
        frame.left = 86;
        frame.marginLine = 69;
    }
    return frame;
}

} // namespace quadrille::app
