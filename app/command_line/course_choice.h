// SPDX-License-Identifier: GPL-3.0-or-later
// Which patient and course a command is about.
#pragma once

#include "app/words/quantity_text.h"

#include "core/course.h"

#include <QCommandLineParser>
#include <QString>

#include <optional>
#include <variant>
#include <vector>

namespace quadrille::app
{

/// --patient REF and --course N.
QCommandLineOption patientOption();
QCommandLineOption courseOption();

/// The number that --course names, nothing without it; else why it is none, in one sentence.
std::variant<std::optional<int>, QString> courseNumberIn(const QCommandLineParser& parser);

/// For a reference that nobody has.
QString noSuchPatient(const QString& reference, const QString& store);

/// The course of that number, or, where none is given, the only one that is running; else why not,
/// in one sentence. `patient` is the reference.
std::variant<Course, QString> chooseCourse(const std::vector<Course>& courses,
                                           const QString& patient, std::optional<int> number,
                                           Date today, const QuantityText& text);

} // namespace quadrille::app
