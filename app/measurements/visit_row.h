// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of a visit's form: which kinds are offered, with what was said of them last time.
#pragma once

#include "core/measurement.h"

#include <QJsonArray>

#include <string>
#include <vector>

namespace quadrille::app
{

/// One row: a kind with its subject, and the fields that it has.
struct VisitRow {
    std::string kind;
    std::string subject = {};
    std::string unit = {}; ///< UCUM
    std::string method = {};
    std::string device = {};
    bool hasSides = false;
    friend bool operator==(const VisitRow&, const VisitRow&) = default;
};

/// Whether two rows differ in nothing but method and device.
bool measureTheSame(const VisitRow& a, const VisitRow& b);

/// The rows of the last visit with its methods and devices, in the order of the catalogue. A first
/// visit is offered the usual ones; nothing has to be filled.
std::vector<VisitRow> rowsToOffer(const std::vector<Measurement>& measurements);

/// For the form that is kept while it is open.
QJsonArray jsonOf(const std::vector<VisitRow>& rows);
std::vector<VisitRow> rowsFrom(const QJsonArray& json);

} // namespace quadrille::app
