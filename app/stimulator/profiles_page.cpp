// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/profiles_page.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/stimulator/stimulator_form.h"
#include "app/words/error_text.h"
#include "app/words/suitability_text.h"
#include "app/words/trade_words.h"

#include "db/stimulators.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

/// Texts with a number in them.
struct ListWords {
    Q_DECLARE_TR_FUNCTIONS(ListWords)
};

} // namespace

ProfilesPage::ProfilesPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_list(new QListWidget(this))
    , m_verdict(new QLabel(this))
    , m_change(new QPushButton(tr("&Change…"), this))
{
    m_list->setObjectName(QStringLiteral("records"));
    m_list->setAccessibleName(tr("Stimulators of the practice"));
    m_verdict->setObjectName(QStringLiteral("profileVerdict"));
    m_verdict->setWordWrap(true);
    m_verdict->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_verdict->setMinimumHeight(4 * m_verdict->fontMetrics().lineSpacing());
    auto* add = new QPushButton(tr("&New…"), this);
    add->setObjectName(QStringLiteral("newRecord"));
    setRole(*add, Role::primaryButton);
    add->setAutoDefault(false);
    add->setEnabled(services.store.isWritable());
    m_change->setObjectName(QStringLiteral("changeRecord"));
    m_change->setAutoDefault(false);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add);
    buttons->addWidget(m_change);
    buttons->addStretch();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::close);
    layout->addWidget(m_list, 1);
    layout->addWidget(m_verdict);
    layout->addLayout(buttons);
    connect(add, &QPushButton::clicked, this, &ProfilesPage::add);
    connect(m_change, &QPushButton::clicked, this, &ProfilesPage::changeCurrent);
    connect(m_list, &QListWidget::itemActivated, this, &ProfilesPage::changeCurrent);
    connect(m_list, &QListWidget::currentRowChanged, this, &ProfilesPage::showCurrent);
    refresh();
}

void ProfilesPage::refresh()
{
    const auto stimulators = m_services.store.read(db::stimulators);
    const int row = m_list->currentRow();
    m_stimulators = stimulators ? *stimulators : std::vector<Stimulator>{};
    m_list->clear();
    for (const Stimulator& unit : m_stimulators) {
        const QString second =
            unit.archived ? tr("no longer in use")
                          : tr("%1 · %2", "what it is, verdict")
                                .arg(ListWords::tr("%n channel(s), %1", nullptr, unit.channels)
                                         .arg(rampHabitName(unit.rampHabit)),
                                     suitabilityText(unit, m_services.text).verdict.toLower());
        m_list->addItem(
            tr("%1 · %2", "name, what it is").arg(QString::fromStdString(unit.name), second));
    }
    if (m_stimulators.empty()) {
        auto* item = new QListWidgetItem(
            stimulators ? tr("None yet. Describe the first: what it can be set to, in which order "
                             "it asks, and what it calls its settings.")
                        : errorText(stimulators.error(), m_services.text),
            m_list);
        item->setFlags(Qt::NoItemFlags);
    } else {
        m_list->setCurrentRow(std::clamp(row, 0, m_list->count() - 1));
    }
    showCurrent();
}

void ProfilesPage::showCurrent()
{
    const int row = m_list->currentRow();
    const bool any = row >= 0 && row < static_cast<int>(m_stimulators.size());
    m_change->setEnabled(any && m_services.store.isWritable());
    if (!any) {
        m_verdict->clear();
        return;
    }
    const SuitabilityText words =
        suitabilityText(m_stimulators[static_cast<std::size_t>(row)], m_services.text);
    m_verdict->setText((QStringList{words.whole()} + words.sources).join(QLatin1Char('\n')));
    setRole(*m_verdict, words.reasons.isEmpty() ? Role::goodText : Role::warnText);
}

void ProfilesPage::add()
{
    StimulatorForm(m_services, commonStimulator(), this).exec();
    refresh();
    emit changed();
}

void ProfilesPage::changeCurrent()
{
    if (m_change->isEnabled()) {
        const Stimulator unit = m_stimulators[static_cast<std::size_t>(m_list->currentRow())];
        StimulatorForm(m_services, unit, this).exec();
        refresh();
        emit changed();
    }
}

} // namespace quadrille::app
