// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/people.h"

#include <QString>
#include <QWidget>

#include <optional>
#include <vector>

class QLineEdit;

namespace quadrille::app
{

/// A length as it is typed: centimetres with one decimal at most.
struct TypedLength {
    std::optional<Length> length = std::nullopt;
    bool wrong = false; ///< typed, and no length from `least` to `most`
};
TypedLength typedLength(const QString& typed, Length least, Length most, const QuantityText& text);
/// "41.5", in centimetres.
QString lengthText(Length length, const QuantityText& text);

/// Taped lengths of the parts of the body, right and left, in centimetres. An empty field: not
/// measured.
class SegmentFields : public QWidget
{
    Q_OBJECT

public:
    SegmentFields(const QuantityText& text, QWidget* parent);

    void setLengths(const std::vector<SegmentLength>& lengths);
    /// In order, each segment and side once; what is wrong is left out.
    std::vector<SegmentLength> lengths() const;

    /// The first field that holds no length, and one sentence on it.
    struct Wrong {
        QLineEdit* field;
        QString sentence;
    };
    std::optional<Wrong> firstWrong() const;

private:
    struct SideField {
        Segment segment;
        BodySide side;
        QLineEdit* edit;
    };
    const QuantityText& m_text;
    std::vector<SideField> m_fields; ///< in the order of the tab key
};

} // namespace quadrille::app
