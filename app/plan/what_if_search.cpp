// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/what_if_search.h"

#include "app/look/roles.h"
#include "app/look/segment_row.h"
#include "app/look/tokens.h"
#include "app/plan/quantity_box.h"
#include "app/words/model_text.h"
#include "app/words/what_if_text.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>

#include <algorithm>
#include <chrono>

namespace quadrille::app
{

namespace
{

/// After so long a search says that it goes on, and can be stopped.
constexpr std::chrono::milliseconds patience{1000};
constexpr double leastRatio = 0.05;
constexpr double mostRatio = 1.0;
constexpr double usualRatio = 0.7;
constexpr double ratioStep = 0.01;
constexpr int mostContractions = 9999;

} // namespace

WhatIfSearch::WhatIfSearch(const WhatIf& whatIf, const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_variants(new SegmentRow(this))
    , m_ratio(new QDoubleSpinBox(this))
    , m_keptLength(new QComboBox(this))
    , m_length(new QuantityBox(Field::sessionLength, text, this))
    , m_keptDose(new QComboBox(this))
    , m_contractions(new QSpinBox(this))
    , m_answer(new QLabel(this))
    , m_stop(new QPushButton(tr("&Stop the search"), this))
{
    setRole(*this, Role::sheet);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    grid->setHorizontalSpacing(space::small);
    grid->setVerticalSpacing(space::tiny);
    grid->setColumnStretch(0, 1);
    addVariants(*grid);
    addRatio(*grid);
    addLength(*grid, whatIf);
    addContractions(*grid, whatIf);
    m_answer->setObjectName(QStringLiteral("searchAnswer"));
    m_answer->setWordWrap(true);
    m_answer->setTextFormat(Qt::PlainText);
    setRole(*m_answer, Role::secondLineText);
    m_stop->setObjectName(QStringLiteral("stopSearch"));
    m_stop->setAutoDefault(false);
    const int row = grid->rowCount();
    grid->addWidget(m_answer, row, 0, 1, 2);
    grid->addWidget(m_stop, row + 1, 1);
    m_answer->setText(tr("The answer becomes the variant, on the steps of the unit. Amplitude is "
                         "not searched."));
    m_stop->hide();
    m_patience.setSingleShot(true);
    m_patience.setInterval(patience);
    connect(&m_patience, &QTimer::timeout, this, [this] {
        m_answer->setText(modelPendingText());
        m_stop->show();
    });
    connect(m_stop, &QPushButton::clicked, this, &WhatIfSearch::stopRequested);
}

void WhatIfSearch::addVariants(QGridLayout& grid)
{
    auto* name = new QLabel(tr("Variant in work"), this);
    setRole(*name, Role::strongText);
    m_variants->setObjectName(QStringLiteral("variants"));
    m_variants->setAccessibleName(tr("Variant in work"));
    for (std::size_t variant = 0; variant < mostVariants; ++variant) {
        m_variants->addSegment(static_cast<int>(variant), variantName(variant));
    }
    connect(m_variants, &SegmentRow::chosenChanged, this, &WhatIfSearch::variantChosen);
    auto* row = new QHBoxLayout;
    row->addWidget(name);
    row->addStretch();
    row->addWidget(m_variants);
    grid.addLayout(row, 0, 0, 1, 2);
}

QPushButton* WhatIfSearch::addFind(QGridLayout& grid, int row, const QString& what)
{
    auto* find = new QPushButton(tr("Find"), this);
    find->setAccessibleName(tr("Find: %1").arg(what));
    find->setAutoDefault(false);
    grid.addWidget(find, row, 1, Qt::AlignBottom);
    return find;
}

void WhatIfSearch::addRatio(QGridLayout& grid)
{
    m_ratio->setObjectName(QStringLiteral("wishedRatio"));
    m_ratio->setRange(leastRatio, mostRatio);
    m_ratio->setSingleStep(ratioStep);
    m_ratio->setValue(usualRatio);
    m_ratio->setLocale(m_text.locale());
    m_ratio->setAccessibleName(tr("Fatigue ratio, at least"));
    m_ratio->setToolTip(modelMark());
    m_keptLength->setObjectName(QStringLiteral("keptLength"));
    m_keptLength->setAccessibleName(tr("What stays while the off time changes"));
    m_keptLength->addItem(tr("session length"), static_cast<int>(KeptLength::session));
    m_keptLength->addItem(tr("contractions"), static_cast<int>(KeptLength::contractions));
    auto* what = new QLabel(tr("Keep the &fatigue ratio above"), this);
    what->setBuddy(m_ratio);
    auto* lines = new QGridLayout;
    lines->setHorizontalSpacing(space::small);
    lines->setVerticalSpacing(space::hair);
    lines->addWidget(what, 0, 0);
    lines->addWidget(m_ratio, 0, 1, Qt::AlignLeft);
    lines->addWidget(new QLabel(tr("by off time, keeping"), this), 1, 0);
    lines->addWidget(m_keptLength, 1, 1, Qt::AlignLeft);
    lines->setColumnStretch(1, 1);
    grid.addLayout(lines, 1, 0);
    QPushButton* find = addFind(grid, 1, tr("off time for the fatigue ratio"));
    find->setObjectName(QStringLiteral("findRatio"));
    connect(find, &QPushButton::clicked, this, [this] {
        emit wished(KeepRatio{m_ratio->value(),
                              static_cast<KeptLength>(m_keptLength->currentData().toInt())});
    });
    m_wishes.push_back({find, {m_ratio, m_keptLength}});
}

void WhatIfSearch::addLength(QGridLayout& grid, const WhatIf& whatIf)
{
    m_length->setObjectName(QStringLiteral("wishedLength"));
    m_length->setAccessibleName(tr("Longest session, minutes"));
    m_length->setCount(whatIf.planned().sessionLength.count());
    m_length->setRange(rangeOf(whatIf.unit, Field::sessionLength));
    m_keptDose->setObjectName(QStringLiteral("keptDose"));
    m_keptDose->setAccessibleName(tr("What stays in the session"));
    m_keptDose->addItem(tr("contractions"), static_cast<int>(KeptDose::contractions));
    m_keptDose->addItem(tr("total on time"), static_cast<int>(KeptDose::totalOnTime));
    auto* what = new QLabel(tr("F&it"), this);
    what->setBuddy(m_length);
    auto* line = new QHBoxLayout;
    line->setSpacing(space::small);
    line->addWidget(what);
    line->addWidget(m_length);
    line->addWidget(new QLabel(tr("keeping"), this));
    line->addWidget(m_keptDose);
    line->addStretch();
    grid.addLayout(line, 2, 0);
    QPushButton* find = addFind(grid, 2, tr("longest off time for the session"));
    find->setObjectName(QStringLiteral("findLength"));
    connect(find, &QPushButton::clicked, this, [this] {
        if (m_length->hasProblem() || !m_length->count()) {
            return showAnswer(
                tr("“%1” is no session length. Enter minutes.").arg(m_length->text()));
        }
        emit wished(FitLength{Milliseconds(*m_length->count()),
                              static_cast<KeptDose>(m_keptDose->currentData().toInt())});
    });
    m_wishes.push_back({find, {m_length, m_keptDose}});
}

void WhatIfSearch::addContractions(QGridLayout& grid, const WhatIf& whatIf)
{
    const auto timing =
        sessionTiming(whatIf.planned(), whatIf.unit.rampHabit, whatIf.unit.cycleStart);
    m_contractions->setObjectName(QStringLiteral("wishedContractions"));
    m_contractions->setAccessibleName(tr("Contractions in the session"));
    m_contractions->setRange(1, mostContractions);
    m_contractions->setLocale(m_text.locale());
    m_contractions->setValue(timing ? static_cast<int>(std::min<std::int64_t>(
                                          timing->contractionsCompleted, mostContractions))
                                    : 1);
    auto* what = new QLabel(tr("co&ntractions, by session length"), this);
    what->setBuddy(m_contractions);
    auto* line = new QHBoxLayout;
    line->setSpacing(space::small);
    line->addWidget(m_contractions);
    line->addWidget(what);
    line->addStretch();
    grid.addLayout(line, 3, 0);
    QPushButton* find = addFind(grid, 3, tr("session length for the contractions"));
    find->setObjectName(QStringLiteral("findContractions"));
    connect(find, &QPushButton::clicked, this,
            [this] { emit wished(GiveContractions{m_contractions->value()}); });
    m_wishes.push_back({find, {m_contractions}});
}

std::size_t WhatIfSearch::variant() const
{
    return static_cast<std::size_t>(std::max(0, m_variants->chosen()));
}

void WhatIfSearch::setVariant(std::size_t variant)
{
    m_variants->choose(static_cast<int>(variant));
}

void WhatIfSearch::showAnswer(const QString& sentence)
{
    endPending();
    m_answer->setText(sentence);
    m_answer->setAccessibleName(sentence);
}

void WhatIfSearch::showPending()
{
    m_patience.start();
}

void WhatIfSearch::endPending()
{
    m_patience.stop();
    m_stop->hide();
}

void WhatIfSearch::keyPressEvent(QKeyEvent* event)
{
    const bool enters = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    const auto row = std::ranges::find_if(m_wishes, [this](const auto& wish) {
        return std::ranges::any_of(
            wish.second, [this](const QWidget* field) { return field == window()->focusWidget(); });
    });
    if (enters && row != m_wishes.end()) {
        row->first->click();
        return;
    }
    QFrame::keyPressEvent(event);
}

} // namespace quadrille::app
