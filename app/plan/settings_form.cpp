// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/settings_form.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/days_picker.h"
#include "app/plan/plan_draft.h"
#include "app/plan/quantity_box.h"
#include "app/plan/setting_row.h"
#include "app/words/finding_text.h"
#include "app/words/trade_words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

bool isAmplitude(Field field)
{
    return field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
}

const Settings* settingsOf(const Block* block, std::optional<std::size_t> site)
{
    const std::size_t index = site.value_or(0);
    return block != nullptr && index < block->sites.size() ? &block->sites[index].settings
                                                           : nullptr;
}

} // namespace

SettingsForm::SettingsForm(PlanDraft& draft, const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_draft(draft)
    , m_text(text)
    , m_title(new QLabel(this))
    , m_unitHead(new QLabel(this))
    , m_beforeHead(new QLabel(this))
    , m_rows(new QVBoxLayout)
{
    setRole(*this, Role::sheet);
    setRole(*m_title, Role::strongText);
    setRole(*m_unitHead, Role::captionText);
    setRole(*m_beforeHead, Role::captionText);
    auto* head = new QFrame(this);
    setRole(*head, Role::sheetHead);
    auto* heads = new QHBoxLayout(head);
    heads->setContentsMargins(space::insideSheet, space::small, space::close, space::small);
    heads->setSpacing(space::close);
    const double factor = appliedFactor();
    auto* whatIf = new QPushButton(tr("What if…"), head);
    whatIf->setObjectName(QStringLiteral("whatIf"));
    whatIf->setToolTip(tr("Variants beside this block: Ctrl Shift W"));
    setRole(*whatIf, Role::linkButton);
    connect(whatIf, &QPushButton::clicked, this, &SettingsForm::whatIfRequested);
    m_title->setFixedWidth(scaled(SettingRow::nameWidth, factor));
    whatIf->setFixedWidth(scaled(SettingRow::fieldWidth, factor));
    m_unitHead->setFixedWidth(scaled(SettingRow::allowedWidth, factor));
    heads->addWidget(m_title);
    heads->addWidget(whatIf);
    heads->addWidget(m_unitHead);
    heads->addWidget(m_beforeHead, 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(1, 1, 1, space::tiny);
    layout->setSpacing(0);
    layout->addWidget(head);
    layout->addLayout(m_rows);
    layout->addStretch();
    connect(&m_draft, &PlanDraft::changed, this, &SettingsForm::refresh);
    connect(&m_draft, &PlanDraft::currentBlockChanged, this, &SettingsForm::refresh);
    refresh();
}

std::vector<std::pair<Field, std::optional<std::size_t>>> SettingsForm::wantedLines() const
{
    std::vector<std::pair<Field, std::optional<std::size_t>>> lines;
    const auto unit = m_draft.stimulator();
    const Block* block = m_draft.block();
    if (!unit || block == nullptr || block->sites.empty()) {
        return lines;
    }
    const Waveform waveform = block->sites.front().settings.waveform;
    for (const Field field : askingOrderOf(*unit)) {
        if (!appliesTo(field, waveform)) {
            continue;
        }
        if (!isAmplitude(field)) {
            lines.emplace_back(field, std::nullopt);
            continue;
        }
        for (std::size_t site = 0; site < block->sites.size(); ++site) {
            lines.emplace_back(field, site);
        }
    }
    return lines;
}

bool SettingsForm::linesFit() const
{
    const auto wanted = wantedLines();
    return m_body != nullptr &&
           std::ranges::equal(wanted, m_lines, [](const auto& want, const QuantityLine& line) {
               return want.first == line.field && want.second == line.site;
           });
}

void SettingsForm::refresh()
{
    if (!linesFit()) {
        rebuild();
    }
    const auto current = m_draft.currentBlock();
    const auto unit = m_draft.stimulator();
    m_title->setText(current ? tr("Block %1 settings").arg(*current + 1) : tr("Settings"));
    m_unitHead->setText(unit ? tr("Unit allows") : QString());
    m_unitHead->setToolTip(unit ? QString::fromStdString(unit->name) : QString());
    m_beforeHead->setText(m_draft.blockBefore() != nullptr ? tr("Block %1").arg(*current)
                                                           : QString());
    for (const QuantityLine& line : m_lines) {
        refreshQuantity(line);
    }
    refreshWaveform();
    refreshBlock();
}

void SettingsForm::rebuild()
{
    if (m_body != nullptr) {
        // One of its fields may have asked for this, so it goes when that field is done.
        m_rows->removeWidget(m_body);
        m_body->setParent(nullptr);
        m_body->deleteLater();
    }
    m_lines.clear();
    m_body = new QWidget(this);
    auto* layout = new QVBoxLayout(m_body);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    m_rows->addWidget(m_body);
    const auto wanted = wantedLines();
    if (!wanted.empty()) {
        addWaveformLine();
        for (const auto& [field, site] : wanted) {
            addQuantityLine(field, site);
        }
    } else {
        m_waveform = nullptr;
        m_waveformRow = nullptr;
    }
    if (m_draft.block() != nullptr) {
        addBlockLines();
    } else {
        m_weeks = nullptr;
    }
}

void SettingsForm::addWaveformLine()
{
    m_waveform = new QComboBox(m_body);
    m_waveform->setObjectName(QStringLiteral("waveform"));
    m_waveform->setAccessibleName(fieldName(Field::waveform));
    m_waveformRow = new SettingRow(fieldName(Field::waveform), m_waveform, m_body);
    m_waveformRow->giveFieldTheRoom();
    m_body->layout()->addWidget(m_waveformRow);
    connect(m_waveform, &QComboBox::activated, this, [this](int index) {
        m_draft.setWaveform(static_cast<Waveform>(m_waveform->itemData(index).toInt()));
    });
}

QString SettingsForm::lineName(Field field, std::optional<std::size_t> site) const
{
    const Settings* settings = settingsOf(m_draft.block(), site);
    const QString name =
        fieldName(field, settings != nullptr ? settings->waveform : Waveform::symmetricBiphasic);
    const bool several = m_draft.block() != nullptr && m_draft.block()->sites.size() > 1;
    return site && several ? tr("%1, site %2").arg(name).arg(*site + 1) : name;
}

void SettingsForm::addQuantityLine(Field field, std::optional<std::size_t> site)
{
    auto* box = new QuantityBox(field, m_text, m_body);
    box->installEventFilter(this);
    box->setMayBeEmpty(isAmplitude(field));
    box->setObjectName(site
                           ? QStringLiteral("setting-%1-%2").arg(static_cast<int>(field)).arg(*site)
                           : QStringLiteral("setting-%1").arg(static_cast<int>(field)));
    auto* row = new SettingRow(lineName(field, site), box, m_body);
    m_body->layout()->addWidget(row);
    m_lines.push_back({field, site, row, box});
    connect(box, &QuantityBox::countEntered, this,
            [this, field, site](std::optional<std::int64_t> count) {
                if (site) {
                    m_draft.setAmplitude(*site, field, count);
                } else {
                    m_draft.setSetting(field, count);
                }
            });
    connect(box, &QuantityBox::left, this, [this] { m_draft.endStep(); });
    connect(box, &QuantityBox::entered, this, [this, field] { emit fieldEntered(field); });
    connect(box, &QuantityBox::problemChanged, this, &SettingsForm::problemChanged);
}

void SettingsForm::addBlockLines()
{
    const auto spin = [this](Field field, int most, const QString& name) {
        auto* box = new QSpinBox(m_body);
        box->installEventFilter(this);
        box->setRange(1, most);
        box->setAccessibleName(tr("%1, 1 to %2").arg(fieldName(field)).arg(most));
        box->setObjectName(name);
        box->setAlignment(Qt::AlignRight);
        return box;
    };
    const auto addRow = [this](Field field, QWidget* box) {
        auto* row = new SettingRow(fieldName(field), box, m_body);
        m_body->layout()->addWidget(row);
        return row;
    };
    m_sessions = spin(Field::sessionsPerDay, 6, QStringLiteral("sessionsPerDay"));
    m_sessionsRow = addRow(Field::sessionsPerDay, m_sessions);
    m_weeks = spin(Field::weeks, 52, QStringLiteral("weeks"));
    m_weeksRow = addRow(Field::weeks, m_weeks);
    m_days = new DaysPicker(m_text, m_body);
    m_daysRow = addRow(Field::weekdays, m_days);
    m_daysRow->giveFieldTheRoom();
    m_order = new QComboBox(m_body);
    m_order->setObjectName(QStringLiteral("siteOrder"));
    m_order->setAccessibleName(tr("Sites of a session"));
    m_order->addItem(tr("at once"), static_cast<int>(SiteOrder::together));
    m_order->addItem(tr("in turn"), static_cast<int>(SiteOrder::oneAfterAnother));
    m_orderRow = new SettingRow(tr("Sites run"), m_order, m_body);
    m_body->layout()->addWidget(m_orderRow);
    connect(m_sessions, &QSpinBox::valueChanged, &m_draft, &PlanDraft::setSessionsPerDay);
    connect(m_weeks, &QSpinBox::valueChanged, &m_draft, &PlanDraft::setWeeks);
    connect(m_sessions, &QSpinBox::editingFinished, &m_draft, &PlanDraft::endStep);
    connect(m_weeks, &QSpinBox::editingFinished, &m_draft, &PlanDraft::endStep);
    connect(m_days, &DaysPicker::scheduleChosen, this,
            [this](const Schedule& schedule) { m_draft.setSchedule(schedule); });
    connect(m_order, &QComboBox::activated, this, [this](int index) {
        m_draft.setSiteOrder(static_cast<SiteOrder>(m_order->itemData(index).toInt()));
    });
}

void SettingsForm::refreshQuantity(const QuantityLine& line)
{
    const Settings* settings = settingsOf(m_draft.block(), line.site);
    const Settings* before = settingsOf(m_draft.blockBefore(), line.site);
    const auto unit = m_draft.stimulator();
    if (settings == nullptr || !unit) {
        return;
    }
    const auto range = rangeOf(*unit, line.field);
    const auto count = countIn(*settings, line.field);
    line.box->setCount(count);
    line.box->setRange(range);
    const QString allowed = range ? m_text.range(line.field, range->least, range->most) : QString();
    line.row->setAllowed(allowed, false);
    line.box->setAccessibleName(
        tr("%1, %2, %3", "setting, unit, range")
            .arg(lineName(line.field, line.site), unitWord(shownUnit(line.field)), allowed));
    if (line.field == Field::onTime) {
        line.row->setHint(unit->rampHabit == RampHabit::includedInOnTime ? tr("ramps inside")
                                                                         : tr("ramps added"));
    }
    if (before == nullptr) {
        line.row->setBefore({}, false);
        line.box->setEarlierCount(std::nullopt);
        return;
    }
    const auto earlier = countIn(*before, line.field);
    line.box->setEarlierCount(earlier);
    const bool changed = earlier != count;
    line.row->setBefore(!changed  ? tr("same")
                        : earlier ? m_text.setting(line.field, *earlier)
                                  : QStringLiteral("—"),
                        changed);
}

void SettingsForm::refreshWaveform()
{
    const Settings* settings = settingsOf(m_draft.block(), std::nullopt);
    const auto unit = m_draft.stimulator();
    if (m_waveform == nullptr || settings == nullptr || !unit) {
        return;
    }
    m_waveform->clear();
    for (const Waveform waveform : unit->waveforms) {
        m_waveform->addItem(waveformName(waveform), static_cast<int>(waveform));
    }
    int shown = m_waveform->findData(static_cast<int>(settings->waveform));
    if (shown < 0) {
        m_waveform->addItem(waveformName(settings->waveform), static_cast<int>(settings->waveform));
        shown = m_waveform->count() - 1;
    }
    m_waveform->setCurrentIndex(shown);
}

void SettingsForm::refreshBlock()
{
    const Block* block = m_draft.block();
    if (m_weeks == nullptr || block == nullptr) {
        return;
    }
    const QSignalBlocker silentWeeks(m_weeks); // shown, not entered
    const QSignalBlocker silentSessions(m_sessions);
    m_weeks->setValue(block->weeks);
    m_sessions->setValue(block->sessionsPerDay);
    m_days->setSchedule(block->schedule);
    m_order->setCurrentIndex(m_order->findData(static_cast<int>(block->siteOrder)));
    m_orderRow->setVisible(block->sites.size() > 1);
    const Block* before = m_draft.blockBefore();
    const auto show = [&](SettingRow* row, bool changed, const QString& earlier) {
        row->setBefore(before == nullptr ? QString()
                       : changed         ? earlier
                                         : tr("same"),
                       before != nullptr && changed);
    };
    show(m_weeksRow, false, {});
    m_weeksRow->setBefore({}, false); // the length of a block is no change of the dose
    show(m_sessionsRow, before && before->sessionsPerDay != block->sessionsPerDay,
         before ? m_text.count(before->sessionsPerDay) : QString());
    show(m_daysRow, before && before->schedule != block->schedule,
         before ? m_text.count(daysPerWeek(*before)) : QString());
    show(m_orderRow, before && before->siteOrder != block->siteOrder, tr("other"));
}

void SettingsForm::setFindings(const std::vector<PlacedFinding>& findings)
{
    for (const QuantityLine& line : m_lines) {
        const auto found = std::ranges::find_if(findings, [&](const PlacedFinding& placed) {
            const bool sameSite = !line.site || !placed.site || line.site == placed.site;
            return placed.finding.field == line.field && sameSite &&
                   placed.finding.severity != Severity::note;
        });
        const bool outside = found != findings.end();
        setOutOfRange(*line.box, outside || line.box->hasProblem());
        const auto unit = m_draft.stimulator();
        const auto range = unit ? rangeOf(*unit, line.field) : std::nullopt;
        line.row->setAllowed(
            range ? m_text.range(line.field, range->least, range->most) : QString(), outside);
        line.row->setRemark(outside ? findingText(found->finding, m_text).what : QString());
    }
}

QString SettingsForm::problem() const
{
    for (const QuantityLine& line : m_lines) {
        if (line.box->hasProblem()) {
            return tr("%1: “%2” is no value in %3. Enter a number.")
                .arg(lineName(line.field, line.site), line.box->text(),
                     unitWord(shownUnit(line.field)));
        }
    }
    return {};
}

void SettingsForm::focusFirst()
{
    if (!m_lines.empty()) {
        m_lines.front().box->setFocus(Qt::OtherFocusReason);
    }
}

bool SettingsForm::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    return QFrame::eventFilter(watched, event);
}

void SettingsForm::focusField(Field field, std::optional<std::size_t> site)
{
    const auto line = std::ranges::find_if(m_lines, [&](const QuantityLine& candidate) {
        return candidate.field == field && (!site || candidate.site == site);
    });
    if (line != m_lines.end()) {
        line->box->setFocus(Qt::OtherFocusReason);
    }
}

} // namespace quadrille::app
