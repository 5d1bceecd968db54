// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/crash/child.h"

#include "db/courses.h"
#include "db/people.h"
#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::tests
{

std::unique_ptr<QProcess> startChild(const QStringList& arguments)
{
    auto child = std::make_unique<QProcess>();
    child->start(QStringLiteral(QUADRILLE_STORE_CHILD), arguments);
    if (!child->waitForStarted()) {
        throw std::runtime_error("store_child does not start");
    }
    return child;
}

int lastSaid(const QByteArray& output)
{
    int last = 0;
    for (const QByteArray& line : output.split('\n')) {
        bool isNumber = false;
        const int number = line.toInt(&isNumber);
        last = isNumber ? number : last;
    }
    return last;
}

void expectWhole(const TempStore& temp, const std::string& tag, int saved)
{
    // A program killed while it made the file leaves one that is made to its end at the next start.
    const auto store = must(db::Store::open(temp.file(), db::Opening::createIfMissing, temp.clock));
    must(store->read([&](db::Reading& reading) {
        EXPECT_THAT(db::verify(reading), testing::IsEmpty());
        for (int number = 1; number <= saved; ++number) {
            const std::string reference = tag + "-" + std::to_string(number);
            const auto patient = db::patientByReference(reading, reference);
            ASSERT_TRUE(patient) << reference << " was saved and is lost";
            EXPECT_EQ(patient->telephone, "01632 960118") << reference;
            EXPECT_EQ(db::coursesOf(reading, *patient->id).size(), 1U) << reference;
        }
    }));
}

} // namespace quadrille::tests
