// SPDX-License-Identifier: GPL-3.0-or-later
// Forms of the Plan page: issuing a plan, and what house settings are called.
#include "app/plan/house_settings_form.h"
#include "app/plan/issue_form.h"
#include "tests/app/practice_window.h"

#include "db/courses.h"
#include "db/house_settings.h"
#include "db/kept_forms.h"

#include <QJsonObject>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

/// Settings to be kept for the first time.
HouseSettings newSettings()
{
    return houseSettingsFrom(aBlock(aUnit()), aUnit());
}

class HouseSettingsNames : public testing::Test
{
protected:
    /// Saves under a name; what the form says against it, empty where it was saved.
    QString saveAs(const QString& name)
    {
        HouseSettingsForm form(practice.services(), newSettings(), &practice.window());
        form.show();
        form.findChild<QLineEdit*>(QStringLiteral("houseName"))->setText(name);
        form.accept();
        return form.problemText();
    }
    std::size_t kept() { return must(practice.store().read(db::houseSettings)).size(); }

    PracticeWindow practice;
};

class IssuingAPlan : public testing::Test
{
protected:
    Draft draft()
    {
        Draft draft;
        draft.course = practice.ids().course;
        draft.stimulator = practice.ids().stimulator;
        draft.blocks = {aBlock(aUnit())};
        return draft;
    }
    Course course()
    {
        return must(practice.store().read([&](db::Reading& reading) {
                   return db::coursesOf(reading, practice.ids().patient);
               }))
            .at(0);
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(HouseSettingsNames, AreNotThoseOfPublishedStartingPoints)
{
    for (const char* taken : {"Feil 2011, single pads", " feil 2011,  single PADS "}) {
        const QString said = saveAs(QString::fromUtf8(taken));
        EXPECT_TRUE(said.contains(QStringLiteral("published starting point"))) << taken;
        EXPECT_EQ(kept(), 0U) << taken;
    }
    EXPECT_EQ(saveAs(QStringLiteral("Feil 2011, our pads")), QString());
    EXPECT_EQ(kept(), 1U);
}

TEST_F(HouseSettingsNames, ThatComeBackUnsavedTakeNoMoreRoomThanTheyNeed)
{
    must(practice.store().write(author(), "keep", [](db::Writing& writing) {
        db::keepForm(writing, QStringLiteral("house_settings/new"),
                     QJsonObject{{QStringLiteral("houseName"), QStringLiteral("Quay Lane knees")}});
    }));
    HouseSettingsForm form(practice.services(), newSettings(), &practice.window());
    form.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&form));
    const auto* name = form.findChild<QLineEdit*>(QStringLiteral("houseName"));
    ASSERT_EQ(name->text(), QStringLiteral("Quay Lane knees"));
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("not saved last time")));
    const QWidget* fields = name->parentWidget();
    EXPECT_LE(fields->minimumHeight(), fields->layout()->totalHeightForWidth(fields->width()));
    EXPECT_GE(form.height(), form.layout()->totalMinimumSize().height());
}

TEST_F(IssuingAPlan, IsOffWhileItIsNotKnownWhetherTheCoursePauses)
{
    const Course issued = course();
    {
        const IssueForm form(practice.services(), issued, draft(), aUnit(), 0, &practice.window());
        ASSERT_TRUE(form.findChild<QPushButton*>(QStringLiteral("save"))->isEnabled());
    }
    db::run(*practice.temp().rawConnection(), "ALTER TABLE pause RENAME TO pause_of_old");
    const IssueForm form(practice.services(), issued, draft(), aUnit(), 0, &practice.window());
    EXPECT_FALSE(form.findChild<QPushButton*>(QStringLiteral("save"))->isEnabled());
    const auto* list = form.findChild<QWidget*>(QStringLiteral("checkList"));
    ASSERT_NE(list, nullptr);
    bool isSaid = false;
    for (const QLabel* line : list->findChildren<QLabel*>()) {
        isSaid = isSaid || line->text().contains(QStringLiteral("pause"));
    }
    EXPECT_TRUE(isSaid) << "what can't be read is named";
}
