// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/stimulator_form.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/stimulator/order_list.h"
#include "app/stimulator/range_rows.h"
#include "app/window/store_events.h"
#include "app/words/suitability_text.h"
#include "app/words/trade_words.h"

#include "db/stimulators.h"

#include "core/settings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

constexpr std::array allWaveforms{Waveform::symmetricBiphasic, Waveform::asymmetricBalancedBiphasic,
                                  Waveform::kilohertzBursts, Waveform::unbalancedPulses,
                                  Waveform::directCurrent};

QString formName(const Stimulator& stimulator)
{
    return stimulator.id ? QStringLiteral("stimulator/%1").arg(stimulator.id->key())
                         : QStringLiteral("stimulator/new");
}

} // namespace

StimulatorForm::StimulatorForm(const Services& services, const Stimulator& stimulator,
                               QWidget* parent)
    : EntryDialog(services, formName(stimulator),
                  stimulator.id ? tr("Stimulator") : tr("New stimulator"), parent)
    , m_stimulator(stimulator)
    , m_name(new QLineEdit(body()))
    , m_channels(new QSpinBox(body()))
    , m_sharedTiming(new QCheckBox(tr("Channels s&hare their timing"), body()))
    , m_workRest(new QCheckBox(tr("Real &on and off times"), body()))
    , m_rampHabit(new QComboBox(body()))
    , m_cycleStart(new QComboBox(body()))
    , m_usageCounter(new QComboBox(body()))
    , m_memories(new QSpinBox(body()))
    , m_mostOutput(new QLineEdit(body()))
    , m_archived(new QCheckBox(tr("No longer in &use"), body()))
    , m_ranges(new RangeRows(services.text, body()))
    , m_order(new OrderList(body()))
    , m_verdict(new QLabel(body()))
{
    auto* facts = new QGridLayout;
    facts->setHorizontalSpacing(space::insideSheet);
    facts->setVerticalSpacing(space::tiny);
    layOutFacts(*facts);
    auto* left = new QVBoxLayout;
    left->addLayout(facts);
    left->addSpacing(space::small);
    auto* orderLabel = new QLabel(tr("Order in which the unit asks for its settings"), body());
    setRole(*orderLabel, Role::captionText);
    left->addWidget(orderLabel);
    left->addWidget(m_order, 1);
    auto* right = new QVBoxLayout;
    right->addWidget(m_ranges);
    auto* traits = new QGridLayout;
    traits->setHorizontalSpacing(space::insideSheet);
    traits->setVerticalSpacing(space::tiny);
    layOutTraits(*traits);
    right->addLayout(traits);
    right->addStretch();
    right->addWidget(m_verdict);
    auto* layout = new QHBoxLayout(body());
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::section);
    layout->addLayout(left);
    layout->addLayout(right, 1);
    m_verdict->setWordWrap(true);
    m_verdict->setObjectName(QStringLiteral("verdict"));

    fill();
    if (restoreKept()) {
        m_order->readKept();
    }
    judge();
    startKeeping();
    for (QCheckBox* box : m_waveforms) {
        connect(box, &QCheckBox::toggled, this, &StimulatorForm::judge);
    }
    connect(m_workRest, &QCheckBox::toggled, this, &StimulatorForm::judge);
    connect(m_rampHabit, &QComboBox::currentIndexChanged, this, &StimulatorForm::judge);
    connect(m_mostOutput, &QLineEdit::textChanged, this, &StimulatorForm::judge);
    connect(m_ranges, &RangeRows::edited, this, &StimulatorForm::judge);
}

void StimulatorForm::addFact(QGridLayout& grid, const QString& label, QWidget* field)
{
    auto* text = new QLabel(label, body());
    text->setBuddy(field);
    const int line = grid.rowCount();
    grid.addWidget(text, line, 0);
    grid.addWidget(field, line, 1);
}

void StimulatorForm::layOutFacts(QGridLayout& grid)
{
    m_name->setObjectName(QStringLiteral("name"));
    m_name->setAccessibleName(tr("Name of the unit"));
    addFact(grid, tr("&Name"), m_name);
    m_channels->setObjectName(QStringLiteral("channels"));
    m_channels->setAccessibleName(tr("Channels, 1 to 8"));
    m_channels->setRange(1, 8);
    addFact(grid, tr("&Channels"), m_channels);
    m_rampHabit->setObjectName(QStringLiteral("rampHabit"));
    m_rampHabit->setAccessibleName(tr("On time and ramps"));
    for (const RampHabit habit : {RampHabit::includedInOnTime, RampHabit::addedToOnTime}) {
        m_rampHabit->addItem(rampHabitName(habit), static_cast<int>(habit));
    }
    addFact(grid, tr("&Ramps"), m_rampHabit);
    m_cycleStart->setObjectName(QStringLiteral("cycleStart"));
    m_cycleStart->setAccessibleName(tr("What a session begins with"));
    for (const CycleStart start : {CycleStart::withOn, CycleStart::withOff}) {
        m_cycleStart->addItem(cycleStartName(start), static_cast<int>(start));
    }
    addFact(grid, tr("&Begins"), m_cycleStart);
    auto* output = new QLabel(fieldName(Field::outputType), body());
    grid.addWidget(output, grid.rowCount(), 0);
    for (const Waveform waveform : allWaveforms) {
        auto* box = new QCheckBox(waveformName(waveform), body());
        box->setObjectName(QStringLiteral("waveform%1").arg(static_cast<int>(waveform)));
        box->setAccessibleName(box->text());
        m_waveforms.push_back(box);
        grid.addWidget(box, grid.rowCount() - (m_waveforms.size() == 1 ? 1 : 0), 1);
    }
    m_sharedTiming->setObjectName(QStringLiteral("sharedTiming"));
    m_workRest->setObjectName(QStringLiteral("workRest"));
    m_workRest->setToolTip(tr("Not ticked: a continuous output, for pain relief only"));
    m_archived->setObjectName(QStringLiteral("archived"));
    for (QCheckBox* box : {m_sharedTiming, m_workRest, m_archived}) {
        grid.addWidget(box, grid.rowCount(), 1);
    }
}

void StimulatorForm::layOutTraits(QGridLayout& grid)
{
    m_mostOutput->setObjectName(QStringLiteral("mostOutput"));
    m_mostOutput->setPlaceholderText(tr("not known"));
    m_mostOutput->setToolTip(tr("Peak, into 500 Ω, as the unit’s papers state it"));
    m_mostOutput->setAccessibleName(tr("Maximum output into 500 ohm, milliamperes"));
    addFact(grid, tr("Ma&ximum output into 500 Ω"), m_mostOutput);
    m_usageCounter->setObjectName(QStringLiteral("usageCounter"));
    m_usageCounter->setAccessibleName(tr("What the unit counts by itself"));
    for (const UsageCounter counter :
         {UsageCounter::none, UsageCounter::uses, UsageCounter::time, UsageCounter::usesAndTime}) {
        m_usageCounter->addItem(usageCounterName(counter), static_cast<int>(counter));
    }
    addFact(grid, tr("Usa&ge counter"), m_usageCounter);
    m_memories->setObjectName(QStringLiteral("memories"));
    m_memories->setAccessibleName(tr("Memories that can be set, 0 to %1").arg(mostMemories));
    m_memories->setRange(0, mostMemories);
    addFact(grid, tr("Memories that can be &set"), m_memories);
    grid.setColumnStretch(1, 1);
}

std::optional<Amplitude> StimulatorForm::mostOutput() const
{
    const auto count = services().text.settingFrom(Field::amplitudeCeiling, m_mostOutput->text());
    return count ? std::optional(Amplitude::fromCount(*count)) : std::nullopt;
}

Result<void> StimulatorForm::readAgain()
{
    const auto stored = services().store.read(
        [&](db::Reading& reading) { return db::stimulator(reading, *m_stimulator.id); });
    if (!stored) {
        return stored.error();
    }
    if (!*stored) {
        return Error{.code = ErrorCode::notFound, .subject = m_stimulator.name, .detail = {}};
    }
    m_stimulator = **stored;
    fill();
    return {};
}

void StimulatorForm::fieldsEntered()
{
    m_order->readKept();
}

void StimulatorForm::fill()
{
    m_name->setText(QString::fromStdString(m_stimulator.name));
    m_channels->setValue(m_stimulator.channels);
    m_sharedTiming->setChecked(m_stimulator.channelsShareTiming);
    m_workRest->setChecked(m_stimulator.hasWorkRestCycles);
    m_rampHabit->setCurrentIndex(m_rampHabit->findData(static_cast<int>(m_stimulator.rampHabit)));
    m_cycleStart->setCurrentIndex(
        m_cycleStart->findData(static_cast<int>(m_stimulator.cycleStart)));
    m_usageCounter->setCurrentIndex(
        m_usageCounter->findData(static_cast<int>(m_stimulator.usageCounter)));
    m_memories->setValue(m_stimulator.memories);
    m_mostOutput->setText(
        m_stimulator.mostOutput
            ? services().text.setting(Field::amplitudeCeiling, m_stimulator.mostOutput->count())
            : QString());
    m_archived->setChecked(m_stimulator.archived);
    m_archived->setVisible(m_stimulator.id.has_value());
    for (std::size_t i = 0; i < allWaveforms.size(); ++i) {
        m_waveforms[i]->setChecked(std::ranges::find(m_stimulator.waveforms, allWaveforms[i]) !=
                                   m_stimulator.waveforms.end());
    }
    m_ranges->show(m_stimulator);
    m_order->setOrder(askingOrderOf(m_stimulator));
}

std::vector<Waveform> StimulatorForm::waveforms() const
{
    std::vector<Waveform> chosen;
    for (std::size_t i = 0; i < allWaveforms.size(); ++i) {
        if (m_waveforms[i]->isChecked()) {
            chosen.push_back(allWaveforms[i]);
        }
    }
    // The unit's own first waveform stays its preset.
    if (!m_stimulator.waveforms.empty()) {
        const auto preset = std::ranges::find(chosen, m_stimulator.waveforms.front());
        if (preset != chosen.end()) {
            std::rotate(chosen.begin(), preset, std::next(preset));
        }
    }
    return chosen;
}

Stimulator StimulatorForm::entered() const
{
    Stimulator unit = m_stimulator;
    unit.name = m_name->text().simplified().toStdString();
    unit.channels = m_channels->value();
    unit.channelsShareTiming = m_sharedTiming->isChecked();
    unit.hasWorkRestCycles = m_workRest->isChecked();
    unit.rampHabit = static_cast<RampHabit>(m_rampHabit->currentData().toInt());
    unit.cycleStart = static_cast<CycleStart>(m_cycleStart->currentData().toInt());
    unit.usageCounter = static_cast<UsageCounter>(m_usageCounter->currentData().toInt());
    unit.memories = m_memories->value();
    unit.mostOutput = mostOutput();
    unit.archived = m_archived->isChecked();
    unit.waveforms = waveforms();
    unit.askingOrder = m_order->order();
    return unit;
}

void StimulatorForm::judge()
{
    Stimulator unit = entered();
    m_ranges->setWaveforms(unit.waveforms);
    if (!m_ranges->problem()) {
        m_ranges->writeTo(unit);
    }
    const SuitabilityText words = suitabilityText(unit, services().text);
    m_verdict->setText(unit.waveforms.empty() ? tr("Tick at least one output.") : words.whole());
    m_verdict->setToolTip(words.sources.join(QLatin1Char('\n')));
    const bool allWell = words.reasons.isEmpty() && !unit.waveforms.empty();
    setRole(*m_verdict, allWell ? Role::goodText : Role::warnText);
}

std::optional<EntryDialog::Problem> StimulatorForm::problem() const
{
    if (m_name->text().trimmed().isEmpty()) {
        return Problem{m_name,
                       tr("The name of the unit is empty. Enter what the practice calls it.")};
    }
    if (waveforms().empty()) {
        return Problem{m_waveforms.front(), tr("No output is ticked. Tick what the unit gives.")};
    }
    if (!m_mostOutput->text().trimmed().isEmpty() &&
        (!mostOutput() || *mostOutput() <= Amplitude() ||
         mostOutput()->count() > arithmeticBounds(Field::amplitudeCeiling).most)) {
        return Problem{m_mostOutput,
                       tr("“%1” is no output in milliamperes. Enter a number, or leave it empty.")
                           .arg(m_mostOutput->text())};
    }
    if (const auto found = m_ranges->problem()) {
        return Problem{found->field, found->sentence};
    }
    return std::nullopt;
}

Result<void> StimulatorForm::save()
{
    Stimulator unit = entered();
    m_ranges->writeTo(unit);
    const auto saved =
        services().store.write(services().author, unit.id ? "change stimulator" : "add stimulator",
                               [&](db::Writing& writing) {
                                   if (!unit.id) {
                                       return db::addStimulator(writing, unit);
                                   }
                                   db::changeStimulator(writing, unit);
                                   return *unit.id;
                               });
    if (!saved) {
        return saved.error();
    }
    m_saved = *saved;
    emit services().events.stimulatorsChanged();
    return {};
}

} // namespace quadrille::app
