// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/temp_store.h"

#include <QProcess>
#include <QStringList>

#include <memory>
#include <string>

namespace quadrille::tests
{

/// Starts store_child; see there for its arguments.
std::unique_ptr<QProcess> startChild(const QStringList& arguments);

/// The last number that a child has said was saved; 0 for none.
int lastSaid(const QByteArray& output);

/// Opens the store and finds it whole: nothing wrong by verify, and the patients TAG-1 … TAG-n with
/// their course and their changed telephone number.
void expectWhole(const TempStore& temp, const std::string& tag, int saved);

} // namespace quadrille::tests
