// SPDX-License-Identifier: GPL-3.0-or-later
// The digest of everything an issued plan says; recorded when it is issued, so that a plan changed
// past the guards shows.
#pragma once

#include "db/sql.h"

#include <cstdint>
#include <string>

namespace quadrille::db
{

/// SHA-256 over the columns that schema 2 has of the plan, its lengths, blocks, sites, pads and the
/// copied stimulator; written as the chain of the change record is. What later steps added enters
/// only where it says something else than what it is for a plan from before that step: the seals of
/// old plans still fit.
std::string planSeal(const Connection& connection, std::int64_t plan);

} // namespace quadrille::db
