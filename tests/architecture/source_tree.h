// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille::test
{

/// One #include line: what stands between the quotes or brackets.
struct Include {
    std::string target;
    bool inBrackets = false; ///< <…> and not "…"
    int line = 0;
};

struct SourceFile {
    std::vector<std::string> lines;
    std::vector<Include> includes;
};

/// The files of a source tree by their path from its top ("core/units.h").
class SourceTree
{
public:
    /// Reads every text file below the named folders of `root`.
    static SourceTree read(const std::filesystem::path& root,
                           const std::vector<std::string>& folders);
    void add(const std::string& path, std::string_view text);
    const std::map<std::string, SourceFile>& files() const { return m_files; }

private:
    std::map<std::string, SourceFile> m_files;
};

/// "core" of "core/units.h"; the room "app/plan" of "app/plan/plan_page.h" is what roomOf() says.
std::string layerOf(const std::string& path);
/// The folder of a file: "app/plan" of "app/plan/plan_page.h".
std::string roomOf(const std::string& path);
/// "plan_page" of "app/plan/plan_page.h".
std::string stemOf(const std::string& path);
/// ".h", ".cpp" …
std::string endingOf(const std::string& path);

} // namespace quadrille::test
