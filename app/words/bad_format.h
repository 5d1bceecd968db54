// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/result.h"

#include <QString>

namespace quadrille::app
{

/// The error of a file from outside that can't be read as what it should be: `name` as it is shown
/// to the person, `what` is wrong and where, as errorText() continues the sentence.
inline Error badFormat(const QString& name, const QString& what)
{
    return {ErrorCode::badFormat, name.toStdString(), what.toStdString(), Field::none, {}};
}

} // namespace quadrille::app
