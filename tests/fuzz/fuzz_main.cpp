// SPDX-License-Identifier: GPL-3.0-or-later
// The fuzzer's door to a reader; its main() comes with libFuzzer.
#include "tests/fuzz/reader.h"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    quadrille::test::readInput({reinterpret_cast<const char*>(data), size});
    return 0;
}
