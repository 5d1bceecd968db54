// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/visit_row.h"

#include "core/measurement_change.h"

#include <QJsonObject>
#include <QString>

#include <algorithm>

namespace quadrille::app
{

namespace
{

VisitRow usualRow(std::string_view key, const std::string& subject = {})
{
    const MeasurementKind& kind = *measurementKind(key);
    return {.kind = std::string(key),
            .subject = subject,
            .unit = std::string(kind.unit),
            .hasSides = kind.sides != Sidedness::none};
}

std::vector<VisitRow> firstVisit()
{
    return {usualRow(isometricTorque, "quadriceps"), usualRow("pain_at_rest"),
            usualRow("pain_under_load"), usualRow("timed_up_and_go"),
            usualRow("chair_stands_30_s")};
}

} // namespace

bool measureTheSame(const VisitRow& a, const VisitRow& b)
{
    return a.kind == b.kind && a.subject == b.subject && a.unit == b.unit;
}

std::vector<VisitRow> rowsToOffer(const std::vector<Measurement>& measurements)
{
    std::optional<Date> last;
    for (const Measurement& one : measurements) {
        if (!one.withdrawn) {
            last = std::max(last, std::optional(one.measuredOn));
        }
    }
    if (!last) {
        return firstVisit();
    }
    std::vector<VisitRow> rows;
    for (const MeasurementSeries& series : seriesOf(measurements)) {
        const auto atLast = std::ranges::find(series.values, *last, &Measurement::measuredOn);
        // A kind that a newer program has added can be read here, not entered.
        if (atLast != series.values.end() && measurementKind(series.kind) != nullptr) {
            rows.push_back({.kind = series.kind,
                            .subject = series.subject,
                            .unit = series.unit,
                            .method = series.method,
                            .device = atLast->device,
                            .hasSides = atLast->side != Side::middle});
        }
    }
    return rows;
}

QJsonArray jsonOf(const std::vector<VisitRow>& rows)
{
    QJsonArray all;
    for (const VisitRow& row : rows) {
        all.append(QJsonObject{{QStringLiteral("kind"), QString::fromStdString(row.kind)},
                               {QStringLiteral("subject"), QString::fromStdString(row.subject)},
                               {QStringLiteral("unit"), QString::fromStdString(row.unit)},
                               {QStringLiteral("sides"), row.hasSides}});
    }
    return all;
}

std::vector<VisitRow> rowsFrom(const QJsonArray& json)
{
    std::vector<VisitRow> rows;
    for (const auto& value : json) {
        const QJsonObject row = value.toObject();
        const auto text = [&](const char* name) {
            return row.value(QLatin1String(name)).toString().toStdString();
        };
        if (measurementKind(text("kind")) != nullptr) {
            rows.push_back({.kind = text("kind"),
                            .subject = text("subject"),
                            .unit = text("unit"),
                            .hasSides = row.value(QStringLiteral("sides")).toBool()});
        }
    }
    return rows;
}

} // namespace quadrille::app
