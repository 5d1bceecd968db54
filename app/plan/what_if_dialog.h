// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/variant_chart.h"
#include "app/plan/model_worker.h"
#include "app/window/services.h"

#include "core/what_if.h"

#include <QDialog>

class QComboBox;
class QHBoxLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace quadrille::app
{

class WhatIfForces;
class WhatIfSearch;
class WhatIfTable;

/// Up to three variants beside the block in work: settings to try, figures with their differences,
/// the model's curves over one another, and searches. Nothing is changed until a variant is adopted
/// with a reason; the page does that.
class WhatIfDialog : public QDialog
{
    Q_OBJECT

public:
    /// `block` has a site; `index` is its place in the plan.
    WhatIfDialog(const Services& services, const Block& block, std::size_t index,
                 const Stimulator& unit, QWidget* parent);

    /// The variant that was adopted, its name and the reason, once accepted.
    const Block& variant() const;
    QString variantName() const;
    QString reason() const;

public slots:
    void accept() override;

private:
    void layOut();
    QHBoxLayout* heading();
    QHBoxLayout* adoption();
    void listen();
    void setSite(std::size_t site);
    void setSetting(std::size_t variant, Field field, std::optional<std::int64_t> count);
    void reset(std::size_t variant);
    /// Shows the variants, and asks the model about them.
    void refresh();
    void showFigures(const WhatIfFigures& figures, const VariantForces& forces);
    void search(const Wish& wish);
    void endSearch(std::size_t variant, const Wish& wish, const WishAnswer& answer);
    void dropSearch();
    /// Why the variant in work can't be adopted; empty where it can. Takes the focus there.
    QString problem();

    const Services m_services;
    WhatIf m_whatIf;
    QString m_planName;
    WhatIfTable* m_table;
    WhatIfSearch* m_search;
    WhatIfForces* m_forces;
    QComboBox* m_sites;
    QLineEdit* m_reason;
    QLabel* m_problem;
    QPushButton* m_adopt;
    bool m_searches = false;
    // Last: their threads end before what they deliver to.
    ModelWorker m_figuresWorker;
    ModelWorker m_searchWorker;
};

} // namespace quadrille::app
