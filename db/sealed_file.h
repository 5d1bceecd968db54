// SPDX-License-Identifier: GPL-3.0-or-later
// A file under a passphrase (libsodium). The key is made from the passphrase by Argon2id (RFC
// 9106); the content is a stream of XChaCha20-Poly1305 chunks, in order, with a mark at the last,
// so that a cut, altered or reordered file is recognised.
//
//   "QDRLSEAL" | format 1 | Argon2id passes | Argon2id memory | salt | check | stream header |
//   chunks
//
// Whole numbers are 8 bytes, the lowest first. The check is a digest of the second half of what
// Argon2id gives, to tell a wrong passphrase from a damaged file. All before the chunks is
// authenticated with the first chunk.
#pragma once

#include <QString>

#include <cstdint>
#include <string>

namespace quadrille::db
{

/// What one guess at a passphrase costs.
struct SealCost {
    std::uint64_t passes;
    std::uint64_t memory; ///< bytes
};
/// 256 MiB and 3 passes: libsodium's "moderate".
SealCost usualSealCost();
/// The least there is, for tests.
SealCost leastSealCost();

/// True when the file begins as a sealed one.
bool isSealed(const QString& file);
/// Seals `from` into `to`, an empty file that is there. Failure cannotRead, cannotWrite, diskFull.
void sealFile(const QString& from, const QString& to, const std::string& passphrase,
              const SealCost& cost);
/// Opens `from` into `to`, an empty file that is there. Failure wrongPassphrase, backupDamaged,
/// cannotRead, cannotWrite, diskFull; what `to` holds then is of no use.
void unsealFile(const QString& from, const QString& to, const std::string& passphrase);

} // namespace quadrille::db
