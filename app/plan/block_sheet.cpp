// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/block_sheet.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/list_acts.h"
#include "app/plan/list_delegates.h"
#include "app/plan/plan_draft.h"
#include "app/words/block_text.h"
#include "app/words/suitability_text.h"
#include "app/words/trade_words.h"

#include "core/block_edits.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int newStimulator = -1; ///< the last line of the list of units
/// A row names so many changes; its tip and its text for a voice have all.
constexpr int mostChangeLines = 4;

QPushButton* linkButton(const QString& text, const QString& spoken, const QString& name,
                        QWidget* parent)
{
    auto* button = new QPushButton(text, parent);
    setRole(*button, Role::linkButton);
    button->setAccessibleName(spoken);
    button->setToolTip(spoken);
    button->setObjectName(name);
    return button;
}

/// Fills a row of ShortRowDelegate; its text is for a voice, which hears `spoken` in place of the
/// lines.
void fillRow(QListWidgetItem& item, const QString& head, const QString& beside,
             const QStringList& lines, const QStringList& spoken)
{
    item.setData(ShortRowDelegate::headRole, head);
    item.setData(ShortRowDelegate::besideRole, beside);
    item.setData(ShortRowDelegate::linesRole, lines);
    const QString whole = (QStringList{head, beside} + spoken).join(QStringLiteral(", "));
    item.setText(whole);
    item.setToolTip(whole);
}

} // namespace

BlockSheet::BlockSheet(PlanDraft& draft, const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_draft(draft)
    , m_text(text)
    , m_stimulator(new QComboBox(this))
    , m_changeStimulator(linkButton(tr("Change…"), tr("Change what this stimulator can do"),
                                    QStringLiteral("changeStimulator"), this))
    , m_verdict(new QLabel(this))
    , m_blocks(new QListWidget(this))
    , m_addBlock(linkButton(tr("Add"), tr("Add a block"), QStringLiteral("addBlock"), this))
    , m_blockActs(new ListActs(*m_blocks))
    , m_moreBlock(linkButton(tr("More"), tr("Copy, move, split or remove this block"),
                             QStringLiteral("moreBlock"), this))
    , m_sites(new QListWidget(this))
    , m_addSite(
          linkButton(tr("Add…"), tr("Add a site to this block"), QStringLiteral("addSite"), this))
    , m_siteActs(new ListActs(*m_sites))
    , m_moreSite(linkButton(tr("More"), tr("Change, copy or remove this site"),
                            QStringLiteral("moreSite"), this))
    , m_noBlocks(new QLabel(tr("No blocks yet. Add the first: Ctrl Shift N"), this))
    , m_noSites(new QLabel(tr("No site yet. Add the muscle to be exercised."), this))
{
    setRole(*this, Role::sheet);
    layOut();
    addBlockActs();
    addSiteActs();
    connectAll();
    refresh();
}

void BlockSheet::connectAll()
{
    connect(m_stimulator, &QComboBox::activated, this, [this](int index) {
        const qint64 key = m_stimulator->itemData(index).toLongLong();
        if (key == newStimulator) {
            emit addStimulatorRequested();
            refreshStimulators();
        } else if (key > 0) {
            emit stimulatorChosen(StimulatorId(key));
        }
    });
    connect(m_changeStimulator, &QPushButton::clicked, this,
            &BlockSheet::changeStimulatorRequested);
    connect(m_addBlock, &QPushButton::clicked, &m_draft, &PlanDraft::addBlock);
    connect(m_blocks, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row >= 0) {
            m_draft.setCurrentBlock(static_cast<std::size_t>(row));
        }
    });
    connect(m_addSite, &QPushButton::clicked, this, &BlockSheet::addSiteRequested);
    connect(m_sites, &QListWidget::itemActivated, this, [this] {
        if (const auto site = currentSite()) {
            emit changeSiteRequested(*site);
        }
    });
    connect(&m_draft, &PlanDraft::changed, this, &BlockSheet::refresh);
    connect(&m_draft, &PlanDraft::currentBlockChanged, this, &BlockSheet::refresh);
}

QFrame* BlockSheet::head(const QString& title, QPushButton* first, QPushButton* second)
{
    auto* frame = new QFrame(this);
    setRole(*frame, Role::sheetHead);
    auto* label = new QLabel(title, frame);
    setRole(*label, Role::strongText);
    auto* layout = new QHBoxLayout(frame);
    layout->setContentsMargins(space::insideSheet - 2, space::hair, space::small, space::hair);
    layout->addWidget(label);
    layout->addStretch();
    if (second != nullptr) {
        layout->addWidget(second);
    }
    layout->addWidget(first);
    return frame;
}

void BlockSheet::layOut()
{
    m_stimulator->setObjectName(QStringLiteral("stimulator"));
    m_stimulator->setAccessibleName(fieldName(Field::stimulator));
    m_blocks->setObjectName(QStringLiteral("blocks"));
    m_blocks->setAccessibleName(tr("Blocks"));
    m_sites->setObjectName(QStringLiteral("sites"));
    m_sites->setAccessibleName(tr("Sites of this block"));
    m_sites->setToolTip(tr("Enter opens a site"));
    for (QListWidget* list : {m_blocks, m_sites}) {
        list->setFrameShape(QFrame::NoFrame);
        list->setItemDelegate(new ShortRowDelegate(list));
        list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
        list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        list->setTextElideMode(Qt::ElideRight);
    }
    setRole(*m_verdict, Role::warnText);
    m_verdict->setObjectName(QStringLiteral("unitVerdict"));
    m_verdict->setWordWrap(true);
    m_verdict->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::small);
    for (QLabel* label : {m_noBlocks, m_noSites}) {
        label->setWordWrap(true);
        label->setContentsMargins(space::insideSheet, space::close, space::insideSheet,
                                  space::close);
        setRole(*label, Role::secondLineText);
    }
    auto* unit = new QHBoxLayout;
    unit->setContentsMargins(space::betweenSheets, space::small, space::betweenSheets,
                             space::small);
    unit->addWidget(m_stimulator, 1);
    m_stimulator->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_stimulator->setMinimumContentsLength(14);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(1, 1, 1, 1);
    layout->setSpacing(0);
    layout->addWidget(head(fieldName(Field::stimulator), m_changeStimulator, nullptr));
    layout->addLayout(unit);
    layout->addWidget(m_verdict);
    layout->addWidget(head(tr("Blocks"), m_addBlock, m_moreBlock));
    layout->addWidget(m_noBlocks);
    layout->addWidget(m_blocks, 5);
    layout->addWidget(head(tr("Sites"), m_addSite, m_moreSite));
    layout->addWidget(m_noSites);
    layout->addWidget(m_sites, 2);
}

void BlockSheet::refresh()
{
    refreshStimulators();
    refreshBlocks();
    refreshSites();
}

void BlockSheet::refreshStimulators()
{
    m_stimulator->clear();
    const auto chosen = m_draft.draft().stimulator;
    for (const Stimulator& unit : m_draft.stimulators()) {
        if (unit.id && (!unit.archived || unit.id == chosen)) {
            const SuitabilityText words = suitabilityText(unit, m_text);
            const QString name = QString::fromStdString(unit.name);
            m_stimulator->addItem(words.willDo ? name : tr("%1 (will not do)").arg(name),
                                  QVariant::fromValue<qint64>(unit.id->key()));
            m_stimulator->setItemData(m_stimulator->count() - 1, words.whole(), Qt::ToolTipRole);
        }
    }
    m_stimulator->addItem(tr("New stimulator…"), QVariant::fromValue<qint64>(newStimulator));
    m_stimulator->setPlaceholderText(tr("Choose the patient’s unit"));
    m_stimulator->setCurrentIndex(
        chosen ? m_stimulator->findData(QVariant::fromValue<qint64>(chosen->key())) : -1);
    m_changeStimulator->setEnabled(m_draft.stimulator().has_value());
    showVerdict();
}

/// Only what speaks against the unit; what stops it stands on the strip of each block too.
void BlockSheet::showVerdict()
{
    const auto unit = m_draft.stimulator();
    const SuitabilityText words = unit ? suitabilityText(*unit, m_text) : SuitabilityText{};
    m_verdict->setText(
        words.reasons.isEmpty()
            ? QString()
            : tr("%1: %2", "verdict, the first reason").arg(words.verdict, words.reasons.front()));
    m_verdict->setToolTip(words.reasons.join(QLatin1Char('\n')));
    m_verdict->setAccessibleName(unit ? words.whole() : QString());
    m_verdict->setVisible(!words.reasons.isEmpty());
}

/// The first block whole, the others by what changed.
void BlockSheet::fillBlock(std::size_t index)
{
    const std::vector<Block>& blocks = m_draft.draft().blocks;
    const Block& block = blocks[index];
    QStringList lines = blockLines(block, m_text);
    QStringList spoken = lines;
    if (index > 0) {
        const auto number = static_cast<int>(index);
        lines = changeLines(blocks[index - 1], block, number, m_text);
        spoken = spokenChanges(blocks[index - 1], block, number, m_text);
        if (const auto more = lines.size() - mostChangeLines; more > 1) {
            lines = lines.first(mostChangeLines) + QStringList{tr("and %1 more").arg(more)};
        }
        const auto before = m_draft.figuresOf(index - 1);
        const auto figures = m_draft.figuresOf(index);
        const QStringList step =
            before && figures ? stepLines(stepSize(*before, *figures), m_text) : QStringList();
        lines += step;
        spoken += step;
    }
    fillRow(*m_blocks->item(static_cast<int>(index)), tr("Block %1").arg(index + 1),
            weeksName(firstWeekOf(blocks, index), block.weeks), lines, spoken);
}

void BlockSheet::refreshBlocks()
{
    const QSignalBlocker silent(m_blocks); // shown, not chosen
    const std::size_t count = m_draft.draft().blocks.size();
    while (m_blocks->count() > static_cast<int>(count)) {
        delete m_blocks->takeItem(m_blocks->count() - 1);
    }
    for (std::size_t i = 0; i < count; ++i) {
        if (static_cast<int>(i) >= m_blocks->count()) {
            m_blocks->addItem(QString());
        }
        fillBlock(i);
    }
    const auto current = m_draft.currentBlock();
    m_blocks->setCurrentRow(current ? static_cast<int>(*current) : -1);
    m_blocks->setVisible(count > 0);
    if (current) {
        m_blocks->scrollToItem(m_blocks->item(static_cast<int>(*current)));
    }
    m_noBlocks->setVisible(count == 0);
    m_moreBlock->setEnabled(count > 0);
}

QStringList BlockSheet::siteLines(std::size_t index) const
{
    const Block& block = *m_draft.block();
    const Site& site = block.sites[index];
    const QString pads = site.pads.empty() ? tr("no pads") : padSize(site.pads.front(), m_text);
    QStringList lines{tr("channel %1 · pads %2").arg(site.channel).arg(pads)};
    const auto unit = m_draft.stimulator();
    if (index > 0 && unit && sharesTiming(block, *unit)) {
        lines.append(tr("timing shared with site 1"));
    }
    return lines;
}

void BlockSheet::refreshSites()
{
    const QSignalBlocker silent(m_sites);
    const int row = m_sites->currentRow();
    m_sites->clear();
    const Block* block = m_draft.block();
    const std::size_t count = block != nullptr ? block->sites.size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
        m_sites->addItem(QString());
        const QStringList lines = siteLines(i);
        fillRow(*m_sites->item(static_cast<int>(i)),
                tr("%1  %2").arg(i + 1).arg(siteName(block->sites[i])), {}, lines, lines);
    }
    m_sites->setCurrentRow(qBound(count > 0 ? 0 : -1, row, static_cast<int>(count) - 1));
    m_sites->setVisible(count > 0);
    m_noSites->setVisible(block != nullptr && count == 0);
    m_addSite->setEnabled(block != nullptr && m_draft.stimulator().has_value());
    m_moreSite->setEnabled(count > 0);
}

std::optional<std::size_t> BlockSheet::currentSite() const
{
    const int row = m_sites->currentRow();
    return row >= 0 ? std::optional(static_cast<std::size_t>(row)) : std::nullopt;
}

void BlockSheet::focusBlocks()
{
    m_blocks->setFocus(Qt::OtherFocusReason);
}

} // namespace quadrille::app
