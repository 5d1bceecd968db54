// SPDX-License-Identifier: GPL-3.0-or-later
// A disk that fails on demand: an SQLite VFS before the system's own, for this process.
#pragma once

namespace quadrille::tests
{

/// While it lives, the n-th write, sync or truncation from now fails, and every one after it. With
/// `torn` a failing write still writes the first half of what it was given.
class FaultyDisk
{
public:
    FaultyDisk();
    ~FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;

    void failFrom(int operation, bool torn);
    void work();
    /// Whether anything failed since failFrom().
    bool hasFailed() const;
};

} // namespace quadrille::tests
