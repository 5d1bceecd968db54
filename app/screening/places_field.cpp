// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/places_field.h"

#include "app/look/tokens.h"
#include "app/words/screening_text.h"

#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include <cstddef>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int noPart = -1;
constexpr std::size_t mostPlaces = 6;
constexpr int leastLetters = 6;
constexpr int lastRegion = static_cast<int>(BodyRegion::foot);

} // namespace

PlacesField::PlacesField(QWidget* parent)
    : QWidget(parent)
    , m_layout(new QVBoxLayout(this))
{
    m_layout->setContentsMargins(0, 0, 0, 0);
    m_layout->setSpacing(space::hair);
    addLine();
}

void PlacesField::addLine()
{
    auto* line = new QWidget(this);
    auto* part = new QComboBox(line);
    part->setObjectName(QStringLiteral("part"));
    part->addItem(tr("where?"), noPart);
    for (int region = 0; region <= lastRegion; ++region) {
        part->addItem(regionName(static_cast<BodyRegion>(region)), region);
    }
    part->setAccessibleName(tr("Part of the body"));
    // Narrower than the longest name, where there is no room; the list shows it whole.
    part->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    part->setMinimumContentsLength(leastLetters);
    auto* side = new QComboBox(line);
    side->setObjectName(QStringLiteral("side"));
    side->addItem(tr("right"), static_cast<int>(PlaceSide::right));
    side->addItem(tr("left"), static_cast<int>(PlaceSide::left));
    side->addItem(tr("both sides"), static_cast<int>(PlaceSide::both));
    side->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    side->setMinimumContentsLength(leastLetters);
    side->setCurrentIndex(2); // nobody has said that one side is free
    side->setAccessibleName(tr("Side"));
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::tiny);
    row->addWidget(part, 2);
    row->addWidget(side, 1);
    m_layout->addWidget(line);
    m_lines.push_back({line, part, side});
    connect(part, &QComboBox::activated, this, &PlacesField::take);
    connect(side, &QComboBox::activated, this, &PlacesField::take);
}

void PlacesField::removeEmpty()
{
    // The last line stays: it is the one to fill in.
    for (std::size_t i = m_lines.size() - 1; i-- > 0;) {
        if (m_lines[i].part->currentData().toInt() == noPart) {
            m_lines[i].line->deleteLater();
            m_lines[i].line->hide();
            m_lines.erase(m_lines.begin() + static_cast<std::ptrdiff_t>(i));
        }
    }
}

void PlacesField::take()
{
    removeEmpty();
    if (m_lines.back().part->currentData().toInt() != noPart && m_lines.size() < mostPlaces) {
        addLine();
    }
    emit placesChanged();
}

std::vector<BodyPlace> PlacesField::places() const
{
    std::vector<BodyPlace> places;
    for (const Line& line : m_lines) {
        const int part = line.part->currentData().toInt();
        if (part != noPart) {
            places.push_back({static_cast<BodyRegion>(part),
                              static_cast<PlaceSide>(line.side->currentData().toInt())});
        }
    }
    return places;
}

void PlacesField::setPlaces(const std::vector<BodyPlace>& wanted)
{
    if (places() == wanted) {
        return;
    }
    for (const Line& line : std::exchange(m_lines, {})) {
        line.line->hide();
        line.line->deleteLater();
    }
    for (const BodyPlace& place : wanted) {
        addLine();
        QComboBox* part = m_lines.back().part;
        part->setCurrentIndex(part->findData(static_cast<int>(place.region)));
        QComboBox* side = m_lines.back().side;
        side->setCurrentIndex(side->findData(static_cast<int>(place.side)));
    }
    if (m_lines.size() < mostPlaces) {
        addLine();
    }
    showLines();
}

/// The line to fill in is there while there is somebody to fill it in.
void PlacesField::showLines()
{
    for (const Line& line : m_lines) {
        line.line->setVisible(isEnabled() || line.part->currentData().toInt() != noPart);
    }
}

void PlacesField::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::EnabledChange) {
        showLines();
    }
}

QWidget* PlacesField::lastStop() const
{
    return m_lines.back().side;
}

void PlacesField::focusFirst()
{
    m_lines.front().part->setFocus(Qt::TabFocusReason);
}

} // namespace quadrille::app
