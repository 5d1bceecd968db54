// SPDX-License-Identifier: GPL-3.0-or-later
// What was typed into a field for a value: one number, or trials with a blank between.
#pragma once

#include "app/words/quantity_text.h"

#include "core/measurement.h"

#include <QString>

#include <cstdint>
#include <optional>
#include <vector>

namespace quadrille::app
{

struct TypedValue {
    std::optional<std::int64_t> thousandths = std::nullopt; ///< the value that counts
    Counted counted = Counted::one;
    std::vector<std::int64_t> trials = {};
    QString problem = {}; ///< one sentence; empty where it can be saved
    /// Neither a value nor a problem: nothing was typed.
    bool isEmpty() const { return !thousandths && problem.isEmpty(); }
};

/// Reads it. A walk of 10 m may be given in seconds: "12.4 s" is 0.806 m/s.
TypedValue typedValue(const MeasurementKind& kind, const QString& typed, const QuantityText& text);

/// What is said beside the field: what the trials make, and that a value is unusual. A value is
/// never refused for that.
struct TypedNote {
    QString text = {};
    bool unusual = false;
};
TypedNote typedNote(const MeasurementKind& kind, const TypedValue& value, const std::string& unit,
                    const QuantityText& text);

/// Puts what was typed into a measurement.
void setTyped(Measurement& measurement, const TypedValue& value);
/// The way back, for a form that corrects: "61.5 66.3 64".
QString typedText(const Measurement& measurement, const QuantityText& text);

} // namespace quadrille::app
