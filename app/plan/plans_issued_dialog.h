// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"

#include <QDialog>

#include <optional>
#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QTableView;

namespace quadrille::app
{

class PlansIssuedModel;

/// Two plans of a course side by side, the draft among them while it differs from the plan issued
/// last. What differs is marked.
class PlansIssuedDialog : public QDialog
{
    Q_OBJECT

public:
    /// `plans`: at least one, the earliest first. `draftUnit`: what the draft is planned for.
    PlansIssuedDialog(const std::vector<Plan>& plans, const Draft& draft,
                      const std::optional<Stimulator>& draftUnit, const QuantityText& text,
                      QWidget* parent);

private:
    void layOut();
    void fillChoices();
    void compare();
    void setSpans();
    QString nameOf(std::size_t index) const;
    QString factsOf(std::size_t index) const;

    std::vector<Plan> m_plans; ///< the draft last, if it is here
    bool m_hasDraft;
    const QuantityText& m_text;
    QComboBox* m_choices[2];
    QLabel* m_facts[2];
    QLabel* m_count;
    QCheckBox* m_onlyDifferences;
    PlansIssuedModel* m_model;
    QTableView* m_table;
};

} // namespace quadrille::app
