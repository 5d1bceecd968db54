// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/architecture/source_tree.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <stdexcept>

namespace quadrille::test
{

namespace
{

bool isRead(const std::filesystem::path& file)
{
    static constexpr std::array<std::string_view, 4> endings{".h", ".cpp", ".sh", ".cmake"};
    return std::ranges::find(endings, file.extension().string()) != endings.end() ||
           file.filename() == "CMakeLists.txt";
}

std::string contentOf(const std::filesystem::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    if (!stream) {
        throw std::runtime_error("cannot read " + file.string());
    }
    return {std::istreambuf_iterator<char>(stream), {}};
}

} // namespace

SourceTree SourceTree::read(const std::filesystem::path& root,
                            const std::vector<std::string>& folders)
{
    SourceTree tree;
    for (const std::string& folder : folders) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
            if (entry.is_regular_file() && isRead(entry.path())) {
                tree.add(entry.path().lexically_relative(root).generic_string(),
                         contentOf(entry.path()));
            }
        }
    }
    return tree;
}

void SourceTree::add(const std::string& path, std::string_view text)
{
    static const std::regex includeLine(R"re(^\s*#\s*include\s*(["<])([^">]+)[">].*$)re");
    SourceFile file;
    std::istringstream stream{std::string(text)};
    for (std::string line; std::getline(stream, line);) {
        file.lines.push_back(line);
        std::smatch match;
        if (std::regex_match(line, match, includeLine)) {
            file.includes.push_back(
                {match[2], match[1] == "<", static_cast<int>(file.lines.size())});
        }
    }
    m_files[path] = file;
}

std::string layerOf(const std::string& path)
{
    return path.substr(0, path.find('/'));
}

std::string roomOf(const std::string& path)
{
    return std::filesystem::path(path).parent_path().generic_string();
}

std::string stemOf(const std::string& path)
{
    return std::filesystem::path(path).stem().string();
}

std::string endingOf(const std::string& path)
{
    return std::filesystem::path(path).extension().string();
}

} // namespace quadrille::test
