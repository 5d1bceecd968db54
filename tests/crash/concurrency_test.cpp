// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/crash/child.h"
#include "tests/support/records.h"

#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <vector>

namespace quadrille::tests
{
namespace
{

TEST(EightPrograms, LoseNoChangeAndNeverWaitForEachOtherInACircle)
{
    constexpr int programs = 8;
    constexpr int words = 10;
    const TempStore temp;
    {
        const auto store = temp.open();
        must(store->write(author(), "add patients", [](db::Writing& writing) {
            db::addPatient(writing, aPatient("1001"));
            db::addPatient(writing, aPatient("1002"));
        }));
    }
    std::vector<std::unique_ptr<QProcess>> children;
    for (int i = 0; i < programs; ++i) {
        children.push_back(startChild({QStringLiteral("edit"), temp.file(),
                                       QStringLiteral("p%1").arg(i), QString::number(words)}));
    }
    for (const auto& child : children) {
        ASSERT_TRUE(child->waitForFinished(240000)) << "two programs wait for each other";
        EXPECT_EQ(child->exitCode(), 0) << child->readAllStandardOutput().toStdString();
    }
    const auto store = temp.open(db::Opening::existing);
    must(store->read([&](db::Reading& reading) {
        EXPECT_THAT(db::verify(reading), testing::IsEmpty());
        for (const char* reference : {"1001", "1002"}) {
            const Patient patient = db::patientByReference(reading, reference).value();
            EXPECT_EQ(patient.version, 1 + programs * words);
            for (int program = 0; program < programs; ++program) {
                for (int word = 1; word <= words; ++word) {
                    EXPECT_THAT(patient.note, testing::HasSubstr("p" + std::to_string(program) +
                                                                 "-" + std::to_string(word) + " "));
                }
            }
        }
    }));
}

} // namespace
} // namespace quadrille::tests
