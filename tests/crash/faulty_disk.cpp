// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/crash/faulty_disk.h"

#include <new>
#include <sqlite3.h>

namespace quadrille::tests
{

namespace
{

/// SQLite calls C functions without an object, so the state stands here; one disk at a time.
struct State {
    sqlite3_vfs shim{};
    sqlite3_vfs* real = nullptr;
    int remaining = -1; ///< operations that still work; negative: all
    bool torn = false;
    bool failed = false;
};
State state;

/// What stands behind the system's own part of an open file.
struct Behind {
    const sqlite3_io_methods* real = nullptr;
    sqlite3_io_methods methods{};
};

Behind& behind(sqlite3_file* file)
{
    return *reinterpret_cast<Behind*>(reinterpret_cast<char*>(file) + state.real->szOsFile);
}

bool fails()
{
    if (state.remaining < 0) {
        return false;
    }
    if (state.remaining > 0) {
        --state.remaining;
        return false;
    }
    state.failed = true;
    return true;
}

int writeFile(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 place)
{
    if (fails()) {
        if (state.torn) {
            behind(file).real->xWrite(file, bytes, count / 2, place);
        }
        return SQLITE_IOERR_WRITE;
    }
    return behind(file).real->xWrite(file, bytes, count, place);
}

int syncFile(sqlite3_file* file, int flags)
{
    return fails() ? SQLITE_IOERR_FSYNC : behind(file).real->xSync(file, flags);
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size)
{
    return fails() ? SQLITE_IOERR_TRUNCATE : behind(file).real->xTruncate(file, size);
}

int openFile(sqlite3_vfs*, sqlite3_filename name, sqlite3_file* file, int flags, int* outFlags)
{
    const int code = state.real->xOpen(state.real, name, file, flags, outFlags);
    if (code == SQLITE_OK && file->pMethods != nullptr) {
        Behind& more = *new (&behind(file)) Behind;
        more.real = file->pMethods;
        more.methods = *file->pMethods;
        more.methods.xWrite = writeFile;
        more.methods.xSync = syncFile;
        more.methods.xTruncate = truncateFile;
        file->pMethods = &more.methods;
    }
    return code;
}

} // namespace

FaultyDisk::FaultyDisk()
{
    state = {};
    state.real = sqlite3_vfs_find(nullptr);
    state.shim = *state.real;
    state.shim.zName = "faulty";
    state.shim.pNext = nullptr;
    state.shim.szOsFile = state.real->szOsFile + static_cast<int>(sizeof(Behind));
    state.shim.xOpen = openFile;
    sqlite3_vfs_register(&state.shim, 1);
}

FaultyDisk::~FaultyDisk()
{
    sqlite3_vfs_register(state.real, 1);
    sqlite3_vfs_unregister(&state.shim);
}

void FaultyDisk::failFrom(int operation, bool torn)
{
    state.remaining = operation;
    state.torn = torn;
    state.failed = false;
}

void FaultyDisk::work()
{
    state.remaining = -1;
}

bool FaultyDisk::hasFailed() const
{
    return state.failed;
}

} // namespace quadrille::tests
