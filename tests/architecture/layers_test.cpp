// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/architecture/rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

using namespace quadrille::test;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

namespace
{

const std::string licence = "// SPDX-License-Identifier: GPL-3.0-or-later\n";

const SourceTree& house()
{
    static const SourceTree tree =
        SourceTree::read(QUADRILLE_SOURCE_DIR, {"app", "core", "db", "packaging", "tests"});
    return tree;
}

SourceTree treeOf(const std::vector<std::pair<std::string, std::string>>& files)
{
    SourceTree tree;
    for (const auto& [path, text] : files) {
        tree.add(path, licence + text + "\n");
    }
    return tree;
}

} // namespace

TEST(House, WasReadWhole)
{
    EXPECT_TRUE(house().files().contains("core/units.h"));
    EXPECT_TRUE(house().files().contains("tests/architecture/layers_test.cpp"));
    EXPECT_TRUE(house().files().contains("app/CMakeLists.txt"));
    EXPECT_FALSE(house().files().at("core/settings.h").includes.empty());
}

TEST(House, LayersPointDownwards)
{
    EXPECT_THAT(layerComplaints(house()), IsEmpty());
}

TEST(House, CoreHeadersIncludeOnlyThoseAboveThem)
{
    EXPECT_THAT(coreOrderComplaints(house()), IsEmpty());
}

TEST(House, RepositoriesDoNotIncludeOneAnother)
{
    EXPECT_THAT(repositoryComplaints(house()), IsEmpty());
}

TEST(House, RoomsKeepToThemselves)
{
    EXPECT_THAT(roomComplaints(house()), IsEmpty());
}

TEST(House, EachForeignLibraryHasOneDoor)
{
    EXPECT_THAT(soleDoorComplaints(house()), IsEmpty());
}

TEST(House, NoIncludesGoInACircle)
{
    EXPECT_THAT(cycleComplaints(house()), IsEmpty());
}

TEST(House, FilesAreShortLicensedAndFinished)
{
    EXPECT_THAT(fileComplaints(house()), IsEmpty());
}

// The rest proves that each rule can fail, on small made-up trees.

TEST(LayerRule, SeesArrowsThatRunUpwards)
{
    const SourceTree tree = treeOf({{"core/units.h", "#include \"db/store.h\""},
                                    {"db/store.h", "#include \"app/window/prompts.h\""},
                                    {"db/plans.cpp", "#include \"core/plan.h\""},
                                    {"app/plan/plan_page.h", "#include \"db/plans.h\""},
                                    {"tests/core/units_test.cpp", "#include \"app/words/a.h\""},
                                    {"tests/db/plans_test.cpp", "#include \"db/plans.h\""}});
    EXPECT_THAT(layerComplaints(tree),
                UnorderedElementsAre(HasSubstr("core/units.h:2 includes db/store.h"),
                                     HasSubstr("db/store.h:2 includes app/window/prompts.h"),
                                     HasSubstr("tests/core/units_test.cpp:2 includes app/words")));
}

TEST(LayerRule, SeesForeignLibrariesInTheWrongLayer)
{
    const SourceTree tree =
        treeOf({{"core/units.h", "#include <QString>\n#include <vector>\n#include <csv.h>\n"
                                 "#include <boost/math/constants/constants.hpp>"},
                {"db/store.h", "#include <QString>\n#include <QtGui/QColor>\n#include <memory>"},
                {"app/look/tokens.h", "#include <QColor>"}});
    EXPECT_THAT(layerComplaints(tree),
                UnorderedElementsAre(HasSubstr("core/units.h:2"), HasSubstr("core/units.h:4"),
                                     HasSubstr("db/store.h:3")));
}

TEST(CoreOrderRule, SeesHeadersThatLookDown)
{
    const SourceTree tree = treeOf({{"core/units.h", "#include \"core/settings.h\""},
                                    {"core/settings.h", "#include \"core/units.h\""},
                                    {"core/units.cpp", "#include \"core/settings.h\""},
                                    {"core/surprise.h", "#include \"core/units.h\""}});
    EXPECT_THAT(coreOrderComplaints(tree),
                UnorderedElementsAre(HasSubstr("core/units.h:2 includes core/settings.h"),
                                     HasSubstr("core/surprise.h has no place")));
}

TEST(RepositoryRule, SeesOneThatIncludesAnother)
{
    const SourceTree tree = treeOf({{"db/plans.cpp", "#include \"db/plans.h\""},
                                    {"db/courses.cpp", "#include \"db/plans.h\""},
                                    {"db/plans.h", "#include \"db/store.h\""}});
    EXPECT_THAT(repositoryComplaints(tree),
                ElementsAre(HasSubstr("db/courses.cpp:2 includes db/plans.h")));
}

TEST(RoomRule, SeesPagesInTheWrongPlace)
{
    const SourceTree tree =
        treeOf({{"app/main.cpp", "#include \"app/window/main_window.h\""},
                {"app/window/main_window.cpp", "#include \"app/window/main_window.h\""},
                {"app/patient/patient_form.cpp", "#include \"app/window/main_window.h\""},
                {"app/plan/plan_page.cpp", "#include \"app/plan/plan_page.h\""},
                {"app/plan/plan_page.h", "#include \"app/caseload/caseload_page.h\""},
                {"app/charts/cycle_chart.h", "#include \"app/plan/plan_draft.h\""}});
    EXPECT_THAT(roomComplaints(tree),
                UnorderedElementsAre(HasSubstr("app/patient/patient_form.cpp:2"),
                                     HasSubstr("app/plan/plan_page.h:2 includes app/caseload"),
                                     HasSubstr("app/charts/cycle_chart.h:2 includes app/plan")));
}

TEST(RoomRule, SeesAWindowOnTheCommandLine)
{
    const SourceTree tree = treeOf(
        {{"app/command_line/figures_verb.cpp",
          "#include <QTextStream>\n#include <QMessageBox>\n#include \"app/window/prompts.h\""}});
    EXPECT_THAT(roomComplaints(tree),
                ElementsAre(HasSubstr("QMessageBox"), HasSubstr("app/window/prompts.h")));
}

TEST(SoleDoorRule, SeesASecondUser)
{
    const SourceTree tree = treeOf({{"app/charts/chart_view.cpp", "#include <qcustomplot.h>"},
                                    {"app/charts/week_chart.cpp", "#include <qcustomplot.h>"},
                                    {"db/store.cpp", "#include <sqlite3.h>"},
                                    {"db/store_care.cpp", "#include <sqlite3.h>"}});
    EXPECT_THAT(soleDoorComplaints(tree), Contains(HasSubstr("app/charts/week_chart.cpp:2")));
    EXPECT_THAT(soleDoorComplaints(tree), Contains(HasSubstr("db/store.cpp:2")));
    EXPECT_THAT(soleDoorComplaints(treeOf({{"db/sql.cpp", "#include <sqlite3.h>"}})),
                ElementsAre(HasSubstr("db/sql.cpp:2")));
    EXPECT_THAT(soleDoorComplaints(treeOf({{"db/store_care.cpp", "#include <sqlite3.h>"}})),
                IsEmpty());
}

TEST(CycleRule, SeesACircleOfThree)
{
    const SourceTree tree = treeOf({{"db/a.h", "#include \"db/b.h\""},
                                    {"db/b.h", "#include \"db/c.h\""},
                                    {"db/c.h", "#include \"db/a.h\""},
                                    {"db/d.h", "#include \"db/a.h\""}});
    EXPECT_THAT(cycleComplaints(tree), ElementsAre(HasSubstr("db/a.h → db/b.h → db/c.h → db/a.h")));
}

TEST(FileRule, SeesLengthLicenceAndPathOfIncludes)
{
    std::string longText;
    for (int i = 0; i < 400; ++i) {
        longText += "int a;\n";
    }
    SourceTree tree =
        treeOf({{"core/long.cpp", longText}, {"db/near.cpp", "#include \"store.h\""}});
    tree.add("app/bare.cpp", "int a;\n");
    tree.add("packaging/go.sh",
             "#!/usr/bin/env bash\n# SPDX-License-Identifier: GPL-3.0-or-later\n");
    tree.add("packaging/stop.sh", "#!/usr/bin/env bash\n");
    EXPECT_THAT(fileComplaints(tree),
                UnorderedElementsAre(HasSubstr("core/long.cpp has 402 lines"),
                                     HasSubstr("db/near.cpp:2 includes store.h"),
                                     HasSubstr("app/bare.cpp does not start"),
                                     HasSubstr("packaging/stop.sh does not start")));
}

TEST(FileRule, SeesWordsThatMarkUnfinishedWork)
{
    const std::string mark = std::string("TO") + "DO";
    const SourceTree tree = treeOf({{"core/units.cpp", "int a; // " + mark + " more"},
                                    {"app/main.cpp", "application.processEvents();"},
                                    {"tests/app/look_test.cpp", "application.processEvents();"}});
    EXPECT_THAT(fileComplaints(tree),
                UnorderedElementsAre(HasSubstr("core/units.cpp:2 says " + mark),
                                     HasSubstr("app/main.cpp:2 says processEvents")));
}
