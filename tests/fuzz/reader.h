// SPDX-License-Identifier: GPL-3.0-or-later
// One reader of files from outside, as the fuzzer and the replay of its corpus call it.
#pragma once

#include <cstdlib>
#include <string_view>

namespace quadrille::test
{

/// Reads one input the way the program does. Each reader is one file, NAME_reader.cpp, with this
/// function; tests/fuzz/CMakeLists.txt names them. Returns for good and for bad input; aborts where
/// an answer is not what the reader promises.
void readInput(std::string_view input);

/// Stops the program where a promise is broken, so that the fuzzer keeps the input.
inline void require(bool promise)
{
    if (!promise) {
        std::abort();
    }
}

} // namespace quadrille::test
