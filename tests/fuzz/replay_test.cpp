// SPDX-License-Identifier: GPL-3.0-or-later
// Every input of the corpus, among them those that once broke a reader, in the ordinary run of the
// tests; readInput() aborts where a promise is broken.
#include "tests/fuzz/reader.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <string>
#include <vector>

namespace
{

std::vector<std::string> corpus()
{
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(QUADRILLE_CORPUS)) {
        files.push_back(entry.path().filename().string());
    }
    std::ranges::sort(files);
    return files;
}

class Corpus : public testing::TestWithParam<std::string>
{
};

} // namespace

TEST_P(Corpus, IsReadOrRefused)
{
    std::ifstream stream(std::filesystem::path(QUADRILLE_CORPUS) / GetParam(), std::ios::binary);
    ASSERT_TRUE(stream);
    const std::string input(std::istreambuf_iterator<char>(stream), {});
    quadrille::test::readInput(input);
    // And what a copy that broke off holds.
    for (std::size_t length = 0; length < input.size(); ++length) {
        quadrille::test::readInput(std::string_view(input).substr(0, length));
    }
}

INSTANTIATE_TEST_SUITE_P(Files, Corpus, testing::ValuesIn(corpus()), [](const auto& file) {
    return std::filesystem::path(file.param).stem().string();
});
