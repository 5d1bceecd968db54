// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/what_if_dialog.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/what_if_forces.h"
#include "app/plan/what_if_search.h"
#include "app/plan/what_if_table.h"
#include "app/words/finding_text.h"
#include "app/words/model_text.h"
#include "app/words/trade_words.h"
#include "app/words/what_if_text.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr QSize usualSize{1360, 860};
constexpr int leastTableWidth = 420;
constexpr int leastSideWidth = 370;

QString muscleOf(const WhatIf& whatIf)
{
    return siteName(whatIf.plan.sites[whatIf.site]);
}

/// The curves of the block and of each variant that the model compares with it. Runs off the
/// window's thread.
VariantForces forcesOf(const WhatIf& whatIf, const WhatIfFigures& figures, const QString& planName,
                       PeakMemory& memory)
{
    VariantForces forces;
    if (!figures.plan.isShownByModel()) {
        return forces;
    }
    const auto add = [&](const QString& name, const Settings& settings, std::size_t stroke) {
        const std::vector<double>& peaks = memory.peaks(settings, whatIf.unit);
        if (!peaks.empty()) {
            forces.curves.push_back({name, peaks, stroke});
        }
    };
    add(planName, whatIf.planned(), 0);
    for (std::size_t variant = 0; variant < figures.variants.size(); ++variant) {
        if (figures.variants[variant].isShownByModel()) {
            add(variantName(variant), whatIf.varied(variant), variant + 1);
        }
    }
    return forces;
}

} // namespace

WhatIfDialog::WhatIfDialog(const Services& services, const Block& block, std::size_t index,
                           const Stimulator& unit, QWidget* parent)
    : QDialog(parent)
    , m_services(services)
    , m_whatIf{block, std::vector<Block>(mostVariants, block), 0, unit}
    , m_planName(tr("Block %1").arg(index + 1))
    , m_table(new WhatIfTable(m_whatIf, m_planName, services.text, this))
    , m_search(new WhatIfSearch(m_whatIf, services.text, this))
    , m_forces(new WhatIfForces(services, this))
    , m_sites(new QComboBox(this))
    , m_reason(new QLineEdit(this))
    , m_problem(new QLabel(this))
    , m_adopt(new QPushButton(this))
    , m_figuresWorker(this)
    , m_searchWorker(this)
{
    setWindowTitle(tr("What if: variants of block %1").arg(index + 1));
    layOut();
    listen();
    refresh();
    m_table->focusVariant(0);
}

void WhatIfDialog::layOut()
{
    m_table->setMinimumWidth(leastTableWidth);
    m_search->setMinimumWidth(leastSideWidth);
    auto* side = new QVBoxLayout;
    side->setSpacing(space::betweenSheets);
    side->addWidget(m_search);
    side->addWidget(m_forces, 1);
    auto* middle = new QHBoxLayout;
    middle->setSpacing(space::betweenSheets);
    middle->addWidget(m_table, 2);
    middle->addLayout(side, 1);
    m_problem->setObjectName(QStringLiteral("whatIfProblem"));
    m_problem->setTextFormat(Qt::PlainText);
    m_problem->setWordWrap(true);
    setRole(*m_problem, Role::warnText);
    m_problem->hide();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::betweenSheets, space::insideSheet,
                               space::betweenSheets);
    layout->setSpacing(space::close);
    layout->addLayout(heading());
    layout->addLayout(middle, 1);
    layout->addWidget(m_problem);
    layout->addLayout(adoption());
    const QSize room = parentWidget() != nullptr ? parentWidget()->window()->size() : usualSize;
    resize(usualSize.boundedTo(room - QSize(space::wide, space::section)));
}

QHBoxLayout* WhatIfDialog::heading()
{
    auto* caption = new QLabel(
        tr("Nothing is changed until a variant is adopted. Settings change in all sites of the "
           "block, amplitude in one."),
        this);
    setRole(*caption, Role::secondLineText);
    m_sites->setObjectName(QStringLiteral("whatIfSite"));
    m_sites->setAccessibleName(tr("Site that the figures are of"));
    for (const Site& site : m_whatIf.plan.sites) {
        m_sites->addItem(siteName(site));
    }
    auto* name = new QLabel(tr("Fi&gures of"), this);
    name->setBuddy(m_sites);
    const bool several = m_whatIf.plan.sites.size() > 1;
    m_sites->setVisible(several);
    name->setVisible(several);
    auto* row = new QHBoxLayout;
    row->setSpacing(space::small);
    row->addWidget(caption);
    row->addStretch();
    row->addWidget(name);
    row->addWidget(m_sites);
    return row;
}

QHBoxLayout* WhatIfDialog::adoption()
{
    m_reason->setObjectName(QStringLiteral("adoptReason"));
    m_reason->setAccessibleName(tr("Reason for adopting the variant"));
    m_reason->setPlaceholderText(tr("one line, for example: less fatigue towards the end"));
    auto* name = new QLabel(tr("&Reason"), this);
    name->setBuddy(m_reason);
    m_adopt->setObjectName(QStringLiteral("adopt"));
    m_adopt->setAutoDefault(false);
    setRole(*m_adopt, Role::primaryButton);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    auto* row = new QHBoxLayout;
    row->setSpacing(space::close);
    row->addWidget(name);
    row->addWidget(m_reason, 1);
    row->addWidget(close);
    row->addWidget(m_adopt);
    return row;
}

void WhatIfDialog::listen()
{
    const auto nameAct = [this] {
        m_adopt->setText(tr("&Adopt variant %1").arg(variantName()));
        m_problem->hide();
    };
    nameAct();
    connect(m_table, &WhatIfTable::settingEntered, this, &WhatIfDialog::setSetting);
    connect(m_table, &WhatIfTable::resetRequested, this, &WhatIfDialog::reset);
    connect(m_search, &WhatIfSearch::variantChosen, this, nameAct);
    connect(m_search, &WhatIfSearch::wished, this, &WhatIfDialog::search);
    connect(m_search, &WhatIfSearch::stopRequested, this, &WhatIfDialog::dropSearch);
    connect(m_sites, &QComboBox::activated, this,
            [this](int site) { setSite(static_cast<std::size_t>(site)); });
    connect(m_adopt, &QPushButton::clicked, this, &WhatIfDialog::accept);
    connect(m_reason, &QLineEdit::returnPressed, this, &WhatIfDialog::accept);
    connect(m_reason, &QLineEdit::textEdited, m_problem, &QWidget::hide);
    connect(&m_figuresWorker, &ModelWorker::pending, this, [this] {
        m_table->showFigures(m_whatIf, whatIfFigures(m_whatIf, nullptr), true);
        m_forces->showSentence(modelPendingText());
    });
    connect(&m_searchWorker, &ModelWorker::pending, m_search, &WhatIfSearch::showPending);
}

void WhatIfDialog::setSite(std::size_t site)
{
    dropSearch();
    m_whatIf.site = site;
    refresh();
}

void WhatIfDialog::setSetting(std::size_t variant, Field field, std::optional<std::int64_t> count)
{
    dropSearch(); // it began from other settings
    m_search->setVariant(variant);
    m_whatIf.variants[variant] =
        withSetting(std::move(m_whatIf.variants[variant]), m_whatIf.site, field, count);
    refresh();
}

void WhatIfDialog::reset(std::size_t variant)
{
    dropSearch();
    m_whatIf.variants[variant] = m_whatIf.plan;
    m_search->setVariant(variant);
    refresh();
}

void WhatIfDialog::refresh()
{
    m_problem->hide();
    m_table->showSettings(m_whatIf);
    m_figuresWorker.ask([this, whatIf = m_whatIf, name = m_planName](
                            ModelMemory& memory, const std::stop_token&) -> ModelWorker::Delivery {
        WhatIfFigures figures = whatIfFigures(whatIf, &memory.ratios);
        VariantForces forces = forcesOf(whatIf, figures, name, memory.peaks);
        return [this, figures = std::move(figures), forces = std::move(forces)] {
            showFigures(figures, forces);
        };
    });
}

void WhatIfDialog::showFigures(const WhatIfFigures& figures, const VariantForces& forces)
{
    m_table->showFigures(m_whatIf, figures, false);
    if (forces.curves.empty()) {
        m_forces->showSentence(modelSentences(figures).join(QLatin1Char('\n')));
        return;
    }
    VariantForces shown = forces;
    shown.name = tr("Predicted peak force of %1, % of the first").arg(muscleOf(m_whatIf));
    shown.note = modelMark();
    m_forces->show(shown);
}

void WhatIfDialog::search(const Wish& wish)
{
    const std::size_t variant = m_search->variant();
    if (const QString wrong = m_table->problem(variant); !wrong.isEmpty()) {
        return m_search->showAnswer(wrong);
    }
    m_searches = true;
    m_searchWorker.ask([this, whatIf = m_whatIf, variant,
                        wish](ModelMemory& memory,
                              const std::stop_token& stop) -> ModelWorker::Delivery {
        WishAnswer answer = grant(whatIf, variant, wish, memory.ratios, stop);
        return
            [this, variant, wish, answer = std::move(answer)] { endSearch(variant, wish, answer); };
    });
}

void WhatIfDialog::endSearch(std::size_t variant, const Wish& wish, const WishAnswer& answer)
{
    m_searches = false;
    m_search->showAnswer(
        tr("%1: %2", "variant, answer")
            .arg(app::variantName(variant), wishAnswerText(answer, wish, m_services.text)));
    if (const auto* found = std::get_if<SearchFound>(&answer)) {
        m_whatIf.variants[variant] =
            withRest(std::move(m_whatIf.variants[variant]), found->settings);
        refresh();
    }
}

void WhatIfDialog::dropSearch()
{
    if (std::exchange(m_searches, false)) {
        m_searchWorker.drop();
        m_search->showAnswer(
            wishAnswerText(SearchRefusal{NoSetting::stopped, {}}, {}, m_services.text));
    }
}

const Block& WhatIfDialog::variant() const
{
    return m_whatIf.variants[m_search->variant()];
}

QString WhatIfDialog::variantName() const
{
    return app::variantName(m_search->variant());
}

QString WhatIfDialog::reason() const
{
    return m_reason->text().simplified();
}

QString WhatIfDialog::problem()
{
    const std::size_t inWork = m_search->variant();
    if (QString wrong = m_table->problem(inWork); !wrong.isEmpty()) {
        return wrong;
    }
    if (variant() == m_whatIf.plan) {
        m_table->focusVariant(inWork);
        return tr("Variant %1 is as the block. Change a setting of it first.").arg(variantName());
    }
    const WhatIfFigures figures = whatIfFigures(m_whatIf, nullptr);
    const std::vector<Finding>& findings = figures.variants[inWork].findings;
    if (hasStop(findings)) { // the gravest stands first
        m_table->focusVariant(inWork);
        return tr("Variant %1 can’t be run as it stands. %2")
            .arg(variantName(), findingText(findings.front(), m_services.text).what);
    }
    if (reason().isEmpty()) {
        m_reason->setFocus(Qt::OtherFocusReason);
        return tr("The reason is empty. Say in one line why variant %1 is adopted.")
            .arg(variantName());
    }
    return {};
}

void WhatIfDialog::accept()
{
    const QString wrong = problem();
    m_problem->setText(wrong);
    m_problem->setVisible(!wrong.isEmpty());
    if (wrong.isEmpty()) {
        dropSearch();
        QDialog::accept();
    }
}

} // namespace quadrille::app
