// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/stimulator_form.h"
#include "tests/app/practice_window.h"

#include "db/stimulators.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::HasSubstr;

namespace
{

QLineEdit* field(QWidget& form, const QByteArray& name)
{
    return form.findChild<QLineEdit*>(QString::fromLatin1(name));
}

std::string verdictOf(const QWidget& form)
{
    return form.findChild<QLabel*>(QStringLiteral("verdict"))->text().toStdString();
}

/// "18-word" of a setting.
QByteArray wordOfSetting(Field setting)
{
    return QByteArray::number(static_cast<int>(setting)) + "-word";
}

} // namespace

TEST(StimulatorForm, DescribesAUnitWithItsRangesAndOrder)
{
    PracticeWindow practice;
    StimulatorForm form(practice.services(), commonStimulator(), nullptr);
    form.show();
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("name of the unit")));
    field(form, "name")->setText(QStringLiteral("Four-channel unit"));
    auto* mostOn = field(form, "8-2");
    ASSERT_NE(mostOn, nullptr);
    mostOn->setText(QStringLiteral("none"));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("On time")))
        << form.problemText().toStdString();
    mostOn->setText(QStringLiteral("25"));
    form.accept();
    ASSERT_TRUE(form.savedStimulator().has_value()) << form.problemText().toStdString();
    const auto unit = must(practice.store().read(
        [&](db::Reading& r) { return db::stimulator(r, *form.savedStimulator()); }));
    EXPECT_EQ(unit->onTime.most, Milliseconds(25'000));
}

TEST(StimulatorForm, TellsAtOnceWhetherTheUnitWillDo)
{
    PracticeWindow practice;
    StimulatorForm form(practice.services(), commonStimulator(), nullptr);
    form.show();
    EXPECT_EQ(verdictOf(form), "Will do for muscle exercise.");
    auto* workRest = form.findChild<QCheckBox*>(QStringLiteral("workRest"));
    workRest->setFocus();
    QTest::keyClick(workRest, Qt::Key_Space);
    EXPECT_THAT(verdictOf(form), HasSubstr("Will not do: This stimulator has no on and off times"));
    QTest::keyClick(workRest, Qt::Key_Space);
    typeInto(field(form, "mostOutput"), QStringLiteral("40 mA"));
    EXPECT_THAT(verdictOf(form), HasSubstr("Will do, with care: It gives 40"));
    typeInto(field(form, "mostOutput"), QStringLiteral("90"));
    EXPECT_EQ(verdictOf(form), "Will do for muscle exercise.");
    typeInto(field(form, "3-2"), QStringLiteral("150")); // most of the phase duration
    EXPECT_THAT(verdictOf(form), HasSubstr("The phase duration ends at 150"));
    for (const Waveform waveform : {Waveform::symmetricBiphasic, Waveform::directCurrent}) {
        auto* box = form.findChild<QCheckBox*>(
            QStringLiteral("waveform%1").arg(static_cast<int>(waveform)));
        box->setFocus();
        QTest::keyClick(box, Qt::Key_Space);
    }
    EXPECT_THAT(verdictOf(form), HasSubstr("Will not do: Direct or unbalanced current"));
}

TEST(StimulatorForm, TakesWhatAUnitIsAndItsOwnWords)
{
    PracticeWindow practice;
    StimulatorForm form(practice.services(), commonStimulator(), nullptr);
    form.show();
    typeInto(field(form, "name"), QStringLiteral("Two-channel unit, white"));
    auto* start = form.findChild<QComboBox*>(QStringLiteral("cycleStart"));
    start->setFocus();
    QTest::keyClick(start, Qt::Key_Down);
    auto* counter = form.findChild<QComboBox*>(QStringLiteral("usageCounter"));
    counter->setFocus();
    QTest::keyClick(counter, Qt::Key_End);
    auto* memories = form.findChild<QSpinBox*>(QStringLiteral("memories"));
    memories->setFocus();
    QTest::keyClick(memories, Qt::Key_Up);
    typeInto(field(form, "mostOutput"), QStringLiteral("none"));
    typeInto(field(form, wordOfSetting(Field::onTime)), QStringLiteral("Work"));
    typeInto(field(form, wordOfSetting(Field::amplitudeCeiling)), QStringLiteral(" Level "));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("“none” is no output")));
    typeInto(field(form, "mostOutput"), QStringLiteral("95.5"));
    typeInto(field(form, wordOfSetting(Field::offTime)), QString(61, QLatin1Char('x')));
    form.accept();
    EXPECT_TRUE(form.problemText().contains(QStringLiteral("too long for the handout")));
    typeInto(field(form, wordOfSetting(Field::offTime)), QString());
    form.accept();
    ASSERT_TRUE(form.savedStimulator().has_value()) << form.problemText().toStdString();
    const auto unit = must(practice.store().read(
        [&](db::Reading& r) { return db::stimulator(r, *form.savedStimulator()); }));
    EXPECT_EQ(unit->cycleStart, CycleStart::withOff);
    EXPECT_EQ(unit->usageCounter, UsageCounter::usesAndTime);
    EXPECT_EQ(unit->memories, 1);
    EXPECT_EQ(unit->mostOutput, Amplitude::fromCount(95'500));
    EXPECT_EQ(unit->ownWords, (std::map<Field, std::string>{{Field::onTime, "Work"},
                                                            {Field::amplitudeCeiling, "Level"}}));
    StimulatorForm again(practice.services(), *unit, nullptr);
    EXPECT_EQ(field(again, wordOfSetting(Field::onTime))->text(), QStringLiteral("Work"));
    EXPECT_EQ(field(again, "mostOutput")->text().toStdString(), "95.5\u00A0mA");
}
