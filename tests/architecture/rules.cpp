// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/architecture/rules.h"

#include "tests/architecture/core_order.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <string_view>

namespace quadrille::test
{

namespace
{

/// What each layer may include of ours.
const std::map<std::string, std::set<std::string>> layerArrows{
    {"core", {"core"}},
    {"db", {"db", "core"}},
    {"app", {"app", "db", "core"}},
    {"tests/core", {"core", "tests"}},
    {"tests/db", {"db", "core", "tests"}},
    {"tests/crash", {"db", "core", "tests"}},
    {"tests/app", {"app", "db", "core", "tests"}},
    {"tests/fuzz", {"app", "db", "core", "tests"}},
};

/// One aggregate each.
const std::set<std::string> repositories{"caseload_query",
                                         "clinic_sessions",
                                         "course_events",
                                         "courses",
                                         "diary",
                                         "electrode_sets",
                                         "history",
                                         "house_settings",
                                         "kept_forms",
                                         "loans",
                                         "measurements",
                                         "people",
                                         "plans",
                                         "practice_preferences",
                                         "practice_questions",
                                         "screenings",
                                         "stimulators"};

/// What draws, words and prints; it knows core and its like, never a page or a form.
const std::set<std::string> roomsBelowPages{
    "app/charts", "app/command_line", "app/demo", "app/grid", "app/look", "app/print", "app/words"};
const std::set<std::string> roomsOfPages{"app/caseload",     "app/clinic",    "app/diary",
                                         "app/measurements", "app/patient",   "app/plan",
                                         "app/practice",     "app/screening", "app/stimulator"};

/// Who may know the main window: the program that owns it, main.cpp that starts that, and the other
/// half of the window itself.
const std::set<std::string> ownersOfTheWindow{"app/main.cpp", "app/window/main_window_acts.cpp",
                                              "app/window/program.cpp"};

/// The frame around the pages of a patient's record; the one place in which pages meet.
constexpr std::string_view frameOfPages = "record_page";

/// Libraries with one door into the program: header and the one file that may include it.
struct SoleDoor {
    std::string_view header;
    std::string_view file; ///< empty: any file, but one only
};
constexpr std::array soleDoors{SoleDoor{"qcustomplot.h", ""},
                               SoleDoor{"sqlite3.h", "db/store_care.cpp"},
                               SoleDoor{"sodium.h", "db/sealed_file.cpp"},
                               SoleDoor{"csv.h", "app/command_line/csv_parser.cpp"}};

constexpr std::size_t mostLines = 400;
constexpr std::string_view licence = "SPDX-License-Identifier: GPL-3.0-or-later";

/// Marks of unfinished work, of tests that check nothing and of one person's machine. Cut in two,
/// so that this file does not complain of itself.
const std::vector<std::string>& bannedWords()
{
    static const std::vector<std::string> words{
        std::string("TO") + "DO",       std::string("FIX") + "ME",
        std::string("XX") + "X",        std::string("HA") + "CK",
        std::string("GTEST") + "_SKIP", std::string("DISABLED") + "_",
        std::string("SUC") + "CEED()",  std::string("not impl") + "emented",
        std::string("/ho") + "me/",     std::string("|| tr") + "ue"};
    return words;
}

/// What the program itself must not do: connect by string, turn the event loop by hand.
const std::vector<std::string>& bannedCalls()
{
    static const std::vector<std::string> calls{"SIGNAL(", "SLOT(", "processEvents("};
    return calls;
}

bool startsWith(const std::string& text, std::string_view start)
{
    return text.compare(0, start.size(), start) == 0;
}

std::string at(const std::string& path, const Include& include)
{
    return path + ":" + std::to_string(include.line) + " includes " + include.target + ": ";
}

template <class Check>
void forEachInclude(const SourceTree& tree, Check check)
{
    for (const auto& [path, file] : tree.files()) {
        for (const Include& include : file.includes) {
            check(path, include);
        }
    }
}

/// "tests/core" for a test, "core" for a source.
std::string arrowsKey(const std::string& path)
{
    return layerOf(path) == "tests" ? roomOf(path) : layerOf(path);
}

bool mayComeFromOutside(const std::string& layer, const std::string& target)
{
    static const std::regex standard("[a-z_0-9]+|boost/.*|Eigen/.*");
    static const std::regex coreAndSql(
        "[a-z_0-9]+|Q[^/]*|QtCore/.*|QtSql/.*|sqlite3\\.h|sodium\\.h|"
        "(fcntl|unistd|sys/stat|sys/statfs)\\.h");
    if (layer == "core") {
        return std::regex_match(target, standard);
    }
    return layer != "db" || std::regex_match(target, coreAndSql);
}

std::optional<std::size_t> placeInCore(const std::string& header)
{
    const auto found = std::ranges::find(coreOrder, stemOf(header));
    return found == coreOrder.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - coreOrder.begin()));
}

bool showsAWindow(const std::string& target)
{
    static const std::set<std::string> windows{"QtWidgets",   "QWidget",     "QMainWindow",
                                               "QDialog",     "QMessageBox", "QFileDialog",
                                               "QInputDialog"};
    return windows.contains(target) || startsWith(target, "app/window/");
}

bool isPage(const std::string& path)
{
    return stemOf(path).ends_with("_page");
}

bool isOwnHeader(const std::string& path, const std::string& target)
{
    return roomOf(path) == roomOf(target) && stemOf(path) == stemOf(target);
}

/// Walks from `path` along quoted includes; a file met twice on the way is a cycle.
void walk(const SourceTree& tree, const std::string& path, std::vector<std::string>& way,
          std::set<std::string>& done, Complaints& complaints)
{
    if (std::ranges::find(way, path) != way.end()) {
        std::string loop;
        for (auto step = std::ranges::find(way, path); step != way.end(); ++step) {
            loop += *step + " → ";
        }
        complaints.push_back(loop + path + ": includes go in a circle");
        return;
    }
    const auto file = tree.files().find(path);
    if (file == tree.files().end() || done.contains(path)) {
        return;
    }
    way.push_back(path);
    for (const Include& include : file->second.includes) {
        if (!include.inBrackets) {
            walk(tree, include.target, way, done, complaints);
        }
    }
    way.pop_back();
    done.insert(path);
}

bool hasLicence(const std::string& path, const SourceFile& file)
{
    const std::string ending = endingOf(path);
    const std::string mark = ending == ".h" || ending == ".cpp" ? "// " : "# ";
    const std::size_t line = ending == ".sh" ? 1 : 0; // after the line that names the shell
    return file.lines.size() > line && file.lines[line] == mark + std::string(licence);
}

void complainOf(const std::vector<std::string>& words, const std::string& path,
                const SourceFile& file, Complaints& complaints)
{
    for (std::size_t i = 0; i < file.lines.size(); ++i) {
        for (const std::string& word : words) {
            if (file.lines[i].find(word) != std::string::npos) {
                complaints.push_back(path + ":" + std::to_string(i + 1));
                complaints.back() += " says " + word;
            }
        }
    }
}

bool isIncludedFromTheTop(const Include& include)
{
    static const std::regex fromTop("(core|db|app|tests)/.*|ui_[a-z_]+\\.h|[a-z_]+\\.moc");
    return include.inBrackets || std::regex_match(include.target, fromTop);
}

} // namespace

Complaints layerComplaints(const SourceTree& tree)
{
    Complaints complaints;
    forEachInclude(tree, [&](const std::string& path, const Include& include) {
        const auto arrows = layerArrows.find(arrowsKey(path));
        if (arrows == layerArrows.end()) {
            return;
        }
        if (!include.inBrackets && include.target.find('/') != std::string::npos &&
            !arrows->second.contains(layerOf(include.target))) {
            complaints.push_back(at(path, include) + "the arrow runs the wrong way");
        }
        if (include.inBrackets && !mayComeFromOutside(layerOf(path), include.target)) {
            complaints.push_back(at(path, include) + "not for this layer");
        }
    });
    return complaints;
}

Complaints coreOrderComplaints(const SourceTree& tree)
{
    Complaints complaints;
    for (const auto& [path, file] : tree.files()) {
        if (layerOf(path) == "core" && endingOf(path) == ".h" && !placeInCore(path)) {
            complaints.push_back(path + " has no place in the order of core");
        }
    }
    forEachInclude(tree, [&](const std::string& path, const Include& include) {
        if (layerOf(path) != "core" || endingOf(path) != ".h" ||
            layerOf(include.target) != "core" || !placeInCore(path)) {
            return;
        }
        if (placeInCore(include.target) >= placeInCore(path)) {
            complaints.push_back(at(path, include) + "stands below it in the order of core");
        }
    });
    return complaints;
}

Complaints repositoryComplaints(const SourceTree& tree)
{
    Complaints complaints;
    forEachInclude(tree, [&](const std::string& path, const Include& include) {
        const bool both = layerOf(path) == "db" && layerOf(include.target) == "db" &&
                          repositories.contains(stemOf(path)) &&
                          repositories.contains(stemOf(include.target));
        if (both && !isOwnHeader(path, include.target)) {
            complaints.push_back(at(path, include) + "a repository does not include another");
        }
    });
    return complaints;
}

Complaints roomComplaints(const SourceTree& tree)
{
    Complaints complaints;
    forEachInclude(tree, [&](const std::string& path, const Include& include) {
        if (layerOf(path) != "app") {
            return;
        }
        const bool own = isOwnHeader(path, include.target);
        if (include.target == "app/window/main_window.h" && !ownersOfTheWindow.contains(path) &&
            !own) {
            complaints.push_back(at(path, include) + "only its owner knows the main window");
        }
        if (isPage(path) && stemOf(path) != frameOfPages && isPage(include.target) && !own) {
            complaints.push_back(at(path, include) + "a page does not include another");
        }
        if (roomsBelowPages.contains(roomOf(path)) &&
            roomsOfPages.contains(roomOf(include.target))) {
            complaints.push_back(at(path, include) + "this room knows no page or form");
        }
        if (roomOf(path) == "app/command_line" && showsAWindow(include.target)) {
            complaints.push_back(at(path, include) + "the command line shows no window");
        }
    });
    return complaints;
}

Complaints soleDoorComplaints(const SourceTree& tree)
{
    Complaints complaints;
    std::map<std::string_view, std::string> firstUser;
    forEachInclude(tree, [&](const std::string& path, const Include& include) {
        for (const SoleDoor& door : soleDoors) {
            if (include.target != door.header || layerOf(path) == "tests") {
                continue;
            }
            const auto user = firstUser.try_emplace(door.header, path).first;
            if (user->second != path || (!door.file.empty() && path != door.file)) {
                complaints.push_back(at(path, include) + "one file only may do so");
            }
        }
    });
    return complaints;
}

Complaints cycleComplaints(const SourceTree& tree)
{
    Complaints complaints;
    std::set<std::string> done;
    for (const auto& [path, file] : tree.files()) {
        std::vector<std::string> way;
        walk(tree, path, way, done, complaints);
    }
    return complaints;
}

Complaints fileComplaints(const SourceTree& tree)
{
    Complaints complaints;
    for (const auto& [path, file] : tree.files()) {
        if (file.lines.size() > mostLines) {
            complaints.push_back(path + " has " + std::to_string(file.lines.size()) + " lines");
        }
        if (!hasLicence(path, file)) {
            complaints.push_back(path + " does not start with the licence line");
        }
        for (const Include& include : file.includes) {
            if (!isIncludedFromTheTop(include)) {
                complaints.push_back(at(path, include) + "not written from the top");
            }
        }
        complainOf(bannedWords(), path, file, complaints);
        if (layerOf(path) != "tests") {
            complainOf(bannedCalls(), path, file, complaints);
        }
    }
    return complaints;
}

} // namespace quadrille::test
