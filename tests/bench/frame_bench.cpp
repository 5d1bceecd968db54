// SPDX-License-Identifier: GPL-3.0-or-later
// What a person sees of a dragged value: the time from a key in the field of the on time, or of the
// off time, to the last paint of the window, with what the force–fatigue model says of the value;
// 30 values, each once, on the demo's largest course with a third site (12 weeks, 4 blocks). The
// reference in the same run paints the whole window with nothing changed.
#include "app/demo/demo_practice.h"
#include "app/look/look.h"
#include "app/patient/record_page.h"
#include "app/plan/model_reader.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "tests/app/screen_renderer.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/whole_caseload.h"

#include "db/stimulators.h"

#include <QElapsedTimer>
#include <QKeyEvent>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <vector>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

constexpr int frames = 30;
const Date measuredDay = Date(std::chrono::year(2026) / 3 / 12);

void paint()
{
    QApplication::sendPostedEvents();
    QApplication::processEvents();
}

/// Until everything is painted, the answer of the model too.
void settle(const bool& modelIsAsked)
{
    paint();
    while (modelIsAsked) {
        QApplication::processEvents(QEventLoop::WaitForMoreEvents);
        paint();
    }
}

/// Thirty steps up from any value of the demo stay inside the range.
bool makeStepsFiner(const QString& file, const Clock& clock)
{
    const auto store = db::Store::open(file, db::Opening::existing, clock);
    return store && (*store)->write({.practitioner = std::nullopt, .name = "Measured"},
                                    "make steps finer", [](db::Writing& writing) {
                                        for (Stimulator unit : db::stimulators(writing)) {
                                            unit.onTime.step = std::chrono::milliseconds(250);
                                            unit.offTime.step = unit.onTime.step;
                                            db::changeStimulator(writing, unit);
                                        }
                                    });
}

/// Milliseconds of each frame.
std::vector<double> timesOf(const bool& modelIsAsked, const std::function<void()>& act)
{
    std::vector<double> times;
    for (int i = 0; i < frames; ++i) {
        QElapsedTimer timer;
        timer.start();
        act();
        settle(modelIsAsked);
        times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    std::ranges::sort(times);
    return times;
}

void report(const char* what, const std::vector<double>& times)
{
    QTextStream(stdout) << what << ": median " << times[times.size() / 2] << " ms, worst "
                        << times.back() << " ms\n";
}

bool openLargestCourse(Shown& shown, const bool& modelIsAsked)
{
    const auto rows = shown.store->read(tests::wholeCaseload).value();
    const auto agnes = std::ranges::find(
        rows, "Agnes Thorley", [](const db::CaseloadRow& row) { return row.patient.name; });
    if (agnes == rows.end()) {
        return false;
    }
    shown.window->resize(1440, 900);
    shown.window->show();
    shown.window->openPatient(*agnes->patient.id, std::nullopt);
    PlanDraft& draft = shown.window->recordPage().planPage().draft();
    for (std::size_t block = 0; block < draft.draft().blocks.size(); ++block) {
        draft.setCurrentBlock(block);
        Site third = draft.block()->sites.front();
        third.muscle = "rectus femoris";
        draft.addSite(third);
    }
    draft.setCurrentBlock(draft.draft().blocks.size() - 1);
    settle(modelIsAsked);
    return true;
}

/// False when two keys led to one value.
bool measureKeys(Shown& shown, const bool& modelIsAsked, Field field, const char* what)
{
    auto* box = shown.window->findChild<QuantityBox*>(
        QStringLiteral("setting-%1").arg(static_cast<int>(field)));
    box->setFocus();
    settle(modelIsAsked);
    std::set<std::optional<std::int64_t>> values;
    report(what, timesOf(modelIsAsked, [&] {
               QKeyEvent key(QEvent::KeyPress, Qt::Key_Up, Qt::NoModifier);
               QApplication::sendEvent(box, &key);
               values.insert(box->count());
           }));
    return values.size() == frames;
}

} // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QApplication application(argc, argv);
    Look look(*qApp);
    look.apply(SchemeChoice::light);
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("demo.quadrille"));
    if (!writeDemoPractice(file, measuredDay)) {
        return 1;
    }
    const tests::FixedClock clock(Moment(measuredDay) + std::chrono::hours(10));
    if (!makeStepsFiner(file, clock)) {
        return 1;
    }
    bool modelIsAsked = false; // outlives the page that sets it
    Shown shown(file, db::Opening::existing, clock, look);
    PlanPage& page = shown.window->recordPage().planPage();
    QObject::connect(
        &page, &PlanPage::fatigueByWeek, &page,
        [&modelIsAsked](const MuscleByWeek& shows) { modelIsAsked = shows.isPending; });
    if (!openLargestCourse(shown, modelIsAsked)) {
        return 1;
    }
    report("the window painted, nothing changed", timesOf(modelIsAsked, [&] {
               for (QWidget* widget : shown.window->findChildren<QWidget*>()) {
                   widget->update();
               }
           }));
    const bool everyValueOnce =
        measureKeys(shown, modelIsAsked, Field::onTime, "a key in the on time") &&
        measureKeys(shown, modelIsAsked, Field::offTime, "a key in the off time");
    return everyValueOnce ? 0 : 1;
}
