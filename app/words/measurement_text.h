// SPDX-License-Identifier: GPL-3.0-or-later
// Measurements in words: names, values with the trade's unit, changes held against what was
// published.
#pragma once

#include "app/words/quantity_text.h"

#include "core/measurement_change.h"

#include <QString>
#include <QStringList>

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace quadrille::app
{

/// "Timed up and go"; for a kind of the practice's own what it is called there.
QString measurementName(std::string_view kind, const std::string& subject);
/// The kind alone, for a list to choose from: "Torque, maximum voluntary".
QString measurementKindName(std::string_view kind);
/// "Torque, maximum voluntary: quadriceps · knee at 60°".
QString seriesName(const MeasurementSeries& series);
/// What has to be named beside a kind: "Muscle"; empty where nothing has.
QString subjectLabel(SubjectOf subject);
/// Muscles, movements or places to choose from; others may be typed.
QStringList usualSubjects(SubjectOf subject);
/// What a method note should say for a kind: "joint angle, strap".
QString methodHint(std::string_view kind);

/// "N·m", "°"; of a scale "of 10".
QString measuredUnit(std::string_view kind, const std::string& ucum);
/// "68.5" with as many decimals as the kind is shown with.
QString measuredNumber(std::string_view kind, std::int64_t thousandths, const QuantityText& text);
/// "68.5 N·m", "12°".
QString measuredText(std::string_view kind, std::int64_t thousandths, const std::string& ucum,
                     const QuantityText& text);
/// "+13 N·m", "−2.6 s", "no change".
QString changeOfValueText(std::string_view kind, std::int64_t change, const std::string& ucum,
                          const QuantityText& text);
/// "best of 3: 61.5; 66.3; 64"; empty where there were no trials.
QString trialsText(const Measurement& measurement, const QuantityText& text);

/// A change in few words: "better, reaches the detectable change of 5°, from memory"; the last
/// where a threshold that it names was not checked against its text.
QString judgementText(const MeasurementKind& kind, std::int64_t change, const QuantityText& text);
/// Every published threshold with its group and source, one sentence each; what it says where there
/// is none.
QStringList thresholdSentences(const MeasurementKind& kind, std::optional<std::int64_t> change,
                               const QuantityText& text);

/// Reads numbers with point or comma, a minus if any, and blanks or semicolons between: one value,
/// or trials. In thousandths. Nothing when a word is no number or has more than three decimals.
std::optional<std::vector<std::int64_t>> valuesFrom(const QString& typed, const QuantityText& text);

} // namespace quadrille::app
