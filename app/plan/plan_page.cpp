// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plan_page.h"

#include "app/clinic/clinic_session_form.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/plan/block_sheet.h"
#include "app/plan/chart_pair.h"
#include "app/plan/cycle_sheet.h"
#include "app/plan/figures_panel.h"
#include "app/plan/force_sheet.h"
#include "app/plan/issue_form.h"
#include "app/plan/plan_findings.h"
#include "app/plan/settings_form.h"
#include "app/plan/site_form.h"
#include "app/plan/unit_choice.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/draft_summary.h"
#include "app/words/error_text.h"

#include "db/plans.h"
#include "db/screenings.h"
#include "db/stimulators.h"

#include "core/block_edits.h"
#include "core/course_projection.h"
#include "core/screening_gate.h"

#include <QElapsedTimer>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include <chrono>

namespace quadrille::app
{

namespace
{

constexpr std::chrono::milliseconds keepDelay{500};
/// Below this width of the page the figures go under the settings.
constexpr int narrowWidth = 950;
/// Below this height of the window the charts share one place.
constexpr int lowWindow = 850;

} // namespace

PlanPage::PlanPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_draft(this)
    , m_unit(new UnitChoice(services, m_draft, this))
    , m_strip(new WarningStrip(services.text, this))
    , m_blocks(new BlockSheet(m_draft, services.text, this))
    , m_form(new SettingsForm(m_draft, services.text, this))
    , m_figures(new FiguresPanel(services.text, this))
    , m_cycleSheet(new CycleSheet(services, this))
    , m_forceSheet(new ForceSheet(services, this))
    , m_charts(
          new ChartPair(m_cycleSheet, tr("One cycle"), m_forceSheet, tr("Predicted force"), this))
    , m_model(new ModelReader(this))
    , m_scroll(new QScrollArea(this))
    , m_sheets(new QWidget)
{
    layOut();
    m_keepSoon.setSingleShot(true);
    m_keepSoon.setInterval(keepDelay);
    connect(&m_keepSoon, &QTimer::timeout, this, &PlanPage::keepNow);
    connect(&m_draft, &PlanDraft::changed, this, [this] {
        refresh();
        m_keepSoon.start();
    });
    connect(&m_draft, &PlanDraft::currentBlockChanged, this, &PlanPage::refresh);
    connect(m_form, &SettingsForm::problemChanged, this, &PlanPage::refresh);
    connect(m_form, &SettingsForm::startingPointsRequested, this, &PlanPage::showStartingPoints);
    connect(m_form, &SettingsForm::whatIfRequested, this, &PlanPage::askWhatIf);
    connect(m_form, &SettingsForm::fieldEntered, m_strip, &WarningStrip::showField);
    connect(m_strip, &WarningStrip::remedyRequested, this, &PlanPage::mend);
    connect(m_strip, &WarningStrip::fitRequested, m_unit, &UnitChoice::fitAll);
    connect(m_blocks, &BlockSheet::stimulatorChosen, m_unit, &UnitChoice::choose);
    connect(m_blocks, &BlockSheet::addStimulatorRequested, m_unit, &UnitChoice::add);
    connect(m_blocks, &BlockSheet::changeStimulatorRequested, m_unit, &UnitChoice::change);
    connect(m_unit, &UnitChoice::said, this, &PlanPage::said);
    connect(m_unit, &UnitChoice::failed, this, &PlanPage::reportFailure);
    connect(m_unit, &UnitChoice::settled, m_blocks, &BlockSheet::refreshStimulators);
    connect(m_blocks, &BlockSheet::addSiteRequested, this, &PlanPage::addSite);
    connect(m_blocks, &BlockSheet::changeSiteRequested, this, &PlanPage::changeSite);
    connect(m_blocks, &BlockSheet::splitBlockRequested, this, &PlanPage::splitBlock);
    connect(m_blocks, &BlockSheet::said, this, &PlanPage::said);
    connect(m_cycleSheet, &CycleSheet::said, this, &PlanPage::said);
    connect(m_forceSheet, &ForceSheet::said, this, &PlanPage::said);
    connect(m_model, &ModelReader::answered, this, &PlanPage::showModel);
    connect(m_model, &ModelReader::pending, this, &PlanPage::showModelPending);
    connect(&services.events, &StoreEvents::stimulatorsChanged, m_unit, &UnitChoice::reload);
}

void PlanPage::layOut()
{
    m_scroll->setWidget(m_sheets);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_strip);
    layout->addWidget(m_scroll, 1);
    auto* grid = new QGridLayout(m_sheets);
    grid->setContentsMargins(space::insideSheet, space::betweenSheets, space::medium,
                             space::betweenSheets);
    grid->setSpacing(space::betweenSheets);
    m_blocks->setFixedWidth(228);
    m_blocks->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Ignored); // its lists scroll
    m_form->setMinimumWidth(430);
    m_figures->setMinimumWidth(272);
    arrange();
}

void PlanPage::arrange()
{
    auto* grid = qobject_cast<QGridLayout*>(m_sheets->layout());
    while (QLayoutItem* item = grid->takeAt(0)) {
        delete item; // the places only; the sheets stay
    }
    for (int i = 0; i < 3; ++i) {
        grid->setColumnStretch(i, 0);
        grid->setRowStretch(i, 0);
    }
    grid->addWidget(m_blocks, 0, 0);
    grid->addWidget(m_form, 0, 1);
    if (m_narrow) {
        grid->addWidget(m_figures, 1, 0, 1, 2);
        grid->addWidget(m_charts, 2, 0, 1, 2);
    } else {
        // The figures stand beside all that changes them, the charts below what is typed.
        grid->addWidget(m_figures, 0, 2, 2, 1);
        grid->addWidget(m_charts, 1, 0, 1, 2);
        grid->setColumnStretch(2, 1);
    }
    grid->setColumnStretch(1, 2);
    grid->setRowStretch(m_narrow ? 2 : 1, 1);
}

void PlanPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_charts->setTabbed(window()->height() < lowWindow);
    const bool narrow = width() < narrowWidth;
    if (narrow != m_narrow) {
        m_narrow = narrow;
        arrange();
    }
}

void PlanPage::setCourse(const Course& course)
{
    keepNow();
    struct Content {
        std::optional<Draft> draft;
        std::optional<db::UnsavedDraft> unsaved;
        std::vector<Plan> plans;
        std::vector<Stimulator> stimulators;
    };
    const auto content = m_services.store.read([&](db::Reading& reading) {
        return Content{db::draftOf(reading, *course.id), db::unsavedDraftOf(reading, *course.id),
                       db::plansOf(reading, *course.id), db::stimulators(reading)};
    });
    if (!content) {
        closeCourse(); // never somebody else's plan under this name
        reportFailure(content.error());
        return;
    }
    m_course = course;
    m_plans = content->plans;
    Draft saved = content->draft.value_or(m_plans.empty() ? Draft{} : draftFrom(m_plans.back()));
    saved.course = course.id;
    m_draft.setStimulators(content->stimulators);
    m_draft.load(saved, content->unsaved ? std::optional(content->unsaved->draft) : std::nullopt);
    m_keepSoon.stop();
    if (content->unsaved && m_draft.isChanged()) {
        emit said(tr("Changes that were not saved last time are shown again. Ctrl S saves, Revert "
                     "drops them."));
    }
}

void PlanPage::closeCourse()
{
    m_keepSoon.stop();
    m_course.reset();
    m_plans.clear();
    m_draft.load(Draft{}, std::nullopt);
    m_keepSoon.stop();
}

void PlanPage::refresh()
{
    const auto current = m_draft.currentBlock();
    const auto figures = current ? m_draft.figuresOf(*current) : std::nullopt;
    const auto before = current && *current > 0 ? m_draft.figuresOf(*current - 1) : std::nullopt;
    m_figures->show(m_draft.block(), figures, before);
    const auto unit = m_draft.stimulator();
    m_figures->showPlan(
        unit ? std::optional(totalsOf(projectWithoutModel(m_draft.draft().blocks, *unit)))
             : std::nullopt);
    refreshFindings(figures, before);
    m_cycleSheet->show(m_draft.block(), figures, m_draft.blockBefore(), before,
                       current ? tr("Block %1").arg(*current) : QString());
    askModel();
}

void PlanPage::refreshFindings(const std::optional<BlockFigures>& figures,
                               const std::optional<BlockFigures>& before)
{
    std::vector<PlacedFinding> placed;
    if (figures) {
        placed = placedFindings(*figures, before);
        for (PlacedFinding& one : placed) {
            one.remedyText =
                remedyText(one, m_draft.block(), m_draft.stimulator(), m_services.text);
        }
    }
    m_form->setFindings(placed);
    std::erase_if(placed,
                  [](const PlacedFinding& p) { return p.finding.code == FindingCode::noSites; });
    m_strip->setFindings(placed, m_form->problem());
    const bool mendsItself = placed.size() == 1 && !placed.front().remedyText.isEmpty();
    m_strip->offerFit(!mendsItself && m_unit->misfits() > 0);
}

void PlanPage::mend(const PlacedFinding& placed)
{
    const auto count = remedyCount(placed, m_draft.block(), m_draft.stimulator());
    if (!count) {
        return;
    }
    m_draft.endStep();
    const Field field = placed.finding.field;
    if (field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling) {
        m_draft.setAmplitude(placed.site.value_or(0), field, count);
    } else {
        m_draft.setSetting(field, count);
    }
    m_draft.endStep();
    m_form->focusField(field, placed.site);
}

void PlanPage::saveDraft()
{
    if (!m_course) {
        return;
    }
    const auto saved =
        m_services.store.write(m_services.author, "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, m_draft.draftToSave());
        });
    if (!saved && saved.error().code == ErrorCode::changedElsewhere) {
        settle(saved.error());
        return;
    }
    if (!saved) {
        reportFailure(saved.error());
        return;
    }
    m_keepSoon.stop();
    m_draft.markSaved();
    m_keepSoon.stop();
    emit said(tr("Draft saved. It is in force on no day until it is issued."));
    emit m_services.events.planChanged(*m_course->id);
}

void PlanPage::settle(const Error& error)
{
    const auto stored = m_services.store.read(
        [&](db::Reading& reading) { return db::draftOf(reading, *m_course->id); });
    if (!stored) {
        return reportFailure(stored.error());
    }
    if (!*stored) { // it became a plan, or was discarded: what is here goes on as a new draft
        m_draft.goOnFrom({}, m_draft.draft());
        emit said(tr("The draft was issued or discarded elsewhere. Your changes stay open; save "
                     "them as the next draft."));
        return;
    }
    const auto textOf = [&](const Draft& draft) {
        return draftSummary(draft, m_draft.stimulators(), m_services.text);
    };
    const QString sentence =
        (error.detail.empty() ? tr("This draft was saved elsewhere while it was open here.")
                              : tr("%1 saved this draft while it was open here.")
                                    .arg(QString::fromStdString(error.detail))) +
        QLatin1Char(' ') + tr("Choose which of the two shall stand.");
    const auto chosen = m_services.prompts.chooseBetween(
        this, sentence, {{tr("Draft"), textOf(**stored), textOf(m_draft.draft())}});
    if (!chosen) {
        return reportFailure(error);
    }
    m_draft.goOnFrom(**stored, chosen->front() ? m_draft.draft() : **stored);
    if (chosen->front()) {
        return saveDraft();
    }
    emit said(tr("The draft saved elsewhere is shown. Undo brings yours back."));
}

void PlanPage::revert()
{
    m_draft.revert();
}

void PlanPage::keepNow()
{
    m_keepSoon.stop();
    if (!m_course || !m_services.store.isWritable()) {
        return;
    }
    const auto kept =
        m_services.store.write(m_services.author, "keep unsaved draft", [&](db::Writing& writing) {
            if (m_draft.isChanged()) {
                db::keepUnsavedDraft(writing, m_draft.draftToSave());
            } else {
                db::dropUnsavedDraft(writing, *m_course->id);
            }
        });
    if (!kept) {
        reportFailure(kept.error());
    }
}

void PlanPage::addBlock()
{
    m_draft.addBlock();
    m_blocks->focusBlocks();
}

void PlanPage::addSite()
{
    const auto unit = m_draft.stimulator();
    const Block* block = m_draft.block();
    if (!unit || block == nullptr) {
        return;
    }
    Site site;
    site.settings = block->sites.empty() ? presetSettings(*unit) : block->sites.front().settings;
    if (!block->sites.empty()) {
        site.settings.amplitude = {}; // another muscle, another amplitude
        site.side = block->sites.back().side;
        site.channel = freeChannel(*block, *unit).value_or(unit->channels);
        site.position = block->sites.back().position;
    }
    SiteForm form(m_services, site, *unit, this);
    if (!block->sites.empty() && sharesTiming(*block, *unit)) {
        form.setNote(tr("All channels of this unit share their timing: the site takes that of "
                        "site 1, and a change goes to all sites."));
    }
    if (form.exec() == QDialog::Accepted) {
        m_draft.addSite(form.site());
        m_form->focusFirst();
    }
}

void PlanPage::changeSite(std::size_t index)
{
    const auto unit = m_draft.stimulator();
    const Block* block = m_draft.block();
    if (!unit || block == nullptr || index >= block->sites.size()) {
        return;
    }
    SiteForm form(m_services, block->sites[index], *unit, this);
    if (form.exec() == QDialog::Accepted) {
        m_draft.changeSite(index, form.site());
    }
}

void PlanPage::focusFirst()
{
    if (m_draft.block() != nullptr) {
        m_form->focusFirst();
    } else {
        m_blocks->focusBlocks();
    }
}

void PlanPage::reportFailure(const Error& error)
{
    emit said(errorText(error, m_services.text));
}

} // namespace quadrille::app
