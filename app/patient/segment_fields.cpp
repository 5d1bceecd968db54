// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/segment_fields.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/measurement_text.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

using namespace literals;

/// As core/people.h bounds them.
constexpr Length leastSegment = 20_mm;
constexpr Length mostSegment = 1000_mm;
constexpr std::int64_t perMillimetre = 100; ///< thousandths of a centimetre

constexpr std::array segments{Segment::thigh,    Segment::shank,   Segment::foot,
                              Segment::upperArm, Segment::forearm, Segment::hand};

QString segmentName(Segment segment)
{
    switch (segment) {
    case Segment::thigh:
        return SegmentFields::tr("Thigh");
    case Segment::shank:
        return SegmentFields::tr("Lower leg");
    case Segment::foot:
        return SegmentFields::tr("Foot");
    case Segment::upperArm:
        return SegmentFields::tr("Upper arm");
    case Segment::forearm:
        return SegmentFields::tr("Forearm");
    case Segment::hand:
        return SegmentFields::tr("Hand");
    }
    return {};
}

QString fieldName(Segment segment, BodySide side)
{
    return QStringLiteral("segment%1%2")
        .arg(static_cast<int>(segment))
        .arg(side == BodySide::left ? QStringLiteral("Left") : QStringLiteral("Right"));
}

} // namespace

TypedLength typedLength(const QString& typed, Length least, Length most, const QuantityText& text)
{
    TypedLength read;
    if (typed.trimmed().isEmpty()) {
        return read;
    }
    const auto values = valuesFrom(typed.trimmed(), text);
    const bool wholeMillimetres =
        values && values->size() == 1 && values->front() % perMillimetre == 0;
    if (wholeMillimetres) {
        read.length = Length::fromCount(values->front() / perMillimetre);
    }
    read.wrong = !read.length || *read.length < least || *read.length > most;
    if (read.wrong) {
        read.length.reset();
    }
    return read;
}

QString lengthText(Length length, const QuantityText& text)
{
    return text.shortNumber(static_cast<double>(length.count()) / 10.0, 1);
}

SegmentFields::SegmentFields(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::close);
    grid->setVerticalSpacing(space::tiny);
    auto* title = new QLabel(tr("Taped lengths, cm"), this);
    grid->addWidget(title, 0, 0);
    int column = 1;
    for (const QString& side : {tr("right"), tr("left")}) {
        auto* head = new QLabel(side, this);
        setRole(*head, Role::captionText);
        grid->addWidget(head, 0, column++);
    }
    for (const Segment segment : segments) {
        const int row = grid->rowCount();
        auto* label = new QLabel(segmentName(segment), this);
        setRole(*label, Role::secondLineText);
        grid->addWidget(label, row, 0);
        for (const BodySide side : {BodySide::right, BodySide::left}) {
            auto* edit = new QLineEdit(this);
            edit->setObjectName(fieldName(segment, side));
            const QString sideText = side == BodySide::left ? tr("left") : tr("right");
            edit->setAccessibleName(
                tr("%1, %2, taped length in centimetres, 2 to 100", "segment, side")
                    .arg(segmentName(segment), sideText));
            edit->setAlignment(Qt::AlignRight);
            edit->setMinimumWidth(70);
            grid->addWidget(edit, row, side == BodySide::left ? 2 : 1);
            m_fields.push_back({segment, side, edit});
        }
    }
}

void SegmentFields::setLengths(const std::vector<SegmentLength>& lengths)
{
    for (const SideField& field : m_fields) {
        field.edit->clear();
        for (const SegmentLength& one : lengths) {
            if (one.segment == field.segment && one.side == field.side) {
                field.edit->setText(lengthText(one.length, m_text));
            }
        }
    }
}

std::vector<SegmentLength> SegmentFields::lengths() const
{
    std::vector<SegmentLength> all;
    for (const SideField& field : m_fields) {
        if (const auto typed =
                typedLength(field.edit->text(), leastSegment, mostSegment, m_text).length) {
            all.push_back({field.segment, field.side, *typed});
        }
    }
    std::ranges::sort(all);
    return all;
}

std::optional<SegmentFields::Wrong> SegmentFields::firstWrong() const
{
    for (const SideField& field : m_fields) {
        if (typedLength(field.edit->text(), leastSegment, mostSegment, m_text).wrong) {
            return Wrong{field.edit,
                         tr("%1 of “%2” cm cannot be right. Enter the taped length, 2 to 100 cm, "
                            "in steps of 0.1.")
                             .arg(segmentName(field.segment), field.edit->text().trimmed())};
        }
    }
    return std::nullopt;
}

} // namespace quadrille::app
