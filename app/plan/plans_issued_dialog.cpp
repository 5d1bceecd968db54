// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plans_issued_dialog.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"
#include "app/plan/plans_issued_model.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int usualWidth = 760;
constexpr int usualHeight = 600;
constexpr int nameWidth = 220;

} // namespace

PlansIssuedDialog::PlansIssuedDialog(const std::vector<Plan>& plans, const Draft& draft,
                                     const std::optional<Stimulator>& draftUnit,
                                     const QuantityText& text, QWidget* parent)
    : QDialog(parent)
    , m_plans(plans)
    , m_hasDraft(!draft.blocks.empty() && (draft.blocks != plans.back().blocks ||
                                           draft.stimulator != plans.back().stimulator.id))
    , m_text(text)
    , m_choices{new QComboBox(this), new QComboBox(this)}
    , m_facts{new QLabel(this), new QLabel(this)}
    , m_count(new QLabel(this))
    , m_onlyDifferences(new QCheckBox(tr("&Only what differs"), this))
    , m_model(new PlansIssuedModel(this))
    , m_table(new QTableView(this))
{
    setWindowTitle(tr("Plans issued"));
    if (m_hasDraft) {
        Plan asPlan;
        asPlan.blocks = draft.blocks;
        asPlan.stimulator = draftUnit.value_or(Stimulator{});
        m_plans.push_back(asPlan);
    }
    layOut();
    fillChoices();
    compare();
    m_choices[1]->setFocus();
}

void PlansIssuedDialog::layOut()
{
    const QString names[] = {QStringLiteral("leftPlan"), QStringLiteral("rightPlan")};
    const QString spoken[] = {tr("Plan at the left"), tr("Plan at the right")};
    auto* heads = new QGridLayout;
    heads->setHorizontalSpacing(space::insideSheet);
    heads->setVerticalSpacing(space::tiny);
    for (int side = 0; side < 2; ++side) {
        m_choices[side]->setObjectName(names[side]);
        m_choices[side]->setAccessibleName(spoken[side]);
        m_facts[side]->setWordWrap(true);
        m_facts[side]->setTextFormat(Qt::PlainText);
        setRole(*m_facts[side], Role::secondLineText);
        heads->addWidget(m_choices[side], 0, side);
        heads->addWidget(m_facts[side], 1, side, Qt::AlignTop);
        heads->setColumnStretch(side, 1);
        connect(m_choices[side], &QComboBox::currentIndexChanged, this,
                &PlansIssuedDialog::compare);
    }
    m_table->setObjectName(QStringLiteral("planRows"));
    m_table->setAccessibleName(tr("The two plans, value by value"));
    m_table->setModel(m_model);
    m_table->setItemDelegate(new PlansIssuedDelegate(m_table));
    dressAsRows(*m_table);
    m_table->setColumnWidth(PlansIssuedModel::what, scaled(nameWidth, appliedFactor()));
    for (const int column : {PlansIssuedModel::left, PlansIssuedModel::right}) {
        m_table->horizontalHeader()->setSectionResizeMode(column, QHeaderView::Stretch);
    }
    m_table->verticalHeader()->setDefaultSectionSize(scaled(size::figureRow, appliedFactor()));
    m_count->setObjectName(QStringLiteral("planDifferences"));
    m_onlyDifferences->setObjectName(QStringLiteral("onlyDifferences"));
    connect(m_onlyDifferences, &QCheckBox::toggled, this, [this](bool only) {
        m_model->showDifferencesOnly(only);
        setSpans();
    });
    auto* close = new QPushButton(tr("Close"), this);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    auto* line = new QHBoxLayout;
    line->addWidget(m_count);
    line->addStretch();
    line->addWidget(m_onlyDifferences);
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(space::betweenSheets);
    layout->addLayout(heads);
    layout->addLayout(line);
    layout->addWidget(m_table, 1);
    layout->addWidget(close, 0, Qt::AlignRight);
    resize(scaled(usualWidth, appliedFactor()), usualHeight);
}

QString PlansIssuedDialog::nameOf(std::size_t index) const
{
    if (m_hasDraft && index + 1 == m_plans.size()) {
        return tr("Draft");
    }
    const Plan& plan = m_plans[index];
    return tr("Plan %1, from %2").arg(plan.number).arg(m_text.date(plan.fromDate));
}

QString PlansIssuedDialog::factsOf(std::size_t index) const
{
    if (m_hasDraft && index + 1 == m_plans.size()) {
        return tr("Not issued: in force on no day.");
    }
    const Plan& plan = m_plans[index];
    return tr("Issued on %1 by %2: %3", "day, practitioner, reason")
        .arg(m_text.date(plan.issuedOn), QString::fromStdString(plan.issuedByName),
             QString::fromStdString(plan.reason));
}

void PlansIssuedDialog::fillChoices()
{
    const auto last = static_cast<int>(m_plans.size()) - 1;
    for (int side = 0; side < 2; ++side) {
        const QSignalBlocker silent(m_choices[side]);
        for (std::size_t i = 0; i < m_plans.size(); ++i) {
            m_choices[side]->addItem(nameOf(i));
        }
        m_choices[side]->setCurrentIndex(side == 0 ? std::max(0, last - 1) : last);
    }
}

void PlansIssuedDialog::compare()
{
    const auto left = static_cast<std::size_t>(m_choices[0]->currentIndex());
    const auto right = static_cast<std::size_t>(m_choices[1]->currentIndex());
    m_facts[0]->setText(factsOf(left));
    m_facts[1]->setText(factsOf(right));
    m_model->show(planRows(m_plans[left], m_plans[right], m_text), nameOf(left), nameOf(right));
    setSpans();
    const int differences = m_model->differences();
    m_count->setText(differences == 0 ? tr("No value differs.")
                                      : tr("Values that differ: %1").arg(differences));
}

/// The line of a block or site takes the whole width.
void PlansIssuedDialog::setSpans()
{
    m_table->clearSpans();
    for (int row = 0; row < m_model->rowCount(); ++row) {
        if (m_model->isSection(row)) {
            m_table->setSpan(row, 0, 1, PlansIssuedModel::columnsInAll);
        }
    }
}

} // namespace quadrille::app
