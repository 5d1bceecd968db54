// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/clinic/cue_sound.h"
#include "app/plan/model_reader.h"
#include "app/plan/plan_draft.h"
#include "app/plan/warning_strip.h"
#include "app/window/services.h"

#include "core/course.h"
#include "core/plan.h"

#include <QTimer>
#include <QWidget>

#include <optional>
#include <vector>

class QScrollArea;

namespace quadrille::app
{

class BlockSheet;
class ChartPair;
class CycleSheet;
class FiguresPanel;
class ForceSheet;
class SettingsForm;
class UnitChoice;

/// Where the physiotherapist thinks: blocks and sites, settings, figures, one cycle. The page shows
/// the draft of one course; what is not saved is kept in the store and comes back after a crash.
class PlanPage : public QWidget
{
    Q_OBJECT

public:
    PlanPage(const Services& services, QWidget* parent);

    /// Shows a course; unsaved work on the one shown before is kept.
    void setCourse(const Course& course);
    /// Lets go of the course and of what was not saved: its record is gone.
    void closeCourse();
    PlanDraft& draft() { return m_draft; }
    const std::vector<Plan>& plans() const { return m_plans; }
    void focusFirst();

    void saveDraft();
    void revert();
    void issue();
    /// Opens the session in the clinic for the block in work; what was tolerated may go into the
    /// draft.
    void holdClinicSession();
    void addBlock();
    /// Variants of the block in work beside it; one may be adopted.
    void askWhatIf();
    /// The edge of a block is pulled along the weeks; the steps merge until endOfPull().
    void pullBlock(std::size_t index, int weeks);
    void endOfPull() { m_draft.endStep(); }
    /// Lengthens the block in work, or shortens it.
    void lengthenBlock(int byWeeks);
    /// The course was changed on file: paused, ended, reopened, another date.
    void courseChanged(const Course& course) { m_course = course; }
    /// Published and own settings to start the block in work from.
    void showStartingPoints();
    /// The plans of the course side by side.
    void showPlansIssued();

public slots:
    /// Keeps unsaved work in the store at once; called when the window closes.
    void keepNow();

signals:
    /// One sentence for the status line.
    void said(const QString& sentence);
    void planIssued();
    void fatigueByWeek(const MuscleByWeek& fatigue);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void layOut();
    void arrange();
    void refresh();
    /// Asks the model about the block in work; figures, force and weeks follow its answer.
    void askModel();
    void showModel(const ModelAnswer& answer);
    void showModelPending();
    void refreshFindings(const std::optional<BlockFigures>& figures,
                         const std::optional<BlockFigures>& before);
    void mend(const PlacedFinding& placed);
    /// Somebody else saved the draft: shows both and goes on from the one that is chosen.
    void settle(const Error& error);
    void setCourseAfterIssue();
    void addSite();
    void splitBlock(std::size_t index);
    void changeSite(std::size_t index);
    void reportFailure(const Error& error);

    const Services m_services;
    std::optional<Course> m_course;
    std::vector<Plan> m_plans;
    PlanDraft m_draft;
    QTimer m_keepSoon;
    DesktopCueSound m_cueSound;
    UnitChoice* m_unit;
    WarningStrip* m_strip;
    BlockSheet* m_blocks;
    SettingsForm* m_form;
    FiguresPanel* m_figures;
    CycleSheet* m_cycleSheet;
    ForceSheet* m_forceSheet;
    ChartPair* m_charts;
    ModelReader* m_model;
    QScrollArea* m_scroll;
    QWidget* m_sheets;
    bool m_narrow = false;
};

} // namespace quadrille::app
