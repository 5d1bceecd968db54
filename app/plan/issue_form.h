// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/look/roles.h"
#include "app/window/entry_dialog.h"

#include "core/course_state.h"
#include "core/plan.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

class QCheckBox;

namespace Ui
{
class IssueFields;
}

namespace quadrille::app
{

/// The act of issuing: the check list of findings, then from-date, practitioner and reason. A
/// finding that stops the settings blocks it, and so does the screening. After this the plan is
/// never changed.
class IssueForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `plansBefore`: how many plans the course has. `draft.stimulator` is chosen.
    IssueForm(const Services& services, const Course& course, const Draft& draft,
              const Stimulator& stimulator, std::size_t plansBefore, QWidget* parent);
    ~IssueForm() override;

    std::optional<PlanId> issuedPlan() const { return m_issued; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    QWidget* checkList(const Stimulator& stimulator);
    /// What the screening says of issuing, a line each; blocks while its gate is shut.
    void addGate(const std::function<void(const QString&, Role)>& add);
    /// Offers that a pause without an end ends with this plan; blocks while that can't be read.
    void offerToGoOn(const std::function<void(const QString&, Role)>& add);

    std::unique_ptr<Ui::IssueFields> m_ui;
    Course m_course;
    Draft m_draft;
    bool m_isFirst;
    std::optional<Pause> m_pause;  ///< without an end, in which the course stands
    QCheckBox* m_goesOn = nullptr; ///< only where there is one
    bool m_blocked = false;        ///< by what the check list names; said when it is tried
    bool m_gateShut = false;       ///< by the screening or what can't be read: the act is off
    std::optional<PlanId> m_issued;
};

} // namespace quadrille::app
