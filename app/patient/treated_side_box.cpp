// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/treated_side_box.h"

#include <QComboBox>
#include <QCoreApplication>

#include <array>

namespace quadrille::app
{

namespace
{

struct TreatedSideWords {
    Q_DECLARE_TR_FUNCTIONS(TreatedSideWords)
};

/// In the order of the box, after "not said".
constexpr std::array sides{TreatedSide::right, TreatedSide::left, TreatedSide::both};

} // namespace

void fillTreatedSides(QComboBox& box)
{
    box.addItems({TreatedSideWords::tr("not said"), TreatedSideWords::tr("right"),
                  TreatedSideWords::tr("left"), TreatedSideWords::tr("both")});
}

void setTreatedSide(QComboBox& box, std::optional<TreatedSide> side)
{
    int index = 0;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        if (side == sides[i]) {
            index = static_cast<int>(i) + 1;
        }
    }
    box.setCurrentIndex(index);
}

std::optional<TreatedSide> treatedSideIn(const QComboBox& box)
{
    const int index = box.currentIndex();
    return index > 0 ? std::optional(sides[static_cast<std::size_t>(index) - 1]) : std::nullopt;
}

} // namespace quadrille::app
