// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/ids.h"
#include "core/result.h"
#include "core/stimulator.h"

#include <QObject>

#include <optional>

class QWidget;

namespace quadrille::app
{

class PlanDraft;

/// Everything between the draft and its unit: choosing another, describing one, and fitting what is
/// planned to what it can do, which is shown first.
class UnitChoice : public QObject
{
    Q_OBJECT

public:
    /// Dialogs open over `page`, which owns this.
    UnitChoice(const Services& services, PlanDraft& draft, QWidget* page);

    void choose(StimulatorId id);
    /// Describes a unit that is new, and chooses it.
    void add();
    /// Changes what the draft's unit can do.
    void change();
    /// Fits all blocks to the draft's unit.
    void fitAll();
    /// Reads the practice's units again.
    void reload();

    /// How many settings of all blocks the draft's unit can't be set to; 0 for one that will not do
    /// at all.
    std::size_t misfits() const;

signals:
    void said(const QString& sentence);
    void failed(const quadrille::Error& error);
    /// A unit was chosen, or not: what shows the choice reads the draft again.
    void settled();

private:
    std::optional<Stimulator> unitOf(StimulatorId id) const;
    /// Shows what a unit can do instead; takes the unit, with its values or with the old ones.
    void offer(const Stimulator& unit, bool isAnother);
    void sayVerdict(const Stimulator& unit);

    const Services m_services;
    PlanDraft& m_draft;
    QWidget* m_page;
};

} // namespace quadrille::app
