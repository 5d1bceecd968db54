// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/verification.h"

#include <QString>

namespace quadrille::app
{

/// One line: what is wrong, and where.
QString faultText(const db::Complaint& complaint);

} // namespace quadrille::app
