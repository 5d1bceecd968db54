// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/fatigue_figures.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/model_text.h"

#include <QGridLayout>
#include <QLabel>
#include <QStringList>
#include <QToolButton>

namespace quadrille::app
{

namespace
{

constexpr int decimals = 2;

/// One text where all sites say the same, else one for each.
QString bySite(const QStringList& texts, const QString& between)
{
    return texts.count(texts.front()) == texts.size() ? texts.front() : texts.join(between);
}

QLabel* wrapped(Role role, QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    setRole(*label, role);
    return label;
}

} // namespace

FatigueFigures::FatigueFigures(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
    , m_integral(new QLabel(this))
    , m_peak(new QLabel(this))
    , m_mark(wrapped(Role::captionText, this))
    , m_more(new QToolButton(this))
    , m_limits(wrapped(Role::captionText, this))
    , m_sentence(wrapped(Role::secondLineText, this))
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(space::insideSheet, 0, space::insideSheet, space::tiny);
    grid->setVerticalSpacing(0);
    grid->setColumnStretch(0, 1);
    const auto addRow = [&](int row, const QString& name, QLabel* value, const char* objectName) {
        auto* caption = new QLabel(name, this);
        setRole(*value, Role::strongText);
        value->setObjectName(QLatin1String(objectName));
        value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        value->setTextInteractionFlags(Qt::TextSelectableByMouse);
        value->setAccessibleDescription(
            tr("%1, %2", "figure, mark of the model").arg(name, modelMark()));
        grid->addWidget(caption, row, 0);
        grid->addWidget(value, row, 1);
        grid->setRowMinimumHeight(row, size::closeRow);
    };
    addRow(0, tr("Fatigue ratio, predicted"), m_integral, "fatigueRatio");
    addRow(1, tr("the same of peak force"), m_peak, "fatigueRatioPeak");
    m_mark->setText(modelMark());
    m_more->setText(tr("Limits"));
    m_more->setCheckable(true);
    m_more->setObjectName(QStringLiteral("modelLimits"));
    m_more->setAccessibleName(tr("Limits of the model"));
    m_more->setMinimumSize(size::hitArea, size::hitArea);
    connect(m_more, &QToolButton::toggled, m_limits, &QLabel::setVisible);
    grid->addWidget(m_mark, 2, 0);
    grid->addWidget(m_more, 2, 1, Qt::AlignRight);
    grid->addWidget(m_limits, 3, 0, 1, 2);
    grid->addWidget(m_sentence, 4, 0, 1, 2);
    m_sentence->setObjectName(QStringLiteral("fatigueSentence"));
    m_limits->setObjectName(QStringLiteral("modelLimitsText"));
    m_limits->hide();
    clearFigures();
}

QString FatigueFigures::valuesOf(const ModelAnswer& answer, double FatigueRatio::*part) const
{
    QStringList values;
    for (const FatigueStep& step : answer.steps) {
        if (!step.now || !step.before) {
            values.append(QStringLiteral("—"));
            continue;
        }
        const QString now = m_text.number((*step.now).*part, decimals);
        const QString before = m_text.number((*step.before).*part, decimals);
        values.append(now == before ? tr("%1, as before").arg(now)
                                    : tr("%1, was %2").arg(now, before));
    }
    return bySite(values, QStringLiteral("\n"));
}

void FatigueFigures::show(const ModelAnswer& answer)
{
    if (answer.steps.empty()) {
        return clearFigures();
    }
    m_integral->setText(valuesOf(answer, &FatigueRatio::forceTimeIntegral));
    m_peak->setText(valuesOf(answer, &FatigueRatio::peak));
    QStringList sentences;
    QStringList limits;
    for (std::size_t i = 0; i < answer.steps.size(); ++i) {
        const FatigueStep& step = answer.steps[i];
        QStringList ofSite;
        if (step.missing) {
            ofSite.append(noFatigueRatioText(step));
        } else {
            for (const QString& ignored : modelIgnoredText(step.comparability)) {
                ofSite.append(ignored);
            }
        }
        sentences.append(ofSite.join(QLatin1Char(' ')));
        for (const ModelLimit limit : step.limits) {
            if (const QString one = modelLimitText(limit); !limits.contains(one)) {
                limits.append(one);
            }
        }
    }
    const bool alike = sentences.count(sentences.front()) == sentences.size();
    for (qsizetype i = 0; !alike && i < sentences.size(); ++i) {
        if (!sentences[i].isEmpty()) {
            sentences[i] = tr("Site %1: %2").arg(i + 1).arg(sentences[i]);
        }
    }
    sentences.removeAll(QString());
    m_sentence->setText(alike ? sentences.value(0) : sentences.join(QLatin1Char('\n')));
    m_sentence->setVisible(!sentences.isEmpty());
    m_limits->setText(limits.join(QLatin1Char(' ')));
    m_mark->setToolTip(limits.join(QLatin1Char('\n')));
    m_integral->setToolTip(m_mark->toolTip());
    m_peak->setToolTip(m_mark->toolTip());
    m_more->setEnabled(!limits.isEmpty());
}

void FatigueFigures::showPending()
{
    m_integral->setText(QStringLiteral("…"));
    m_peak->setText(QStringLiteral("…"));
    m_sentence->setText(modelPendingText());
    m_sentence->show();
}

void FatigueFigures::clearFigures()
{
    m_integral->setText(QStringLiteral("—"));
    m_peak->setText(QStringLiteral("—"));
    m_sentence->clear();
    m_sentence->hide();
    m_more->setChecked(false);
    m_more->setEnabled(false);
    m_limits->clear();
}

} // namespace quadrille::app
