// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/what_if_table.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/what_if_cells.h"
#include "app/words/model_text.h"
#include "app/words/trade_words.h"
#include "app/words/what_if_text.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QStringList>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int columns = 2 + static_cast<int>(mostVariants);
constexpr int firstVariant = 2;

/// In the order of the figures sheet.
constexpr std::array ofSession{ComparedFigure::contractionsCompleted, ComparedFigure::totalOnTime,
                               ComparedFigure::dutyCycle, ComparedFigure::offOnRatio,
                               ComparedFigure::pulses};
constexpr std::array ofModel{ComparedFigure::fatigueRatioIntegral,
                             ComparedFigure::fatigueRatioPeak};
constexpr std::array ofWeek{ComparedFigure::weekContractions, ComparedFigure::weekOnTime,
                            ComparedFigure::weekCharge};
constexpr std::array ofDose{ComparedFigure::phaseCharge, ComparedFigure::chargeDensity,
                            ComparedFigure::rmsTrain, ComparedFigure::currentDensity,
                            ComparedFigure::powerDensityTrain};

/// The figure that a limit is held against.
std::optional<ComparedFigure> figureOf(FindingCode code)
{
    switch (code) {
    case FindingCode::currentDensityHigh:
        return ComparedFigure::currentDensity;
    case FindingCode::rmsCurrentHigh:
        return ComparedFigure::rmsTrain;
    case FindingCode::powerDensityHigh:
        return ComparedFigure::powerDensityTrain;
    case FindingCode::lastContractionCut:
        return ComparedFigure::contractionsCompleted;
    default:
        return std::nullopt;
    }
}

bool isOutside(const VariantFigures& figures, ComparedFigure figure)
{
    return std::ranges::any_of(figures.findings, [&](const Finding& finding) {
        return finding.severity != Severity::note && figureOf(finding.code) == figure;
    });
}

/// What was measured with the patient is not a thing to try.
bool canVary(Field field)
{
    return field != Field::lastToleratedAmplitude;
}

} // namespace

WhatIfTable::WhatIfTable(const WhatIf& whatIf, const QString& planName, const QuantityText& text,
                         QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_planName(planName)
    , m_headArea(new QScrollArea(this))
    , m_scroll(new QScrollArea(this))
    , m_content(new QWidget(this))
    , m_grid(new QGridLayout(m_content))
{
    setRole(*this, Role::sheet);
    m_headArea->setWidget(head(planName));
    m_headArea->setFixedHeight(m_headArea->widget()->height());
    m_headArea->setFrameShape(QFrame::NoFrame);
    m_headArea->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_headArea->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_headArea->setFocusPolicy(Qt::NoFocus);
    m_grid->setContentsMargins(space::insideSheet, space::tiny, space::close, space::close);
    m_grid->setHorizontalSpacing(space::small);
    m_grid->setVerticalSpacing(0);
    addSettings(whatIf);
    addFigures();
    m_scroll->setWidget(m_content);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setAccessibleName(tr("Settings and figures side by side"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(1, 1, 1, 1);
    layout->setSpacing(0);
    layout->addWidget(m_headArea);
    layout->addWidget(m_scroll, 1);
    connect(m_scroll->horizontalScrollBar(), &QScrollBar::valueChanged,
            m_headArea->horizontalScrollBar(), &QScrollBar::setValue);
    showSettings(whatIf);
}

QWidget* WhatIfTable::head(const QString& planName)
{
    auto* bar = new QFrame;
    setRole(*bar, Role::sheetHead);
    const double factor = appliedFactor();
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(space::insideSheet, space::tiny, space::close, space::tiny);
    row->setSpacing(space::small);
    const auto add = [&](const QString& words, int width, Qt::Alignment alignment) {
        auto* label = new QLabel(words, bar);
        setRole(*label, Role::strongText);
        label->setFixedWidth(scaled(width, factor));
        label->setAlignment(alignment | Qt::AlignVCenter);
        row->addWidget(label);
    };
    add(tr("Setting"), what_if_width::name, Qt::AlignLeft);
    add(planName, what_if_width::plan, Qt::AlignRight);
    for (std::size_t variant = 0; variant < mostVariants; ++variant) {
        auto* place = new QWidget(bar);
        place->setFixedWidth(scaled(what_if_width::variant, factor));
        auto* line = new QHBoxLayout(place);
        line->setContentsMargins(space::small, 0, 0, 0);
        line->setSpacing(space::small);
        auto* name = new QLabel(variantName(variant), place);
        setRole(*name, Role::listNameText);
        auto* reset = new QPushButton(tr("As the block"), place);
        reset->setObjectName(QStringLiteral("reset-%1").arg(variant));
        reset->setAccessibleName(tr("Variant %1 as the block").arg(variantName(variant)));
        reset->setAutoDefault(false);
        setRole(*reset, Role::linkButton);
        connect(reset, &QPushButton::clicked, this, [this, variant] {
            for (const SettingLine& one : m_settings) {
                if (SettingCell* cell = one.cells[variant]; cell != nullptr) {
                    cell->dropText();
                }
            }
            emit resetRequested(variant);
        });
        line->addWidget(name);
        line->addStretch();
        line->addWidget(reset);
        row->addWidget(place);
    }
    row->addStretch();
    bar->ensurePolished();
    bar->setFixedSize(bar->sizeHint());
    return bar;
}

QLabel* WhatIfTable::addName(const QString& name, const QString& hint)
{
    auto* label = new QLabel(name, m_content);
    label->setFixedWidth(scaled(what_if_width::name, appliedFactor()));
    label->setToolTip(hint);
    m_grid->addWidget(label, m_grid->rowCount(), 0);
    return label;
}

QLabel* WhatIfTable::addPlanned(const QString& objectName)
{
    auto* label = new QLabel(m_content);
    label->setObjectName(objectName);
    label->setFixedWidth(scaled(what_if_width::plan, appliedFactor()));
    label->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_grid->addWidget(label, m_grid->rowCount() - 1, 1);
    return label;
}

SettingCell* WhatIfTable::addCell(Field field, std::size_t variant, const Stimulator& unit)
{
    auto* cell = new SettingCell(field, m_text, m_content);
    QuantityBox& box = cell->box();
    const auto range = rangeOf(unit, field);
    box.setObjectName(QStringLiteral("variant-%1-%2").arg(variant).arg(static_cast<int>(field)));
    box.setMayBeEmpty(field == Field::amplitudeCeiling);
    box.setAccessibleName(
        tr("%1, variant %2, %3, %4", "setting, variant, unit, range")
            .arg(fieldName(field), variantName(variant), unitWord(shownUnit(field)),
                 range ? m_text.range(field, range->least, range->most) : QString()));
    box.setToolTip(
        range ? tr("The unit allows %1").arg(m_text.range(field, range->least, range->most))
              : QString());
    m_grid->addWidget(cell, m_grid->rowCount() - 1, firstVariant + static_cast<int>(variant));
    connect(&box, &QuantityBox::countEntered, this,
            [this, field, variant](std::optional<std::int64_t> count) {
                emit settingEntered(variant, field, count);
            });
    return cell;
}

void WhatIfTable::addSettings(const WhatIf& whatIf)
{
    const Waveform waveform = whatIf.planned().waveform;
    for (const Field field : askingOrderOf(whatIf.unit)) {
        if (!appliesTo(field, waveform)) {
            continue;
        }
        addName(fieldName(field, waveform),
                canVary(field) ? QString() : tr("Found with the patient; it is not tried"));
        SettingLine line{
            field, addPlanned(QStringLiteral("planned-%1").arg(static_cast<int>(field))), {}};
        for (std::size_t variant = 0; canVary(field) && variant < mostVariants; ++variant) {
            line.cells[variant] = addCell(field, variant, whatIf.unit);
        }
        m_settings.push_back(line);
    }
}

QLabel* WhatIfTable::addSection(const QString& title)
{
    const int row = m_grid->rowCount();
    m_grid->setRowMinimumHeight(row, space::close);
    auto* label = new QLabel(title, m_content);
    setRole(*label, Role::captionText);
    m_grid->addWidget(label, row + 1, 0, 1, columns);
    return label;
}

QLabel* WhatIfTable::addSentences(const char* objectName)
{
    auto* label = new QLabel(m_content);
    label->setObjectName(QLatin1String(objectName));
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    setRole(*label, Role::secondLineText);
    m_grid->addWidget(label, m_grid->rowCount(), 0, 1, columns);
    return label;
}

void WhatIfTable::addFigures()
{
    const auto add = [this](const auto& figures) {
        for (const ComparedFigure figure : figures) {
            const QString name = comparedName(figure);
            addName(name, {});
            m_grid->setRowMinimumHeight(m_grid->rowCount() - 1,
                                        scaled(size::figureRow, appliedFactor()));
            const auto objectName = [&](std::size_t column) {
                return QStringLiteral("figure-%1-%2").arg(column).arg(static_cast<int>(figure));
            };
            FigureLine line{figure, addPlanned(objectName(0)), {}};
            setRole(*line.planned, Role::strongText);
            for (std::size_t variant = 0; variant < mostVariants; ++variant) {
                auto* cell = new FigureCell(
                    tr("%1, variant %2", "figure, variant").arg(name, variantName(variant)),
                    m_content);
                cell->setObjectName(objectName(variant + 1));
                m_grid->addWidget(cell, m_grid->rowCount() - 1,
                                  firstVariant + static_cast<int>(variant));
                line.cells[variant] = cell;
            }
            m_figures.push_back(line);
        }
    };
    addSection(tr("For one session"));
    add(ofSession);
    m_modelHead =
        addSection(tr("Predicted fatigue, last contraction / first: %1").arg(modelMark()));
    add(ofModel);
    m_modelSentences = addSentences("whatIfModel");
    addSection(tr("For the week"));
    add(ofWeek);
    addSection(tr("Dose, at the highest amplitude"));
    add(ofDose);
    m_limits = addSentences("whatIfLimits");
    setRole(*m_limits, Role::warnText);
    m_grid->setRowStretch(m_grid->rowCount(), 1);
    m_grid->setColumnStretch(columns, 1);
}

void WhatIfTable::showSettings(const WhatIf& whatIf)
{
    for (const SettingLine& line : m_settings) {
        const auto planned = countIn(whatIf.planned(), line.field);
        line.planned->setText(planned ? m_text.setting(line.field, *planned) : QStringLiteral("—"));
        for (std::size_t variant = 0; variant < whatIf.variants.size(); ++variant) {
            if (SettingCell* cell = line.cells[variant]; cell != nullptr) {
                cell->show(countIn(whatIf.varied(variant), line.field), planned);
                cell->box().setRange(rangeOf(whatIf.unit, line.field));
            }
        }
    }
}

void WhatIfTable::showFigures(const WhatIf& whatIf, const WhatIfFigures& figures, bool pending)
{
    for (const FigureLine& line : m_figures) {
        showFigure(line, figures, pending);
    }
    const auto say = [](QLabel& label, const QStringList& lines) {
        label.setText(lines.join(QLatin1Char('\n')));
        label.setVisible(!lines.isEmpty());
    };
    QStringList limits;
    if (figures.plan.figures) {
        for (const ModelLimit limit : figures.plan.figures->limits) {
            limits.append(modelLimitText(limit));
        }
    }
    m_modelHead->setToolTip(limits.join(QLatin1Char('\n')));
    m_modelHead->setAccessibleDescription(limits.join(QLatin1Char(' ')));
    say(*m_limits, limitSentences(whatIf, figures, m_planName, m_text));
    say(*m_modelSentences, pending ? QStringList{modelPendingText()} : modelSentences(figures));
    for (const SettingLine& line : m_settings) {
        for (std::size_t variant = 0; variant < figures.variants.size(); ++variant) {
            SettingCell* cell = line.cells[variant];
            if (cell == nullptr) {
                continue;
            }
            const auto& findings = figures.variants[variant].findings;
            const bool outside = std::ranges::any_of(findings, [&](const Finding& finding) {
                return finding.field == line.field && finding.severity != Severity::note;
            });
            setOutOfRange(cell->box(), outside || cell->box().hasProblem());
        }
    }
}

void WhatIfTable::showFigure(const FigureLine& line, const WhatIfFigures& figures, bool pending)
{
    const bool waits = pending && isModelFigure(line.figure);
    const auto textOf = [&](const VariantFigures& of) {
        if (waits) {
            return QStringLiteral("…");
        }
        return comparedText(
            line.figure, of.figures ? of.figures->value(line.figure).value : std::nullopt, m_text);
    };
    line.planned->setText(textOf(figures.plan));
    setRole(*line.planned,
            isOutside(figures.plan, line.figure) ? Role::warnStrongText : Role::strongText);
    for (std::size_t variant = 0; variant < figures.variants.size(); ++variant) {
        const VariantFigures& of = figures.variants[variant];
        line.cells[variant]->show(textOf(of),
                                  of.figures && !waits
                                      ? differenceText(of.figures->value(line.figure), m_text)
                                      : QString(),
                                  isOutside(of, line.figure));
    }
}

QString WhatIfTable::problem(std::size_t variant) const
{
    for (const SettingLine& line : m_settings) {
        const SettingCell* cell = line.cells[variant];
        if (cell != nullptr && cell->box().hasProblem()) {
            return tr("%1 of variant %2: “%3” is no value in %4. Enter a number.")
                .arg(fieldName(line.field), variantName(variant), cell->box().text(),
                     unitWord(shownUnit(line.field)));
        }
    }
    return {};
}

void WhatIfTable::focusVariant(std::size_t variant)
{
    for (const SettingLine& line : m_settings) {
        if (line.field == Field::offTime && line.cells[variant] != nullptr) {
            line.cells[variant]->box().setFocus(Qt::OtherFocusReason);
        }
    }
}

} // namespace quadrille::app
