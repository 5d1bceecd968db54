// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/kept_forms.h"

#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::must;

TEST(KeptForms, ComeBackUntilTheyAreDropped)
{
    const tests::TempStore temp;
    const auto store = temp.open();
    const QString form = QStringLiteral("patient/new");
    const auto kept = [&] {
        return must(store->read([&](Reading& reading) { return keptForm(reading, form); }));
    };
    EXPECT_EQ(kept(), std::nullopt);
    for (const QString& name : {QStringLiteral("Agn"), QStringLiteral("Agnes \"T\" 🦵")}) {
        const QJsonObject fields{{QStringLiteral("name"), name},
                                 {QStringLiteral("archived"), false}};
        must(store->write(author(), "keep form",
                          [&](Writing& writing) { keepForm(writing, form, fields); }));
        EXPECT_EQ(kept(), fields);
    }
    must(store->read([&](Reading& reading) {
        EXPECT_EQ(keptForm(reading, QStringLiteral("patient/12")), std::nullopt);
    }));
    must(store->write(author(), "drop form", [&](Writing& writing) { dropForm(writing, form); }));
    EXPECT_EQ(kept(), std::nullopt);
}

} // namespace
} // namespace quadrille::db
