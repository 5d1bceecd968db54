// SPDX-License-Identifier: GPL-3.0-or-later
// What makes tampering with the change record show. Each row carries the SHA-256 (FIPS 180-4) of
// the row before it and of itself. The values of a changed field do not go into it, only their
// digest with a salt: an erasure removes value and salt, and nobody can try out what they were.
//
//   digest of a field  = SHA-256(salt, from, to)
//   chain of a row     = SHA-256(chain of the row before, id, made_at, practitioner,
//                                practitioner_name, what, record_kind, record_id, patient, act,
//                                field, value_digest)
//
// Each part is written as its length in bytes, a colon and its text; a part that is empty in the
// database as "-". Whole numbers are decimal text. The chain begins with 64 zeros.
#pragma once

#include "db/chain_end.h"
#include "db/rows.h"
#include "db/sql.h"

#include <cstdint>
#include <string>

namespace quadrille::db
{

struct ChangedValue {
    std::string field;
    std::string salt; ///< 128 random bits as 32 hexadecimal digits
    Value from;       ///< text or nothing
    Value to;         ///< text or nothing
};

std::string freshSalt();
std::string digestOf(const ChangedValue& change);

/// The columns of change_record that the chain covers, in its order, without the chain itself.
inline constexpr const char* chainedColumns =
    "change_record.id, made_at, practitioner, practitioner_name, what, record_kind, record_id, "
    "patient, act, "
    "field, value_digest";
inline constexpr int chainedColumnCount = 11;
std::string chainAfter(const std::string& before, const Columns& row);

ChainEnd chainEnd(const Connection& connection);

/// Carries the rows of an unsealed change record over into the sealed one: what step 2 leaves to
/// code.
void sealEarlierChanges(const Connection& connection);

} // namespace quadrille::db
