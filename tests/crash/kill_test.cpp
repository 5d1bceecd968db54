// SPDX-License-Identifier: GPL-3.0-or-later
// A program is killed at any moment, or its disk is full: what it said was saved is there.
#include "tests/crash/child.h"

#include <QFileInfo>

#include <chrono>
#include <gtest/gtest.h>
#include <random>
#include <thread>

namespace quadrille::tests
{
namespace
{

/// So many rounds on one file before it is made anew.
constexpr int roundsOnOneFile = 10;

int rounds()
{
    bool isNumber = false;
    const int wanted = qEnvironmentVariableIntValue("QUADRILLE_KILL_ROUNDS", &isNumber);
    return isNumber ? wanted : 50;
}

/// Lets a child write until it has said some numbers, and then a random moment longer.
int killSomewhere(const QStringList& arguments, std::mt19937& random)
{
    const auto child = startChild(arguments);
    const int enough = static_cast<int>(random() % 12U);
    QByteArray said;
    while (lastSaid(said) < enough && child->waitForReadyRead(30000)) {
        said += child->readAllStandardOutput();
    }
    std::this_thread::sleep_for(std::chrono::microseconds(random() % 20000U));
    child->kill(); // SIGKILL
    child->waitForFinished();
    said += child->readAllStandardOutput();
    return lastSaid(said);
}

TEST(Kill, LosesNothingThatWasSaved)
{
    const unsigned seed = std::random_device()();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::unique_ptr<TempStore> temp;
    int savedInAll = 0;
    for (int round = 0; round < rounds() && !testing::Test::HasFailure(); ++round) {
        if (round % roundsOnOneFile == 0) {
            temp = std::make_unique<TempStore>();
        }
        const std::string tag = "r" + std::to_string(round);
        const int saved = killSomewhere(
            {QStringLiteral("write"), temp->file(), QString::fromStdString(tag)}, random);
        if (QFileInfo::exists(temp->file())) {
            expectWhole(*temp, tag, saved);
        }
        savedInAll += saved;
    }
    EXPECT_GT(savedInAll, rounds()) << "the child was killed before it had begun";
}

TEST(KillDuringMaking, LeavesAFileThatCanBeUsedOrNone)
{
    std::mt19937 random(std::random_device{}());
    for (int round = 0; round < 10; ++round) {
        const TempStore temp;
        const auto child =
            startChild({QStringLiteral("write"), temp.file(), QStringLiteral("new")});
        std::this_thread::sleep_for(std::chrono::microseconds(random() % 60000U));
        child->kill();
        child->waitForFinished();
        const auto store = db::Store::open(temp.file(), db::Opening::createIfMissing, temp.clock);
        ASSERT_TRUE(store) << static_cast<int>(store.error().code);
    }
}

TEST(FullDisk, LosesNothingThatWasSavedAndSaysSo)
{
    for (const int bytes : {400'000, 500'000, 700'000, 1'000'000}) {
        const TempStore temp;
        temp.open(); // made with room
        const auto child = startChild(
            {QStringLiteral("full"), temp.file(), QStringLiteral("full"), QString::number(bytes)});
        ASSERT_TRUE(child->waitForFinished(120000));
        const QByteArray said = child->readAllStandardOutput();
        EXPECT_GT(lastSaid(said), 0);
        // A limit on the size of a file is EFBIG, a fault of the disk; no room is ENOSPC.
        EXPECT_TRUE(
            said.contains("error " + QByteArray::number(static_cast<int>(ErrorCode::diskFault))) ||
            said.contains("error " + QByteArray::number(static_cast<int>(ErrorCode::diskFull))))
            << said.right(40).toStdString();
        expectWhole(temp, "full", lastSaid(said));
    }
}

} // namespace
} // namespace quadrille::tests
